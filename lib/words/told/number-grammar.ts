/**
 * How numbers are counted and rounded before a language says them: flowers of ten or of a hundred, never none and never
 * all of them. Each language gives its few phrases and gets the same numbers in its own words.
 */
import type { Estimate, Proportion } from '../../proportions/interval.ts';

/** What "about" and "could be" are counted in: flowers of ten, or of a hundred where ten is too coarse. */
export type Base = 10 | 100;

/** The phrases in which a language says its numbers. */
export interface NumberGrammar {
  readonly decimalMark: '.' | ',';
  /** "7 of 20". */
  readonly counts: (fruits: string, flowers: string) => string;
  readonly percent: (count: string) => string;
  /** "4 in 10"; `count` may be "under 1" or "2 to 6". */
  readonly inBase: (count: string, base: Base) => string;
  readonly under: (count: number) => string;
  readonly over: (count: number) => string;
  readonly about: (count: string) => string;
  readonly span: (lower: string, upper: string) => string;
  /** Between a number and what it leaves open: "; ", with a space before it in French. */
  readonly semicolon: string;
  /** "could be 2 to 6 in 10". */
  readonly couldBe: (range: string) => string;
  readonly asHighAs: (limit: string) => string;
  readonly asLowAs: (limit: string) => string;
  readonly noFlowers: string;
  readonly cannotTell: string;
  readonly aboutTheSame: string;
  readonly noDifferent: string;
  /** The end of a difference's range that reaches across zero by less than can be counted: "about as many". */
  readonly aboutAsMany: string;
  /** "5 fewer", "under 1 more". */
  readonly change: (amount: string, way: 'fewer' | 'more') => string;
  /** "3 fewer in every 10"; `change` has the way already. */
  readonly inEvery: (change: string, base: Base) => string;
  /** From "very unlikely" to "very likely". */
  readonly likelihood: readonly [string, string, string, string, string];
}

/** Numbers as a language says them. */
export interface NumberWords {
  readonly wholeNumber: (value: number) => string;
  readonly decimal: (value: number, places: number) => string;
  readonly counts: (fruits: number, flowers: number) => string;
  readonly percent: (proportion: number) => string;
  readonly inTen: (proportion: number) => string;
  readonly rate: (estimate: Estimate) => string;
  readonly rateWithRange: (proportion: Proportion) => string;
  readonly rateInText: (proportion: Proportion) => string;
  readonly limit: (end: number) => string;
  readonly difference: (estimate: Estimate) => string;
  readonly likelihoodWord: (probability: number) => string;
  readonly likely: (probability: number) => string;
  readonly likelyBeside: (probability: number, line: number) => string;
}

/**
 * Rounds to the nearest whole number, halves upwards. The tiny shift keeps a half a half when it was reached by
 * a sum whose last digit differs between engines (0.35 × 10 is 3.5 or 3.4999999999999996).
 */
function whole(value: number): number {
  return Math.floor(value + 0.5 + 1e-9);
}

/** Ten, unless that would round the rate to none or all of them. */
function baseFor(proportion: number): Base {
  const tens = whole(proportion * 10);
  return tens < 1 || tens > 9 ? 100 : 10;
}

function baseForRange(estimate: number, lower: number, upper: number): Base {
  return whole(lower * 10) === whole(upper * 10) ? 100 : baseFor(estimate);
}

function checkProportion(caller: string, value: number): void {
  if (!(value >= 0 && value <= 1)) {
    throw new RangeError(`${caller}: estimate must be a proportion from 0 to 1, got ${value}`);
  }
}

/** A whole number, in groups of three from 10 000 on, with a narrow space that no language reads as a decimal sign. */
export function groupedNumber(value: number): string {
  const digits = String(Math.abs(whole(value)));
  const grouped = digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, '\u202F');
  return whole(value) < 0 ? `−${grouped}` : grouped;
}

/** A number with a fixed count of decimals and a true minus sign. Never "−0.00". */
function decimalNumber(value: number, places: number, mark: string): string {
  const digits = Math.abs(value).toFixed(places);
  const marked = digits.replace('.', mark);
  return value < 0 && Number(digits) !== 0 ? `−${marked}` : marked;
}

const LIKELIHOOD_ENDS = [0.05, 0.35, 0.65, 0.95];

/**
 * The functions by which a language says numbers.
 *
 * @param grammar its phrases
 */
export function numbersIn(grammar: NumberGrammar): NumberWords {
  const rates = ratesIn(grammar);
  const { inTen } = rates;
  const likelihoodWord = (probability: number): string => {
    const band = LIKELIHOOD_ENDS.findIndex((end) => probability + 1e-9 < end);
    return grammar.likelihood[band < 0 ? 4 : band]!;
  };
  return {
    wholeNumber: groupedNumber,
    decimal: (value, places) => decimalNumber(value, places, grammar.decimalMark),
    counts: (fruits, flowers) => grammar.counts(groupedNumber(fruits), groupedNumber(flowers)),
    ...rates,
    difference: differenceIn(grammar),
    likelihoodWord,
    likely: (probability) => {
      checkProportion('likely', probability);
      return `${likelihoodWord(probability)} (${inTen(probability)})`;
    },
    likelyBeside: (probability, line) => {
      checkProportion('likelyBeside', probability);
      return `${likelihoodWord(probability)} (${besideLine(grammar, probability, line) ?? inTen(probability)})`;
    },
  };
}

/** A count as it stands before its base: "4", "under 1", "over 9"; "about" goes with the first alone. */
interface Counted {
  readonly said: string;
  readonly open: boolean;
}

