import { checkFinite, checkInside, checkWhole } from '../numerics/arguments.ts';
import { findRoot } from '../numerics/find-root.ts';
import { normalDensity } from '../numerics/normal.ts';
import { type RandomStream, randomStream } from '../numerics/random.ts';
import { checkLevel, type LevelOption } from './interval.ts';
import { criticalZ } from './power.ts';

/** What each pair of plants gets, and what is true of the pairs. */
export interface PairedFlowers {
  /** m: flowers pollinated with fresh pollen in each pair, and as many with stored pollen. */
  readonly flowersPerKind: number;
  /** True fruit set of fresh pollen, averaged over pairs, between 0 and 1. */
  readonly freshRate: number;
  /** True fruit set of stored pollen, averaged over the same pairs; their difference is what is to be found. */
  readonly storedRate: number;
  /** Standard deviation between pairs of the logit of the fruit set, at least 0. */
  readonly pairSd: number;
}

/** A paired design with its number of pairs. */
export interface PairedDesign extends PairedFlowers {
  readonly pairs: number;
}

/** Options of simulations. */
export interface SimulationOption extends LevelOption {
  /** Seasons simulated, 2,000 by default. */
  readonly simulations?: number;
  /** A whole number; the same seed gives the same answer. */
  readonly seed?: number;
}

/** Options of `sampleSizePairedDesign`. */
export interface PairedSizeOption extends SimulationOption {
  /** Probability wanted of finding the difference, 0.8 by default. */
  readonly power?: number;
}

/** A simulated power. */
export interface SimulatedPower {
  readonly power: number;
  /** Of the simulation, from (rejections + 1/2) / (simulations + 1), so that it is never 0. */
  readonly standardError: number;
}

/** The number of pairs with its simulated power. */
export interface PairedSampleSize extends SimulatedPower {
  readonly pairs: number;
}

/** More pairs than anybody will pollinate: a search that gets here has failed. */
const mostPairs = 2000;

/** Power rises in saw teeth: a number of pairs counts as enough when so are this many from it on. */
const teeth = 5;

function logistic(eta: number): number {
  return 1 / (1 + Math.exp(-eta));
}

/** Mean of the logistic function of a normal variable, by the trapezoidal rule, whose error falls faster than any power. */
function meanRate(mean: number, sd: number): number {
  if (sd === 0) return logistic(mean);
  const step = 0.125 / Math.max(1, sd / 2);
  let sum = 0;
  for (let z = -9; z <= 9; z += step) sum += normalDensity(z) * logistic(mean + sd * z);
  return sum * step;
}

/** Mean logit over pairs at which their average fruit set is `rate`. */
function meanLogit(rate: number, sd: number): number {
  const middle = Math.log(rate / (1 - rate));
  if (sd === 0) return middle;
  // The logit's mean lies further out than the rate's logit, by less than a factor of 2 + sd.
  const reach = (Math.abs(middle) + 1) * (2 + sd) ** 2;
  return findRoot((mean) => meanRate(mean, sd) - rate, -reach, reach, { tolerance: 1e-12 });
}

/** How many of m flowers set fruit. */
function fruits(m: number, rate: number, { uniform }: RandomStream): number {
  let count = 0;
  for (let flower = 0; flower < m; flower += 1) if (uniform() < rate) count += 1;
  return count;
}

/** Simulated seasons that grow by one pair of plants at a time. */
interface GrowingSeasons {
  readonly addPair: () => void;
  /** In how many of the seasons the test now rejects. */
  readonly rejections: () => number;
}

/**
 * Each season has a stream of its own, so that a larger design holds the pairs of a smaller one with the same seed, and
 * power by number of pairs is a smooth curve. Kept for each are the sums of the Cochran–Mantel–Haenszel test, to which
 * a pair with a fruits of m fresh and c of m stored flowers adds (a − c) / 2 and, of variance, (a + c)(2m − a − c) / 4(2m − 1).
 */
function growingSeasons(
  { flowersPerKind: m, freshRate, storedRate, pairSd }: PairedFlowers,
  { level, simulations, seed }: Required<SimulationOption>,
): GrowingSeasons {
  const seeds = randomStream(seed);
  const streams = Array.from({ length: simulations }, () =>
    randomStream(Math.floor(seeds.uniform() * 2 ** 32)),
  );
  const distance = new Float64Array(simulations);
  const variance = new Float64Array(simulations);
  const [freshLogit, storedLogit] = [meanLogit(freshRate, pairSd), meanLogit(storedRate, pairSd)];
  const critical = criticalZ(level, 'two-sided') ** 2;
  const addPair = (): void => {
    streams.forEach((stream, season) => {
      const own = pairSd * stream.normal();
      const fresh = fruits(m, logistic(freshLogit + own), stream);
      const stored = fruits(m, logistic(storedLogit + own), stream);
      const both = fresh + stored;
      distance[season]! += (fresh - stored) / 2;
      variance[season]! += (both * (2 * m - both)) / (4 * (2 * m - 1));
    });
  };
  // Without variance no pair has both outcomes: there is nothing to test.
  const rejects = (sum: number, season: number) =>
    variance[season]! > 0 && sum * sum >= critical * variance[season]!;
  return { addPair, rejections: () => distance.filter(rejects).length };
}

function simulatedPower(rejections: number, simulations: number): SimulatedPower {
  const within = (rejections + 0.5) / (simulations + 1);
  return {
    power: rejections / simulations,
    standardError: Math.sqrt((within * (1 - within)) / simulations),
  };
}

