import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { NextSeason } from '../../lib/decisions/next-season.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import { schemaFaults } from '../schema-validator.ts';
import { numeralsIn } from '../words/numerals.ts';
import { crossesCsv, run } from './memory-world.ts';

/*
 * Seasons that cannot answer a question, by the grower's own door: an answer with its uncertainty, or null with a reason in
 * words; never a made-up number. What is to be expected is in the definitions of the verdicts; no outside source.
 */

interface Result {
  readonly vials: readonly {
    readonly vial: string;
    readonly verdict: string;
    readonly estimate: number | null;
    readonly lower: number | null;
    readonly upper: number | null;
    readonly because?: string;
    readonly becauseCode?: string;
    readonly reason: string;
    readonly probabilityWorth: number | null;
  }[];
  readonly nextTests: readonly unknown[];
  readonly plan:
    | (Omit<NextSeason, 'unmet'> & {
        readonly unmet: readonly (NextSeason['unmet'][number] & { readonly becauseCode: string })[];
      })
    | null;
  readonly freshVersusStored: readonly { readonly storage: string }[];
  readonly worth: { readonly value: number | null; readonly becauseCode?: string };
}

const FRESH = ['A,B', 'B,A', 'A,C', 'C,A', 'B,C', 'C,B'].map((pair, i) => {
  return `2025-06-${20 + (i % 4)},${pair},fresh,${i % 3 === 0 ? 'none' : 'fruit'}`;
});
const VIALS = 'vial,pollen_parent,collected,storage,doses_left';

async function analysed(
  crosses: readonly string[],
  files: Readonly<Record<string, string>>,
  ...options: string[]
): Promise<Result> {
  const all = { 'crosses.csv': crossesCsv(crosses), ...files };
  const { status, out } = await run(['analyse', ...Object.keys(all), ...options, '--json'], { files: all });
  expect(status, out).toBeLessThan(2);
  const result = JSON.parse(out) as Result;
  expect(schemaFaults('analyse', result)).toEqual([]);
  return result;
}

const one = (lot: string) => ({ 'vials.csv': `${VIALS}\n${lot}\n` });

describe('every file of a planted fault', () => {
  const folder = new URL('../season/fixtures/', import.meta.url);
  it('is analysed or refused, never a fault of the program', async () => {
    const failed: string[] = [];
    for (const name of readdirSync(folder)) {
      const files = { [name]: readFileSync(new URL(name, folder)) };
      const { err } = await run(['analyse', name], { files });
      if (err.includes('inside fruitodds')) failed.push(`${name}: ${err}`);
    }
    expect(failed).toEqual([]);
  });
});

describe('a season that cannot tell', () => {
  it('has nothing to compare without stored pollen, and a vial of a method never tried keeps to its wide prior range', async () => {
    const { vials, freshVersusStored } = await analysed(FRESH, one('V1,A,2025-06-20,frozen,3'));
    expect(freshVersusStored).toEqual([]);
    const [vial] = vials;
    expect(vial!.upper! - vial!.lower!).toBeGreaterThan(0.4);
    expect(vial!.reason).toMatch(/^No flower of its own so far; /);
  });

  it('sets no worth without fresh pollen: then a vial is to be tested, and no test is valued', async () => {
    const frozen = FRESH.map((row) => row.replace('fresh', 'room'));
    const { vials, worth, nextTests } = await analysed(frozen, one('V1,A,2025-06-20,room,3'));
    expect(worth).toMatchObject({ value: null, becauseCode: 'no-fresh-flower' });
    expect(vials[0]).toMatchObject({ verdict: 'test-first', probabilityWorth: null });
    expect(nextTests).toEqual([]);
  });

  it('answers with one father and with one flower, by wide ranges', async () => {
    const father = await analysed(['2025-06-20,A,B,fresh,fruit', '2025-06-21,C,B,fresh,none'], {});
    expect(father.vials).toEqual([]);
    const flower = await analysed(['2025-06-20,A,B,fresh,fruit'], one('V1,B,2025-06-20,frozen,3'));
    expect(flower.vials[0]!.upper! - flower.vials[0]!.lower!).toBeGreaterThan(0.5);
  });

  it('judges a vial of a father never seen by what other fathers do, with a wider range than theirs', async () => {
    const lots = `${VIALS}\nV1,A,2025-06-20,frozen,3\nV2,Zed,2025-06-20,frozen,3\n`;
    const { vials } = await analysed([...FRESH, ...FRESH, ...FRESH], { 'vials.csv': lots });
    const [known, unseen] = vials.map(({ lower, upper }) => upper! - lower!);
    expect(unseen).toBeGreaterThan(known! - 0.02);
  });

  it('plans and tests nothing with an empty vial, and says that it is empty', async () => {
    const files = { ...one('V1,A,2025-06-20,frozen,0'), 'flowers.csv': 'seed_parent,flowers\nB,4\nC,2\n' };
    const { vials, nextTests, plan } = await analysed(FRESH, files);
    expect(vials[0]!.reason).toContain('no dose is left');
    expect(nextTests).toEqual([]);
    expect(plan!.leftOutVials).toMatchObject([{ vial: 'V1', becauseCode: 'no-doses-left' }]);
    const used = plan!.frontier.flatMap(({ allocation }) => allocation.map(({ vial }) => vial));
    expect(used.length).toBeGreaterThan(0);
    expect(used.every((vial) => vial === null)).toBe(true);
  });

  it.each(LANGUAGES.map((language) => [language]))(
    'says in %s how many flowers there are where a wish is for more',
    async (language) => {
      const files = { ...one('V1,A,2025-06-20,frozen,1'), 'flowers.csv': 'seed_parent,flowers\nB,4\nC,2\n' };
      const wishes = ['--must', 'B x C=50', '--must', 'C x A=2', '--language', language];
      const { plan } = await analysed(FRESH, files, ...wishes);
      const [more, doses] = plan!.unmet;
      expect(more).toMatchObject({
        flowers: 50,
        planned: 4,
        expected: 4,
        becauseCode: 'fewer-flowers-expected',
      });
      expect(doses).toMatchObject({ flowers: 2, planned: 1, possible: 1, becauseCode: 'too-little-pollen' });
      const words = await wordsIn(language);
      const noted = words.planNotes({
        ...plan!,
        unmet: plan!.unmet.map((each) => ({ ...each, because: each.becauseCode })),
      });
      expect(numeralsIn(noted[0]!, language)).toEqual(['4', '50', '4']);
      expect(numeralsIn(noted[1]!, language)).toEqual(['1', '2', '1']);
      expect(noted[0]).toContain(more!.because);
    },
  );

  it('can’t tell for a day of use before the pollen was collected', async () => {
    const { vials } = await analysed(FRESH, one('V1,A,2025-06-20,frozen,3'), '--use-on', '2024-01-01');
    expect(vials[0]).toMatchObject({
      estimate: null,
      becauseCode: 'used-before-collected',
      verdict: 'test-first',
    });
    expect(vials[0]!.because).toContain('before the day the pollen was collected');
  });

  it('takes next season’s flowers of a plant never seen', async () => {
    const flowers = 'seed_parent,flowers\nNewcomer,4\n';
    const { vials } = await analysed(FRESH, { ...one('V1,A,2025-06-20,frozen,3'), 'flowers.csv': flowers });
    expect(vials[0]!.upper! - vials[0]!.lower!).toBeGreaterThan(0.4);
  });
});