function countedIn({ under, over }: NumberGrammar, proportion: number, base: Base): Counted {
  const count = whole(proportion * base);
  if (count < 1) return { said: under(1), open: true };
  return count > base - 1 ? { said: over(base - 1), open: true } : { said: String(count), open: false };
}

/**
 * A probability in a hundred where ten would say it like the line that it is held against; what falls short of the line
 * never reaches it by rounding. Null where ten tells the two apart.
 */
function besideLine(
  { inBase, about, under }: NumberGrammar,
  probability: number,
  line: number,
): string | null {
  if (whole(10 * probability) !== whole(10 * line)) return null;
  const mark = whole(100 * line);
  const count = whole(100 * probability);
  return inBase(probability < line && count >= mark ? under(mark) : about(String(count)), 100);
}

type Rates = Pick<NumberWords, 'percent' | 'inTen' | 'rate' | 'rateWithRange' | 'rateInText' | 'limit'>;

function ratesIn(grammar: NumberGrammar): Rates {
  const { about, inBase, cannotTell } = grammar;
  const bounded = (proportion: number, base: Base) => countedIn(grammar, proportion, base).said;
  const point = (proportion: number, base: Base): string => {
    const { said, open } = countedIn(grammar, proportion, base);
    return inBase(open ? said : about(said), base);
  };
  const inTen = (proportion: number): string => {
    checkProportion('inTen', proportion);
    return point(proportion, baseFor(proportion));
  };
  /** Both ends are counted in the same: in a hundred where ten is too coarse for one of them. */
  const range = (lower: number, upper: number, base: Base): string => {
    const both = [base, baseFor(lower), baseFor(upper)].includes(100) ? 100 : 10;
    return inBase(span(grammar, bounded(lower, both), bounded(upper, both)), both);
  };
  const rate = ({ estimate, lower, upper }: Estimate): string => {
    if (estimate === null) return cannotTell;
    checkProportion('rate', estimate);
    if (lower === null || upper === null) return inTen(estimate);
    const base = baseForRange(estimate, lower, upper);
    return `${point(estimate, base)}${grammar.semicolon}${grammar.couldBe(range(lower, upper, base))}`;
  };
  const limit = (end: number): string => inBase(bounded(end, baseFor(end)), baseFor(end));
  return {
    percent: (proportion) => {
      checkProportion('percent', proportion);
      return grammar.percent(bounded(proportion, 100));
    },
    ...{ inTen, rate, limit },
    rateWithRange: (proportion) => rangedRate(grammar, proportion, { rate, limit }),
    rateInText: (proportion) =>
      rangedRate(grammar, proportion, { rate, limit }, (shown, end) => `${shown} (${end})`),
  };
}

function rangedRate(
  grammar: NumberGrammar,
  proportion: Proportion,
  { rate, limit }: Pick<NumberWords, 'rate' | 'limit'>,
  withEnd = (shown: string, end: string): string => `${shown}${grammar.semicolon}${end}`,
): string {
  const { fruits, flowers, lower, upper } = proportion;
  if (flowers === 0) return grammar.noFlowers;
  const shown = grammar.counts(groupedNumber(fruits), groupedNumber(flowers));
  if (fruits === 0 && upper !== null) return withEnd(shown, grammar.asHighAs(limit(upper)));
  if (fruits === flowers && lower !== null) return withEnd(shown, grammar.asLowAs(limit(lower)));
  return proportion.estimate === null ? shown : `${shown} (${rate(proportion)})`;
}

/** "2 to 6", or one number where both ends are said alike. */
function span(grammar: NumberGrammar, lower: string, upper: string): string {
  return lower === upper ? lower : grammar.span(lower, upper);
}

function differenceIn(grammar: NumberGrammar): NumberWords['difference'] {
  const amount = (value: number, base: Base): string => {
    const count = whole(Math.abs(value) * base);
    return count === 0 ? grammar.under(1) : String(count);
  };
  /** One end of a difference; "no different" is for zero itself only. */
  const change = (value: number, base: Base): string =>
    value === 0 ? grammar.noDifferent : grammar.change(amount(value, base), wayOf(value));
  const baseOf = (estimate: number, lower: number | null, upper: number | null): Base => {
    if (whole(Math.abs(estimate) * 10) === 0) return 100;
    return lower !== null && upper !== null && change(lower, 10) === change(upper, 10) ? 100 : 10;
  };
  /** An end of a range across zero: one too small to count is neither fewer nor more. */
  const across = (value: number, base: Base): string =>
    whole(Math.abs(value) * base) === 0 ? grammar.aboutAsMany : change(value, base);
  /** "1 to 4" where both ends go the way of the estimate; across zero each end with its way, "4 fewer to 1 more". */
  const changes = (estimate: number, lower: number, upper: number, base: Base): string => {
    const [near, far] = estimate < 0 ? [upper, lower] : [lower, upper];
    if (near * far < 0) return span(grammar, across(far, base), across(near, base));
    const saidBefore = near !== 0 && whole(Math.abs(estimate) * base) > 0;
    const end = saidBefore ? amount : change;
    return span(grammar, end(near, base), end(far, base));
  };
  return ({ estimate, lower, upper }) => {
    if (estimate === null) return grammar.cannotTell;
    const base = baseOf(estimate, lower, upper);
    const count = whole(Math.abs(estimate) * base);
    const size = grammar.about(String(count));
    const said =
      count === 0 ? grammar.aboutTheSame : grammar.inEvery(grammar.change(size, wayOf(estimate)), base);
    if (lower === null || upper === null) return said;
    const range = changes(estimate, lower, upper, base);
    return `${said} (${grammar.couldBe(count === 0 ? grammar.inEvery(range, base) : range)})`;
  };
}

function wayOf(value: number): 'fewer' | 'more' {
  return value > 0 ? 'fewer' : 'more';
}
