/**
 * What one could know at best of a grower's plants: their effects given the files and every number of the world they come from.
 *
 * The world is taken as it is simulated: sizes of effects, what storage and age cost, the share of incompatible pairs and that
 * most of them are so both ways, and how the grower chose fresh or stored pollen and the lot. Only what belongs to one plant,
 * pair, vial, morning, season or grower is not known, and is drawn by Metropolis steps, one effect at a time (Metropolis et al.
 * 1953, J. Chem. Phys. 21:1087), kinds of pairs and plants by Gibbs steps. Slow and plain: no word of the library's model is in it.
 */

import type { RandomStream } from '../../lib/numerics/random.ts';
import { BOTH_WAYS, EITHER_WAY, FRESH_LIKING, HARDEST, OLD_FOR_HARD } from './grower-truth.ts';

/** How a flower's pollen was chosen; null where there was nothing to choose. */
export interface Choice {
  /** Whether fresh pollen was to be had. */
  readonly freshToHave: boolean;
  /** Lots there were, oldest first, and the one taken; −1 for fresh pollen. */
  readonly lots: number;
  readonly taken: number;
}

/** One flower. Effects are positions in the list of all of them. */
export interface Trial {
  /** 1 fruit, 0 none, null not known. */
  readonly outcome: 0 | 1 | null;
  readonly pair: number;
  /** Effects of its vial, morning, season, grower: what is no part of the pair. */
  readonly occasion: readonly number[];
  /** What its pollen adds for certain. */
  readonly pollen: number;
  readonly choice: Choice | null;
}

/** One ordered pair that was tried. */
export interface TriedPair {
  /** Effects of mother, father and the pair itself, and the grower's liking for fresh pollen on it. */
  readonly effects: readonly [mother: number, father: number, pair: number, leaning: number];
  /** What it loses by flowering apart. */
  readonly apart: number;
  /** Code of the two plants whichever way round, and which way this is. */
  readonly couple: number;
  readonly way: 0 | 1;
  readonly father: number;
}

export interface InformedProblem {
  readonly intercept: number;
  /** Standard deviation of each effect. */
  readonly sds: readonly number[];
  readonly trials: readonly Trial[];
  readonly pairs: readonly TriedPair[];
  readonly couples: number;
  readonly fathers: number;
  readonly incompatible: number;
  readonly noGoodPollen: number;
}

/** One draw. Kinds of couples: bit 1 where way 0 never sets fruit, bit 2 where way 1 does not. */
export interface InformedDraw {
  readonly effects: Float64Array;
  readonly couples: Uint8Array;
  readonly badFathers: Uint8Array;
}

const log1pExp = (x: number): number => (x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x)));

/** Prior of each kind of couple, by its bits. */
export function coupleKinds(incompatible: number): readonly number[] {
  const one = incompatible * (EITHER_WAY - BOTH_WAYS);
  return [1 - incompatible, one, incompatible - one - incompatible * BOTH_WAYS, incompatible * BOTH_WAYS];
}

/** Which parts of a trial an effect is in. */
const OUTCOME = 1;
const CHOICE = 2;

/** A trial with its place in the list, and what it says as things stand: logs of its two probabilities. */
interface Kept {
  readonly trial: Trial;
  outcome: number;
  choice: number;
  /** The same as a step would have it. */
  nextOutcome: number;
  nextChoice: number;
}

/** The state of the chain, and its steps. */
class Chain {
  private readonly problem: InformedProblem;
  private readonly random: RandomStream;
  private readonly effects: Float64Array;
  private readonly couples: Uint8Array;
  private readonly bad: Uint8Array;
  private readonly steps: Float64Array;
  private readonly parts: Uint8Array;
  private readonly touched: readonly (readonly Kept[])[];
  private readonly ofCouple: readonly (readonly Kept[])[];
  private readonly ofFather: readonly (readonly Kept[])[];

  constructor(problem: InformedProblem, random: RandomStream) {
    const { sds, trials, pairs } = problem;
    this.problem = problem;
    this.random = random;
    this.effects = new Float64Array(sds.length);
    this.couples = new Uint8Array(problem.couples);
    this.bad = new Uint8Array(problem.fathers);
    this.steps = Float64Array.from(sds);
    this.parts = new Uint8Array(sds.length).fill(OUTCOME);
    for (const { effects } of pairs) {
      for (const at of effects) this.parts[at] = OUTCOME + CHOICE;
      this.parts[effects[3]] = CHOICE;
    }
    const kept = trials.map(
      (trial): Kept => ({ trial, outcome: 0, choice: 0, nextOutcome: 0, nextChoice: 0 }),
    );
    const listed = (size: number, codes: (trial: Trial) => readonly number[]) => {
      const lists = Array.from({ length: size }, (): Kept[] => []);
      for (const each of kept) for (const code of codes(each.trial)) lists[code]!.push(each);
      return lists;
    };
    this.touched = listed(sds.length, ({ pair, occasion }) => [...pairs[pair]!.effects, ...occasion]);
    this.ofCouple = listed(problem.couples, ({ pair }) => [pairs[pair]!.couple]);
    this.ofFather = listed(problem.fathers, ({ pair }) => [pairs[pair]!.father]);
    this.refresh(kept);
  }

