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

  it('keeps another word apart, since another may be meant by it', () => {
    const word = (row: number, value: string) => problem(row, { code: 'word-not-understood', value });
    const groups = problemGroups([word(2, 'fruti'), word(3, 'perhaps'), word(4, 'fruti')]);
    expect(groups.map((group) => group.map(({ row }) => row))).toEqual([[2, 4], [3]]);
  });

  it('keeps every missing column and every name that stands nowhere apart', () => {
    const missing = ['storage', 'outcome'].map((column) =>
      problem(1, { code: 'column-missing', column: null, value: null, details: { column } }),
    );
    const unmet = ['A', 'B'].map((value) => problem(1, { code: 'same-name-missing', column: null, value }));
    expect(problemGroups([...missing, ...unmet])).toHaveLength(4);
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

  it('counts the others and names the rows of eight', () => {
    const rows = (count: number) => Array.from({ length: count }, (_, i) => problem(i + 2));
    expect(alsoInRows(rows(2))).toBe('And 1 more like it (row 3).');
    expect(alsoInRows(rows(9))).toBe('And 8 more like it (rows 3, 4, 5, 6, 7, 8, 9, 10).');
    expect(alsoInRows(rows(12))).toBe('And 11 more like it (rows 3, 4, 5, 6, 7, 8, 9, 10, …).');
  });
});
