import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

const source = (name: string, ...lines: string[]) => ({
  name,
  bytes: new TextEncoder().encode(lines.join('\n')),
});

/** Flowers pollinated from vial V1 on these days, where it was filled with so many doses. */
function found(doses: string, days: readonly number[], left = '0') {
  const rows = days.map((day, i) => `T${i},2025-06-0${day},A,B,frozen,V1,none`);
  const season = readSeason([
    source('c.csv', 'cross_id,pollination_date,seed_parent,pollen_parent,storage,vial,outcome', ...rows),
    source(
      'v.csv',
      'vial,pollen_parent,collected,storage,doses_left,doses_filled',
      `V1,B,2025-05-01,frozen,${left},${doses}`,
    ),
  ]);
  return season.files[0].problems.map(({ code, row, details }) => [code, row, details.uses]);
}

describe('reportOverdrawn', () => {
  it('warns at the first flower by date past the doses', () => {
    expect(found('2', [3, 1, 2])).toEqual([['vial-beyond-doses', 2, 3]]);
    expect(found('0', [3, 1, 2])).toEqual([['vial-beyond-doses', 3, 3]]);
  });

  it('says nothing up to the last dose, nor where only what is left is known', () => {
    expect(found('3', [1, 2, 3])).toEqual([]);
    expect(found('', [1, 2, 3])).toEqual([]);
  });
});
