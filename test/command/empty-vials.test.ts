import { beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../lib/analyse.ts';
import { vialsFigure } from '../../lib/charts/vials.ts';
import { LANGUAGES, type Words, wordsIn } from '../../lib/words/languages.ts';
import { crossesCsv, run } from './memory-world.ts';

/*
 * A vial that holds no dose by the grower's own list, from the files to what is told of it. That it is neither to be kept,
 * used nor discarded is common practice, no source.
 */

const CROSSES = crossesCsv(
  ['A,B', 'B,A', 'A,C', 'C,A', 'B,C', 'C,B', 'A,B', 'B,A'].map(
    (pair, i) => `2025-06-${20 + (i % 4)},${pair},fresh,${i % 3 === 0 ? 'none' : 'fruit'}`,
  ),
);
const VIALS =
  'vial,pollen_parent,collected,storage,doses_left\nV1,A,2025-06-20,frozen,0\nV2,A,2025-06-20,frozen,3\nV3,B,2025-06-20,frozen,\n';
const EMPTY: readonly (readonly [string, string])[] = [
  ['en', 'empty'],
  ['de', 'leer'],
  ['fr', 'vide'],
  ['es', 'vacío'],
];

let analysis: Analysis;
beforeAll(async () => {
  await run(['report', 'crosses.csv', 'vials.csv', '-o', 'out.html'], {
    files: { 'crosses.csv': CROSSES, 'vials.csv': VIALS },
    render: async (_, found) => {
      analysis = found;
      return '<!doctype html>';
    },
  });
});

/** The counts in a sentence before its first full stop. */
function countsIn(said: string): number[] {
  return [...said.split('.')[0]!.matchAll(/\d+/g)].map(([count]) => Number(count));
}

describe('a vial without doses', () => {
  it.each(LANGUAGES.map((language) => [language]))(
    'is told as empty and counted apart in %s',
    async (language) => {
      const words: Words = await wordsIn(language);
      const empty = new Map(EMPTY).get(language)!;
      const tally = words.verdictCounts(analysis.vials);
      expect(tally).toMatch(new RegExp(`${empty}:? 1\\.$`));
      expect(countsIn(tally).reduce((a, b) => a + b)).toBe(3);
      const figure = vialsFigure(analysis, words)!;
      expect(figure.finding).toMatch(new RegExp(`${empty}:? 1\\.`, 'i'));
      expect(figure.table.rows.filter((row) => row[2] === empty).map(([vial]) => vial)).toEqual(['V1']);
      expect(words.vialsToActOn(analysis.vials).join()).not.toContain('V1');
      expect(words.vialReason(analysis.vials[0]!)).toMatch(new RegExp(`${empty}\\s?:`));
    },
  );

  it('keeps its verdict, doses and warning as JSON', async () => {
    const files = { 'crosses.csv': CROSSES, 'vials.csv': VIALS };
    const { out } = await run(['analyse', 'crosses.csv', 'vials.csv', '--json'], { files });
    const [first] = JSON.parse(out).vials;
    expect(['keep', 'use-first', 'test-first', 'discard']).toContain(first.verdict);
    expect(first).toMatchObject({ vial: 'V1', dosesLeft: 0, warnings: ['no-doses-left'] });
  });

  it('stands last in the summary, without a rate to expect', async () => {
    const files = { 'crosses.csv': CROSSES, 'vials.csv': VIALS };
    const { out } = await run(['analyse', 'crosses.csv', 'vials.csv'], { files });
    expect(out).toMatch(/\n {2}V1 +empty +A, not used yet\n\n/);
  });
});
