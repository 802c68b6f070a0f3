import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

function read(header: string, ...rows: readonly string[]) {
  const { crosses, vials, files } = readSeason([
    { name: 'x.csv', bytes: new TextEncoder().encode([header, ...rows].join('\n')) },
  ]);
  const told = files[0].problems.filter(
    ({ column, code }) => column === 'Pollen' || code === 'column-missing',
  );
  return {
    crosses,
    vials,
    told: told.map(({ code, details }) => [code, details.column ?? details.suggestion]),
  };
}

const rows = (...texts: readonly string[]) =>
  texts.map((text, i) => `T${i};2025-06-0${i + 1};Selma;Ivo;${text};ja`);

describe('meaningsByValues', () => {
  it('reads "Pollen" over words of storage as the storage', () => {
    const { crosses, told } = read(
      'Etikett;Datum;Mutter;Vater;Pollen;Ergebnis',
      ...rows('frisch', 'TK', 'Silica', 'Kühlbox'),
    );
    expect(crosses.map(({ storage }) => storage)).toEqual(['fresh', 'frozen', 'Silica', 'Kühlbox']);
    expect(told.slice(0, 1)).toEqual([['column-guessed', 'storage']]);
  });

  it('reads it over names as the pollen parent, and over days as the day of collection', () => {
    const fathers = read(
      'Etikett;Datum;Mutter;Lagerung;Pollen;Ergebnis',
      'T1;2025-06-01;Selma;frisch;Ivo;ja',
    );
    expect(fathers.crosses[0].pollenParent).toBe('Ivo');
    const days = read(
      'Etikett;Datum;Mutter;Vater;Lagerung;Pollen;Ergebnis',
      'T1;1.6.2025;Selma;Ivo;TK;25.3.2025;ja',
    );
    expect(days.crosses[0]).toMatchObject({ pollenCollected: '2025-03-25', ageDays: 68 });
    const vials = read('Röhrchen;Pollen;gesammelt am;Lagerung', 'V1;Ivo;2025-06-01;TK');
    expect(vials.vials[0].pollenParent).toBe('Ivo');
  });

  it('asks where names and words of storage are mixed, and suggests a column that is missing', () => {
    const mixed = read(
      'Etikett;Datum;Mutter;Lagerung;Pollen;Ergebnis',
      ...['Ivo', 'Selma', 'Anton', 'frisch'].map((text, i) => `T${i};2025-06-01;Selma;TK;${text};ja`),
    );
    expect(mixed.crosses).toEqual([]);
    expect(mixed.told).toEqual([
      ['column-missing', 'pollen_parent'],
      ['column-unknown', 'pollen_parent'],
    ]);
  });

  it('takes no column from another header, and what the grower says goes before', () => {
    const { crosses, told } = read(
      'Etikett;Datum;Mutter;Vater;Lagerung;Pollen;Ergebnis',
      'T1;2025-06-01;Selma;Ivo;TK;frisch;ja',
    );
    expect([crosses[0].storage, told]).toEqual(['frozen', [['column-unknown', '']]]);
    const said = readSeason(
      [
        {
          name: 'x.csv',
          bytes: new TextEncoder().encode(
            'Etikett;Datum;Mutter;Pollen;Art;Ergebnis\nT1;2025-06-01;Selma;fresh;TK;ja',
          ),
        },
      ],
      {
        map: new Map([
          ['Pollen', 'pollen_parent'],
          ['Art', 'storage'],
        ]),
      },
    );
    expect(said.crosses[0]).toMatchObject({ pollenParent: 'fresh', storage: 'frozen' });
  });
});
