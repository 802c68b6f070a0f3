import { expect, it } from 'vitest';
import { OPTION_RULES } from '../../lib/command/option-rules.ts';

it('has one rule a name, in small letters', () => {
  const names = OPTION_RULES.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
});
