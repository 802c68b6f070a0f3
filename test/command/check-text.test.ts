import { expect, it } from 'vitest';
import { checkText } from '../../lib/command/check-text.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { CLEAN, crossesCsv } from './memory-world.ts';

const read = (text: string) => readSeason([{ name: 'a.csv', bytes: new TextEncoder().encode(text) }]);

it('shows errors, then warnings, then what was noticed, each with what mends it', () => {
  const text = checkText(
    read(
      crossesCsv(
        [
          '2025-06-20,A,A,fresh,yes,x',
          '2025-02-30,A,B,fresh,fruit,x',
          '2025-06-20,A,B,fresh,fruit,x',
          '2025-02-31,A,B,fresh,fruit,x',
        ],
        'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,moon',
      ),
    ),
  );
  expect(text).toBe(`a.csv: crosses, 4 rows, 2 used, 2 left out

  Errors: what they name is left out
    Row 3 (tag 2), column B "pollination_date": the pollination date "2025-02-30" does not exist.
      And 1 more like it (row 5).
    To mend: Write it as YYYY-MM-DD, for example 2025-06-14.

  Warnings: the rows are used
    Row 2 (tag 1), column D "pollen_parent": "A" was pollinated with its own pollen; the row counts as a cross.
    To mend: Write selfed in the column control if it was a control.

  Noticed: nothing to mend if it is right
    Columns not used: "moon". If one holds something that is needed, say what: --map "THEIR HEADER=column".
    Words read as ours, wherever they stand: in "outcome", "yes" as fruit.
`);
});

it('accounts for every row that is left out: lost tags, flowers too young and errors add up', () => {
  const rows = ['fruit', 'unknown', 'pending', 'unknown', 'none'].map(
    (outcome) => `2025-06-20,A,B,fresh,${outcome}`,
  );
  const text = checkText(read(crossesCsv([...rows, '2025-02-30,A,B,fresh,fruit'])));
  expect(text).toContain('a.csv: crosses, 6 rows, 2 used, 4 left out\n');
  expect(text).toContain(`
  Left out, by reason
    2 rows: The tag was lost or the flower was not seen again. (rows 3, 5)
    1 row: A date does not exist.
    1 row: It is too early to say what became of the flower. (row 4)
`);
});

it('says where nothing is to mend', () => {
  expect(checkText(read(CLEAN))).toBe('a.csv: crosses, 3 rows, 3 used, 0 left out\n  Nothing to mend.\n');
});
