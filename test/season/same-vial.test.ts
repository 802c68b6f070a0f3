import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { onceAVial } from '../../lib/season/same-vial.ts';

const CROSSES = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,vial,outcome';
const VIALS = 'vial,pollen_parent,collected,storage';
const csv = (name: string, ...lines: readonly string[]) => ({
  name,
  bytes: new TextEncoder().encode(lines.join('\n')),
});

/** V1 held pollen of B until it was filled again with pollen of C; V2 only has two wrong flowers. */
const flowers = [
  ...['05-20', '05-21', '05-22'].map((day, i) => `T${i + 1},2025-${day},A,B,frozen,V1,none`),
  'T4,2025-07-02,A,C,frozen,V1,fruit',
  'T5,2025-06-02,A,B,room,V2,none',
  'T6,2025-06-03,A,B,room,V2,none',
];
const season = readSeason([
  csv('c.csv', CROSSES, ...flowers),
  csv('v.csv', VIALS, 'V1,C,2025-07-01,frozen', 'V2,B,2025-06-01,frozen'),
]);
const found = season.files.flatMap(({ problems }) => problems);

describe('onceAVial', () => {
  it('tells what each flower of a refilled vial contradicts once, with the number and the rows of the others', () => {
    expect(
      found.map(({ code, row, details: { vial, more, rows } }) => [code, row, vial, more, rows]),
    ).toEqual([
      ['vial-father-differs', 2, 'V1', 2, '3\n4'],
      ['vial-before-collected', 2, 'V1', 2, '3\n4'],
      ['vial-storage-differs', 6, 'V2', 1, '7'],
    ]);
    expect(season.files[0]).toMatchObject({ rows: 6, used: 6, leftOut: 0 });
  });

  it('leaves everything else, in its order', () => {
    const [first] = found;
    const others = [
      { ...first!, code: 'own-pollen', details: {} },
      { ...first!, code: 'own-pollen', details: {} },
    ];
    expect(onceAVial([...others, first!])).toEqual([...others, first]);
  });
});
