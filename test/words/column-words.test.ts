import { expect, it } from 'vitest';
import { COLUMNS, KINDS } from '../../lib/season/columns.ts';
import { COLUMN_WORDS, columnMeaning } from '../../lib/words/column-words.ts';

it('explains every column of ours and none besides, in its order', () => {
  for (const kind of KINDS) {
    expect([...COLUMN_WORDS[kind].keys()]).toEqual(COLUMNS[kind].map(({ name }) => name));
  }
});

it('joins what a column holds and how it is written', () => {
  expect(columnMeaning('seeds', 'crosses')).toBe('How many seeds the fruit held. A whole number.');
  expect(columnMeaning('moon', 'crosses')).toBe('');
});
