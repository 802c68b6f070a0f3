import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reasonSentence } from '../../lib/words/english.ts';

/** Codes that the sources of a floor give as reasons: `unknown('…')` and `because: '…'`. */
function codesGiven(floor: string): string[] {
  const folder = new URL(`../../lib/${floor}`, import.meta.url);
  const sources = readdirSync(folder).filter((name) => name.endsWith('.ts'));
  return sources.flatMap((name) => {
    const text = readFileSync(new URL(`${folder.href}/${name}`), 'utf8');
    return [...text.matchAll(/(?:unknown\(|because: |return )'([a-z]+(?:-[a-z]+)+)'/g)].map(
      ([, code]) => code!,
    );
  });
}

describe('reasonSentence', () => {
  it.each(['analysis'])('has a sentence for every reason that %s gives', (floor) => {
    const codes = codesGiven(floor);
    expect(codes.length).toBeGreaterThan(5);
    for (const code of codes.filter((each) => each !== 'log1p-days')) {
      expect(reasonSentence(code)).toMatch(/^\p{Lu}.+\.$/u);
    }
  });

  it('has a sentence for every error that leaves a row out', () => {
    const folder = new URL('../../lib/season/', import.meta.url);
    const text = readdirSync(folder)
      .filter((name) => name.endsWith('.ts'))
      .map((name) => readFileSync(new URL(name, folder), 'utf8'))
      .join('\n');
    const codes = [...text.matchAll(/'error',\s*'([a-z]+(?:-[a-z]+)*)'/g)].map(([, code]) => code!);
    expect(codes.length).toBeGreaterThan(5);
    for (const code of codes) expect(reasonSentence(code)).toMatch(/^\p{Lu}.+\.$/u);
  });

  it('refuses a code of no sentence rather than show it to a grower', () => {
    expect(() => reasonSentence('sun-spots')).toThrow(RangeError);
    expect(() => reasonSentence('constructor')).toThrow(RangeError);
  });
});
