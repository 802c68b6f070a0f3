/** What one pair can do for itself when every flower and dose has its price. */

import type { AllocationProblem, Weights } from './allocation.ts';
import { MUST } from './allocation.ts';

/** Shares of one pair that are looked at, at most; of more useful sources than this there are more shares. */
const MOST_LOOKED_AT = 5000;
const MOST_SOURCES = 24;

/** Flowers of one pair by source, and how much less it gives than the pair's best. */
export interface PairShare {
  readonly flowers: readonly { readonly source: number; readonly count: number }[];
  readonly deficit: number;
}

/**
 * The shares of a pair at given prices. A pair's flowers add the less the more there are (its chance of no fruit is a
 * product), so a flower gains no more after others are chosen than before: that is what cuts the search short.
 */
export class PairShares {
  private readonly problem: AllocationProblem;
  private readonly weights: Weights;
  private readonly cost: (source: number) => number;
  private readonly fresh: Float64Array;
  private lookedAt = 0;

  constructor(problem: AllocationProblem, weights: Weights, cost: (source: number) => number) {
    this.problem = problem;
    this.weights = weights;
    this.cost = cost;
    this.fresh = new Float64Array(problem.draws).fill(1);
  }

  /** What the best share of a pair gives, prices paid; null where there are too many to look at. */
  best(pair: number, sources: readonly number[]): number | null {
    const useful = sources.filter((s) => this.first(pair, s) > 0);
    if (useful.length === 0) return 0;
    if (useful.length > MOST_SOURCES) return null;
    let best = 0;
    const complete = this.visit(pair, useful, null, (value) => {
      best = Math.max(best, value);
    });
    return complete ? best : null;
  }

  /** All shares that give at most `slack` less than the best; null where there are too many to look at. */
  near(pair: number, sources: readonly number[], best: number, slack: number): PairShare[] | null {
    const alone = sources.map((s) => this.best(pair, [s])!);
    const useful = sources.filter((s) => this.first(pair, s) > -slack);
    const usefulAlone = sources.flatMap((s, at) => (useful.includes(s) ? [alone[at]!] : []));
    const after = usefulAlone.map((_, at) => usefulAlone.slice(at).reduce((sum, value) => sum + value, 0));
    const shares: PairShare[] = [];
    const complete = this.visit(pair, useful, { least: best - slack, after }, (value, counts) => {
      const flowers = useful.flatMap((source, at) =>
        counts[at]! > 0 ? [{ source, count: counts[at]! }] : [],
      );
      shares.push({ flowers, deficit: Math.max(0, best - value) });
    });
    return complete ? shares.sort((a, b) => a.deficit - b.deficit) : null;
  }

  /** What the first flower of a source gains. */
  private first(pair: number, source: number): number {
    const { sources, pairFewest, pairMost } = this.problem;
    if (pairMost[pair]! === 0) return Number.NEGATIVE_INFINITY;
    const must = pairFewest[pair]! > 0 ? MUST : 0;
    const { fruits, varieties } = this.weights;
    return (fruits + varieties) * sources[source]!.rate + must - this.cost(source);
  }

  /**
   * Visits every share that could be the best or, within a reach, every one in it; false where there are too many.
   *
   * @param reach the least value that counts, and the most that the sources from each position on can still add
   */
  private visit(
    pair: number,
    sources: readonly number[],
    reach: { readonly least: number; readonly after: readonly number[] } | null,
    found: (value: number, counts: readonly number[]) => void,
  ): boolean {
    this.lookedAt = 0;
    const counts = sources.map(() => 0);
    const from = (at: number, barren: Float64Array, used: number, value: number): boolean => {
      this.lookedAt += 1;
      if (this.lookedAt > MOST_LOOKED_AT) return false;
      if (at === sources.length) {
        if (reach === null || value >= reach.least) found(value, counts);
        return true;
      }
      const s = sources[at]!;
      const { miss } = this.problem.sources[s]!;
      const limit = this.limit(pair, s, used);
      const now = barren.slice();
      let reached = value;
      let complete = from(at + 1, now, used, reached);
      for (let n = 1; complete && n <= limit; n += 1) {
        const gain = this.step(pair, s, now, used + n - 1);
        reached += gain;
        if (gain < 0 && (reach === null || reached + (reach.after[at + 1] ?? 0) < reach.least)) break;
        counts[at] = n;
        for (let k = 0; k < now.length; k += 1) now[k]! *= miss[k]!;
        complete = from(at + 1, now, used + n, reached);
      }
      counts[at] = 0;
      return complete;
    };
    return from(0, this.fresh, 0, 0);
  }

  private limit(pair: number, source: number, used: number): number {
    const { flowers, doses, sources, pairMost } = this.problem;
    const { offer, pollen } = sources[source]!;
    return Math.min(flowers[offer]!, doses[pollen]!, pairMost[pair]! - used);
  }

  /** What one more flower of a source gains, its price paid. */
  private step(pair: number, source: number, barren: Float64Array, used: number): number {
    const { miss, rate } = this.problem.sources[source]!;
    let hit = 0;
    for (let k = 0; k < miss.length; k += 1) hit += barren[k]! * (1 - miss[k]!);
    const must = used < this.problem.pairFewest[pair]! ? MUST : 0;
    const { fruits, varieties } = this.weights;
    return fruits * rate + (varieties * hit) / miss.length + must - this.cost(source);
  }
}
