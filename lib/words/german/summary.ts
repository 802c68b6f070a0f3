/** Was `analyse` auf der Befehlszeile um seine Zahlen herum sagt. */

import type { Analysis } from '../../analyse.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { rowsIn } from './nouns.ts';
import { counts, percent, wholeNumber } from './numbers.ts';

export const summaryWords = {
  rows: ({ read, used, leftOut }: Pick<Analysis['rows'], 'read' | 'used' | 'leftOut'>): string =>
    `${rowsIn(read)} gelesen, ${wholeNumber(used)} verwendet, ${wholeNumber(leftOut)} ausgelassen`,
  fruitSet: 'Fruchtansatz',
  allFlowers: 'alle Blüten',
  compared: 'Bei gleichen Paaren: gegen frischen Pollen',
  halfAges: 'Tage, bis der Fruchtansatz halb so hoch ist wie im Alter 0',
  vials: (useOn: string): string => `Röhrchen, zur Verwendung am ${useOn}`,
  vial: (
    { pollenParent, fruits, flowers }: Pick<VialAdvice, 'pollenParent' | 'fruits' | 'flowers'>,
    expected: string | null,
  ): string => {
    const record = flowers === 0 ? 'noch nicht verwendet' : `bisher ${counts(fruits, flowers)}`;
    return `${pollenParent}, ${record}${expected === null ? '' : `; erwartet: ${expected}`}`;
  },
  plan: 'Blüten der nächsten Saison',
  best: 'am besten',
  mix: (gives: string, risks: string): string => `${gives}; ${risks}`,
  closing: (level: number): string =>
    `Die Spannen haben das Niveau ${percent(level)}. --json gibt jede Zahl aus; report schreibt sie als Seite.`,
};
