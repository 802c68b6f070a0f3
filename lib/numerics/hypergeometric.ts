import { checkNumber, checkProbability, checkWhole } from './arguments.ts';
import { firstWhole, logBinomialTerm, reaches } from './binomial.ts';
import type { LogOption, Tail, TailOption } from './normal.ts';

/** An urn of `marked` + `unmarked` balls from which `drawn` are taken without return. */
interface Urn {
  readonly marked: number;
  readonly unmarked: number;
  readonly drawn: number;
}

function checkUrn(caller: string, { marked, unmarked, drawn }: Urn): void {
  checkWhole(caller, 'marked', marked);
  checkWhole(caller, 'unmarked', unmarked);
  checkWhole(caller, 'drawn', drawn);
  if (drawn > marked + unmarked) {
    throw new RangeError(
      `${caller}: drawn must be at most marked + unmarked (${marked + unmarked}), got ${drawn}`,
    );
  }
}

/** log P(X = x) as a ratio of binomial terms, any common p giving the same; drawn / all keeps each large (Loader 2000). */
function logTerm(x: number, { marked, unmarked, drawn }: Urn): number {
  const all = marked + unmarked;
  if (all === 0) return x === 0 ? 0 : -Infinity;
  const [p, q] = [drawn / all, (all - drawn) / all];
  const terms = logBinomialTerm(x, marked, p, q) + logBinomialTerm(drawn - x, unmarked, p, q);
  return terms - logBinomialTerm(drawn, all, p, q);
}

/**
 * Probability of x marked balls among those drawn, hypergeometric distribution.
 *
 * @param x number; the probability is 0 where x cannot be drawn
 * @param marked m, balls of the kind that is counted
 * @param unmarked n, the other balls
 * @param drawn k, balls drawn without return, at most m + n
 * @param options `log: true` for its natural logarithm
 * @returns probability of x
 * @throws RangeError or TypeError naming the argument
 * @source Loader (2000) Fast and accurate computation of binomial probabilities
 * @example hypergeometricDensity(3, 4, 4, 4) // 0.22857142...
 */
export function hypergeometricDensity(
  x: number,
  marked: number,
  unmarked: number,
  drawn: number,
  { log = false }: LogOption = {},
): number {
  checkNumber('hypergeometricDensity', 'x', x);
  checkUrn('hypergeometricDensity', { marked, unmarked, drawn });
  const value = Number.isInteger(x) ? logTerm(x, { marked, unmarked, drawn }) : -Infinity;
  return log ? value : Math.exp(value);
}

/** P(X = x) + P(X = x − 1) + …, each term from the one before. */
function sumBelow(x: number, urn: Urn): number {
  let term = 1;
  let sum = 1;
  for (let i = x; i > 0 && term > sum * 1e-17; i -= 1) {
    term *= (i / (urn.marked - i + 1)) * ((urn.unmarked - urn.drawn + i) / (urn.drawn - i + 1));
    sum += term;
  }
  return sum * Math.exp(logTerm(x, urn));
}

/** The same urn seen by the unmarked balls: P(X > x) is P(drawn − X ≤ drawn − x − 1). */
function mirrored({ marked, unmarked, drawn }: Urn): Urn {
  return { marked: unmarked, unmarked: marked, drawn };
}

/**
 * Cumulative distribution function of the hypergeometric distribution.
 *
 * Answers P(X ≤ x), or P(X > x) with `tail: 'upper'` (x itself is never in the upper tail).
 *
 * @param x number
 * @param marked m, balls of the kind that is counted
 * @param unmarked n, the other balls
 * @param drawn k, balls drawn without return, at most m + n
 * @param options `tail`, `lower` by default
 * @returns probability; the tail that lies away from the mean is summed, the other is its complement if it is not the smaller
 * @throws RangeError or TypeError naming the argument
 * @source the definition; first term of Loader (2000)
 * @example hypergeometricCdf(2, 4, 4, 4) // 0.7571428571428571
 */
export function hypergeometricCdf(
  x: number,
  marked: number,
  unmarked: number,
  drawn: number,
  { tail = 'lower' }: TailOption = {},
): number {
  checkNumber('hypergeometricCdf', 'x', x);
  const urn = { marked, unmarked, drawn };
  checkUrn('hypergeometricCdf', urn);
  const whole = Math.floor(x);
  if (whole < Math.max(0, drawn - unmarked)) return tail === 'lower' ? 0 : 1;
  if (whole >= Math.min(marked, drawn)) return tail === 'lower' ? 1 : 0;
  const belowMean = whole < (marked / (marked + unmarked)) * drawn;
  const direct = (side: Tail) =>
    Math.min(1, side === 'lower' ? sumBelow(whole, urn) : sumBelow(drawn - whole - 1, mirrored(urn)));
  const sum = direct(belowMean ? 'lower' : 'upper');
  if (belowMean === (tail === 'lower')) return sum;
  // Beside the mean the other tail may be far the smaller one, where the distribution is lopsided.
  return sum > 0.5 ? direct(tail) : 1 - sum;
}

/**
 * Quantile function of the hypergeometric distribution.
 *
 * Answers the smallest x with P(X ≤ x) ≥ p, or with P(X > x) ≤ p for `tail: 'upper'`.
 *
 * @param p probability, from 0 to 1
 * @param marked m, balls of the kind that is counted
 * @param unmarked n, the other balls
 * @param drawn k, balls drawn without return, at most m + n
 * @param options `tail`, `lower` by default
 * @returns a whole number
 * @throws RangeError or TypeError naming the argument
 * @source the definition, by bisection
 * @example hypergeometricQuantile(0.5, 10, 7, 8) // 5
 */
export function hypergeometricQuantile(
  p: number,
  marked: number,
  unmarked: number,
  drawn: number,
  options: TailOption = {},
): number {
  checkProbability('hypergeometricQuantile', 'p', p);
  checkUrn('hypergeometricQuantile', { marked, unmarked, drawn });
  const [least, most] = [Math.max(0, drawn - unmarked), Math.min(marked, drawn)];
  return firstWhole(least, most, (x) =>
    reaches(p, hypergeometricCdf(x, marked, unmarked, drawn, options), options),
  );
}
