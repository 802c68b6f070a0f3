/** The rising factorial x (x + 1) … (x + n − 1) with its logarithmic derivatives, also where x is far above n. */

import { polynomial, stirlingError } from '../numerics/special-functions.ts';

/** Logarithm of the rising factorial over xⁿ, so that it goes to 0 with n² / x, and its derivatives without that xⁿ. */
export interface RisingFactorial {
  /** Σ log(1 + k / x), k from 0 to n − 1. */
  log: number;
  /** Σ 1 / (x + k), digamma(x + n) − digamma(x). */
  first: number;
  /** −Σ 1 / (x + k)², trigamma(x + n) − trigamma(x). */
  second: number;
}

/** Up to this many terms they are added one by one, which is exact to rounding. */
const fewTerms = 24;
/** From here on four terms of the asymptotic series hold to the last digit. */
const asymptoticFrom = 30;

/** B(2k) / 2k and B(2k) for k = 1, 2, … (Abramowitz & Stegun 1964, 6.3.18 and 6.4.12). */
const digammaSeries = [1 / 12, -1 / 120, 1 / 252, -1 / 240];
const trigammaSeries = [1 / 6, -1 / 30, 1 / 42, -1 / 30];

/**
 * Sums over the n factors of the rising factorial, by terms or by asymptotic differences.
 *
 * Differences of `logGamma`, `digamma` or `trigamma` lose all digits where x is large, which is where overdispersed
 * counts meet their limit without overdispersion.
 *
 * @param x above 0
 * @param n a whole number of at least 0
 * @param target where the three sums are written
 */
export function risingFactorial(x: number, n: number, target: RisingFactorial): RisingFactorial {
  const one = n <= fewTerms ? n : Math.min(n, Math.max(0, Math.ceil(asymptoticFrom - x)));
  target.log = 0;
  target.first = 0;
  target.second = 0;
  for (let k = 0; k < one; k += 1) {
    const inverse = 1 / (x + k);
    target.log += Math.log1p(k / x);
    target.first += inverse;
    target.second -= inverse * inverse;
  }
  if (one < n) addAsymptotic(x, one, n - one, target);
  return target;
}

/** Adds the n terms from x + skipped on. */
function addAsymptotic(x: number, skipped: number, n: number, target: RisingFactorial): void {
  const from = x + skipped;
  const to = from + n;
  const logRatio = Math.log1p(n / from);
  target.log +=
    n * Math.log1p(skipped / x) + (to - 0.5) * logRatio - n + stirlingError(to) - stirlingError(from);
  target.first += logRatio + n / (2 * from * to) + digammaTail(from) - digammaTail(to);
  target.second += -n / (from * to) + trigammaTail(to) - trigammaTail(from);
}

/** log x − 1 / 2x − digamma(x). */
function digammaTail(x: number): number {
  const inverse = 1 / (x * x);
  return inverse * polynomial(digammaSeries, inverse);
}

/** trigamma(x) − 1 / x. */
function trigammaTail(x: number): number {
  const inverse = 1 / (x * x);
  return inverse / 2 + (inverse * polynomial(trigammaSeries, inverse)) / x;
}
