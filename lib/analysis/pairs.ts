import type { Proportion } from '../proportions/interval.ts';

/** One entry of key `pairs`: every ordered pair seen, pooled towards its parents. */
export interface PooledPair extends Proportion {
  readonly seedParent: string;
  readonly pollenParent: string;
  /** Raw rate of this pair, all storage methods together (no range: that is in `raw.byPair`). */
  readonly rawRate: number | null;
  /** What the estimate is for: `fresh`, or the commonest stored method with its median age. */
  readonly basis: { readonly storage: string; readonly ageDays: number };
  /** Probability that the two are incompatible: no fruit whatever the pollen. */
  readonly incompatible: number | null;
}
