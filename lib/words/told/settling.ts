/** What would settle a question and is within reach, before a language says it. */

import type { Settle, Settling, StorageSettling, VialSettling } from '../../analysis/settle.ts';

/** Rows of one kind in the table, the nearest to settled first. */
export const MOST_ROWS = 3;

/** A question, and for a vial whether it has too few doses. */
export type Reach = Settling & Partial<Pick<VialSettling, 'tooFewDoses'>>;

/** Fresh against each method: what more flowers can settle, what is beyond two seasons, what is settled. */
export function methodsByReach({ freshVersusStored }: Pick<Settle, 'freshVersusStored'>): {
  readonly reachable: readonly StorageSettling[];
  readonly beyond: readonly StorageSettling[];
  readonly settled: readonly StorageSettling[];
} {
  const open = freshVersusStored.filter((each) => each.more !== 0);
  return {
    reachable: open.filter(({ outOfReach }) => outOfReach === false),
    beyond: open.filter(({ outOfReach }) => outOfReach === true),
    settled: freshVersusStored.filter(({ more }) => more === 0),
  };
}

/** Whether two seasons, and for a vial its doses, are enough. */
export function within(settling: Reach): boolean {
  return settling.outOfReach === false && settling.tooFewDoses !== true;
}

/** The nearest to settled, ties in their order. */
export function nearest<T extends Settling>(list: readonly T[]): T[] {
  return [...list].sort((a, b) => (a.more ?? 0) - (b.more ?? 0)).slice(0, MOST_ROWS);
}
