import { describe, expect, it } from 'vitest';
import { newcombe } from '../../lib/proportions/two-sample.ts';
import { problemAt } from '../../lib/season/problems.ts';
import {
  countsAnswer,
  dateOrderQuestion,
  fileSaid,
  fixOnPage,
  groupsLeft,
  OWN_SEASON,
  STAGES,
  stageSaid,
} from '../../lib/words/own-season.ts';

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

  it('give counts before the difference, and say that like for like is to come', () => {
    const [fresh, stored] = [
      { fruits: 8, flowers: 10, estimate: 0.8, lower: 0.5, upper: 0.9 },
      { fruits: 4, flowers: 10, estimate: 0.4, lower: 0.2, upper: 0.7 },
    ];
    const open = { estimate: null, lower: null, upper: null };
    const entry = {
      ...{ storage: 'frozen', fresh, stored, difference: newcombe(8, 10, 4, 10) },
      ...{ commonOddsRatio: open, conditionalOddsRatio: open, adjusted: open },
      ...{ pairsWithBoth: 0, informativePairs: 0, medianAgeDays: null },
    };
    expect(countsAnswer(entry)).toMatch(
      /^Frozen pollen took 4 of 10, fresh pollen 8 of 10: over all flowers about 4 fewer in every 10/,
    );
    expect(countsAnswer({ ...entry, fresh: { ...fresh, flowers: 0 } })).toMatch(/no fresh pollen to compare/);
  });

  it('promise no more than a page can hold', () => {
    expect(OWN_SEASON.promise.join(' ')).toMatch(/cannot bind your browser’s extensions/);
  });
});
