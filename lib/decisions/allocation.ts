/** Flowers shared out among pollens: what may be shared, and what a share gives, draw by draw. */

/** One way to use a flower: on an offer of flowers, with a pollen, for a pair. */
export interface Source {
  /** Index of the offer whose flowers it takes. */
  readonly offer: number;
  /** Index of the pollen: a vial, or the fresh pollen of a plant. */
  readonly pollen: number;
  /** Index of the ordered pair. */
  readonly pair: number;
  /** Probability that a flower sets no fruit, one entry a draw, above 0. */
  readonly miss: Float64Array;
  /** Expected fruits of a flower: one less the mean of `miss`. */
  readonly rate: number;
}

/** What is to be shared out. Pollen without a limit has `Infinity`. */
export interface AllocationProblem {
  readonly sources: readonly Source[];
  /** Flowers of each offer. */
  readonly flowers: readonly number[];
  /** Flowers that each pollen can serve. */
  readonly doses: readonly number[];
  /** The pollen parent of each pollen, by index. */
  readonly fathers: readonly number[];
  /** Most flowers of each pollen parent. */
  readonly fatherMost: readonly number[];
  /** Fewest and most flowers of each pair. The fewest come before all else, as far as they can be had. */
  readonly pairFewest: readonly number[];
  readonly pairMost: readonly number[];
  readonly draws: number;
}

/** What counts: each expected fruit, each expected pair with a fruit. */
export interface Weights {
  readonly fruits: number;
  readonly varieties: number;
}

/** What a flower towards a pair's fewest counts: more than all else together. */
export const MUST = 1e4;

/** A share of the flowers that can be changed flower by flower, with what a flower more or less gives. */
export class Allocation {
  readonly problem: AllocationProblem;
  readonly counts: Int32Array;
  /** Flowers of each offer that are not used. */
  readonly idle: Int32Array;
  readonly pollenUse: Int32Array;
  readonly fatherUse: Int32Array;
  readonly pairUse: Int32Array;
  /** Probability of a fruit of the pair that one more flower of a source adds. */
  readonly added: Float64Array;
  /** The same that one flower fewer takes away; of sources in use. */
  readonly lost: Float64Array;
  /** Probability of a fruit of each pair. */
  private readonly chances: Float64Array;
  /** Probability, draw by draw, that a pair sets no fruit at all; of pairs ever used. */
  private readonly barren: (Float64Array | null)[];
  /** What a pair's chance gains where a source's flower goes to another source of the pair, as worked out last. */
  private readonly swapped: (Map<number, number> | null)[];
  private readonly ofPair: readonly (readonly number[])[];

  constructor(problem: AllocationProblem) {
    const { sources, flowers, doses, fatherMost, pairMost } = problem;
    this.problem = problem;
    this.counts = new Int32Array(sources.length);
    this.idle = Int32Array.from(flowers);
    this.pollenUse = new Int32Array(doses.length);
    this.fatherUse = new Int32Array(fatherMost.length);
    this.pairUse = new Int32Array(pairMost.length);
    this.added = Float64Array.from(sources, ({ rate }) => rate);
    this.lost = new Float64Array(sources.length);
    this.chances = new Float64Array(pairMost.length);
    this.barren = pairMost.map(() => null);
    this.swapped = sources.map(() => null);
    this.ofPair = indexBy(
      sources.map(({ pair }) => pair),
      pairMost.length,
    );
  }

  /** Whether one more flower of a source is within the limits of its pair, pollen and pollen parent. */
  hasRoom(source: number): boolean {
    const { problem } = this;
    const { pair, pollen } = problem.sources[source]!;
    const father = problem.fathers[pollen]!;
    return (
      this.pairUse[pair]! < problem.pairMost[pair]! &&
      this.pollenUse[pollen]! < problem.doses[pollen]! &&
      this.fatherUse[father]! < problem.fatherMost[father]!
    );
  }

  /** Uses `by` flowers more of a source (fewer where negative). */
  change(source: number, by: number): void {
    const { offer, pollen, pair } = this.problem.sources[source]!;
    this.counts[source]! += by;
    this.idle[offer]! -= by;
    this.pollenUse[pollen]! += by;
    this.fatherUse[this.problem.fathers[pollen]!]! += by;
    this.pairUse[pair]! += by;
    this.refresh(pair);
  }

