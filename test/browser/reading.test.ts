import { describe, expect, it } from 'vitest';
import { readingOf } from '../../lib/browser/reading.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';

function reading(text: string, said: readonly (readonly [string, string])[] = []) {
  const map = new Map(said);
  return readingOf(readSeason([{ name: 'a.csv', bytes: new TextEncoder().encode(text) }], { map }), map);
}

describe('readingOf', () => {
  it('asks nothing of a file that is clear', () => {
    const { files, dateQuestion, refusal, seedParents, sameNames, flowersGiven } = reading(
      `${HEAD}\nT1,2025-06-01,B,A,fresh,fruit\nT2,2025-06-01,A,B,fresh,none`,
    );
    expect([dateQuestion, refusal, sameNames, flowersGiven]).toEqual([null, null, [], false]);
    expect(seedParents).toEqual(['B', 'A']);
    expect(files[0]).toMatchObject({ kind: 'crosses', groups: [], missing: [], unclear: [] });
  });

  it('shows every name of a file whose letters are read by a guess', () => {
    const names = ['Königin', 'Zoë', 'Señora', 'Königin'];
    const rows = names.map((name, i) => `T${i},2025-06-01,${name},Ivo,fresh,fruit`);
    const bytes = Uint8Array.from([...[HEAD, ...rows].join('\n')].map((letter) => letter.charCodeAt(0)));
    const [file] = readingOf(readSeason([{ name: 'a.csv', bytes }]), new Map()).files;
    expect(file!.groups[0]!.message).toContain('"Königin", "Zoë", "Señora".');
  });

  it('asks nothing about a header that is told by what stands below it', () => {
    const text = 'Etikett;Datum;Mutter;Vater;Pollen;Ergebnis\nT1;2025-06-01;Selma;Ivo;frisch;ja';
    expect(reading(text).files[0]).toMatchObject({ missing: [], unclear: [], used: 1 });
  });

  it('tells of a file without a sheet how to save one, and of a sheet how to mend it', () => {
    // The first letters of the two formats: ISO 32000-1, 7.5.2, and ISO/IEC 10918-1, B.1.1.3.
    for (const start of ['%PDF-1.4', '\u00ff\u00d8\u00ff\u00e0']) {
      const bytes = Uint8Array.from([...`${start}\n\u0000\u0001`].map((letter) => letter.charCodeAt(0)));
      const { refusal } = readingOf(readSeason([{ name: 'a.csv', bytes }]), new Map());
      expect(refusal?.code).toBe('no-usable-row');
      expect(refusal?.fix).not.toContain('Mend it in the sheet');
      expect(refusal?.fix).toMatch(/as \.xlsx or CSV/);
    }
    const wrong = reading(`${HEAD}\nT1,2025-06-31,A,B,fresh,fruit`);
    expect(wrong.refusal?.fix).toBe('Mend it in the sheet, save it, and choose the file again.');
  });

  it('asks for the order of dates that can be read in two ways', () => {
    const { dateQuestion, refusal } = reading(`${HEAD}\nT1,03/04/2025,A,B,fresh,fruit`);
    expect(dateQuestion?.code).toBe('date-order-unclear');
    expect(refusal?.code).toBe('question-open');
  });

  it('asks which header is a column that is missing, until it is said', () => {
    const text = `${HEAD.replace('outcome', 'Zorn')}\nT1,2025-06-01,A,B,fresh,fruit`;
    expect(reading(text).files[0]?.missing).toEqual(['outcome']);
    expect(reading(text, [['Zorn', 'outcome']]).files[0]?.missing).toEqual([]);
  });

  it('asks which of two headers is meant, but not of two that are spelled alike', () => {
    const row = '\nT1,2025-06-01,A,C,B,fresh,fruit';
    const two = HEAD.replace('seed_parent', 'mother,female');
    expect(reading(two + row).files[0]?.unclear).toEqual([
      { column: 'seed_parent', headers: ['mother', 'female'] },
    ]);
    const alike = HEAD.replace('seed_parent', 'mother,mother');
    expect(reading(alike + row).files[0]?.unclear).toEqual([]);
  });

  it('names the plants that several growers have', () => {
    const rows = ['T1,2025-06-01,A,B,fresh,fruit,Ina', 'T2,2025-06-01,A,C,fresh,fruit,Ole'];
    expect(reading([`${HEAD},grower`, ...rows].join('\n')).sameNames).toEqual(['A']);
  });

  it('puts like problems together, with a fix that needs no command line', () => {
    const { files } = reading(`${HEAD},zorn\nT1,,A,B,fresh,fruit,1\nT2,,A,B,fresh,fruit,2`);
    const groups = files[0]!.groups;
    expect(groups.map(({ problem }) => problem.code)).toEqual(['cell-blank', 'column-unknown']);
    expect(groups[0]!.also).toContain('row 3');
    expect(groups.filter(({ fix }) => fix.includes('--'))).toEqual([]);
  });
});
