import { checkNumber, checkPositive, checkProbability } from './arguments.ts';
import { betaTails, EDGE, logEdge, logitQuantile } from './beta.ts';
import { type LogOption, normalCdf, normalDensity, normalQuantile, type TailOption } from './normal.ts';
import { devianceTerm, stirlingError } from './special-functions.ts';

const LOG_SQRT_TWO_PI = 0.9189385332046728;

function checkDf(caller: string, df: number): void {
  if (df !== Infinity) checkPositive(caller, 'df', df);
}

/**
 * Density of Student's t distribution.
 *
 * @param t number
 * @param df degrees of freedom, above 0; Infinity is the normal distribution
 * @param options `log: true` for its natural logarithm
 * @returns density at t
 * @throws RangeError or TypeError naming the argument
 * @source Loader (2000) Fast and accurate computation of binomial probabilities, section 5
 * @example studentDensity(0, 1) // 0.3183098861837907
 */
export function studentDensity(t: number, df: number, { log = false }: LogOption = {}): number {
  checkNumber('studentDensity', 't', t);
  checkDf('studentDensity', df);
  if (df === Infinity) return normalDensity(t, { log });
  const value = logStudentDensity(Math.abs(t), df);
  return log ? value : Math.exp(value);
}

function logStudentDensity(t: number, df: number): number {
  if (t === Infinity) return -Infinity;
  const half = df / 2;
  const constant = stirlingError(half + 0.5) - stirlingError(half) - devianceTerm(half, half + 0.5);
  const ratio = t / Math.sqrt(df);
  // log √(1 + t²/df), where t² may overflow.
  const logRoot = ratio > 1e8 ? Math.log(ratio) : Math.log1p(ratio * ratio) / 2;
  const power = ratio * ratio > 0.2 ? df * logRoot : (t * t) / 2 - devianceTerm(half, half + (t * t) / 2);
  return constant - power - logRoot - LOG_SQRT_TWO_PI;
}

/**
 * Cumulative distribution function of Student's t distribution.
 *
 * Answers P(T ≤ t), or P(T > t) with `tail: 'upper'`.
 *
 * @param t number
 * @param df degrees of freedom, above 0, not necessarily whole; Infinity is the normal distribution
 * @param options `tail`, `lower` by default
 * @returns probability
 * @throws RangeError or TypeError naming the argument
 * @source Abramowitz & Stegun (1964) 26.7.1, by the incomplete beta function
 * @example studentCdf(2, 5) // 0.94903026...
 */
export function studentCdf(t: number, df: number, { tail = 'lower' }: TailOption = {}): number {
  checkNumber('studentCdf', 't', t);
  checkDf('studentCdf', df);
  if (df === Infinity) return normalCdf(t, { tail });
  if (t === 0) return 0.5;
  const outside = outsideTail(Math.abs(t), df);
  return t < 0 === (tail === 'lower') ? outside : 1 - outside;
}

/** P(T > t) for t > 0. */
function outsideTail(t: number, df: number): number {
  const ratio = (t / df) * t;
  // So far out that t² may leave the doubles, the tail is a power of t.
  if (ratio > 1 / EDGE) return Math.exp(df * (Math.log(df) / 2 - Math.log(t)) - logEdge(df / 2, 0.5)) / 2;
  return betaTails(1 / (1 + ratio), 1 / (1 + 1 / ratio), df / 2, 0.5).lower / 2;
}

/**
 * Quantile function of Student's t distribution.
 *
 * Answers the t that has probability p to its left, or to its right with `tail: 'upper'`.
 *
 * @param p probability, from 0 to 1
 * @param df degrees of freedom, above 0; Infinity is the normal distribution
 * @param options `tail`, `lower` by default
 * @returns t; −Infinity or Infinity at p = 0 and 1, and where t would leave the doubles (p = 1e-80 at df 0.1)
 * @throws RangeError or TypeError naming the argument
 * @source Abramowitz & Stegun (1964) 26.7.1; see `betaQuantile`
 * @example studentQuantile(0.975, 10) // 2.2281388519862744
 */
export function studentQuantile(p: number, df: number, { tail = 'lower' }: TailOption = {}): number {
  checkProbability('studentQuantile', 'p', p);
  checkDf('studentQuantile', df);
  if (df === Infinity) return normalQuantile(p, { tail });
  const sign = p < 0.5 === (tail === 'lower') ? -1 : 1;
  const outside = p < 0.5 ? p : 1 - p;
  if (outside === 0) return sign * Infinity;
  if (outside === 0.5) return 0;
  // T² = df (1 − X) / X with X beta, whose logit is at hand.
  const logit = logitQuantile(2 * outside, df / 2, 0.5, 'lower');
  return sign * Math.sqrt(df) * Math.exp(-logit / 2);
}
