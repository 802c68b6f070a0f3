/** Was die Seite zum Erkunden einer Saison sagt: Auswahl, Bilder, Anzahlen. */

import { choicesIn, type ExploredBy } from '../told/choices.ts';
import { counts, joined, limit, rate, wholeNumber } from './numbers.ts';
import { ageBandLabel, RATE_AXIS } from './rate-figures.ts';
import { storageLabel } from './storage.ts';

const NAMES: Readonly<Record<ExploredBy, string>> = {
  storage: 'Lagerung',
  age: 'Alter des Pollens',
  season: 'Saison',
  seedParent: 'Mutterpflanze',
  pollenParent: 'Pollenspender',
};

export const EXPLORE = {
  title: 'Erkunden',
  description: 'Lagerung, Alter, Saison und Eltern wählen: Anzahlen, Spannen und Bilder folgen.',
  needsScript:
    'Bilder und Anzahlen dieser Seite folgen der Auswahl durch ein eigenes Skript, und Skripte sind hier ausgeschaltet. Die anderen Seiten brauchen keines.',
  chooseHeading: 'Blüten auswählen',
  choose:
    'Weglassen, was nicht zu sehen sein soll. Ein Klick auf eine Zeile eines Bildes zeigt nur diese Zeile, ein zweiter wieder alle.',
  dimension: (dimension: ExploredBy): string => NAMES[dimension],
  anyParent: 'alle Pflanzen',
  reset: 'Wieder alle Blüten zeigen',
  chartsHeading: 'Bilder',
  charts: `Jede Zeile: ${RATE_AXIS}, ein Punkt mit seiner Spanne (95\u202F%), und wie viele angesetzt haben. Ein Bild zählt die Blüten, auf die alles andere Gewählte passt; weggelassene Zeilen sind blass.`,
  chartLabel: (dimension: ExploredBy): string => `Fruchtansatz nach: ${NAMES[dimension]}`,
  tablesHeading: 'Die gewählten Blüten in Zahlen',
  caution:
    'Anzahlen, wie sie sind. Gelagerter Pollen kommt oft auf schwierigere Paare; zwei Zeilen können sich also aus anderen Gründen unterscheiden als dem, nach dem gewählt wurde: frischen und gelagerten Pollen auf denselben Paaren vergleichen.',
  storageCaption: 'Nach Lagerung des Pollens',
  storageColumns: ['Pollen', 'Früchte', 'Blüten', 'Rate und Spanne'],
  pairCaption: 'Nach Paaren, die mit den meisten Blüten zuerst',
  pairColumns: ['Paar (Mutter × Pollen)', 'Früchte', 'Blüten', 'Rate und Spanne'],
} as const;

export const { choiceLabel, rowCounts, rateCell, chosenSaid, choiceSaid, countCells } = choicesIn({
  names: NAMES,
  ageUnknown: 'Alter nicht bekannt',
  noFlowers: 'keine Blüten',
  noneFits: 'Keine Blüte passt zu dieser Auswahl.',
  everyFlower: 'Alle Blüten, deren Ergebnis bekannt ist.',
  none: 'nichts',
  colon: ': ',
  asHighAs: (end) => `möglich noch bis zu ${end}`,
  asLowAs: (end) => `möglich auch nur ${end}`,
  took: (fruits, flowers, range) =>
    `${counts(fruits, flowers)} ${flowers === 1 ? 'Blüte hat' : 'Blüten haben'} angesetzt (${range}).`,
  ...{ storageLabel, ageBandLabel, joined, counts, wholeNumber, limit, rate },
});
