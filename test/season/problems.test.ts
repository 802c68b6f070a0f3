import { describe, expect, it } from 'vitest';
import { problemAt, questions } from '../../lib/season/problems.ts';

const PLACE = { file: 'x.csv', line: 3, row: 2 };

describe('problemAt', () => {
  it('leaves null what is not said', () => {
    expect(problemAt(PLACE, 'error', 'row-ragged')).toEqual({
      ...PLACE,
      severity: 'error',
      code: 'row-ragged',
      column: null,
      value: null,
      details: {},
    });
  });
});

describe('questions', () => {
  it('are the problems that only the grower can settle', () => {
    const problems = [
      problemAt(PLACE, 'error', 'date-order-unclear'),
      problemAt(PLACE, 'error', 'column-missing'),
      problemAt(PLACE, 'error', 'column-unclear'),
      problemAt(PLACE, 'error', 'date-order-mixed'),
    ];
    const asked = questions({ files: [{ problems }] }).map(({ code }) => code);
    expect(asked).toEqual(['date-order-unclear', 'column-unclear', 'date-order-mixed']);
  });
});
