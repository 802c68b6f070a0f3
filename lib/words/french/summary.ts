/** What `analyse` says at the terminal around its numbers, in French. */

import type { Analysis } from '../../analyse.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { counted, counts, percent, wholeNumber } from './numbers.ts';

export const summaryWords = {
  rows: ({ read, used, leftOut }: Pick<Analysis['rows'], 'read' | 'used' | 'leftOut'>): string =>
    `${counted(read, 'ligne')} ${read < 2 ? 'lue' : 'lues'}, ${wholeNumber(used)} ${used < 2 ? 'utilisée' : 'utilisées'}, ${wholeNumber(leftOut)} ${leftOut < 2 ? 'écartée' : 'écartées'}`,
  fruitSet: 'Nouaison',
  allFlowers: 'toutes les fleurs',
  compared: 'À couples égaux : face au pollen frais',
  halfAges: 'Jours avant que la nouaison soit la moitié de ce qu’elle est à l’âge 0',
  vials: (useOn: string): string => `Tubes, pour utilisation le ${useOn}`,
  vial: (
    { pollenParent, fruits, flowers }: Pick<VialAdvice, 'pollenParent' | 'fruits' | 'flowers'>,
    expected: string | null,
  ): string => {
    const record = flowers === 0 ? 'pas encore utilisé' : `jusqu’ici ${counts(fruits, flowers)}`;
    return `${pollenParent}, ${record}${expected === null ? '' : ` ; attendu : ${expected}`}`;
  },
  plan: 'Fleurs de la saison prochaine',
  best: 'le mieux',
  mix: (gives: string, risks: string): string => `${gives} ; ${risks}`,
  closing: (level: number): string =>
    `Les fourchettes sont au niveau de ${percent(level)}. --json imprime tous les nombres ; report en fait une page.`,
};
