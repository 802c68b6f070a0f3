/** The words of the page on which a season can be explored, in French. */
import { choicesIn, type ExploredBy } from '../told/choices.ts';
import { counts, joined, limit, rate, wholeNumber } from './numbers.ts';
import { ageBandLabel, RATE_AXIS } from './rate-figures.ts';
import { storageLabel } from './storage.ts';

const NAMES: Readonly<Record<ExploredBy, string>> = {
  storage: 'Conservation',
  age: 'Âge du pollen',
  season: 'Saison',
  seedParent: 'Mère',
  pollenParent: 'Père',
};

/** What the page says at its places. */
export const EXPLORE = {
  title: 'Explorer',
  description:
    'Choisir la conservation, l’âge, la saison et les parents : les comptes, les fourchettes et les graphiques suivent.',
  needsScript:
    'Les graphiques et les comptes de cette page suivent votre choix par un script à elle, et les scripts sont désactivés ici. Les autres pages n’en ont pas besoin.',
  chooseHeading: 'Choisir des fleurs',
  choose:
    'Enlever ce que vous ne voulez pas voir. Un clic sur une ligne d’un graphique montre cette ligne seule, un second clic toutes.',
  dimension: (dimension: ExploredBy): string => NAMES[dimension],
  anyParent: 'toutes les plantes',
  reset: 'Montrer de nouveau toutes les fleurs',
  chartsHeading: 'Graphiques',
  charts: `Sur chaque ligne : ${RATE_AXIS}, un point avec sa fourchette (95\u202F%), et combien ont noué. Un graphique compte les fleurs qui répondent à tous les autres choix ; les lignes enlevées sont pâles.`,
  chartLabel: (dimension: ExploredBy): string => `Nouaison selon : ${NAMES[dimension].toLowerCase()}`,
  tablesHeading: 'Les fleurs choisies en nombres',
  caution:
    'Ce sont les comptes tels quels. Le pollen stocké va souvent aux couples plus difficiles, si bien que deux lignes peuvent différer pour d’autres raisons que celle de votre choix : comparer pollen frais et pollen stocké sur les mêmes couples.',
  storageCaption: 'Selon la conservation du pollen',
  storageColumns: ['pollen', 'fruits', 'fleurs', 'taux et fourchette'],
  pairCaption: 'Par couple, ceux qui ont le plus de fleurs d’abord',
  pairColumns: ['couple (mère × père)', 'fruits', 'fleurs', 'taux et fourchette'],
} as const;

/** What is said of a choice and its counts. */
export const { choiceLabel, rowCounts, rateCell, chosenSaid, choiceSaid, countCells } = choicesIn({
  names: NAMES,
  ageUnknown: 'âge inconnu',
  noFlowers: 'aucune fleur',
  noneFits: 'Aucune fleur ne répond à ce choix.',
  everyFlower: 'Toutes les fleurs dont le résultat est connu.',
  none: 'rien',
  colon: ' : ',
  asHighAs: (end) => `cela peut encore aller jusqu’à ${end}`,
  asLowAs: (end) => `cela peut encore descendre jusqu’à ${end}`,
  took: (fruits, flowers, range) =>
    `${counts(fruits, flowers)} ${flowers === 1 ? 'fleur a noué' : 'fleurs ont noué'} (${range}).`,
  ...{ storageLabel, ageBandLabel, joined, counts, wholeNumber, limit, rate },
});
