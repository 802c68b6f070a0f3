import { expect, it } from 'vitest';
import { exampleIn } from '../../lib/command/template-example.ts';
import { COLUMNS, KINDS } from '../../lib/season/columns.ts';

const EXAMPLE = exampleIn({ late: 'late', lost: 'lost', silica: 'silica' });

it('names columns of ours only, and shows each of them filled', () => {
  for (const kind of KINDS) {
    const names = COLUMNS[kind].map(({ name }) => name);
    const filled = new Set(EXAMPLE[kind].flatMap((row) => Object.keys(row)));
    expect([...filled].sort()).toEqual([...names].sort());
  }
});
