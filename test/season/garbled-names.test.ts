import { describe, expect, it } from 'vitest';
import { isGarbled } from '../../lib/season/garbled-names.ts';
import { readSeason } from '../../lib/season/read-season.ts';

describe('isGarbled', () => {
  // Each made outside the project: the UTF-8 of the name, read as Windows-1252.
  const garbled = ['Königin', 'Señora', 'Zoë', 'Straße', 'Owl’s Hour', 'Übermut', 'Élan'].map((name) =>
    new TextDecoder('windows-1252').decode(new TextEncoder().encode(name)),
  );

  it.each([...garbled, 'K\ufffdnigin'])('%s is', (name) => expect(isGarbled(name)).toBe(true));

  it.each(['Königin', 'Señora', 'MÃE', 'Âme', 'Åsa', '“Owl”', 'Łódź', 'Ω'])('%s is not', (name) =>
    expect(isGarbled(name)).toBe(false),
  );
});

describe('reportGarbled', () => {
  it('tells each garbled name once, and keeps it', () => {
    const rows = ['KÃ¶nigin', 'KÃ¶nigin', 'Selma'].map(
      (name, i) => `T${i},2025-06-01,${name},Ivo,fresh,fruit`,
    );
    const text = ['cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome', ...rows].join('\n');
    const { crosses, files } = readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]);
    expect(crosses[0].seedParent).toBe('KÃ¶nigin');
    expect(files[0].problems.map(({ code, row, value }) => [code, row, value])).toEqual([
      ['name-garbled', 2, 'KÃ¶nigin'],
    ]);
  });
});
