import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { findingsSaid } from '../../lib/words/findings.ts';

const read = (text: string) =>
  readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(text) }]).files;

describe('findingsSaid', () => {
  it('says errors first with how many are like it, and keeps apart what was only noticed', () => {
    const files = read(
      [
        'Tag,pollination_date,seed_parent,pollen_parent,storage,outcome,pollen_age_days',
        '1,2025-06-20,A,B,frozne,none,9',
        '2,2025-02-30,A,B,fresh,none,',
        '3,2025-02-31,A,B,fresh,none,',
      ].join('\n'),
    );
    const { toMend, noticed } = findingsSaid(files);
    expect(toMend).toEqual([
      'crosses.csv: Row 3 (tag 2), column B "pollination_date": the pollination date "2025-02-30" does not exist. ' +
        'And 1 more like it (row 4). Write it as YYYY-MM-DD, for example 2025-06-14.',
      'crosses.csv: Row 2 (tag 1), column E "storage": the storage "frozne" is kept as a method of its own; is frozen ' +
        'meant? If so, write frozen, or say so: --storage "frozne=frozen".',
    ]);
    expect(noticed).toHaveLength(1);
    expect(noticed[0]).toMatch(/^crosses\.csv: Columns read as ours: "Tag" as cross_id\./);
  });

  it('says nothing of a file with nothing to mend', () => {
    const text =
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome\n1,2025-06-20,A,B,fresh,fruit\n';
    expect(findingsSaid(read(text))).toEqual({ toMend: [], noticed: [] });
  });
});
