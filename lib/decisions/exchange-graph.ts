/** Every way in which one flower of a share could be used otherwise, as a graph of what limits. */

import { bestGains, gainingCycle } from '../numerics/gaining-cycle.ts';
import type { Allocation, Weights } from './allocation.ts';
import { indexBy, MUST } from './allocation.ts';

/** A cycle must gain this much by each of its steps: less is rounding. */
export const LEAST = 1e-11;

/** A flower more of one source, a flower fewer of another, or both; −1 stands for none. */
export interface Move {
  readonly from: number;
  readonly to: number;
}

/** What one more unit of each limit would gain. */
export interface LimitPrices {
  readonly dose: Float64Array;
  readonly father: Float64Array;
}

/**
 * The residual graph of a share. Nodes: 0 for what has no limit, then each offer of flowers, each pair with a limit
 * or a fewest, each limited pollen and pollen parent. A flower flows from 0 over its offer, pair, pollen and pollen
 * parent back to 0; each edge is the best single step of that kind, forwards or backwards.
 */
export class ExchangeGraph {
  readonly allocation: Allocation;
  readonly weights: Weights;
  private size = 1;
  private readonly nodeOfOffer: Int32Array;
  private readonly nodeOfPair: Int32Array;
  private readonly nodeOfPollen: Int32Array;
  private readonly nodeOfFather: Int32Array;
  private readonly ofPair: readonly (readonly number[])[];
  private readonly gains: Float64Array;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private barred = new Set<number>();

  constructor(allocation: Allocation, weights: Weights) {
    const { sources, flowers, doses, fathers, fatherMost, pairFewest, pairMost } = allocation.problem;
    this.allocation = allocation;
    this.weights = weights;
    this.ofPair = indexBy(
      sources.map(({ pair }) => pair),
      pairMost.length,
    );
    this.nodeOfOffer = Int32Array.from(flowers, () => this.node());
    this.nodeOfFather = Int32Array.from(fatherMost, (most) => (most < Infinity ? this.node() : 0));
    this.nodeOfPollen = Int32Array.from(doses, (limit, p) =>
      limit < Infinity ? this.node() : this.nodeOfFather[fathers[p]!]!,
    );
    this.nodeOfPair = Int32Array.from(pairMost, (most, pair) =>
      (most < Infinity || pairFewest[pair]! > 0) && this.offersOf(pair).size === 1 ? this.node() : -1,
    );
    this.gains = new Float64Array(this.size * this.size);
    this.from = new Int32Array(this.size * this.size);
    this.to = new Int32Array(this.size * this.size);
  }

  /** A cycle of steps that gains, as its nodes; null where there is none. */
  cycle(): number[] | null {
    return gainingCycle(this.gains, this.size, LEAST);
  }

  /** What the steps of a cycle move. */
  moves(cycle: readonly number[]): Move[] {
    return cycle.flatMap((node, at) => {
      const edge = node * this.size + cycle[(at + 1) % cycle.length]!;
      const move = { from: this.from[edge]!, to: this.to[edge]! };
      return move.from < 0 && move.to < 0 ? [] : [move];
    });
  }

  /** Leaves these moves out until they are forgiven. */
  bar(moves: readonly Move[]): void {
    for (const { from, to } of moves) this.barred.add(this.key(from, to));
  }

  forgive(): void {
    if (this.barred.size > 0) this.barred = new Set();
  }

  prices(): LimitPrices {
    const best = bestGains(this.gains, this.size, 0, LEAST);
    const { fathers } = this.allocation.problem;
    const { nodeOfFather, nodeOfPollen } = this;
    // With one unit more, the way from 0 to a limit would close to a cycle.
    const price = (node: number) => Math.max(0, best[node]!);
    const father = Float64Array.from(nodeOfFather, price);
    const dose = Float64Array.from(nodeOfPollen, (node, p) =>
      Math.max(0, price(node) - father[fathers[p]!]!),
    );
    return { dose, father };
  }

