import { describe, expect, it } from 'vitest';
import { problemAt } from '../../lib/season/problems.ts';
import {
  dateOrderQuestion,
  fileSaid,
  fixOnPage,
  groupsLeft,
  OWN_SEASON,
  stageSaid,
} from '../../lib/words/own-season.ts';
import { STAGES } from '../../lib/words/told/stages.ts';

const TOP = { file: 'a.csv', line: 1, row: 1 };

describe('the words of the page', () => {
  it('count the steps', () => {
    expect(stageSaid('reading')).toBe(`Step 1 of ${STAGES.length}: reading the files.`);
    expect(groupsLeft(1)).toBe('1 further kind of problem is not listed.');
  });

  it('say what a file is and what of it counts', () => {
    expect(fileSaid({ kind: 'crosses', rows: 5, used: 3, leftOut: 2 })).toBe(
      'Crosses: one row a flower. 5 rows, 3 used, 2 left out.',
    );
  });

  it('name no option of the command where a problem is mended', () => {
    const fix = (code: Parameters<typeof problemAt>[2], given: string) =>
      fixOnPage(problemAt(TOP, 'error', code, { details: { same: 'no' } }), given);
    expect(fix('age-missing', 'Add --vials and its name.')).not.toContain('--');
    expect(fix('column-unclear', 'Say --map x.')).toBe('Answer the question below.');
    expect(fix('cell-blank', 'Fill it in.')).toBe('Fill it in.');
  });

  it('put both readings of a date to the grower', () => {
    const details = { firstOrder: 'dmy', first: '2025-04-03', secondOrder: 'mdy', second: '2025-03-04' };
    const problem = problemAt(TOP, 'error', 'date-order-unclear', {
      column: 'date',
      value: '03/04/2025',
      details,
    });
    expect(dateOrderQuestion(problem)).toEqual({
      question: 'How are the dates in "date" written? One of them is "03/04/2025".',
      answers: [
        ['dmy', 'day-month-year: 2025-04-03'],
        ['mdy', 'month-day-year: 2025-03-04'],
      ],
    });
  });

  it('promise no more than a page can hold', () => {
    expect(OWN_SEASON.promise.join(' ')).toMatch(/cannot bind your browser’s extensions/);
    expect(OWN_SEASON.promise.join(' ')).toMatch(/the usual ways .* does not close every way/);
  });
});
