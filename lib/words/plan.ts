/** The plan of next season's flowers in words: what each mix gives and risks, and what one must know beside it. */

import type { Analysis } from '../analyse.ts';
import type { Mix, MixName } from '../decisions/mix.ts';
import type { NextSeason } from '../decisions/next-season.ts';
import { pairName } from './choice-figures.ts';
import { reasonSentence } from './english.ts';
import { counted, counts, joined, likely, wholeNumber } from './numbers.ts';
import {
  crossesTried,
  idleFlowers,
  leftOutByReason,
  linesByCross,
  namedOf,
  roundSeeds,
} from './told/mixes.ts';

export { crossesTried, namedOf } from './told/mixes.ts';

const MIX_LABELS: Readonly<Record<MixName, string>> = {
  'most-fruit': 'most fruit',
  balanced: 'in between',
  'most-varieties': 'most varieties',
};

/**
 * "most fruit", "in between", "most varieties"; a mix without a name has its number.
 *
 * @example
 * mixLabel('most-fruit'); // 'most fruit'
 * mixLabel(null, '2'); // 'mix 2'
 */
export function mixLabel(name: MixName | null, number = ''): string {
  return name === null ? `mix ${number}`.trimEnd() : MIX_LABELS[name];
}

/**
 * "about 75 fruits of 18 crosses": what is expected, in whole numbers.
 *
 * @example mixGives(analysis.plan.frontier[0]) // 'about 31 fruits of 8 crosses'
 */
export function mixGives({ expectedFruits, expectedVarieties }: Mix): string {
  const fruits = Math.round(expectedFruits);
  return `about ${counted(fruits, 'fruit')} of ${counted(Math.round(expectedVarieties), 'cross', 'crosses')}`;
}

/**
 * "64 to 86 fruits in 8 of 10 seasons".
 *
 * @example mixRisks(analysis.plan.frontier[0]) // '25 to 38 fruits in 8 of 10 seasons'
 */
export function mixRisks({ fruits: { percentile10, percentile90 } }: Mix): string {
  const range =
    percentile10 === percentile90
      ? counted(percentile10, 'fruit')
      : `${wholeNumber(percentile10)} to ${counted(percentile90, 'fruit')}`;
  return `${range} in 8 of 10 seasons`;
}

/**
 * Section 7 in one sentence: what the mixes give, or why there is none.
 *
 * @example planAnswer(analysis) // 'Next season’s 52 flowers could give about 31 fruits of 8 crosses, 28 of 17 or 22 of 21:…'
 */
export function planAnswer({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null) {
    return 'For a plan, list the flowers you expect in a CSV or .xlsx file (seed_parent, flowers and, if you know them, opens_from and opens_to), and add it to your files.';
  }
  const [first] = plan.frontier;
  if (first === undefined) return reasonSentence(plan.because ?? 'no-model');
  const flowers = `Next season’s ${counted(plan.flowers, 'flower')}`;
  if (plan.frontier.length === 1) return `${flowers} could give ${mixGives(first)}: ${mixRisks(first)}.`;
  const [start, ...ways] = namedOf(plan);
  const others = ways.map(
    ({ expectedFruits, expectedVarieties }) =>
      `${wholeNumber(expectedFruits)} of ${wholeNumber(expectedVarieties)}`,
  );
  return `${flowers} could give ${joined([mixGives(start!), ...others], 'or')}: more crosses, fewer fruits.`;
}

/**
 * The same for page one, shorter; empty without a plan.
 *
 * @example
 * planShort(analysis); // 'Next season’s 52 flowers could give about 31 fruits of 8 crosses or about 22 fruits of 21 crosses.'
 * planShort({ plan: null }); // ''
 */
export function planShort({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null || plan.frontier.length === 0) return '';
  const ends = [plan.frontier[0]!, ...plan.frontier.slice(1).slice(-1)].map(mixGives);
  return `Next season’s ${counted(plan.flowers, 'flower')} could give ${joined(ends, 'or')}.`;
}

/** What every plan takes for granted, and where to find it flower by flower. */
export const PLAN_CAUTION =
  'Fresh pollen is taken to reach every flower that opens with it. The crossing sheet gives it flower by flower.';

/**
 * What one must know beside the mixes, a sentence each: wishes that fail, guesses, what is left out.
 *
 * @example planNotes(analysis.plan)[1] // 'For 45 of 52 flowers there is no pollen left to give.'
 */
