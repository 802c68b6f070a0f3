import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,grower,season';

function tags(...rows: string[]) {
  const bytes = new TextEncoder().encode([HEADER, ...rows].join('\n'));
  const { crosses, files } = readSeason([{ name: 'x.csv', bytes }]);
  return {
    lines: crosses.map(({ line }) => line),
    found: files[0].problems.map(({ code, line }) => [code, line]),
  };
}

describe('leaveOutRepeats', () => {
  it('uses the first of rows that say the same', () => {
    const row = 'T1,2025-06-01,A,B,fresh,fruit,,';
    // 2025-6-1 is the same day and the calendar year its season: the rows say the same.
    expect(tags(row, row, 'T1,2025-6-1,A,B,Fresh,fruit,,2025')).toEqual({
      lines: [2],
      found: [
        ['tag-repeated', 3],
        ['tag-repeated', 4],
      ],
    });
  });

  it('uses none of rows that contradict each other', () => {
    const first = 'T1,2025-06-01,A,B,fresh,fruit,,';
    expect(tags(first, 'T1,2025-06-01,A,B,fresh,none,,', first, 'T2,2025-06-01,A,B,fresh,none,,')).toEqual({
      lines: [5],
      found: [
        ['tag-conflict', 2],
        ['tag-conflict', 3],
        ['tag-conflict', 4],
      ],
    });
  });

  it('allows a tag once in each season and for each grower', () => {
    const rows = [
      '2025-06-01,A,B,fresh,fruit,,',
      '2026-06-01,A,B,fresh,fruit,,',
      '2026-06-01,A,B,fresh,none,Ada,',
    ];
    expect(tags(...rows.map((row) => `T1,${row}`))).toEqual({ lines: [2, 3, 4], found: [] });
  });

  it('does not hold a row against its repeat that is left out for another reason', () => {
    expect(tags('T1,2025-06-01,A,B,fresh,fruti,,', 'T1,2025-06-01,A,B,fresh,none,,')).toEqual({
      lines: [3],
      found: [['word-not-understood', 2]],
    });
  });
});
