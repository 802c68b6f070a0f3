import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { root, siteText } from '../browser/finished-pages.ts';

/*
 * The text of every page that a notebook made, as `npm run reports` renders the demo season: how it may speak of rates
 * and chances. The rules are this project's own.
 */

const pages = readdirSync(join(root, 'site')).filter(
  (name) => name.endsWith('.html') && !/<script\b/.test(siteText(name)),
);

/** Pages and sections that may use the words of statistics. */
const forStatisticians = new Set(['methods.html', 'limitations.html']);
const workings = 'How was this worked out?';

const counts = /\d+ of (?:its |the |their )?\d+|\bno flowers?\b|\bone flower (?:took|did not take)\b/i;
const rate = /\b(?:about|over|under) \d+ in 100?\b[^)]*could be|could be \d+ (?:in 100? )?to \d+ in 100?/;
const likelihood = /\b(?:very likely|likely|very unlikely|unlikely|as likely as not|almost certainly)\b/gi;
const banned = /\bp[- ]values?\b|\b(?:in)?significan\w*|\bprove[sdn]?\b|\bno effect\b/i;

interface Said {
  readonly page: string;
  readonly text: string;
  readonly working: boolean;
}

const wordsOf = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim();

/** Sentences, captions, names of drawings and rows of tables, a row being read as one, with the heads of a table. */
function saidOn(page: string): Said[] {
  const { document } = parseHTML(siteText(page));
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

const said = pages.flatMap(saidOn);
const plain = said.filter(({ page, working }) => !working && !forStatisticians.has(page));
const told = ({ page, text }: Said): string => `${page}: ${text}`;

describe('the words of the pages', () => {
  it('are read from every page, rates and likelihoods among them', () => {
    expect(new Set(said.map(({ page }) => page))).toEqual(new Set(pages));
    expect(plain.filter(({ text }) => rate.test(text)).length).toBeGreaterThan(50);
    expect(plain.filter(({ text }) => text.match(likelihood) !== null).length).toBeGreaterThan(50);
    expect(said.some((one) => !plain.includes(one) && banned.test(one.text))).toBe(true);
  });

  it('give each rate with its counts, in the same sentence or row', () => {
    const bare = plain.filter(({ text }) => rate.test(text) && !counts.test(text));
    // Rows of a fitted curve have no flowers of their own: they say that they are estimates.
    expect(bare.filter(({ text }) => !text.includes('estimated')).map(told)).toEqual([]);
  });

  it('give no rate of all or nothing alone', () => {
    expect(plain.filter(({ text }) => /\b(?:0|100) ?%/.test(text) && !counts.test(text)).map(told)).toEqual(
      [],
    );
  });

  it('give each likelihood word its number, right behind it', () => {
    const wordless = plain.filter(({ text }) =>
      [...text.matchAll(likelihood)].some(
        ({ index, 0: word }) =>
          !/^[^.;|(]{0,40}\((?:about |over |under )?\d+ in 100?\)/.test(text.slice(index + word.length)),
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
