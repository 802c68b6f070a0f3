import { describe, expect, it } from 'vitest';
import type { Problem } from '../../lib/season/season.ts';
import { alsoInRows, problemGroups } from '../../lib/words/problem-groups.ts';

function problem(row: number, changes: Partial<Problem> = {}): Problem {
  return {
    ...{ file: 'crosses.csv', line: row, row, severity: 'error', column: 'outcome', value: '' },
    ...{ code: 'cell-blank', details: {} },
    ...changes,
  };
}

describe('problemGroups', () => {
  it('puts errors first and like faults of one column together', () => {
    const warning = problem(2, { severity: 'warning', code: 'own-pollen' });
    const other = problem(4, { column: 'storage' });
    const groups = problemGroups([warning, problem(3), other, problem(5)]);
    expect(groups.map((group) => group.map(({ row }) => row))).toEqual([[3, 5], [4], [2]]);
  });

  it('leaves each notice alone, since each tells of another word', () => {
    const notices = [2, 3].map((row) => problem(row, { severity: 'notice', code: 'word-guessed' }));
    expect(problemGroups(notices)).toHaveLength(2);
  });
});

describe('alsoInRows', () => {
  it('says nothing of a fault that stands alone, or twice in one row', () => {
    expect(alsoInRows([problem(3)])).toBe('');
    expect(alsoInRows([problem(3), problem(3)])).toBe('');
  });

  it('names eight further rows and counts the rest', () => {
    const rows = (count: number) => Array.from({ length: count }, (_, i) => problem(i + 2));
    expect(alsoInRows(rows(2))).toBe('Also in row 3.');
    expect(alsoInRows(rows(9))).toBe('Also in rows 3, 4, 5, 6, 7, 8, 9, 10.');
    expect(alsoInRows(rows(12))).toBe('Also in rows 3, 4, 5, 6, 7, 8, 9, 10 and 3 more.');
  });
});