  /** What one more flower of a source gains. */
  gain(source: number, { fruits, varieties }: Weights): number {
    const { pair, rate } = this.problem.sources[source]!;
    return fruits * rate + varieties * this.added[source]! + this.mustGain(pair);
  }

  /** What one flower fewer of a source in use loses. */
  loss(source: number, { fruits, varieties }: Weights): number {
    const { pair, rate } = this.problem.sources[source]!;
    return fruits * rate + varieties * this.lost[source]! + this.mustLoss(pair);
  }

  /** What one more flower counts towards a pair's fewest. */
  mustGain(pair: number): number {
    return this.pairUse[pair]! < this.problem.pairFewest[pair]! ? MUST : 0;
  }

  /** What one flower fewer counts. */
  mustLoss(pair: number): number {
    return this.pairUse[pair]! <= this.problem.pairFewest[pair]! ? MUST : 0;
  }

  /** What a flower of one source gains by going to another of the same pair. */
  swap(from: number, to: number, { fruits, varieties }: Weights): number {
    const { sources } = this.problem;
    const gained = fruits * (sources[to]!.rate - sources[from]!.rate);
    if (varieties === 0) return gained;
    const known = this.swapped[from] ?? new Map<number, number>();
    this.swapped[from] = known;
    let chance = known.get(to);
    if (chance === undefined) {
      chance = this.swappedChance(sources[from]!, sources[to]!);
      known.set(to, chance);
    }
    return gained + varieties * chance;
  }

  /** Expected fruits. */
  fruits(): number {
    return this.counts.reduce((sum, count, s) => sum + count * this.problem.sources[s]!.rate, 0);
  }

  /** Expected number of pairs with a fruit. */
  varieties(): number {
    return this.chances.reduce((sum, chance) => sum + chance, 0);
  }

  /** What all of it counts, flowers towards the fewest of a pair included. */
  worth({ fruits, varieties }: Weights): number {
    const met = this.pairUse.reduce(
      (sum, use, pair) => sum + Math.min(use, this.problem.pairFewest[pair]!),
      0,
    );
    return fruits * this.fruits() + varieties * this.varieties() + MUST * met;
  }

  private swappedChance({ pair, miss }: Source, { miss: other }: Source): number {
    const barren = this.barren[pair]!;
    let sum = 0;
    for (let k = 0; k < barren.length; k += 1) sum += barren[k]! * (1 - other[k]! / miss[k]!);
    return sum / barren.length;
  }

  /** Works out anew what a pair's flowers give: a product, never divided again, so that nothing drifts. */
  private refresh(pair: number): void {
    const { sources, draws } = this.problem;
    const barren = this.barren[pair] ?? new Float64Array(draws);
    this.barren[pair] = barren.fill(1);
    for (const s of this.ofPair[pair]!) {
      const { miss } = sources[s]!;
      this.swapped[s] = null;
      for (let n = this.counts[s]!; n > 0; n -= 1) for (let k = 0; k < draws; k += 1) barren[k]! *= miss[k]!;
    }
    this.chances[pair] = 1 - meanOf(barren);
    for (const s of this.ofPair[pair]!) {
      this.added[s] = addedChance(barren, sources[s]!.miss);
      this.lost[s] = this.counts[s]! > 0 ? lostChance(barren, sources[s]!.miss) : 0;
    }
  }
}

function addedChance(barren: Float64Array, miss: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < barren.length; k += 1) sum += barren[k]! * (1 - miss[k]!);
  return sum / barren.length;
}

function lostChance(barren: Float64Array, miss: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < barren.length; k += 1) sum += barren[k]! * (1 / miss[k]! - 1);
  return sum / barren.length;
}

/** Positions of each code, in order. */
export function indexBy(codes: readonly number[], size: number): number[][] {
  const lists = Array.from({ length: size }, (): number[] => []);
  codes.forEach((code, at) => {
    lists[code]!.push(at);
  });
  return lists;
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < values.length; k += 1) sum += values[k]!;
  return sum / values.length;
}