  /** Every effect and kind once; steps grow or shrink towards 44 in 100 taken while `learning`. */
  sweep(learning: number): void {
    for (let at = 0; at < this.effects.length; at += 1) this.moveEffect(at, learning);
    for (let at = 0; at < this.couples.length; at += 1) {
      this.drawKind(this.couples, at, this.ofCouple[at]!, coupleKinds(this.problem.incompatible));
    }
    const { noGoodPollen } = this.problem;
    if (noGoodPollen === 0) return;
    for (let at = 0; at < this.bad.length; at += 1) {
      this.drawKind(this.bad, at, this.ofFather[at]!, [1 - noGoodPollen, noGoodPollen]);
    }
  }

  now(): InformedDraw {
    return {
      effects: this.effects.slice(),
      couples: this.couples.slice(),
      badFathers: this.bad.slice(),
    };
  }

  private moveEffect(at: number, learning: number): void {
    const sd = this.problem.sds[at]!;
    if (sd === 0) return;
    const before = this.effects[at]!;
    const next = before + this.steps[at]! * this.random.normal();
    this.effects[at] = next;
    const part = this.parts[at]!;
    let gain = ((before / sd) ** 2 - (next / sd) ** 2) / 2;
    for (const kept of this.touched[at]!) {
      if (part & OUTCOME) {
        kept.nextOutcome = this.outcomeLog(kept.trial);
        gain += kept.nextOutcome - kept.outcome;
      }
      if (part & CHOICE) {
        kept.nextChoice = this.choiceLog(kept.trial);
        gain += kept.nextChoice - kept.choice;
      }
    }
    const chance = Math.min(1, Math.exp(gain));
    if (learning > 0) this.steps[at]! *= Math.exp(learning * (chance - 0.44));
    if (this.random.uniform() >= chance) {
      this.effects[at] = before;
      return;
    }
    for (const kept of this.touched[at]!) {
      if (part & OUTCOME) kept.outcome = kept.nextOutcome;
      if (part & CHOICE) kept.choice = kept.nextChoice;
    }
  }

  /** Draws one kind of a couple or a plant given all else. */
  private drawKind(kinds: Uint8Array, at: number, touched: readonly Kept[], priors: readonly number[]): void {
    const logs = priors.map((prior, kind) => {
      kinds[at] = kind;
      return touched.reduce(
        (sum, { trial }) => sum + this.outcomeLog(trial) + this.choiceLog(trial),
        Math.log(prior),
      );
    });
    kinds[at] = this.chosen(logs);
    this.refresh(touched);
  }

  private refresh(touched: readonly Kept[]): void {
    for (const kept of touched) {
      kept.outcome = this.outcomeLog(kept.trial);
      kept.choice = this.choiceLog(kept.trial);
    }
  }

  /** One of some kinds, from the logs of what they weigh. */
  private chosen(logs: readonly number[]): number {
    const most = Math.max(...logs);
    const weights = logs.map((log) => Math.exp(log - most));
    let left = this.random.uniform() * weights.reduce((sum, weight) => sum + weight, 0);
    const at = weights.findIndex((weight) => {
      left -= weight;
      return left < 0;
    });
    return at < 0 ? logs.indexOf(most) : at;
  }

  private isBarren({ couple, way, father }: TriedPair): boolean {
    return this.bad[father] === 1 || ((this.couples[couple]! >> way) & 1) === 1;
  }

  private easeOf({ effects: [mother, father, own], apart }: TriedPair): number {
    return this.effects[mother]! + this.effects[father]! + this.effects[own]! - apart;
  }

  private outcomeLog({ outcome, pair, occasion, pollen }: Trial): number {
    if (outcome === null) return 0;
    const tried = this.problem.pairs[pair]!;
    if (this.isBarren(tried)) return outcome === 1 ? Number.NEGATIVE_INFINITY : 0;
    let eta = this.problem.intercept + this.easeOf(tried) + pollen;
    for (const at of occasion) eta += this.effects[at]!;
    return -log1pExp(outcome === 1 ? -eta : eta);
  }

  private choiceLog({ pair, choice }: Trial): number {
    if (choice === null) return 0;
    const tried = this.problem.pairs[pair]!;
    const ease = this.isBarren(tried) ? HARDEST : this.easeOf(tried);
    return choiceLog(choice, ease, this.effects[tried.effects[3]]!);
  }
}

/** Log probability of a choice; see `pollinations`. */
function choiceLog({ freshToHave, lots, taken }: Choice, pairEase: number, leaning: number): number {
  const ease = Math.max(HARDEST, pairEase);
  const liking = FRESH_LIKING + ease + leaning;
  if (taken < 0) return -log1pExp(-liking);
  let total = 0;
  for (let rank = 0; rank < lots; rank += 1) total += Math.exp(OLD_FOR_HARD * ease * rank);
  return (freshToHave ? -log1pExp(liking) : 0) + OLD_FOR_HARD * ease * taken - Math.log(total);
}

const BURN_IN = 500;
const EVERY = 5;

/** Draws of all that is not known, after a time to settle in which steps find their size. */
export function informedDraws(problem: InformedProblem, count: number, random: RandomStream): InformedDraw[] {
  const chain = new Chain(problem, random);
  for (let sweep = 0; sweep < BURN_IN; sweep += 1) chain.sweep(1 / Math.sqrt(sweep + 1));
  return Array.from({ length: count }, () => {
    for (let sweep = 0; sweep < EVERY; sweep += 1) chain.sweep(0);
    return chain.now();
  });
}
