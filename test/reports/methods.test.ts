import { readFileSync } from 'node:fs';
import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { growerModel } from '../../lib/analysis/grower-model.ts';
import { NEUTRAL_PRIORS, referenceDays } from '../../lib/analysis/priors.ts';
import { verdictOf } from '../../lib/decisions/vials.ts';
import * as door from '../../lib/index.ts';
import { referenceSeason } from '../reference-season.ts';
import { pageOf } from './page-of.ts';

/* What the page says against what the code does. That the formulas are those of their sources was read by eye. */

const crosses = readFileSync(new URL('../../data-demo/crosses.csv', import.meta.url));

interface Method {
  readonly heading: string;
  readonly text: string;
}

describe('the page of methods', { timeout: 60_000 }, () => {
  let document: Document;
  let methods: Method[];
  let words: string;
  const clean = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim();
  beforeAll(async () => {
    document = parseHTML(await pageOf('methods', crosses)).document;
    words = clean(document.querySelector('main')!.textContent);
    methods = [...document.querySelectorAll('main h3')].map((heading) => {
      let text = '';
      for (let next = heading.nextElementSibling; next !== null; next = next.nextElementSibling) {
        if (next.localName === 'h3' || next.classList.contains('working')) break;
        text += ` ${clean(next.textContent)}`;
      }
      return { heading: clean(heading.textContent), text };
    });
  });

  it('says of each method what it assumes', () => {
    expect(methods.length).toBeGreaterThan(25);
    expect(methods.filter(({ text }) => !text.includes('Assumes ')).map(({ heading }) => heading)).toEqual(
      [],
    );
  });

  it('gives author, year, title and journal or book of each source', () => {
    const sources = [...document.querySelectorAll('main p')]
      .map((part) => clean(part.innerHTML))
      .filter((text) => /^Sources?: [A-Z]/.test(text) && !text.includes('as above'));
    expect(sources.length).toBeGreaterThan(20);
    for (const source of sources) {
      const each = source
        .replace(/^Sources?: /, '')
        .split(/(?<=[\dCSl.]\.) (?=[A-ZÉ][\p{L}’]+ [A-Z]{1,3}[ ,])/u);
      for (const one of each) expect(one).toMatch(/^\p{Lu}[^(]+ \((?:19|20)\d\d\)\. .*<em>.+<\/em>/u);
    }
  });

  it('names functions that the library has', () => {
    const named = [...document.querySelectorAll('main h3 code')].map((code) => clean(code.textContent));
    expect(named.length).toBeGreaterThan(10);
    for (const name of named) expect(door).toHaveProperty(name);
  });

  it('names every formula by how it is read', () => {
    const formulas = [...document.querySelectorAll('math')];
    expect(formulas.length).toBeGreaterThan(35);
    for (const math of formulas) expect(math.getAttribute('aria-label')).toMatch(/^[\w .,∞|/φαηκλ]+$/);
  });

  it('states the limits of the verdicts as they are drawn', () => {
    expect(words).toContain('0.5 and more 0.5 and more keep');
    expect(verdictOf(0.5, 0.5)).toBe('keep');
    expect(verdictOf(0.5, 0.499)).toBe('use-first');
    expect(words).toContain('0.1 to 0.5 any test first');
    expect([verdictOf(0.499, 0.5), verdictOf(0.1, 0)]).toEqual(['test-first', 'test-first']);
    expect(verdictOf(0.099, 0)).toBe('discard');
  });

  it('states the neutral priors, the reference ages and the number of draws as they are', () => {
    const { storage, age, share } = NEUTRAL_PRIORS;
    expect([storage.mean, age.mean, share.mean, age.below]).toEqual([0, 0, 0, undefined]);
    expect(words).toContain(
      `storage 0 ± ${storage.sd}, age 0 ± ${age.sd} without a bound, the pair’s share 0 ± ${share.sd}`,
    );
    const days = ['room', 'refrigerated', 'frozen', 'under oil'].map(referenceDays);
    expect(words).toContain(
      `${days[0]} days for a room, ${days[1]} for a refrigerator, ${days[2]} for a freezer, ${days[3]} for a method of your own`,
    );
    const { record } = growerModel(usedFlowers(referenceSeason('k-season40.csv')), {
      ageScale: null,
      methods: [],
    });
    expect(words).toContain(`${record.draws.toLocaleString('en')} draws are taken`);
    expect(words).toContain(
      `From a probability of ${door.NAMED_INCOMPATIBLE} on a pair is named incompatible`,
    );
  });
});
