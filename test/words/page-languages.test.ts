/** What the pages with a script say in each language, held against what English says of the same. */

import { describe, expect, it } from 'vitest';
import { unknown } from '../../lib/proportions/interval.ts';
import { wilson } from '../../lib/proportions/one-sample.ts';
import { problemAt } from '../../lib/season/problems.ts';
import { LANGUAGES, type Words, wordsIn } from '../../lib/words/languages.ts';
import { STAGES } from '../../lib/words/told/stages.ts';
import { SAYINGS } from './sayings.ts';
import { faultsIn } from './twins.ts';

const PLACES = ['OWN_SEASON', 'OWN_SETTINGS', 'OWN_SHARING', 'EXPLORE'] as const;

/** What texts are filled with: names, but for those that take something else. */
const NAMES = ['‹a›', '‹b›'];
const FILLED = new Map<string, readonly unknown[]>([
  ['OWN_SEASON.filesLabel', [2e7]],
  ['OWN_SETTINGS.must.said', ['‹a›', 7]],
  ['OWN_SETTINGS.atMost.said', ['‹a›', 7]],
  ['EXPLORE.dimension', ['age']],
  ['EXPLORE.chartLabel', ['age']],
]);

/** Every text below a value, under its path. */
function textsIn(value: unknown, path: string): (readonly [path: string, text: string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') {
    const say = value as (...given: readonly unknown[]) => string;
    return [[path, say(...(FILLED.get(path) ?? NAMES))]];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => textsIn(each, `${path}.${key}`));
}

const placed = (words: Words) => PLACES.flatMap((place) => textsIn(words[place], place));

const took = (fruits: number, flowers: number) => ({ fruits, flowers, ...wilson(fruits, flowers) });
const nothing = { fruits: 0, flowers: 0, ...unknown('no-flowers') };

const dates = { firstOrder: 'dmy', first: '2025-04-03', secondOrder: 'mdy', second: '2025-03-04' };
const question = problemAt({ file: 'a.csv', line: 1, row: 1 }, 'error', 'date-order-unclear', {
  column: 'date',
  value: '03/04/2025',
  details: dates,
});

/** What is said of the same things, each under a name. */
function said(words: Words): (readonly [what: string, text: string])[] {
  const fault = (code: Parameters<typeof problemAt>[2], details = {}) =>
    problemAt({ file: 'a.csv', line: 1, row: 1 }, 'error', code, { details });
  const codes = ['spreadsheet-file', 'not-text', 'kind-unknown', 'column-missing', 'column-unknown'] as const;
  const dated = ['date-serial-read', 'date-order-unclear', 'date-order-mixed', 'date-order-decided'] as const;
  const fixed = [...codes, ...dated, 'vial-unknown', 'future-date', 'name-slip', 'column-guessed'] as const;
  const { question: asked, answers } = words.dateOrderQuestion(question);
  const file = (kind: 'crosses' | 'vials') => ({ kind, rows: 1234, used: 1215, leftOut: 19 });
  return [
    ...STAGES.map((stage) => [stage, words.stageSaid(stage)] as const),
    ...(['crosses', 'vials', 'flowers', 'unknown'] as const).map(
      (kind) => [kind, words.kindSaid(kind)] as const,
    ),
    ['file', words.fileSaid(file('crosses'))],
    ['vials', words.fileSaid({ kind: 'vials', rows: 2, used: 1, leftOut: 1 })],
    ...fixed.map((code) => [`${code} fix`, words.fixOnPage(fault(code), 'x')] as const),
    ['two alike', words.fixOnPage(fault('column-unclear', { same: 'yes' }), 'x')],
    ['mend', words.fixOnPage(fault('age-missing'), 'Add --vials "x".')],
    ...Object.entries(words.REFUSAL_FIXES),
    ['date question', [asked, ...answers.map(([, label]) => label)].join(' ')],
    ...[1, 12].map((groups) => [`${groups} groups`, words.groupsLeft(groups)] as const),
    ...(['wish-without-flowers', 'plant-unknown', 'option-value'] as const).map(
      (code) =>
        [
          code,
          words.refusedOnPage(code, {
            option: '--must',
            value: '‹v›',
            plant: '‹p›',
            rule: 'must',
            file: '‹f›',
          }),
        ] as const,
    ),
    ['no settings', words.refusedOnPage('settings-not-json', { file: '‹f›', cause: null })],
    ['no key', words.refusedOnPage('key-not-ours', { file: '‹f›' })],
    ['far', words.refusedOnPage('dates-too-far', { file: '‹f›' })],
    ...[took(7, 20), took(0, 5), took(5, 5), took(1, 1), nothing].map(
      (each) => [`${each.fruits} of ${each.flowers}`, words.chosenSaid(each)] as const,
    ),
    ['a row', words.countCells('‹a›', took(1234, 2000)).join(' | ')],
    ['ages', words.choiceLabel('age', '3', { from: 3, to: 7 })],
    ['unknown age', words.choiceLabel('age', 'unknown')],
    ['chosen', words.choiceSaid([{ dimension: 'season', labels: ['2023', '2024'] }])],
    ['none chosen', words.choiceSaid([{ dimension: 'age', labels: [] }])],
    ['all chosen', words.choiceSaid([])],
  ];
}

const english = await wordsIn('en');

describe.each(LANGUAGES.filter((language) => language !== 'en'))(
  'the pages with a script in %s',
  (language) => {
    // A single word may be the same: "fruits" is.
    const twins = (own: ReturnType<typeof said>, theirs: ReturnType<typeof said>): string[] => {
      expect(own.map(([what]) => what)).toEqual(theirs.map(([what]) => what));
      return own.flatMap(([what, text], at) =>
        text === theirs[at]![1] && !text.includes(' ') ? [] : faultsIn(language, text, theirs[at]![1], what),
      );
    };

    it('say at every place what English says, with its numbers', async () => {
      const words = await wordsIn(language);
      expect(placed(words).length).toBeGreaterThan(150);
      expect(twins(placed(words), placed(english))).toEqual([]);
    });

    it('say of files, problems, stages and choices what English says, with its numbers and names', async () => {
      expect(twins(said(await wordsIn(language)), said(english))).toEqual([]);
    });

    it('name no option of the command', async () => {
      const words = await wordsIn(language);
      const options = [...placed(words), ...said(words)].filter(([, text]) => /--[a-z]/.test(text));
      expect(options).toEqual([]);
    });
  },
);

describe.each(LANGUAGES)('the words of the pages with a script in %s', (language) => {
  const { counts, rate, likely, numbered, banned } = SAYINGS[language];
  const texts = async () => {
    const words = await wordsIn(language);
    return [...placed(words), ...said(words)].map(([, text]) => text);
  };

  it('give each rate with its counts', async () => {
    const rates = (await texts()).filter((text) => rate.test(text));
    expect(rates.length).toBeGreaterThan(1);
    // A row of a table has its counts in cells of their own.
    const row = /\| \d[\d.,\s]* \| \d[\d.,\s]* \|/;
    expect(rates.filter((text) => !counts.test(text) && !row.test(text))).toEqual([]);
  });

  it('give a likelihood its number, and leave the words of tests to the methods', async () => {
    const bare = (await texts()).filter((text) =>
      [...text.matchAll(likely)].some(
        ({ index, 0: word }) => !numbered.test(text.slice(index + word.length)),
      ),
    );
    expect(bare).toEqual([]);
    expect((await texts()).filter((text) => banned.test(text))).toEqual([]);
  });
});
