/** The words of the page on which a season can be explored: choices, charts, counts. */

import { counts, joined, limit, rate, wholeNumber } from './numbers.ts';
import { ageBandLabel, RATE_AXIS } from './rate-figures.ts';
import { storageLabel } from './storage.ts';
import { choicesIn, type ExploredBy } from './told/choices.ts';

const NAMES: Readonly<Record<ExploredBy, string>> = {
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
  dimension: (dimension: ExploredBy): string => NAMES[dimension],
  anyParent: 'all plants',
  reset: 'Show all flowers again',
  chartsHeading: 'Charts',
  charts: `Each row: ${RATE_AXIS}, a dot with its range (95%), and how many took. A chart counts the flowers that fit all other choices; rows you left out are pale.`,
  chartLabel: (dimension: ExploredBy): string => `Fruit set by ${NAMES[dimension].toLowerCase()}`,
  tablesHeading: 'The chosen flowers in numbers',
  caution:
    'Counts as they stand. Stored pollen often goes to harder pairs, so two rows may differ for other reasons than the one you chose by: compare fresh and stored pollen on the same pairs.',
  storageCaption: 'By storage of the pollen',
  storageColumns: ['pollen', 'fruits', 'flowers', 'rate and range'],
  pairCaption: 'By pair, most flowers first',
  pairColumns: ['pair (seed × pollen)', 'fruits', 'flowers', 'rate and range'],
} as const;

/** What is said of a choice and its counts. */
export const { choiceLabel, rowCounts, rateCell, chosenSaid, choiceSaid, countCells } = choicesIn({
  names: NAMES,
  ageUnknown: 'age not known',
  noFlowers: 'no flowers',
  noneFits: 'No flower fits this choice.',
  everyFlower: 'All flowers whose outcome is known.',
  none: 'none',
  colon: ': ',
  asHighAs: (end) => `could still be as high as ${end}`,
  asLowAs: (end) => `could still be as low as ${end}`,
  took: (fruits, flowers, range) =>
    `${counts(fruits, flowers)} ${flowers === 1 ? 'flower' : 'flowers'} took (${range}).`,
  ...{ storageLabel, ageBandLabel, joined, counts, wholeNumber, limit, rate },
});
