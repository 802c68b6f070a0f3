/**
 * How a number is said: counts first, whole numbers, natural frequencies, a range with every rate.
 *
 * Every text, table and chart for growers takes its numbers from here, so that one number is said in one way
 * (ranges as outcomes: Hofman, Goldstein & Hullman 2020; words with numbers: Wintle et al. 2019). The level of
 * the ranges is said once in a report and nowhere in here. Nothing depends on the machine's language.
 */
import type { Estimate, Proportion } from '../proportions/interval.ts';
import { numbersIn } from './told/number-grammar.ts';

/** English phrases of numbers. */
const english = numbersIn({
  decimalMark: '.',
  counts: (fruits, flowers) => `${fruits} of ${flowers}`,
  percent: (count) => `${count}%`,
  inBase: (count, base) => `${count} in ${base}`,
  under: (count) => `under ${count}`,
  over: (count) => `over ${count}`,
  about: (count) => `about ${count}`,
  span: (lower, upper) => `${lower} to ${upper}`,
  semicolon: '; ',
  couldBe: (range) => `could be ${range}`,
  asHighAs: (end) => `could still be as high as ${end}`,
  asLowAs: (end) => `could still be as low as ${end}`,
  noFlowers: 'no flowers',
  cannotTell: 'can’t tell yet',
  aboutTheSame: 'about the same',
  noDifferent: 'no different',
  aboutAsMany: 'about as many',
  change: (amount, way) => `${amount} ${way}`,
  inEvery: (change, base) => `${change} in every ${base}`,
  // Bands follow the tenths as they are said, so that one number never has two words; the words are those of the
  // IPCC's guidance note (Mastrandrea et al. 2010), without its fine ends.
  likelihood: ['very unlikely', 'unlikely', 'about as likely as not', 'likely', 'very likely'],
});

/**
 * A whole number, in groups of three from 10 000 on, with a narrow space that no language reads as a decimal sign.
 *
 * @example wholeNumber(1999.5) // '2000'
 */
export function wholeNumber(value: number): string {
  return english.wholeNumber(value);
}

/**
 * A number with a fixed count of decimals and a true minus sign. Never "−0.00".
 *
 * @example decimal(-0.5, 2) // '−0.50'
 */
export function decimal(value: number, places: number): string {
  return english.decimal(value, places);
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
 * "head: text", with the space that a language puts before a colon.
 *
 * @example headed('frozen', '7 of 20') // 'frozen: 7 of 20'
 */
export function headed(head: string, text: string): string {
  return `${head}: ${text}`;
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
  return english.counts(fruits, flowers);
}

/**
 * A whole percentage: "35%". What would round to nothing or everything is "under 1%" or "over 99%", since a
 * rate of 0 % or 100 % is never known.
 *
 * @throws RangeError if `proportion` is not within 0 to 1
 * @example percent(0.001) // 'under 1%'
 */
export function percent(proportion: number): string {
  return english.percent(proportion);
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
  return english.inTen(proportion);
}

/**
 * An estimated rate with its range: "about 4 in 10; could be 2 to 6 in 10".
 *
 * All three are counted in the same base; ten, unless it would round the rate to none or all, or hide the
 * range. Where an end is below 1 in 20, or from 19 in 20, both ends are counted in a hundred: "could be 4 to 60 in 100".
 * For a rate without a model behind it use `rateWithRange`, which puts the counts first.
 *
 * @param estimate proportions 0 to 1; without an estimate the answer is "can't tell yet"
 * @throws RangeError if one of them is outside 0 to 1
 * @example rate({ estimate: 0.35, lower: 0.18, upper: 0.57 }) // 'about 4 in 10; could be 2 to 6 in 10'
 */
export function rate(estimate: Estimate): string {
  return english.rate(estimate);
}

/** What is said where the numbers do not say anything yet. */
export const CANNOT_TELL = 'can’t tell yet';

/**
 * Counts, rate and range of a raw proportion: "7 of 20 (about 4 in 10; could be 2 to 6 in 10)".
 *
 * None and all of them say no rate, only how far it could still be: "0 of 5; could still be as high as 4 in 10".
 * When not to use it: for pooled estimates, whose rate is not fruits ÷ flowers; for those `counts` and `rate`.
 *
 * @example rateWithRange({ fruits: 7, flowers: 20, ...wilson(7, 20) }) // '7 of 20 (about 4 in 10; could be 2 to 6 in 10)'
 */
export function rateWithRange(proportion: Proportion): string {
  return english.rateWithRange(proportion);
}

/**
 * The same to stand inside a sentence, which may go on behind it: "0 of 5 (could still be as high as 4 in 10)".
 *
 * @example rateInText({ fruits: 0, flowers: 5, ...wilson(0, 5) }) // '0 of 5 (could still be as high as 4 in 10)'
 */
export function rateInText(proportion: Proportion): string {
  return english.rateInText(proportion);
}

/**
 * One end of a range; never none and never all of them.
 *
 * @example limit(0.4) // '4 in 10'
 */
export function limit(end: number): string {
  return english.limit(end);
}

/**
 * A difference fresh minus stored, said of the stored: "about 3 fewer in every 10 (could be 1 to 5)".
 *
 * A range across zero says both directions, that of the estimate first: "could be 4 fewer to 1 more"; an end that would
 * round to nothing is "about as many". A difference
 * that would round to nothing in ten is counted in a hundred; one that is nothing even there is "about the same".
 *
 * @param estimate difference of two proportions, −1 to 1, positive where the stored give fewer
 * @example difference({ estimate: 0.3, lower: 0.1, upper: 0.5 }) // 'about 3 fewer in every 10 (could be 1 to 5)'
 */
export function difference(estimate: Estimate): string {
  return english.difference(estimate);
}

/**
 * The word for a probability, to be used only together with its number, as `likely` does.
 *
 * @example likelihoodWord(0.2) // 'unlikely'
 */
export function likelihoodWord(probability: number): string {
  return english.likelihoodWord(probability);
}

/**
 * A probability as a word with its number.
 *
 * @throws RangeError if `probability` is not within 0 to 1
 * @example likely(0.8) // 'likely (about 8 in 10)'
 */
export function likely(probability: number): string {
  return english.likely(probability);
}

/**
 * A probability as a word with its number, where it is held against a line: what falls short of the line is never said
 * as if it had reached it.
 *
 * @param line 0 to 1
 * @throws RangeError if `probability` is not within 0 to 1
 * @example likelyBeside(0.783, 0.8) // 'likely (about 78 in 100)'
 */
export function likelyBeside(probability: number, line: number): string {
  return english.likelyBeside(probability, line);
}
