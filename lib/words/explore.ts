/** The words of the page on which a season can be explored: choices, charts, counts. */

import type { Proportion } from '../proportions/interval.ts';
import { counts, joined, limit, rate, wholeNumber } from './numbers.ts';
import { ageBandLabel, RATE_AXIS } from './rate-figures.ts';
import { storageLabel } from './storage.ts';

type Dimension = 'storage' | 'age' | 'season' | 'seedParent' | 'pollenParent';

const NAMES: Readonly<Record<Dimension, string>> = {
  storage: 'Storage',
  age: 'Pollen age',
  season: 'Season',
  seedParent: 'Seed parent',
  pollenParent: 'Pollen parent',
};

/** What the page says at its places; markup stands with the page. */
export const EXPLORE = {
  title: 'Explore',
  description: 'Choose storage, age, season and parents: counts, ranges and charts follow.',
  needsScript:
    'The charts and counts of this page follow your choice by a script of its own, and scripts are switched off here. The other pages need none.',
  chooseHeading: 'Choose flowers',
  choose:
    'Leave out what you do not want to see. A click on a row of a chart shows that row alone, a second click all of them.',
  dimension: (dimension: Dimension): string => NAMES[dimension],
  anyParent: 'all plants',
  reset: 'Show all flowers again',
  chartsHeading: 'Charts',
  charts: `Each row: ${RATE_AXIS}, a dot with its range (95%), and how many took. A chart counts the flowers that fit all other choices; rows you left out are pale.`,
  chartLabel: (dimension: Dimension): string => `Fruit set by ${NAMES[dimension].toLowerCase()}`,
  tablesHeading: 'The chosen flowers in numbers',
  caution:
    'Counts as they stand. Stored pollen often goes to harder pairs, so two rows may differ for other reasons than the one you chose by: compare fresh and stored pollen on the same pairs.',
  storageCaption: 'By storage of the pollen',
  storageColumns: ['pollen', 'fruits', 'flowers', 'rate and range'],
  pairCaption: 'By pair, most flowers first',
  pairColumns: ['pair (seed × pollen)', 'fruits', 'flowers', 'rate and range'],
} as const;

/** A value of a dimension as it is shown; an age is the first day of its band and the band's last, null for an open one. */
export function choiceLabel(
  dimension: Dimension,
  key: string,
  band: { readonly from: number; readonly to: number | null } | null = null,
): string {
  if (dimension === 'storage') return storageLabel(key);
  if (dimension !== 'age') return key;
  return band === null ? 'age not known' : ageBandLabel(band);
}

/** The counts of a row in a chart: "41 of 120". */
export function rowCounts({ fruits, flowers }: Proportion): string {
  return flowers === 0 ? 'no flowers' : counts(fruits, flowers);
}

/** Rate and range beside a row's counts; of none and of all only how far it could still be. */
export function rateCell(proportion: Proportion): string {
  const { fruits, flowers, lower, upper } = proportion;
  if (flowers === 0) return 'no flowers';
  if (fruits === 0) return `could still be as high as ${limit(upper ?? 1)}`;
  if (fruits === flowers) return `could still be as low as ${limit(lower ?? 0)}`;
  return rate(proportion);
}

/** The sentence that follows the choice: "41 of 120 flowers took (about 3 in 10; could be 3 to 4 in 10)." */
export function chosenSaid(proportion: Proportion): string {
  const { fruits, flowers } = proportion;
  if (flowers === 0) return 'No flower fits this choice.';
  return `${counts(fruits, flowers)} ${flowers === 1 ? 'flower' : 'flowers'} took (${rateCell(proportion)}).`;
}

/** What was chosen, dimension by dimension: "Storage: frozen. Season: 2023 and 2024."; every flower where nothing was left out. */
export function choiceSaid(
  choices: readonly { readonly dimension: Dimension; readonly labels: readonly string[] }[],
): string {
  if (choices.length === 0) return 'All flowers whose outcome is known.';
  return choices
    .map(({ dimension, labels }) => `${NAMES[dimension]}: ${labels.length === 0 ? 'none' : joined(labels)}.`)
    .join(' ');
}

/** The cells of a row of counts. */
export function countCells(name: string, proportion: Proportion): readonly string[] {
  const { fruits, flowers } = proportion;
  return [name, wholeNumber(fruits), wholeNumber(flowers), rateCell(proportion)];
}
