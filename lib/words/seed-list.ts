/** The seed list: what each ripe cross has given, and what must be known before seed is sent. */

import type { SeedList, SeedListEntry } from '../analysis/seed-list.ts';
import type { Germination } from '../analysis/seeds.ts';
import { pairName } from './choice-figures.ts';
import { capitalised, counted, counts, rateWithRange, wholeNumber } from './numbers.ts';
import type { SeedGroup } from './told/seeds.ts';
import { seedTotals } from './told/seeds.ts';

/**
 * "9 crosses have given 20 ripe fruits; 12 of 20 were counted and held 1400 seeds, of which 1150 are not sown yet."
 *
 * @example
 * const entry = { seedParent: 'Nightjar 3', pollenParent: 'Salt Moon', season: '2023', fruits: 2, countedFruits: 2, seeds: 358, unsown: 338 };
 * seedListAnswer({ entries: [entry] }); // '1 cross has given 2 ripe fruits; 2 of 2 had their seeds counted and held 358 seeds, of…'
 */
export function seedListAnswer(list: SeedList): string {
  if (list.entries.length === 0)
    return 'No ripe fruit of a cross is written down, so there is no seed to offer.';
  const { crosses, fruits, countedFruits, seeds, unsown } = seedTotals(list);
  const start = `${counted(crosses, 'cross', 'crosses')} ${crosses === 1 ? 'has' : 'have'} given ${counted(fruits, 'ripe fruit')}`;
  if (countedFruits === 0) return `${start}; the seeds of none were counted.`;
  const held = `${counts(countedFruits, fruits)} had their seeds counted and held ${counted(seeds, 'seed')}`;
  return `${start}; ${held}, of which ${wholeNumber(unsown)} ${unsown === 1 ? 'was' : 'were'} not sown.`;
}

/**
 * What a seed parent has given, over the list of its crosses.
 *
 * @example
 * const entry = { seedParent: 'Nightjar 3', pollenParent: 'Salt Moon', season: '2023', fruits: 2, countedFruits: 2, seeds: 358, unsown: 338 };
 * seedParentSaid({ seedParent: 'Nightjar 3', entries: [entry] }) // 'Nightjar 3: 1 cross, 2 ripe fruits, 358 seeds counted'
 */
export function seedParentSaid(group: SeedGroup): string {
  const { crosses, fruits, seeds, countedFruits } = seedTotals(group);
  const held = countedFruits === 0 ? 'seeds not counted' : `${counted(seeds, 'seed')} counted`;
  return `${group.seedParent}: ${counted(crosses, 'cross', 'crosses')}, ${counted(fruits, 'ripe fruit')}, ${held}`;
}

/** What stands where there is no note. */
export const NO_NOTE = 'none';

/** Headings of the seed list. */
export const SEED_LIST_COLUMNS = [
  'seed parent × pollen parent',
  'season',
  'ripe fruits',
  'seeds counted',
  'of these not sown',
  'germinated of sown',
  'note',
] as const;

/**
 * A row a cross and season: "Nightjar 3 × Salt Moon", "2023", "2", "358", "338", "15 of 20 (about 8 in 10; …)", "".
 *
 * @example
 * const germination = { lots: 1, germinated: 15, sown: 20, estimate: 0.75, lower: 0.5, upper: 0.9 };
 * const entry = { seedParent: 'Nightjar 3', pollenParent: 'Salt Moon', season: '2023', fruits: 2, countedFruits: 2, seeds: 358, unsown: 338 };
 * seedListRows({ entries: [{ ...entry, bagNotSaid: 0, germination }] })[0]; // ['Nightjar 3 × Salt Moon', '2023', '2', '358', '338', '15 of 20 (about 8 in 10; could be 5 to 9 in 10)', 'none']
 */
export function seedListRows({ entries }: Pick<SeedList, 'entries'>): readonly (readonly string[])[] {
  return entries.map((entry) => [
    pairName(entry),
    entry.season,
    wholeNumber(entry.fruits),
    entry.countedFruits === 0 ? 'not counted' : wholeNumber(entry.seeds),
    entry.countedFruits === 0 ? 'not known' : wholeNumber(entry.unsown),
    germinatedSaid(entry.germination),
    noteOf(entry),
  ]);
}

/** "15 of 20 (about 8 in 10; could be 5 to 9 in 10)"; counts alone where none or all germinated. */
function germinatedSaid({ germinated, sown, ...range }: Germination): string {
  if (sown === 0) return 'not counted';
  if (germinated === 0 || germinated === sown) return counts(germinated, sown);
  return rateWithRange({ fruits: germinated, flowers: sown, ...range });
}

function noteOf({ fruits, countedFruits, bagNotSaid, seedParent, pollenParent }: SeedListEntry): string {
  const open = fruits - countedFruits;
  const of = (some: number) => (fruits === 1 ? 'its fruit' : `${counts(some, fruits)} fruits`);
  const notes = [
    ...(seedParent === pollenParent ? ['selfed'] : []),
    ...(countedFruits > 0 && open > 0 ? [`seeds of ${of(open)} not counted`] : []),
    ...(bagNotSaid > 0 ? [`bag not written down for ${of(bagNotSaid)}`] : []),
  ];
  return notes.length === 0 ? NO_NOTE : notes.join('; ');
}

/**
 * What stands in no row, and why.
 *
 * @example seedListLeftOut({ unbagged: 0, unharvested: 3, harvestsRecorded: true })[0] // '3 fruits have no harvest date and are not counted as ripe.'
 */
export function seedListLeftOut({ unbagged, unharvested, harvestsRecorded }: SeedList): readonly string[] {
  const of = (fruits: number) => counted(fruits, 'fruit');
  return [
    ...(unbagged > 0
      ? [
          `${capitalised(of(unbagged))} of flowers without a bag ${unbagged === 1 ? 'is' : 'are'} not offered: an insect may have brought other pollen.`,
        ]
      : []),
    ...(unharvested > 0
      ? [
          `${of(unharvested)} ${unharvested === 1 ? 'has' : 'have'} no harvest date and ${unharvested === 1 ? 'is' : 'are'} not counted as ripe.`,
        ]
      : []),
    ...(harvestsRecorded
      ? []
      : [
          'No harvest date is written down, so every fruit that did not drop would count as ripe: look before you promise seed.',
        ]),
    'Fruits of control flowers are not offered.',
  ];
}
