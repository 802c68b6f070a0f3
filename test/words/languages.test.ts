import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Problem } from '../../lib/season/season.ts';
import type { FailureCode, FailureDetails } from '../../lib/words/english-failures.ts';
import { LANGUAGES, type Words, wordsIn } from '../../lib/words/languages.ts';
import { faultsIn } from './twins.ts';

/*
 * What each language says, held against what English says of the same: no code without a sentence, no option, name or
 * number lost or changed on the way. Whether it reads well, only a native speaker can tell.
 */

const WORDS = new URL('../../lib/words/', import.meta.url);
const FIXTURES = new URL('../season/fixtures/', import.meta.url);

const source = (name: string): string => readFileSync(new URL(name, WORDS), 'utf8');
/** The keys that a source file gives sentences to, with the names of what fills each. */
function keysIn(name: string, pattern: RegExp): string[] {
  return [...new Set([...source(name).matchAll(pattern)].map(([, key]) => key!))];
}

const FAILURE_CODES = keysIn(
  'english-failures.ts',
  /^ {2}'([a-z-]+)': \([^\n]*\) => \(\{$/gm,
) as FailureCode[];
const RULES = keysIn('english-failures.ts', /^ {2}'?([a-z-]+)'?: \((?:allowed)?\) =>(?! \(\{)/gm);
const FILLED = keysIn('english-failures.ts', /(\b[a-z]+\b)(?=[^()]*\}\) =>)/g);
const NUMBERS = new Set(['rows', 'more', 'questions']);
const REASON_CODES = keysIn('english.ts', /^ {2}'?([a-z-]+)'?:(?: |$)/gm);

/** Details in which each value names its key. */
const details = (more: FailureDetails = {}): FailureDetails => ({
  ...Object.fromEntries(FILLED.map((key) => [key, NUMBERS.has(key) ? 7 : `‹${key}›`])),
  rule: 'one-of',
  form: 'list',
  ...more,
});

const problems = readdirSync(FIXTURES)
  .filter((name) => name.endsWith('.csv'))
  .flatMap((name) => readSeason([{ name, bytes: readFileSync(new URL(name, FIXTURES)) }]).files)
  .flatMap((file) => file.problems);

/** What details must be for a sentence to be made of them; any other names itself. */
const TRUE_DETAILS = new Map<string, string | number>([
  ...([
    ['bytes', 3e8],
    ['most', 1e8],
    ['cells', 5e6],
    ['more', 12],
  ] as const),
  ...([
    ['said', 'crosses'],
    ['kind', 'vials'],
    ['format', 'pdf'],
    ['own', 'findings'],
    ['rows', '5\n6'],
  ] as const),
]);

/** A problem of a code that no single text shows. */
function madeUp(code: string): Problem {
  const named = new Proxy(
    {},
    { get: (_, key) => TRUE_DETAILS.get(String(key)) ?? `‹${String(key).toLowerCase()}›` },
  );
  return { ...problems[0]!, code, row: 3, column: 'C', value: 'V', details: named } as Problem;
}

/** Without the cell and the header that it cites, which are compared letter by letter. */
const besides = ({ value, column }: Problem, text: string): string =>
  [value, column].reduce<string>((left, cited) => (cited ? left.replaceAll(cited, '') : left), text);

const english = await wordsIn('en');
const others = LANGUAGES.filter((language) => language !== 'en');

describe('the languages', () => {
  it('begin with English', () => {
    expect(LANGUAGES[0]).toBe('en');
    expect(english.languageWords).toEqual({ code: 'en', name: 'English', unread: '' });
  });

  it('are looked through for every code there is', () => {
    expect(FAILURE_CODES.length).toBeGreaterThan(40);
    expect(RULES).toEqual(expect.arrayContaining(['one-of', 'date', 'must', 'column']));
    expect(REASON_CODES.length).toBeGreaterThan(70);
    expect(new Set(problems.map(({ code }) => code)).size).toBeGreaterThan(45);
  });
});

describe.each(others)('the words in %s', (language) => {
  let words: Words;
  it('say which language they are, and that no native speaker has read them', async () => {
    words = await wordsIn(language);
    expect(words.languageWords.code).toBe(language);
    expect(words.languageWords.unread).toMatch(/\S/);
    expect(Object.keys(words)).toEqual(
      expect.arrayContaining(Object.keys(english).filter((key) => /Words$|Page$/.test(key))),
    );
  });

  it('say every failure, citing what English cites', () => {
    const said = (code: FailureCode, more?: FailureDetails) =>
      [words, english].map(({ failureWords }) => failureWords(code, details(more)));
    const faults = FAILURE_CODES.flatMap((code) => {
      const [own, theirs] = said(code);
      return (['message', 'fix'] as const).flatMap((part) =>
        // What is handed through has nothing to translate.
        theirs![part].replaceAll(/‹[a-z]+›/g, '') === '' && own![part] === theirs![part]
          ? []
          : faultsIn(language, own![part], theirs![part], `${code} ${part}`),
      );
    });
    const ofRules = RULES.flatMap((rule) => {
      const [own, theirs] = said('option-value', { rule });
      return faultsIn(language, own!.fix, theirs!.fix, rule);
    });
    expect([...faults, ...ofRules]).toEqual([]);
  });

  it('say every reason', () => {
    const unknown = words.reasonSentence('x-y').replace('x-y', '');
    const faults = REASON_CODES.flatMap((code) => {
      const own = words.reasonSentence(code);
      const missing = own.replace(code, '') === unknown ? [`${code} has no sentence`] : [];
      return [...missing, ...faultsIn(language, own, english.reasonSentence(code), code)];
    });
    expect(faults).toEqual([]);
  });

  it('say every problem, citing the row, the cell, the column and the options that English cites', () => {
    const found = new Set<string>(problems.map(({ code }) => code));
    const rest = english.problemCatalogue().filter(({ code }) => !found.has(code));
    const faults = [...problems, ...rest.map(({ code }) => madeUp(code))].flatMap((problem) => {
      const [own, theirs] = [words, english].map(({ problemWords }) => problemWords(problem));
      return (['message', 'fix'] as const).flatMap((part) => [
        ...faultsIn(
          language,
          besides(problem, own![part]),
          besides(problem, theirs![part]),
          `${problem.code} ${part}`,
        ),
        ...[problem.value, problem.column]
          .filter((cited) => cited && theirs![part].includes(`"${cited}"`) && !own![part].includes(cited))
          .map((cited) => `${problem.code} ${part} does not cite ${cited}: ${own![part]}`),
      ]);
    });
    expect(faults).toEqual([]);
  });

  it('explain every problem in the catalogue', () => {
    const own = new Map(words.problemCatalogue().map((entry) => [entry.code, entry]));
    const theirs = english.problemCatalogue();
    expect([...own.keys()].sort()).toEqual(theirs.map(({ code }) => code).sort());
    const faults = theirs.flatMap((entry) => {
      const twin = own.get(entry.code)!;
      expect([twin.concerns, twin.severity]).toEqual([entry.concerns, entry.severity]);
      return (['means', 'used', 'mend'] as const).flatMap((part) =>
        faultsIn(language, twin[part], entry[part], `${entry.code} ${part}`),
      );
    });
    expect(faults).toEqual([]);
  });
});
