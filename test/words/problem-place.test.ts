import { describe, expect, it } from 'vitest';
import { problemAt } from '../../lib/season/problems.ts';
import { columnIndex, columnLetters, problemPlace } from '../../lib/words/problem-place.ts';

const PLACE = { file: 'x.csv', line: 12, row: 11 };
const COLUMNS = [
  { header: 'Tag', column: 'cross_id' },
  { header: 'moon', column: null },
  { header: 'Kept', column: 'storage' },
];

// Spreadsheets count A to Z, AA to ZZ, AAA: the last column of the .xlsx format is XFD, the 16384th (ECMA-376).
describe('columnLetters', () => {
  it.each([
    [0, 'A'],
    [25, 'Z'],
    [26, 'AA'],
    [51, 'AZ'],
    [52, 'BA'],
    [701, 'ZZ'],
    [702, 'AAA'],
    [16383, 'XFD'],
  ])('of %i are %s', (index, letters) => {
    expect(columnLetters(index)).toBe(letters);
  });
});

describe('problemPlace', () => {
  it('names row, tag and column as the spreadsheet shows them', () => {
    const problem = problemAt(PLACE, 'warning', 'storage-slip', {
      column: 'Kept',
      record: '10',
      details: { name: 'storage' },
    });
    expect(problemPlace(problem, COLUMNS)).toBe('Row 11 (tag 10), column C "Kept"');
    expect(columnIndex(problem, COLUMNS)).toBe(2);
  });

  it('leaves out what is not known or said by the sentence already', () => {
    expect(problemPlace(problemAt(PLACE, 'error', 'row-ragged'), COLUMNS)).toBe('Row 11');
    const tag = problemAt(PLACE, 'error', 'tag-conflict', {
      column: 'Tag',
      record: '10',
      details: { name: 'cross_id' },
    });
    expect(problemPlace(tag, COLUMNS)).toBe('Row 11, column A "Tag"');
  });

  it('calls the record of a vials file a vial, and a column that the file lacks by its name', () => {
    const problem = problemAt(PLACE, 'error', 'cell-blank', {
      column: 'collected',
      record: 'F-01',
      details: { name: 'collected' },
    });
    expect(problemPlace(problem, [{ header: 'vial', column: 'vial' }])).toBe(
      'Row 11 (vial F-01), column "collected"',
    );
  });
});
