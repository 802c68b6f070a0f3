import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FORMULA_WORDS } from '../../lib/words/formula-words.ts';

describe('the words of formulas', () => {
  it('have one for every sign that stands in a formula of the page of methods', () => {
    const text = readFileSync(new URL('../../reports/methods.md', import.meta.url), 'utf8');
    const calls = [...text.matchAll(/(?:formula|fraction|squareRoot)\(([^;]*)/g)].flatMap(([call]) =>
      [...call.matchAll(/'([^']*)'/g)].map(([, inside]) => inside!),
    );
    expect(calls.length).toBeGreaterThan(50);
    const signs = new Set(
      calls
        .join(' ')
        .replaceAll('\u0302', '')
        .match(/[^\sA-Za-z\d_^{},./]/g),
    );
    expect([...signs].filter((sign) => !FORMULA_WORDS.signs.has(sign.normalize('NFD')[0]!))).toEqual([]);
  });

  it('are words, not signs', () => {
    for (const word of FORMULA_WORDS.signs.values()) expect(word).toMatch(/^[a-z]+(?: [a-z]+)*$/);
  });
});
