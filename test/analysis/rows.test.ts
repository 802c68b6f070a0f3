import { describe, expect, it } from 'vitest';
import { rowCounts } from '../../lib/analysis/rows.ts';
import type { Problem } from '../../lib/season/season.ts';
import { crossesFile, seasonOf } from '../season-of.ts';

const error = (line: number, code: string): Problem => ({
  file: 'crosses.csv',
  line,
  row: line,
  severity: 'error',
  column: null,
  value: null,
  code,
  details: {},
});

// Counting by hand.
describe('rowCounts', () => {
  it('gives each left-out row one reason, and the reasons add up', () => {
    const season = seasonOf([{}, { outcome: 'none' }, { outcome: 'unknown' }, { outcome: 'pending' }], {
      files: [
        crossesFile(6, 2, [error(6, 'date-invalid'), error(6, 'outcome-blank'), error(7, 'date-invalid')]),
      ],
    });
    expect(rowCounts(season)).toEqual({
      read: 6,
      used: 2,
      leftOut: 4,
      byOutcome: [
        { outcome: 'fruit', rows: 1 },
        { outcome: 'dropped', rows: 0 },
        { outcome: 'none', rows: 1 },
        { outcome: 'unknown', rows: 1 },
        { outcome: 'pending', rows: 1 },
      ],
      byReason: [
        { reason: 'date-invalid', rows: 2 },
        { reason: 'outcome-pending', rows: 1 },
        { reason: 'outcome-unknown', rows: 1 },
      ],
    });
  });

  it('counts a fruit that is not harvested yet as pending at the harvest', () => {
    const season = seasonOf([{ harvestedOn: '2025-08-01' }, {}], {
      endpoint: 'final',
      files: [crossesFile(2, 1)],
    });
    expect(rowCounts(season).byReason).toEqual([{ reason: 'outcome-pending', rows: 1 }]);
  });

  it('blames the fault of the whole file for rows that no line explains', () => {
    const season = seasonOf([], { files: [crossesFile(3, 0, [error(1, 'column-missing')])] });
    expect(rowCounts(season).byReason).toEqual([{ reason: 'column-missing', rows: 3 }]);
  });

  it('takes a fault of the header for no row where there are none', () => {
    const season = seasonOf([], { files: [crossesFile(0, 0, [error(1, 'no-rows')])] });
    expect(rowCounts(season).byReason).toEqual([]);
  });
});
