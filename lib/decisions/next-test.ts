/** Key `nextTests`: where one or two test flowers would most likely change what to do with a vial. */

import type { Predictor } from '../analysis/predictor.ts';
import type { WeightedParent } from '../analysis/seed-parents.ts';
import { mean } from '../analysis/summary.ts';
import { daysBetween } from '../season/dates.ts';
import type { Vial } from '../season/season.ts';
import { chancesAt, evenDraws } from './plan-sources.ts';
import type { VialRates, VialVerdict } from './vials.ts';
import { verdictOf, vialRates } from './vials.ts';

/** What would be thought of a vial after so many fruits of the test flowers. */
export interface TestOutcome {
  readonly fruits: number;
  /** How likely this outcome is. */
  readonly probability: number;
  readonly probabilityWorth: number;
  readonly verdict: VialVerdict;
}

/** What some test flowers are worth. */
export interface TestValue {
  readonly flowers: 1 | 2;
  /** Probability that the verdict after them is another than now. */
  readonly changes: number;
  /**
   * Fruits that each later flower is expected to gain, if it goes to the vial where that then gives more than what is
   * worth a flower, and elsewhere otherwise: the expected value of sample information, a flower.
   */
  readonly gain: number;
  readonly outcomes: readonly TestOutcome[];
}

/** One entry of key `nextTests`. */
export interface NextTest {
  readonly vial: string;
  readonly pollenParent: string;
  /** The seed parent on which the test tells most. */
  readonly seedParent: string;
  readonly verdict: VialVerdict;
  readonly probabilityWorth: number;
  /** One flower, then two, as far as the vial's doses leave any for later. */
  readonly tests: readonly TestValue[];
}

/** What tests are judged by: as for the verdicts. Without model, day of use or worth there is nothing to test for. */
export interface TestQuestion {
  readonly predict: Predictor | null;
  readonly useOn: string | null;
  readonly worth: number | null;
  /** Seed parents in question for a pollen parent. */
  readonly over: (pollenParent: string) => readonly WeightedParent[];
}

const MOST_TESTS = 12;
/** Draws by which the seed parent is chosen; what is shown of it is worked out over all. */
const CHOICE_DRAWS = 400;

/**
 * The tests worth making: for each vial the seed parent on which test flowers, pollinated on the day of use, would most
 * likely change the verdict.
 *
 * Answers: which vial should I try on a flower or two before I decide? Not for tests of more flowers, nor for what a
 * test of one vial says of another.
 *
 * Each outcome of a test weighs the posterior draws by how likely they make it (preposterior analysis; Raiffa &
 * Schlaifer 1961, Applied Statistical Decision Theory, chapters 1 and 4).
 *
 * @returns the most likely changes first, at most 12; vials whose verdict no test would change are left out
 * @example
 * nextTests(season.vials, question)[0]?.tests.at(-1)?.changes; // probability that two flowers change a verdict
 */
export function nextTests(vials: readonly Vial[], question: TestQuestion): NextTest[] {
  const { predict, useOn, worth } = question;
  if (predict === null || useOn === null || worth === null) return [];
  const judged = { ...question, predict, useOn, worth };
  const found = vials.flatMap((vial) => bestTest(vial, judged) ?? []);
  const last = ({ tests }: NextTest) => tests.at(-1)!;
  return found
    .filter((test) => last(test).changes > 0)
    .sort((a, b) => further(last(b), last(a)))
    .slice(0, MOST_TESTS);
}

/** A question that can be answered. */
type Judged = { readonly [key in keyof TestQuestion]: NonNullable<TestQuestion[key]> };

