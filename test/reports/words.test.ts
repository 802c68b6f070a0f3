import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import { root, siteText } from '../browser/finished-pages.ts';
import { SAYINGS } from '../words/sayings.ts';
import { pagesOfAllKinds } from './seasons-of-all-kinds.ts';

/*
 * The text of every page that a notebook made, of the demo season as `npm run reports` renders it and of seasons of all
 * kinds: how it may speak of rates and chances. The rules are this project's own.
 */

const pages = readdirSync(join(root, 'site')).filter(
  (name) => /^[^.]+\.html$/.test(name) && !/<script\b/.test(siteText(name)),
);

/** Pages and sections that may use the words of statistics. */
const forStatisticians = /^(?:methods|limitations)\.html/;
const workings = 'How was this worked out?';

const { counts, rate, likely: likelihood, numbered, banned } = SAYINGS.en;

/** Any rate at all: a percentage, or so many in ten or a hundred. */
const anyRate = /\d+(?:\.\d+)?\u202F? ?%|\b(?:about |over |under )?\d+ (?:fewer |more )?in (?:every )?100?\b/;
const chance = [
  /\b(?:very likely|likely|very unlikely|unlikely|as likely as not|almost certainly)\b[^.;|(]{0,40}\((?:about |over |under )?\d+ in 100?\)/gi,
  /\bchance of (?:about |over |under )?\d+ in 100?/g,
];
/** What is said in tens without being a rate of counted flowers: these words themselves, not the rest of their sentence. */
const notCounted: readonly (readonly [string, RegExp])[] = [
  ['the level of the ranges', /at a level of \d+%|^level \| \d+%$/],
  ['the line that is drawn', /worth a flower(?: if|:|,) about \d+ in 10\b|^worth \| about \d+ in 10\b/g],
  ['the difference that is asked for', /if the true difference is \d+ in every 10/gi],
  ['an estimated curve', /\bis estimated to take about .*$|\bestimated \| .*$/],
];
/** What follows from counts that stand in the same paragraph. */
const following = /^Whatever became of those flowers\b/;
interface Said {
  readonly page: string;
  readonly text: string;
  readonly working: boolean;
}

const wordsOf = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim();

/** Sentences, captions, names of drawings and rows of tables, a row being read as one, with the heads of a table. */
function saidOn(page: string, markup: string): Said[] {
  const { document } = parseHTML(markup);
  const parts = 'header p, main p, main li, main figcaption, main caption, main tr, svg title, svg desc';
  return [...document.querySelectorAll(parts)]
    .filter((part) => part.closest('.working') === null && part.querySelector('p, li') === null)
    .map((part) => ({
      page,
      text:
        part.localName === 'tr'
          ? [...part.querySelectorAll('th, td')].map((cell) => wordsOf(cell.textContent)).join(' | ')
          : wordsOf(part.textContent),
      working: wordsOf(part.closest('section')?.querySelector('h2')?.textContent ?? '') === workings,
    }));
}

let said: readonly Said[] = [];
let plain: readonly Said[] = [];
beforeAll(async () => {
  const others = (await pagesOfAllKinds()).filter(({ name }) => name.includes('.html'));
  said = [
    ...pages.flatMap((page) => saidOn(page, siteText(page))),
    ...others.flatMap(({ name, text }) => saidOn(name, text)),
  ];
  plain = said.filter(({ page, working }) => !working && !forStatisticians.test(page));
}, 240_000);

/** The sentences of a text; a row of a table is one. */
const sentencesOf = (text: string): string[] =>
  text.includes(' | ') ? [text] : text.split(/(?<=[.!?]) (?=[\p{Lu}“])/u);
const told = ({ page, text }: Said): string => `${page}: ${text}`;

describe('the words of the pages', () => {
  it('are read from every page, rates and likelihoods among them', () => {
    const read = new Set(said.map(({ page }) => page));
    for (const page of pages) expect(read).toContain(page);
    expect(read.size).toBeGreaterThanOrEqual(4 * (pages.length - 1));
    expect(plain.filter(({ text }) => rate.test(text)).length).toBeGreaterThan(50);
    expect(plain.filter(({ text }) => text.match(likelihood) !== null).length).toBeGreaterThan(50);
    expect(said.some((one) => !plain.includes(one) && banned.test(one.text))).toBe(true);
  });

  it('give each rate with its counts, in the same sentence or row', () => {
    const bare = plain.filter(({ text }) => rate.test(text) && !counts.test(text));
    // Rows of a fitted curve have no flowers of their own: they say that they are estimates.
    expect(bare.filter(({ text }) => !text.includes('estimated')).map(told)).toEqual([]);
  });

  it('give no percentage and nothing in ten without its counts, in the same sentence, row or paragraph', () => {
    const used = new Set<string>();
    const bare = plain.flatMap(({ page, text }) =>
      sentencesOf(text)
        .filter((sentence) => !counts.test(sentence) && !(following.test(sentence) && counts.test(text)))
        .filter((sentence) => {
          const left = notCounted.reduce(
            (rest, [kind, words]) => {
              const without = rest.replace(words, '');
              if (without !== rest) used.add(kind);
              return without;
            },
            chance.reduce((rest, words) => rest.replace(words, ''), sentence),
          );
          return anyRate.test(left);
        })
        .map((sentence) => `${page}: ${sentence}`),
    );
    expect(bare).toEqual([]);
    expect([...used].sort()).toEqual(notCounted.map(([kind]) => kind).sort());
  });

  it('give no rate of all or nothing alone', () => {
    expect(plain.filter(({ text }) => /\b(?:0|100) ?%/.test(text) && !counts.test(text)).map(told)).toEqual(
      [],
    );
  });

  it('give each likelihood word its number, right behind it', () => {
    const wordless = plain.filter(({ text }) =>
      [...text.matchAll(likelihood)].some(
        ({ index, 0: word }) => !numbered.test(text.slice(index + word.length)),
      ),
    );
    expect(wordless.map(told)).toEqual([]);
    // "Probably" heads a list, each entry of which brings its own number.
    const heads = plain.filter(({ text }) => /\bprobably\b/i.test(text));
    expect(heads.filter(({ text }) => !/\(about \d+ in 100?\)/.test(text)).map(told)).toEqual([]);
  });

  it('leave the words of tests to the working, the methods and the limitations', () => {
    expect(plain.filter(({ text }) => banned.test(text)).map(told)).toEqual([]);
  });
});
