/**
 * How a number is said: counts first, whole numbers, natural frequencies, a range with every rate.
 *
 * Every text, table and chart for growers takes its numbers from here, so that one number is said in one way
 * (ranges as outcomes: Hofman, Goldstein & Hullman 2020; words with numbers: Wintle et al. 2019). The level of
 * the ranges is said once in a report and nowhere in here. Nothing depends on the machine's language.
 */
import type { Estimate, Proportion } from '../proportions/interval.ts';

/** What "about" and "could be" are counted in: flowers of ten, or of a hundred where ten is too coarse. */
type Base = 10 | 100;

/**
 * Rounds to the nearest whole number, halves upwards. The tiny shift keeps a half a half when it was reached by
 * a sum whose last digit differs between engines (0.35 × 10 is 3.5 or 3.4999999999999996).
 */
function whole(value: number): number {
  return Math.floor(value + 0.5 + 1e-9);
}

function checkProportion(caller: string, value: number): void {
  if (!(value >= 0 && value <= 1)) {
    throw new RangeError(`${caller}: estimate must be a proportion from 0 to 1, got ${value}`);
  }
}

/**
 * A whole number, in groups of three from 10 000 on, with a narrow space that no language reads as a decimal sign.
 *
 * @example wholeNumber(1999.5) // '2000'
 */
export function wholeNumber(value: number): string {
  const digits = String(Math.abs(whole(value)));
  const grouped = digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, '\u202F');
  return whole(value) < 0 ? `−${grouped}` : grouped;
}

/**
 * A number with a fixed count of decimals and a true minus sign. Never "−0.00".
 *
 * @example decimal(-0.5, 2) // '−0.50'
 */
export function decimal(value: number, places: number): string {
  const digits = Math.abs(value).toFixed(places);
  return value < 0 && Number(digits) !== 0 ? `−${digits}` : digits;
}

/**
 * "1 flower", "5 flowers"; a plural that is not formed with s is given.
 *
 * @example counted(2, 'fruit', 'fruit') // '2 fruit'
 */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
  return `${wholeNumber(count)} ${count === 1 ? noun : plural}`;
}

/**
 * "a", "a and b", "a, b and c".
 *
 * @example joined(['a', 'b', 'c']) // 'a, b and c'
 */