function bestTest(vial: Vial, question: Judged): NextTest | null {
  const { predict, useOn, worth } = question;
  const over = question.over(vial.pollenParent);
  const sizes = ([1, 2] as const).filter((flowers) => vial.dosesLeft === null || vial.dosesLeft > flowers);
  if (over.length === 0 || sizes.length === 0 || daysBetween(vial.collected, useOn) < 0) return null;
  const rates = vialRates(vial, predict, over, useOn);
  if (rates === null) return null;
  const all = beliefs(rates, evenDraws(predict.size, predict.size), worth);
  const few = beliefs(rates, evenDraws(predict.size, CHOICE_DRAWS), worth);
  const chances = (draws: Int32Array) => {
    const { rates: of } = chancesAt(draws, question);
    const pollen = { pollenParent: vial.pollenParent, vial };
    return (seedParent: string) => of({ offer: { seedParent }, pollen });
  };
  const size = sizes.at(-1)!;
  const quick = chances(few.draws);
  const valued = over.map(({ seedParent }) => ({
    seedParent,
    value: testValue(few, quick(seedParent), size),
  }));
  const best = valued.reduce((a, b) => (further(b.value, a.value) > 0 ? b : a));
  const hits = chances(all.draws)(best.seedParent);
  return {
    vial: vial.vial,
    pollenParent: vial.pollenParent,
    seedParent: best.seedParent,
    verdict: all.verdict,
    probabilityWorth: all.probabilityWorth,
    tests: sizes.map((flowers) => testValue(all, hits, flowers)),
  };
}

/** The last digits of sums differ between engines: they must not decide which of two equal tests comes first. */
const coarse = (value: number): number => Math.round(value * 1e9);

/** How much further one test goes than another: in changes, then in gain; 0 where they are equal. */
function further(a: TestValue, b: TestValue): number {
  return coarse(a.changes) - coarse(b.changes) || coarse(a.gain) - coarse(b.gain);
}

/** What is thought of a vial, at some draws. */
interface Beliefs {
  readonly draws: Int32Array;
  readonly rates: Float64Array;
  /** 1 where the vial is worth a flower on the day of use, and a year later. */
  readonly worthThen: Uint8Array;
  readonly worthLater: Uint8Array;
  readonly worth: number;
  readonly verdict: VialVerdict;
  readonly probabilityWorth: number;
}

function beliefs({ then, yearLater }: VialRates, draws: Int32Array, worth: number): Beliefs {
  const isWorth = (rates: Float64Array) => Uint8Array.from(draws, (k) => (rates[k]! >= worth ? 1 : 0));
  const [now, later] = [isWorth(then), isWorth(yearLater)];
  return {
    draws,
    rates: Float64Array.from(draws, (k) => then[k]!),
    worthThen: now,
    worthLater: later,
    worth,
    verdict: verdictOf(mean(now), mean(later)),
    probabilityWorth: mean(now),
  };
}

/** Value of a test whose flowers each take with probability `hits`, draw by draw. */
function testValue(before: Beliefs, hits: Float64Array, flowers: 1 | 2): TestValue {
  const { worth, verdict } = before;
  let changes = 0;
  let expected = 0;
  const outcomes: TestOutcome[] = [];
  for (let fruits = 0; fruits <= flowers; fruits += 1) {
    const after = weighed(before, (k) => binomial(fruits, flowers, hits[k]!));
    if (after.probability === 0) continue;
    const { probability, probabilityWorth, rate } = after;
    const next = verdictOf(probabilityWorth, after.yearLater);
    if (next !== verdict) changes += probability;
    expected += probability * Math.max(rate, worth);
    outcomes.push({ fruits, probability, probabilityWorth, verdict: next });
  }
  const gain = Math.max(0, expected - Math.max(mean(before.rates), worth));
  return { flowers, changes: Math.min(1, changes), gain, outcomes };
}

/** Probability of so many fruits of one or two flowers. */
function binomial(fruits: number, flowers: 1 | 2, hit: number): number {
  const miss = 1 - hit;
  // Powers take longer than all the rest, so only squares are.
  if (flowers === 1) return fruits === 1 ? hit : miss;
  if (fruits === 1) return 2 * hit * miss;
  return fruits === 2 ? hit ** 2 : miss ** 2;
}

/** Means over the draws, each weighed by how likely it makes an outcome. */
function weighed(
  { rates, worthThen, worthLater }: Beliefs,
  likelihood: (k: number) => number,
): { probability: number; probabilityWorth: number; yearLater: number; rate: number } {
  let [total, good, goodLater, rate] = [0, 0, 0, 0];
  for (let k = 0; k < rates.length; k += 1) {
    const weight = likelihood(k);
    total += weight;
    good += weight * worthThen[k]!;
    goodLater += weight * worthLater[k]!;
    rate += weight * rates[k]!;
  }
  if (total === 0) return { probability: 0, probabilityWorth: 0, yearLater: 0, rate: 0 };
  return {
    probability: total / rates.length,
    probabilityWorth: good / total,
    yearLater: goodLater / total,
    rate: rate / total,
  };
}
