import { checkChoice, checkInside, checkPositive, checkWhole } from '../numerics/arguments.ts';
import { findRoot } from '../numerics/find-root.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { checkLevel, type LevelOption } from './interval.ts';
import { criticalZ, exactPower, normalPower, SIDES } from './power.ts';

const METHODS = ['normal', 'normal-both-tails', 'continuity', 'arcsine', 'fisher'] as const;

/** Beyond this size a group's tables are too many to enumerate for every size before it. */
const LARGEST_EXACT = 1000;

/** Exact power rises in saw teeth: a size counts as enough when so are this many sizes from it on. */
const TEETH = 12;

/** Options of `sampleSizeTwoProportions`. */
export interface SampleSizeOption extends LevelOption {
  /** Probability wanted of finding the difference, 0.8 by default. */
  readonly power?: number;
  readonly alternative?: (typeof SIDES)[number];
  /**
   * `normal` (default) and `normal-both-tails`: as in `powerTwoProportions`; `continuity`: Fleiss, Tytun and Ury's
   * correction, near the size for Fisher's test; `arcsine`: from the difference of arcsines; `fisher`: exact, by
   * enumeration, groups of equal size, two-sided.
   */
  readonly method?: (typeof METHODS)[number];
  /** Trials of the second group for one of the first, 1 by default. */
  readonly ratio?: number;
}

/** Sizes of both groups. */
export interface SampleSize {
  readonly trials1: number;
  readonly trials2: number;
  /** Size of the first group before rounding up; null where the method knows whole sizes only. */
  readonly unrounded: number | null;
  /** With `fisher`: the first size that reaches the power; a larger one may fall short again before `trials1`. */
  readonly firstReaching?: number;
}

interface Question {
  readonly p1: number;
  readonly p2: number;
  readonly z: number;
  readonly zPower: number;
  readonly power: number;
  readonly ratio: number;
}

/** Fleiss, Levin & Paik (2003), equations 4.14 and 4.19. */
function normalSize({ p1, p2, z, zPower, ratio }: Question): number {
  const pooled = (p1 + ratio * p2) / (1 + ratio);
  const underHypothesis = z * Math.sqrt((1 + ratio) * pooled * (1 - pooled));
  const underDifference = zPower * Math.sqrt(ratio * p1 * (1 - p1) + p2 * (1 - p2));
  return (underHypothesis + underDifference) ** 2 / (ratio * (p1 - p2) ** 2);
}

/** Fleiss, Levin & Paik (2003), equations 4.15 and 4.20. */
function continuitySize(question: Question): number {
  const { p1, p2, ratio } = question;
  const n = normalSize(question);
  const root = Math.sqrt(1 + (2 * (ratio + 1)) / (n * ratio * Math.abs(p1 - p2)));
  return (n / 4) * (1 + root) ** 2;
}

function arcsineSize({ p1, p2, z, zPower, ratio }: Question): number {
  const distance = Math.asin(Math.sqrt(p1)) - Math.asin(Math.sqrt(p2));
  return ((z + zPower) ** 2 * (1 + 1 / ratio)) / (4 * distance ** 2);
}

/** The size at which the power with both tails is the one wanted: below `normalSize`, for both tails reject more. */
function bothTailsSize(question: Question): number {
  const { p1, p2, z, power, ratio } = question;
  const short = (n: number) => normalPower(p1, n, p2, ratio * n, z, true) - power;
  const enough = normalSize(question);
  const least = enough * 1e-6;
  return short(least) >= 0 ? least : findRoot(short, least, enough * (1 + 1e-9));
}

function fisherSize({ p1, p2, power }: Question, level: number, start: number): SampleSize {
  let first = 0;
  let since = 0;
  for (let n = Math.max(2, Math.floor(start / 2)); n <= LARGEST_EXACT; n += 1) {
    if (exactPower(p1, n, p2, n, level, 'fisher') < power) since = 0;
    else {
      since = since === 0 ? n : since;
      first = first === 0 ? n : first;
      if (n - since === TEETH - 1) {
        return { trials1: since, trials2: since, unrounded: null, firstReaching: first };
      }
    }
  }
  throw new RangeError(
    `sampleSizeTwoProportions: method must not be fisher above ${LARGEST_EXACT} trials a group, got p1 ${p1} and p2 ${p2}`,
  );
}

/** A test rejects with probability 1 − level where there is nothing to find: no size gives a power below that. */
function checkPower(caller: string, power: number, level: number): void {
  checkInside(caller, 'power', power);
  if (power <= 1 - level) {
    throw new RangeError(`${caller}: power must be above 1 - level (${1 - level}), got ${power}`);
  }
}