function checkFlowers(caller: string, flowers: PairedFlowers, options: Required<SimulationOption>): void {
  checkWhole(caller, 'flowersPerKind', flowers.flowersPerKind, 1);
  checkInside(caller, 'freshRate', flowers.freshRate);
  checkInside(caller, 'storedRate', flowers.storedRate);
  checkFinite(caller, 'pairSd', flowers.pairSd);
  if (flowers.pairSd < 0) {
    throw new RangeError(`${caller}: pairSd must be a number of at least 0, got ${flowers.pairSd}`);
  }
  checkLevel(caller, options.level);
  checkWhole(caller, 'simulations', options.simulations, 1);
  checkWhole(caller, 'seed', options.seed);
}

const defaults = { level: 0.95, simulations: 2000, seed: 1 } as const;

/**
 * Power of a paired design: fresh against stored pollen within pairs of plants, by simulation.
 *
 * Answers how often a true difference will be found when each of some pairs (seed parent × pollen parent) gets m flowers
 * of each kind, and pairs differ in their fruit set. With equal rates it is the true error of the test. Not for designs
 * in which a pair gets one kind only: they compare pairs, not pollen.
 *
 * The logit of a pair's fruit set is normal with standard deviation `pairSd`, for fresh pollen and, shifted by a constant, for
 * stored; both means are set so that the rates averaged over pairs are those given. Flowers of a pair are independent.
 * Each simulated season is tested by Cochran, Mantel and Haenszel's test over pairs, two-sided, without continuity
 * correction (`mantelHaenszel(…).test`), and counts where p ≤ 1 − level.
 *
 * @param design `pairs` and `flowersPerKind`, whole numbers of at least 1; rates between 0 and 1; `pairSd` of at least 0
 * @param options `level` 0.95, `simulations` 2,000, `seed`, a whole number of at least 0, 1 by default
 * @returns share of the seasons that reject, with the standard error of the simulation
 * @throws RangeError or TypeError naming the argument
 * @source Cochran (1954) Biometrics 10, 417–451, and Mantel & Haenszel (1959) JNCI 22, 719–748, for the test; Zeger, Liang &
 *   Albert (1988) Biometrics 44, 1049–1060, for averaged and within-pair logits
 * @example powerPairedDesign({ pairs: 20, flowersPerKind: 3, freshRate: 0.6, storedRate: 0.4, pairSd: 1 }).power // 0.67
 */
export function powerPairedDesign(
  { pairs, ...flowers }: PairedDesign,
  options: SimulationOption = {},
): SimulatedPower {
  const full = { ...defaults, ...options };
  checkWhole('powerPairedDesign', 'pairs', pairs, 1);
  checkFlowers('powerPairedDesign', flowers, full);
  const seasons = growingSeasons(flowers, full);
  for (let pair = 0; pair < pairs; pair += 1) seasons.addPair();
  return simulatedPower(seasons.rejections(), full.simulations);
}

function checkSizeQuestion(flowers: PairedFlowers, options: Required<PairedSizeOption>): void {
  const caller = 'sampleSizePairedDesign';
  const { freshRate, storedRate } = flowers;
  checkFlowers(caller, flowers, options);
  if (freshRate === storedRate) {
    throw new RangeError(
      `${caller}: storedRate must differ from freshRate (${freshRate}), got ${storedRate}`,
    );
  }
  checkInside(caller, 'power', options.power);
  const error = 1 - options.level;
  if (options.power <= error) {
    throw new RangeError(`${caller}: power must be above 1 - level (${error}), got ${options.power}`);
  }
}

/**
 * Sample size of a paired design: the smallest number of pairs of plants that reaches a power.
 *
 * Answers how many pairs to pollinate with both kinds of pollen; see `powerPairedDesign` for what is assumed and tested.
 *
 * @param flowers `flowersPerKind`, `freshRate`, `storedRate`, not equal, and `pairSd`, as in `powerPairedDesign`
 * @param options `power` 0.8, `level` 0.95, `simulations` 2,000, `seed` 1; the number is as sure as the standard error says
 * @returns the smallest number of pairs from which on five numbers in a row reach the power, with its simulated power,
 *   which is what `powerPairedDesign` gives with the same seed
 * @throws RangeError or TypeError naming the argument, also where more than 2,000 pairs would be needed
 * @source as `powerPairedDesign`; Chernick & Liu (2002) American Statistician 56, 149–155, for the saw teeth
 * @example sampleSizePairedDesign({ flowersPerKind: 3, freshRate: 0.6, storedRate: 0.4, pairSd: 1 }, { power: 0.9 }).pairs // 35
 */
export function sampleSizePairedDesign(
  flowers: PairedFlowers,
  options: PairedSizeOption = {},
): PairedSampleSize {
  const full = { power: 0.8, ...defaults, ...options };
  checkSizeQuestion(flowers, full);
  const seasons = growingSeasons(flowers, full);
  let first: PairedSampleSize | null = null;
  for (let pairs = 1; pairs < mostPairs + teeth; pairs += 1) {
    seasons.addPair();
    const reached = simulatedPower(seasons.rejections(), full.simulations);
    if (reached.power < full.power) first = null;
    else first ??= { pairs, ...reached };
    if (first !== null && pairs - first.pairs === teeth - 1) return first;
  }
  throw new RangeError(
    `sampleSizePairedDesign: storedRate must be further from freshRate (${flowers.freshRate}) for ${mostPairs} pairs to be ` +
      `enough, got ${flowers.storedRate}`,
  );
}
