import { checkInside, checkWhole } from '../numerics/arguments.ts';
import { binomialDensity } from '../numerics/binomial.ts';
import { checkLevel, type LevelOption } from './interval.ts';
import { twoSidedZ } from './one-sample.ts';

/** Power rises in saw teeth: a size counts as enough when so are this many sizes from it on. */
const TEETH = 12;

/** More trials than any grower has: a search that gets here has failed. */
const LARGEST = 5000;

/** Options of `sampleSizeOneProportion`. */
export interface OneSampleSizeOption extends LevelOption {
  /** Probability wanted that the interval leaves the chance in question out, 0.8 by default. */
  readonly power?: number;
}

/**
 * Power of Wilson's interval: how often it leaves out a chance named beforehand.
 *
 * Answers how often n trials will tell a true chance from the one in question, by exact enumeration. The interval leaves
 * h out where |x − n h| > z √(n h (1 − h)), which is the score test. Both directions count.
 *
 * @param probability the true chance, between 0 and 1
 * @param trials n, a whole number of at least 1
 * @param hypothesis h, the chance in question, between 0 and 1
 * @param options `level` of the interval, 0.95 by default
 * @returns probability, from 0 to 1, that the interval leaves h out
 * @throws RangeError or TypeError naming the argument
 * @source Wilson (1927) J Am Stat Assoc 22, 209–212; power by its definition
 * @example powerOfWilson(0.5, 10, 0.9) // 0.94531...
 */
export function powerOfWilson(
  probability: number,
  trials: number,
  hypothesis: number,
  { level = 0.95 }: LevelOption = {},
): number {
  checkInside('powerOfWilson', 'probability', probability);
  checkWhole('powerOfWilson', 'trials', trials, 1);
  checkInside('powerOfWilson', 'hypothesis', hypothesis);
  checkLevel('powerOfWilson', level);
  const bar = twoSidedZ(level) * Math.sqrt(trials * hypothesis * (1 - hypothesis));
  let power = 0;
  for (let x = 0; x <= trials; x += 1) {
    if (Math.abs(x - trials * hypothesis) > bar) power += binomialDensity(x, trials, probability);
  }
  return Math.min(1, power);
}

/**
 * Sample size of one proportion against a chance named beforehand.
 *
 * Answers how many trials it takes for Wilson's interval to leave that chance out. Not for a chance that is itself
 * estimated from few trials: see `sampleSizeTwoProportions`.
 *
 * @param probability the true chance, between 0 and 1, not equal to the one in question
 * @param hypothesis the chance in question, between 0 and 1
 * @param options `level` 0.95, `power` 0.8
 * @returns the smallest number of trials from which on twelve numbers in a row reach the power (its curve has saw teeth)
 * @throws RangeError or TypeError naming the argument, also where more than 5,000 trials would be needed
 * @source by enumeration; Chernick & Liu (2002) American Statistician 56, 149–155, for the saw teeth
 * @example sampleSizeOneProportion(0.5, 0.3) // 45
 */
export function sampleSizeOneProportion(
  probability: number,
  hypothesis: number,
  { level = 0.95, power = 0.8 }: OneSampleSizeOption = {},
): number {
  const caller = 'sampleSizeOneProportion';
  checkInside(caller, 'probability', probability);
  checkInside(caller, 'hypothesis', hypothesis);
  checkLevel(caller, level);
  checkInside(caller, 'power', power);
  if (probability === hypothesis) {
    throw new RangeError(`${caller}: probability must differ from hypothesis (${hypothesis}), got the same`);
  }
  let first = 0;
  for (let trials = 1; trials <= LARGEST; trials += 1) {
    if (powerOfWilson(probability, trials, hypothesis, { level }) < power) first = 0;
    else if (first === 0) first = trials;
    if (first > 0 && trials - first === TEETH - 1) return first;
  }
  throw new RangeError(
    `${caller}: probability must be further from hypothesis (${hypothesis}) for ${LARGEST} trials to be enough, got ${probability}`,
  );
}
