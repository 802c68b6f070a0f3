import { describe, expect, it } from 'vitest';
import { problemAt } from '../../lib/season/problems.ts';
import { ROW_PROBLEMS } from '../../lib/words/english-row-problems.ts';

const PLACE = { file: 'x.csv', line: 9, row: 9 };
const details = { otherFile: 'x.csv', otherRow: 4, otherLine: 4, fields: '' };

describe('ROW_PROBLEMS', () => {
  it('name the other row of a repeated tag, and its file where it is another', () => {
    const here = problemAt(PLACE, 'error', 'tag-repeated', { value: 'T1', details });
    expect(ROW_PROBLEMS['tag-repeated'](here)[0]).toBe(
      'the tag "T1" stands in row 4 already, with the same content.',
    );
    const there = problemAt(PLACE, 'error', 'tag-repeated', {
      value: 'T1',
      details: { ...details, otherFile: 'y.csv' },
    });
    expect(ROW_PROBLEMS['tag-repeated'](there)[0]).toContain('in row 4 of y.csv already');
  });

  it('say what is used where sources disagree', () => {
    const problem = problemAt(PLACE, 'warning', 'age-disagrees', {
      column: 'vial',
      details: { days: 20, usedColumn: 'pollen_collected', otherDays: 31 },
    });
    expect(ROW_PROBLEMS['age-disagrees'](problem)[0]).toBe(
      '"vial" makes the pollen 31 days old, pollen_collected 20 days; 20 is used.',
    );
  });
});
