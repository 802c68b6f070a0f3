import { expect, it } from 'vitest';
import { textOfSources } from '../../lib/notebook/build/text-of-sources.ts';

it('gathers strings, pieces of templates and names of keys, not comments', () => {
  const text = `/** Lantern Creek */
interface A { readonly seedParent: string }
const said = \`of \${flowers} flowers\`; // Salt Moon
const one = { fruits: 1, said, 'half age': "two words" };`;
  expect(
    textOfSources([{ name: 'a.ts', text }])
      .split('\n')
      .sort(),
  ).toEqual([' flowers', 'fruits', 'half age', 'of ', 'said', 'seedParent', 'two words'].sort());
});