function checkQuestion(p1: number, p2: number, options: Required<SampleSizeOption>): void {
  const caller = 'sampleSizeTwoProportions';
  checkInside(caller, 'p1', p1);
  checkInside(caller, 'p2', p2);
  if (p1 === p2) throw new RangeError(`${caller}: p2 must differ from p1 (${p1}), got ${p2}`);
  checkLevel(caller, options.level);
  checkPower(caller, options.power, options.level);
  checkChoice(caller, 'alternative', options.alternative, SIDES);
  checkChoice(caller, 'method', options.method, METHODS);
  checkPositive(caller, 'ratio', options.ratio);
  if (options.method !== 'fisher') return;
  checkChoice(caller, 'alternative with method fisher', options.alternative, ['two-sided']);
  if (options.ratio !== 1)
    throw new RangeError(`${caller}: ratio must be 1 with method fisher, got ${options.ratio}`);
}

/**
 * Sample size for a comparison of two proportions.
 *
 * Answers how many trials each group needs to find a difference between p1 and p2. Not for groups whose trials depend on
 * each other (flowers of one morning): they need more.
 *
 * @param p1 chance of success in the first group, between 0 and 1
 * @param p2 chance in the second, not equal to it
 * @param options `level` 0.95, `power` 0.8, `alternative`, `method` and `ratio`, see `SampleSizeOption`
 * @returns sizes rounded up, see `SampleSize`
 * @throws RangeError or TypeError naming the argument
 * @source Fleiss, Levin & Paik (2003) Statistical Methods for Rates and Proportions, 4.2 to 4.4; Fleiss, Tytun & Ury (1980)
 *   Biometrics 36, 343–346; Chernick & Liu (2002) American Statistician 56, 149–155, for the saw teeth of exact power
 * @example sampleSizeTwoProportions(0.5, 0.75, { power: 0.9 }) // { trials1: 77, trials2: 77, unrounded: 76.70692... }
 */
export function sampleSizeTwoProportions(p1: number, p2: number, options: SampleSizeOption = {}): SampleSize {
  const full = {
    level: 0.95,
    power: 0.8,
    alternative: 'two-sided',
    method: 'normal',
    ratio: 1,
    ...options,
  } as const;
  checkQuestion(p1, p2, full);
  const { level, power, alternative, method, ratio } = full;
  const z = criticalZ(level, alternative);
  const question = { p1, p2, z, zPower: normalQuantile(power), power, ratio };
  if (method === 'fisher') return fisherSize(question, level, normalSize(question));
  const unrounded = {
    normal: normalSize,
    'normal-both-tails': bothTailsSize,
    continuity: continuitySize,
    arcsine: arcsineSize,
  }[method](question);
  return { trials1: Math.ceil(unrounded), trials2: Math.ceil(ratio * unrounded), unrounded };
}

/** Options of `detectableProportion`. */
export interface DetectableOption extends LevelOption {
  readonly power?: number;
  readonly direction?: 'above' | 'below';
}

/**
 * Detectable proportion: the nearest second chance of success that a comparison would find.
 *
 * Answers what difference n trials a group can show, by the normal approximation of `powerTwoProportions`.
 *
 * @param p1 chance of success of the first group, between 0 and 1
 * @param trials n of each group, a whole number of at least 1
 * @param options `level` 0.95, `power` 0.8, `direction` of p2 from p1, `above` by default
 * @returns p2, or null where no chance up to 1 (or down to 0) is far enough
 * @throws RangeError or TypeError naming the argument
 * @source as R's power.prop.test, solved for p2
 * @example detectableProportion(0.5, 40) // 0.79490...
 */
export function detectableProportion(
  p1: number,
  trials: number,
  { level = 0.95, power = 0.8, direction = 'above' }: DetectableOption = {},
): number | null {
  checkInside('detectableProportion', 'p1', p1);
  checkWhole('detectableProportion', 'trials', trials, 1);
  checkLevel('detectableProportion', level);
  checkPower('detectableProportion', power, level);
  checkChoice('detectableProportion', 'direction', direction, ['above', 'below']);
  const z = criticalZ(level, 'two-sided');
  const excess = (p2: number) => normalPower(p1, trials, p2, trials, z, false) - power;
  const limit = direction === 'above' ? 1 : 0;
  if (!(excess(limit) >= 0) || excess(p1) >= 0) return null;
  return findRoot(excess, p1, limit);
}
