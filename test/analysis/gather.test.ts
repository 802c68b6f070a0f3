import { expect, it } from 'vitest';
import { gather } from '../../lib/analysis/gather.ts';

it('gathers by name, names by code points and items in their order, whatever the names are', () => {
  const items = ['b1', '__proto__', 'a1', 'b2', 'Z1'].map((id) => ({ id, name: id.replace(/\d$/, '') }));
  const gathered = gather(items, ({ name }) => name).map(([name, own]) => [name, own.map(({ id }) => id)]);
  // Code points: Z (90) < _ (95) < a (97) < b (98), Unicode.
  expect(gathered).toEqual([
    ['Z', ['Z1']],
    ['__proto__', ['__proto__']],
    ['a', ['a1']],
    ['b', ['b1', 'b2']],
  ]);
});

it('gathers nothing from nothing', () => {
  expect(gather<string>([], (name) => name)).toEqual([]);
});
