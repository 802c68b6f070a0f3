import type { Estimate, Proportion } from '../proportions/interval.ts';

/** Key `freshVersusStored` of the analysis: one entry a stored method. */
export interface FreshVersusStored {
  readonly storage: string;
  readonly fresh: Proportion;
  readonly stored: Proportion;
  /** Fresh minus stored, all flowers (Newcombe's hybrid score interval). */
  readonly difference: Estimate;
  /** Fresh ÷ stored, Mantel–Haenszel over pairs. */
  readonly commonOddsRatio: Estimate;
  /** Fresh ÷ stored, conditional logistic regression within pairs. */
  readonly conditionalOddsRatio: Estimate;
  /** Pairs with at least one fresh and one stored flower whose outcome is known. */
  readonly pairsWithBoth: number;
  /** Those among them that have both a fruit and a failure: the pairs that can tell pollen from pair. */
  readonly informativePairs: number;
  /** Fresh minus stored like for like (within–between model), stored at its median age. */
  readonly adjusted: Estimate;
  /** Median age in days of this method's pollen, at which `adjusted` holds; null without ages. */
  readonly medianAgeDays: number | null;
}
