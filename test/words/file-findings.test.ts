import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { fileFindings } from '../../lib/words/file-findings.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,pollen_age_days';

function findings(...rows: readonly string[]) {
  const text = [HEADER, ...rows.map((row, i) => `${i + 1},${row}`)].join('\n');
  return fileFindings(readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]).files[0]);
}

describe('fileFindings', () => {
  it('put together what the same act mends, errors before warnings', () => {
    const { groups } = findings(
      '2025-06-20,A,B,frozne,none,9',
      '2025-02-30,A,B,fresh,none,',
      'last week,A,B,fresh,none,',
      '2025-02-31,A,B,fresh,none,',
    );
    expect(groups.map(({ severity, fix }) => [severity, fix])).toEqual([
      ['error', 'Write it as YYYY-MM-DD, for example 2025-06-14.'],
      ['warning', 'If so, write frozen, or say so: --storage "frozne=frozen".'],
    ]);
    expect(groups[0]!.faults).toEqual([
      {
        message:
          'Row 3 (tag 2), column B "pollination_date": the pollination date "2025-02-30" does not exist.',
        more: 'And 1 more like it (row 5).',
      },
      {
        message:
          'Row 4 (tag 3), column B "pollination_date": the pollination date "last week" is not a date.',
        more: '',
      },
    ]);
  });

  it('keep another word apart: its place and what may be meant by it are its own', () => {
    const { groups } = findings(
      '2025-06-20,A,B,fresh,perhaps,',
      '2025-06-20,A,B,fresh,fruti,',
      '2025-06-20,A,B,fresh,perhaps,',
      '2025-06-20,A,B,frozne,fruit,9',
      '2025-06-20,A,B,freshh,fruit,',
    );
    const [words, ...slips] = groups;
    expect(words!.faults.map(({ more }) => more)).toEqual(['And 1 more like it (row 4).', '']);
    expect(words!.faults[1]!.message).toContain('is fruit meant?');
    expect(slips.map(({ fix }) => fix)).toContain('If so, write fresh, or say so: --storage "freshh=fresh".');
  });
});