export function planNotes(plan: NextSeason): readonly string[] {
  return [
    ...plan.unmet.map(
      (wanted) =>
        `${pairName(wanted)} gets ${counts(wanted.planned, wanted.flowers)} wished flowers${limitSaid(wanted)}. ${reasonSentence(wanted.because)}`,
    ),
    ...idleSaid(plan),
    ...(plan.blankDoses.length === 0
      ? []
      : [`Without a number of doses, so planned with one: ${joined(plan.blankDoses)}.`]),
    ...leftOutSaid(plan),
    ...newPlantsSaid(plan),
    ...(plan.usedInPast ? ['The day of use lies before the last day of your files.'] : []),
  ];
}

/** What limits a wish, in numbers; empty where it is another wish. */
function limitSaid({ because, expected, possible, seedParent }: NextSeason['unmet'][number]): string {
  if (because === 'fewer-flowers-expected')
    return `; ${wholeNumber(expected)} ${expected === 1 ? 'is' : 'are'} expected on ${seedParent}`;
  return because === 'too-little-pollen' ? `; there is pollen for ${wholeNumber(possible)}` : '';
}

function idleSaid(plan: NextSeason): string[] {
  const idle = idleFlowers(plan);
  return idle === 0 ? [] : [`For ${counts(idle, plan.flowers)} flowers there is no pollen left to give.`];
}

function leftOutSaid(plan: NextSeason): string[] {
  return leftOutByReason(plan).map(
    ([code, vials]) => `Not planned with: ${joined(vials)}. ${reasonSentence(code)}`,
  );
}

function newPlantsSaid({ newSeedParents, newPollenParents }: NextSeason): string[] {
  const said = (plants: readonly string[], as: string) =>
    plants.length === 0 ? [] : [`Never tried as ${as}, so judged as any unknown plant: ${joined(plants)}.`];
  return [...said(newSeedParents, 'seed parent'), ...said(newPollenParents, 'pollen parent')];
}

/** Words of the frontier's figure. */
export const planWords = {
  label: 'Next season’s flowers: fruits against crosses',
  caption: 'Fruits, their range in 8 of 10 seasons, and crosses with a fruit',
  description:
    'Each dot is a way to split the flowers: to the right more crosses with a fruit, upwards more fruits. The large dots are named, with a line ' +
    'from the fruits of a poor season to those of a good one, of ten the second and the ninth.',
  across: 'crosses with at least one fruit',
  up: 'fruits',
  finding: (plan: NextSeason): string => {
    const [first, ...others] = namedOf(plan);
    if (others.length === 0) return `One split is best in both: ${mixGives(first!)}.`;
    const last = others.at(-1)!;
    return (
      `From most fruit to most varieties you give up ${wholeNumber(first!.expectedFruits - last.expectedFruits)} fruits ` +
      `and gain ${wholeNumber(last.expectedVarieties - first!.expectedVarieties)} crosses.`
    );
  },
  columns: ['mix', 'fruits', 'crosses with a fruit'],
  cells: (mix: Mix, at: number): readonly string[] => [
    mixLabel(mix.name, String(at + 1)),
    `${wholeNumber(mix.expectedFruits)} (${wholeNumber(mix.fruits.percentile10)} to ${wholeNumber(mix.fruits.percentile90)})`,
    counts(Math.round(mix.expectedVarieties), crossesTried(mix)),
  ],
};

/**
 * "about 13 000 seeds"; what it takes where none were counted.
 *
 * @example
 * mixSeeds({ ...analysis.plan.frontier[0], expectedSeeds: 12960 }); // 'about 13 000 seeds'
 * mixSeeds(analysis.plan.frontier[0]); // 'no seed counts'
 */
export function mixSeeds({ expectedSeeds }: Mix): string {
  return expectedSeeds === null ? 'no seed counts' : `about ${counted(roundSeeds(expectedSeeds), 'seed')}`;
}

/** Headings of the table of a mix, a row a cross. */
export const CROSS_COLUMNS = ['cross', 'flowers and pollen', 'at least one fruit'] as const;

/**
 * Rows of that table, in the order of the flowers file.
 *
 * @example crossRows(analysis.plan.frontier[0])[0] // ['Nachtlaterne × Silberfaden', '3 fresh and 1 from V-01', 'likely (about 8 in 10)']
 */
export function crossRows({ allocation }: Pick<Mix, 'allocation'>): readonly (readonly string[])[] {
  return linesByCross(allocation).map((lines) => {
    const pollens = lines.map(
      ({ flowers, vial }) => `${wholeNumber(flowers)} ${vial === null ? 'fresh' : `from ${vial}`}`,
    );
    return [pairName(lines[0]!), joined(pollens), likely(1 - lines[0]!.noFruit)];
  });
}