export function joined(parts: readonly string[], word = 'and'): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} ${word} ${parts[parts.length - 1]}`;
}

/**
 * The same text with a capital first letter, for the start of a sentence.
 *
 * @example capitalised('frozen pollen') // 'Frozen pollen'
 */
export function capitalised(text: string): string {
  const [first = '', ...rest] = Array.from(text);
  return first.toUpperCase() + rest.join('');
}

/**
 * Counts as they stand beside each rate.
 *
 * @example counts(7, 20) // '7 of 20'
 */
export function counts(fruits: number, flowers: number): string {
  return `${wholeNumber(fruits)} of ${wholeNumber(flowers)}`;
}

/**
 * A whole percentage: "35%". What would round to nothing or everything is "under 1%" or "over 99%", since a
 * rate of 0 % or 100 % is never known.
 *
 * @throws RangeError if `proportion` is not within 0 to 1
 * @example percent(0.001) // 'under 1%'
 */
export function percent(proportion: number): string {
  checkProportion('percent', proportion);
  return `${bounded(proportion, 100)}%`;
}

/** A proportion counted in `base`, never 0 and never all of them: "4", "under 1", "over 9". */
function bounded(proportion: number, base: Base): string {
  const count = whole(proportion * base);
  if (count < 1) return 'under 1';
  return count > base - 1 ? `over ${base - 1}` : String(count);
}

/** Ten, unless that would round the rate to none or all of them. */
function baseFor(proportion: number): Base {
  const tens = whole(proportion * 10);
  return tens < 1 || tens > 9 ? 100 : 10;
}

/** "about" does not go with "under" and "over". */
function about(count: string): string {
  return /^\d/.test(count) ? `about ${count}` : count;
}

/**
 * A rate as a natural frequency: "about 4 in 10"; below 1 in 20, and from 19 in 20, "about 3 in 100".
 *
 * Answers: how many of ten flowers? When not to use it: alone for a rate that has counts; those come first.
 * Source: natural frequencies, Cochrane review CD006776.
 *
 * @param proportion 0 to 1
 * @throws RangeError if it is not
 * @example inTen(0.35) // 'about 4 in 10'
 */
export function inTen(proportion: number): string {
  checkProportion('inTen', proportion);
  const base = baseFor(proportion);
  return `${about(bounded(proportion, base))} in ${base}`;
}

/** "2 to 6", or one number where both ends are said alike. */
function span(lower: string, upper: string): string {
  return lower === upper ? lower : `${lower} to ${upper}`;
}

/**
 * An estimated rate with its range: "about 4 in 10; could be 2 to 6 in 10".
 *
 * All three are counted in the same base; ten, unless it would round the rate to none or all, or hide the
 * range. An end below 1 in 20, or from 19 in 20, is counted in a hundred: "could be 4 in 100 to 6 in 10". For a rate without a model behind it use `rateWithRange`, which puts the counts first.
 *
 * @param estimate proportions 0 to 1; without an estimate the answer is "can't tell yet"
 * @throws RangeError if one of them is outside 0 to 1
 * @example rate({ estimate: 0.35, lower: 0.18, upper: 0.57 }) // 'about 4 in 10; could be 2 to 6 in 10'
 */
export function rate(estimate: Estimate): string {
  if (estimate.estimate === null) return CANNOT_TELL;
  checkProportion('rate', estimate.estimate);
  const { lower, upper } = estimate;
  if (lower === null || upper === null) return inTen(estimate.estimate);
  const base = baseForRange(estimate.estimate, lower, upper);
  return `${about(bounded(estimate.estimate, base))} in ${base}; could be ${rangeSaid(lower, upper, base)}`;
}

/** "2 to 6 in 10", "4 in 100 to 6 in 10". */
function rangeSaid(lower: number, upper: number, base: Base): string {
  const [low, high] = base === 100 ? [base, base] : [baseFor(lower), baseFor(upper)];
  if (low === high) return `${span(bounded(lower, low), bounded(upper, high))} in ${high}`;
  return `${bounded(lower, low)} in ${low} to ${bounded(upper, high)} in ${high}`;
}

/** What is said where the numbers do not say anything yet. */
export const CANNOT_TELL = 'can’t tell yet';

function baseForRange(estimate: number, lower: number, upper: number): Base {
  return whole(lower * 10) === whole(upper * 10) ? 100 : baseFor(estimate);
}

/**
 * Counts, rate and range of a raw proportion: "7 of 20 (about 4 in 10; could be 2 to 6 in 10)".
 *
 * None and all of them say no rate, only how far it could still be: "0 of 5; could still be as high as 4 in 10".
 * When not to use it: for pooled estimates, whose rate is not fruits ÷ flowers; for those `counts` and `rate`.
 *
 * @example rateWithRange({ fruits: 7, flowers: 20, ...wilson(7, 20) }) // '7 of 20 (about 4 in 10; could be 2 to 6 in 10)'
 */
export function rateWithRange(proportion: Proportion): string {
  const { fruits, flowers, lower, upper } = proportion;
  if (flowers === 0) return 'no flowers';
  const shown = counts(fruits, flowers);
  if (fruits === 0 && upper !== null) return `${shown}; could still be as high as ${limit(upper)}`;
  if (fruits === flowers && lower !== null) return `${shown}; could still be as low as ${limit(lower)}`;
  return proportion.estimate === null ? shown : `${shown} (${rate(proportion)})`;
}

/**
 * One end of a range; never none and never all of them.
 *
 * @example limit(0.4) // '4 in 10'
 */
export function limit(end: number): string {
  const base = baseFor(end);
  return `${bounded(end, base)} in ${base}`;
}

/**
 * A difference fresh minus stored, said of the stored: "about 3 fewer in every 10 (could be 1 to 5)".
 *
 * A range across zero says both directions, that of the estimate first: "could be 4 fewer to 1 more". A difference
 * that would round to nothing in ten is counted in a hundred; one that is nothing even there is "about the same".
 *
 * @param estimate difference of two proportions, −1 to 1, positive where the stored give fewer
 * @example difference({ estimate: 0.3, lower: 0.1, upper: 0.5 }) // 'about 3 fewer in every 10 (could be 1 to 5)'
 */
export function difference(estimate: Estimate): string {
  if (estimate.estimate === null) return CANNOT_TELL;
  const { lower, upper } = estimate;
  const base = differenceBase(estimate.estimate, lower, upper);
  const count = whole(Math.abs(estimate.estimate) * base);
  const said =
    count === 0 ? 'about the same' : `about ${count} ${direction(estimate.estimate)} in every ${base}`;
  if (lower === null || upper === null) return said;
  const range = changes(estimate.estimate, [lower, upper], base);
  return `${said} (could be ${range}${count === 0 ? ` in every ${base}` : ''})`;
}

/** "1 to 4" where both ends go the way of the estimate; across zero each end with its way, "4 fewer to 1 more". */
function changes(estimate: number, [lower, upper]: readonly [number, number], base: Base): string {
  const [near, far] = estimate < 0 ? [upper, lower] : [lower, upper];
  if (near * far < 0) return span(change(far, base), change(near, base));
  const saidBefore = near !== 0 && whole(Math.abs(estimate) * base) > 0;
  const end = saidBefore ? amount : change;
  return span(end(near, base), end(far, base));
}

function differenceBase(estimate: number, lower: number | null, upper: number | null): Base {
  if (whole(Math.abs(estimate) * 10) === 0) return 100;
  return lower !== null && upper !== null && change(lower, 10) === change(upper, 10) ? 100 : 10;
}

function direction(value: number): string {
  return value > 0 ? 'fewer' : 'more';
}

/** One end of a difference: "5 fewer", "under 1 more"; "no different" is for zero itself only. */
function change(value: number, base: Base): string {
  return value === 0 ? 'no different' : `${amount(value, base)} ${direction(value)}`;
}

/** The size of a difference, never nothing: "5", "under 1". */
function amount(value: number, base: Base): string {
  const count = whole(Math.abs(value) * base);
  return count === 0 ? 'under 1' : String(count);
}

/**
 * The one list of likelihood words. Bands follow the tenths as they are said, so that one number never has two
 * words; the words are those of the IPCC's guidance note (Mastrandrea et al. 2010), without its fine ends.
 */
const LIKELIHOOD: readonly { readonly below: number; readonly word: string }[] = [
  { below: 0.05, word: 'very unlikely' },
  { below: 0.35, word: 'unlikely' },
  { below: 0.65, word: 'about as likely as not' },
  { below: 0.95, word: 'likely' },
];

/**
 * The word for a probability, to be used only together with its number, as `likely` does.
 *
 * @example likelihoodWord(0.2) // 'unlikely'
 */
export function likelihoodWord(probability: number): string {
  return LIKELIHOOD.find(({ below }) => probability + 1e-9 < below)?.word ?? 'very likely';
}

/**
 * A probability as a word with its number.
 *
 * @throws RangeError if `probability` is not within 0 to 1
 * @example likely(0.8) // 'likely (about 8 in 10)'
 */
export function likely(probability: number): string {
  checkProportion('likely', probability);
  return `${likelihoodWord(probability)} (${inTen(probability)})`;
}
