/** What `analyse` says at the terminal around its numbers. */

import type { Analysis } from '../analyse.ts';
import type { VialAdvice } from '../decisions/vials.ts';
import { counted, counts, percent, wholeNumber } from './numbers.ts';

/** Headings, labels and what stands around rates. */
export const summaryWords = {
  rows: ({ read, used, leftOut }: Pick<Analysis['rows'], 'read' | 'used' | 'leftOut'>): string =>
    `${counted(read, 'row')} read, ${wholeNumber(used)} used, ${wholeNumber(leftOut)} left out`,
  fruitSet: 'Fruit set',
  allFlowers: 'all flowers',
  compared: 'Like for like, in the same pairs: against fresh pollen',
  halfAges: 'Days until fruit set is half of what it is at age 0',
  vials: (useOn: string): string => `Vials, for use on ${useOn}`,
  /** Its father, its own record, and what is expected of it; null of an empty one. */
  vial: (
    { pollenParent, fruits, flowers }: Pick<VialAdvice, 'pollenParent' | 'fruits' | 'flowers'>,
    expected: string | null,
  ): string => {
    const record = flowers === 0 ? 'not used yet' : `so far ${counts(fruits, flowers)}`;
    return `${pollenParent}, ${record}${expected === null ? '' : `; expected ${expected}`}`;
  },
  plan: 'Next season’s flowers',
  best: 'best',
  mix: (gives: string, risks: string): string => `${gives}; ${risks}`,
  closing: (level: number): string =>
    `Ranges are at the level ${percent(level)}. --json prints every number; report writes them as a page.`,
};