  /** Works out every edge anew. */
  build(): void {
    this.gains.fill(Number.NEGATIVE_INFINITY);
    this.linkLimits();
    const { counts, problem } = this.allocation;
    problem.sources.forEach((_, s) => {
      this.more(s);
      if (counts[s]! > 0) this.fewer(s);
    });
  }

  private node(): number {
    this.size += 1;
    return this.size - 1;
  }

  private offersOf(pair: number): Set<number> {
    return new Set(this.ofPair[pair]!.map((s) => this.allocation.problem.sources[s]!.offer));
  }

  private key(from: number, to: number): number {
    return (from + 1) * (this.allocation.counts.length + 1) + to + 1;
  }

  private edge(a: number, b: number, gain: number, from = -1, to = -1): void {
    const edge = a * this.size + b;
    if (gain <= this.gains[edge]!) return;
    if (this.barred.size > 0 && (from >= 0 || to >= 0) && this.barred.has(this.key(from, to))) return;
    this.gains[edge] = gain;
    this.from[edge] = from;
    this.to[edge] = to;
  }

  /** Steps that move no flower: into and out of idleness, and through limits within limits. */
  private linkLimits(): void {
    const { problem, idle, pollenUse, fatherUse } = this.allocation;
    const link = (inner: number, outer: number, used: number, limit: number): void => {
      if (inner === outer) return;
      if (used < limit) this.edge(inner, outer, 0);
      if (used > 0) this.edge(outer, inner, 0);
    };
    this.nodeOfOffer.forEach((node, offer) => {
      this.edge(node, 0, 0);
      if (idle[offer]! > 0) this.edge(0, node, 0);
    });
    this.nodeOfFather.forEach((node, f) => {
      link(node, 0, fatherUse[f]!, problem.fatherMost[f]!);
    });
    this.nodeOfPollen.forEach((node, p) => {
      link(node, this.nodeOfFather[problem.fathers[p]!]!, pollenUse[p]!, problem.doses[p]!);
    });
    this.nodeOfPair.forEach((node, pair) => {
      if (node >= 0) this.linkPair(node, pair);
    });
  }

  /** A pair with a limit or a fewest stands between its offer and its pollens. */
  private linkPair(node: number, pair: number): void {
    const { problem, pairUse } = this.allocation;
    const offer = this.nodeOfOffer[problem.sources[this.ofPair[pair]![0]!]!.offer]!;
    const [use, fewest] = [pairUse[pair]!, problem.pairFewest[pair]!];
    if (use < problem.pairMost[pair]!) this.edge(offer, node, use < fewest ? MUST : 0);
    if (use > 0) this.edge(node, offer, use <= fewest ? -MUST : 0);
  }

  /** One flower more of a source. */
  private more(s: number): void {
    const { allocation, weights } = this;
    const { offer, pair, pollen } = allocation.problem.sources[s]!;
    const own = this.nodeOfPair[pair]!;
    if (own < 0 && allocation.pairUse[pair]! >= allocation.problem.pairMost[pair]!) return;
    const gain = allocation.gain(s, weights) - (own < 0 ? 0 : allocation.mustGain(pair));
    this.edge(own < 0 ? this.nodeOfOffer[offer]! : own, this.nodeOfPollen[pollen]!, gain, -1, s);
  }

  /** One flower fewer of a source, or the same flower with another pollen of the pair. */
  private fewer(s: number): void {
    const { allocation, weights } = this;
    const { sources } = allocation.problem;
    const { offer, pair, pollen } = sources[s]!;
    const own = this.nodeOfPair[pair]!;
    const loss = allocation.loss(s, weights) - (own < 0 ? 0 : allocation.mustLoss(pair));
    const here = this.nodeOfPollen[pollen]!;
    this.edge(here, own < 0 ? this.nodeOfOffer[offer]! : own, -loss, s, -1);
    for (const t of this.ofPair[pair]!) {
      if (t === s || sources[t]!.offer !== offer) continue;
      const there = this.nodeOfPollen[sources[t]!.pollen]!;
      this.edge(here, there, allocation.swap(s, t, weights), s, t);
    }
  }
}
