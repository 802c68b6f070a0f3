import { describe, expect, it } from 'vitest';
import { problemAt } from '../../lib/season/problems.ts';
import { FILE_PROBLEMS } from '../../lib/words/english-file-problems.ts';

const TOP = { file: 'x.csv', line: 1, row: 1 };

describe('FILE_PROBLEMS', () => {
  it('name the option that answers a question', () => {
    const unclear = problemAt(TOP, 'error', 'column-unclear', {
      column: 'mother',
      details: { column: 'seed_parent', first: 'mother', second: 'female', same: 'no' },
    });
    expect(FILE_PROBLEMS['column-unclear'](unclear)).toEqual([
      'Both "mother" and "female" could be seed_parent.',
      'Say which one is meant: --map "mother=seed_parent" or --map "female=seed_parent".',
    ]);
  });

  it('state the limit of a file that is too large, and never a size that would fit', () => {
    const large = problemAt(TOP, 'error', 'file-too-large', {
      details: { bytes: 20_000_001, most: 20_000_000 },
    });
    expect(FILE_PROBLEMS['file-too-large'](large)[0]).toBe(
      'The file has 21 MB; files of up to 20 MB can be read.',
    );
  });

  it('name both rows where dates contradict each other', () => {
    const details = {
      firstOrder: 'dmy',
      firstAgainst: '04/26/2025',
      firstRow: 4,
      secondOrder: 'mdy',
      secondAgainst: '25/04/2025',
      secondRow: 3,
    };
    const [message] = FILE_PROBLEMS['date-order-mixed'](
      problemAt(TOP, 'error', 'date-order-mixed', { column: 'day', details }),
    );
    expect(message).toContain('"04/26/2025" in row 4 cannot be day-month-year');
    expect(message).toContain('"25/04/2025" in row 3 cannot be month-day-year');
  });
});
