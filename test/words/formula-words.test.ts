import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FORMULA_WORDS } from '../../lib/words/formula-words.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';

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

  it('have every name in those formulas that is a word, not a function or an index', () => {
    const text = readFileSync(new URL('../../reports/methods.md', import.meta.url), 'utf8');
    const cells = [...text.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, cell]) =>
      cell!.replaceAll(/^import .*$/gm, ''),
    );
    const quoted = [...cells.join('').matchAll(/(?:formula|fraction|squareRoot)\(([^;]*)/g)]
      .flatMap(([call]) => [...call.matchAll(/'([^']*)'/g)].map(([, inside]) => inside!))
      .filter((inside) => !inside.includes('.'));
    const named = new Set(quoted.join(' ').match(/\p{L}{3,}/gu));
    const functions = ['exp', 'log', 'logit', 'max', 'jks'];
    expect([...named].filter((name) => !functions.includes(name)).sort()).toEqual(
      Object.keys(FORMULA_WORDS.names).sort(),
    );
  });

  it.each(LANGUAGES.filter((language) => language !== 'en'))('are said in %s', async (language) => {
    const { FORMULA_WORDS: own } = await wordsIn(language);
    expect(own.decimalMark).toBe(',');
    expect([...own.signs.keys()].sort()).toEqual([...FORMULA_WORDS.signs.keys()].sort());
    for (const name of Object.values(own.names)) expect(name).toMatch(/^\p{L}+(?: \p{L}+)?$/u);
  });

  it('are words, not signs', () => {
    for (const word of FORMULA_WORDS.signs.values()) expect(word).toMatch(/^[a-z]+(?: [a-z]+)*$/);
  });
});
