/** The last step to the best share: looks at every share that prices do not rule out. */

import type { Allocation, Weights } from './allocation.ts';
import { indexBy } from './allocation.ts';
import type { Priced } from './allocation-bound.ts';
import { paid } from './allocation-bound.ts';
import type { PairShare } from './pair-shares.ts';
import { PairShares } from './pair-shares.ts';

/** Steps of the search, at most: past it the bound stands as it is. */
const MOST_STEPS = 100_000;

/** A better share, if there is one, and whether all were looked at that could be. */
export interface Searched {
  /** Flowers by source; null where no better share was found. */
  readonly counts: Int32Array | null;
  readonly complete: boolean;
}

/**
 * Looks for a better share among those that the bound leaves: each pair may fall short of its own best by no more
 * than the bound lies above the share in hand, all pairs together neither (fixing by reduced costs; Nemhauser & Wolsey
 * 1988, Integer and Combinatorial Optimization, II.5.2).
 *
 * @param allocation the best share so far
 * @param priced its prices and bound
 * @param least a share must be better by this much
 */
export function betterShare(
  allocation: Allocation,
  priced: Priced,
  weights: Weights,
  least: number,
): Searched {
  const { problem } = allocation;
  const slack = priced.bound - allocation.worth(weights) - least;
  if (slack <= 0) return { counts: null, complete: true };
  const own = indexBy(
    problem.sources.map(({ pair }) => pair),
    problem.pairMost.length,
  );
  const pairs = new PairShares(problem, weights, priced.cost);
  const choices: (readonly PairShare[])[] = [];
  for (const [pair, sources] of own.entries()) {
    const best = priced.pairBest[pair]!;
    const near = best === null ? null : pairs.near(pair, sources, best, slack);
    if (near === null) return { counts: null, complete: false };
    if (near.length > 1 || near[0]!.flowers.length > 0) choices.push(near);
  }
  return new ShareSearch(allocation, priced, choices).from(slack);
}

class ShareSearch {
  private readonly allocation: Allocation;
  private readonly priced: Priced;
  private readonly choices: readonly (readonly PairShare[])[];
  private readonly idle: Int32Array;
  private readonly doses: Float64Array;
  private readonly fathers: Float64Array;
  private readonly counts: Int32Array;
  private best: Int32Array | null = null;
  private slack = 0;
  private steps = 0;

  constructor(allocation: Allocation, priced: Priced, choices: readonly (readonly PairShare[])[]) {
    const { flowers, doses, fatherMost, sources } = allocation.problem;
    this.allocation = allocation;
    this.priced = priced;
    this.choices = [...choices].sort((a, b) => a.length - b.length);
    this.idle = Int32Array.from(flowers);
    this.doses = Float64Array.from(doses);
    this.fathers = Float64Array.from(fatherMost);
    this.counts = new Int32Array(sources.length);
  }

  from(slack: number): Searched {
    this.slack = slack;
    const complete = this.choose(0, 0);
    return { counts: this.best, complete };
  }

  /** Chooses for each pair from `at` on; `short` is what those before fall short together. */
  private choose(at: number, short: number): boolean {
    this.steps += 1;
    if (this.steps > MOST_STEPS) return false;
    const shares = this.choices[at];
    if (shares === undefined) {
      this.compare(short);
      return true;
    }
    for (const share of shares) {
      if (short + share.deficit >= this.slack) break;
      const fits = this.use(share, 1);
      const complete = !fits || this.choose(at + 1, short + share.deficit);
      this.use(share, -1);
      if (!complete) return false;
    }
    return true;
  }

  /** What is left unused has been paid for: the share falls short by that too. */
  private compare(short: number): void {
    const { flowerPrices, limitPrices } = this.priced;
    const unused =
      paid(flowerPrices, this.idle) +
      paid(limitPrices.dose, this.doses) +
      paid(limitPrices.father, this.fathers);
    if (short + unused >= this.slack) return;
    this.slack = short + unused;
    this.best = this.counts.slice();
  }

  /** Takes a share's flowers and doses (gives them back for −1); false where a limit is passed. */
  private use({ flowers }: PairShare, by: 1 | -1): boolean {
    const { sources, fathers } = this.allocation.problem;
    let fits = true;
    for (const { source, count } of flowers) {
      const { offer, pollen } = sources[source]!;
      const father = fathers[pollen]!;
      this.counts[source]! += by * count;
      this.idle[offer]! -= by * count;
      this.doses[pollen]! -= by * count;
      this.fathers[father]! -= by * count;
      fits &&= this.idle[offer]! >= 0 && this.doses[pollen]! >= 0 && this.fathers[father]! >= 0;
    }
    return fits;
  }
}
