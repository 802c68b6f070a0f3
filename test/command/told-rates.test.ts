import { beforeAll, describe, expect, it } from 'vitest';
import { summaryText } from '../../lib/command/summary-text.ts';
import { LANGUAGES, type Words, wordsIn } from '../../lib/words/languages.ts';
import { demoAnalysis, seasonsOfAllKinds } from '../reports/seasons-of-all-kinds.ts';
import { SAYINGS } from '../words/sayings.ts';

/*
 * What `analyse` prints of the demo season and of seasons of all kinds, line by line: how it may speak of rates and chances. The rules
 * are this project's own, those of the pages.
 */

const analyses = [demoAnalysis(), ...seasonsOfAllKinds().map(([, each]) => each)].map(
  ({ analysis }) => analysis,
);
const levels = /0[.,]95|95/;

describe.each(LANGUAGES)('the lines of an analysis in %s', (language) => {
  const { counts, rate, likely, numbered, banned } = SAYINGS[language];
  let words: Words;
  let lines: readonly string[] = [];
  beforeAll(async () => {
    words = await wordsIn(language);
    lines = analyses.flatMap((analysis) => summaryText(analysis, words).split('\n'));
  });

  it('give each rate with its counts', () => {
    const rates = lines.filter((line) => rate.test(line));
    expect(rates.length).toBeGreaterThan(30);
    const unused = words.summaryWords.vial({ pollenParent: '', fruits: 0, flowers: 0 } as never, null);
    expect(
      rates.filter((line) => !counts.test(line) && !line.includes(unused.replace(/^[, ]+/, ''))),
    ).toEqual([]);
  });

  it('give each difference with the pairs it is of', () => {
    const differences = analyses.flatMap(({ freshVersusStored }) =>
      freshVersusStored.filter(({ adjusted }) => adjusted.estimate !== null),
    );
    expect(differences.length).toBeGreaterThan(1);
    for (const entry of differences)
      expect(
        lines.some(
          (line) =>
            line.includes(words.difference(entry.adjusted)) && line.includes(words.pairsCompared(entry)),
        ),
      ).toBe(true);
  });

  it('give a likelihood its number, no bare all or nothing, and no words of tests', () => {
    const bare = lines.filter((line) =>
      [...line.matchAll(likely)].some(
        ({ index, 0: word }) => !numbered.test(line.slice(index + word.length)),
      ),
    );
    expect(bare).toEqual([]);
    expect(lines.filter((line) => /\b(?:0|100)\s?%/.test(line))).toEqual([]);
    expect(lines.filter((line) => banned.test(line))).toEqual([]);
    expect(lines.some((line) => levels.test(line))).toBe(true);
  });
});
