/** The growers of a season's files, and whose flower each was. */

import type { Cross } from '../season/season.ts';

type Grown = Pick<Cross, 'grower'>;

/** The growers that the files name, in the order of their first flower. */
export function namedGrowers(crosses: readonly Grown[]): string[] {
  return [...new Set(crosses.map(({ grower }) => grower))].filter((grower) => grower !== null);
}

/**
 * Whose flower a cross was, as a question. Where the files name one grower only, all flowers are that grower's, those of
 * rows that leave the column blank as well; where they name several, a blank stays null: a grower apart from those named.
 */
export function growerNamer(crosses: readonly Grown[]): (cross: Grown) => string | null {
  const named = namedGrowers(crosses);
  const [only = null] = named;
  return named.length > 1 ? ({ grower }) => grower : () => only;
}
