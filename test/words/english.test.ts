import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reasonSentence } from '../../lib/words/english.ts';

/** The sources of a floor, one after the other. */
function sourcesOf(floor: string): string {
  const folder = new URL(`../../lib/${floor}/`, import.meta.url);
  const names = readdirSync(folder).filter((name) => name.endsWith('.ts'));
  return names.map((name) => readFileSync(new URL(name, folder), 'utf8')).join('\n');
}

function codesIn(text: string, pattern: RegExp): string[] {
  return [...new Set([...text.matchAll(pattern)].map(([, code]) => code!))];
}

function expectSentence(code: string): void {
  expect(reasonSentence(code), code).toMatch(/^\p{Lu}.+\.$/u);
  expect(reasonSentence(code)).not.toContain(`(${code})`);
}

describe('reasonSentence', () => {
  it('has a sentence for every reason that the analysis gives', () => {
    const given = /(?:unknown\(|because: |return |\? )'([a-z]+(?:-[a-z]+)+)'/g;
    const codes = codesIn(sourcesOf('analysis'), given);
    expect(codes.length).toBeGreaterThan(10);
    for (const code of codes) expectSentence(code);
  });

  it('has a sentence for every error that leaves a row out', () => {
    const codes = codesIn(sourcesOf('season'), /'error',\s*'([a-z]+(?:-[a-z]+)*)'/g);
    expect(codes.length).toBeGreaterThan(5);
    for (const code of codes) expectSentence(code);
  });

  it('names a code that has no sentence, whatever it is called', () => {
    expect(reasonSentence('constructor')).toBe('The data can’t tell (constructor).');
  });
});
