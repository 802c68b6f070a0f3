import { expect, it } from 'vitest';
import { EXAMPLE } from '../../lib/command/template-example.ts';
import { COLUMNS, KINDS } from '../../lib/season/columns.ts';

it('names columns of ours only, and shows each of them filled', () => {
  for (const kind of KINDS) {
    const names = COLUMNS[kind].map(({ name }) => name);
    const filled = new Set(EXAMPLE[kind].flatMap((row) => Object.keys(row)));
    expect([...filled].sort()).toEqual([...names].sort());
  }
});
