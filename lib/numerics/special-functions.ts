import { checkPositive } from './arguments.ts';
import { complementRest, productRest } from './rounding.ts';

const LOG_SQRT_TWO_PI = 0.9189385332046728;
const EULER_GAMMA = 0.5772156649015329;

/** zeta(k) − 1 for k = 2, 3, …: the coefficients of log gamma about 2 (Abramowitz & Stegun 1964, 6.1.33). */
// biome-ignore format: a table
const ZETA_MINUS_ONE = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914,
  0.008349277381922827, 0.00407735619794434, 0.0020083928260822143, 0.0009945751278180853,
  0.0004941886041194645, 0.0002460865533080483, 0.00012271334757848915, 0.00006124813505870483,
  0.00003058823630702049, 0.00001528225940865187, 0.000007637197637899763, 0.00000381729326499984,
  0.000001908212716553939, 9.539620338727962e-7, 4.769329867878064e-7, 2.38450502727733e-7,
  1.1921992596531106e-7, 5.960818905125948e-8, 2.980350351465228e-8, 1.490155482836504e-8,
  7.45071178983543e-9,
];

/** B(2k) / (2k (2k − 1)) for k = 1, 2, …: Stirling's series (Abramowitz & Stegun 1964, 6.1.42). */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

/** Value of c0 + c1 x + c2 x² + … by Horner's rule. */
export function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) sum = sum * x + coefficients[i]!;
  return sum;
}

function stirlingSeries(x: number): number {
  return polynomial(STIRLING, 1 / (x * x)) / x;
}

/** log gamma(2 + z) for |z| ≤ 1/2, exact to relative rounding at its zero z = 0. */
function logGammaAboutTwo(z: number): number {
  return z * (1 - EULER_GAMMA + z * alternating(z));
}

function alternating(z: number): number {
  let sum = 0;
  for (let k = ZETA_MINUS_ONE.length + 1; k >= 2; k -= 1) sum = ZETA_MINUS_ONE[k - 2]! / k - z * sum;
  return sum;
}

/**
 * Logarithm of the gamma function.
 *
 * Answers log Γ(x), which is log (x − 1)! for whole x, without overflow; accurate relatively even at its zeros 1 and 2.
 *
 * @param x finite number above 0
 * @returns log Γ(x)
 * @throws RangeError or TypeError when x is not a finite number above 0
 * @source Abramowitz & Stegun (1964) 6.1.33 (series about 2), 6.1.15 (recurrence), 6.1.41 (Stirling)
 * @example logGamma(0.5) // 0.5723649429247001
 */
export function logGamma(x: number): number {
  checkPositive('logGamma', 'x', x);
  if (x >= 15) return (x - 0.5) * Math.log(x) - x + LOG_SQRT_TWO_PI + stirlingSeries(x);
  if (x < 0.5) return logGammaAboutTwo(x) - Math.log1p(x) - Math.log(x);
  if (x < 1.5) return logGammaAboutTwo(x - 1) - Math.log1p(x - 1);
  let product = 1;
  let shifted = x;
  while (shifted > 2.5) {
    shifted -= 1;
    product *= shifted;
  }
  return Math.log(product) + logGammaAboutTwo(shifted - 2);
}

/**
 * Error of Stirling's formula: log Γ(x + 1) − ((x + 1/2) log x − x + log √(2π)), x > 0.
 *
 * Taken apart from log gamma, so that the large terms of a density cancel before they are computed.
 *
 * @source Loader (2000) Fast and accurate computation of binomial probabilities, section 3
 */
export function stirlingError(x: number): number {
  if (x >= 15) return stirlingSeries(x);
  return logGamma(x + 1) - (x + 0.5) * Math.log(x) + x - LOG_SQRT_TWO_PI;
}

/**
 * Deviance term x log(x / mu) + mu − x for x ≥ 0, mu > 0, without cancellation where x is near mu.
 *
 * @source Loader (2000) Fast and accurate computation of binomial probabilities, equation 5 (bd0)
 */
export function devianceTerm(x: number, mu: number): number {
  if (x === 0) return mu;
  const difference = x - mu;
  if (Math.abs(difference) >= 0.1 * (x + mu)) {
    const logRatio = Math.log(x / mu);
    // The ratio may leave the doubles where the two numbers do not.
    return x * (Number.isFinite(logRatio) ? logRatio : Math.log(x) - Math.log(mu)) - difference;
  }
  const v = difference / (x + mu);
  const v2 = v * v;
  let sum = difference * v;
  let term = 2 * x * v;
  for (let odd = 3; ; odd += 2) {
    term *= v2;
    const next = sum + term / odd;
    if (next === sum) return next;
    sum = next;
  }
}

/**
 * Deviance terms of x about n p and of n − x about n q, together; the smaller of the shares p and q is taken as exact,
 * the other as 1 less it.
 *
 * A thousand standard deviations' worth of distance multiplies the rounding of a mean, so its rest is put back.
 */
export function shareDeviance(x: number, rest: number, p: number, q: number): number {
  const n = x + rest;
  return (
    restoredDeviance(x, n * p, productRest(n, p) + n * complementRest(p, q)) +
    restoredDeviance(rest, n * q, productRest(n, q) + n * complementRest(q, p))
  );
}

/** Deviance term about mu + lost, where `lost` is far smaller than mu. */
export function restoredDeviance(x: number, mu: number, lost: number): number {
  const change = (1 - x / mu) * lost;
  return devianceTerm(x, mu) + (Number.isFinite(change) ? change : 0);
}

/** Sums a recurrence in x up to where the asymptotic series holds to the last digit. */
const ASYMPTOTIC_FROM = 15;

/** B(2k) / 2k and B(2k) for k = 1, 2, … (Abramowitz & Stegun 1964, 6.3.18 and 6.4.12). */
const DIGAMMA_SERIES = [1 / 12, -1 / 120, 1 / 252, -1 / 240, 1 / 132, -691 / 32760, 1 / 12];
const TRIGAMMA_SERIES = [1 / 6, -1 / 30, 1 / 42, -1 / 30, 5 / 66, -691 / 2730, 7 / 6];

/**
 * Digamma function, the derivative of log gamma.
 *
 * Answers ψ(x) = Γ′(x) / Γ(x), the mean of the logarithm of a gamma variable with shape x and scale 1.
 *
 * @param x finite number above 0
 * @returns ψ(x); near its zero 1.4616 the error is small absolutely, not relatively
 * @throws RangeError or TypeError when x is not a finite number above 0
 * @source Abramowitz & Stegun (1964) 6.3.5 (recurrence), 6.3.18 (asymptotic series)
 * @example digamma(2) // 0.42278433...
 */
export function digamma(x: number): number {
  checkPositive('digamma', 'x', x);
  let sum = 0;
  let shifted = x;
  while (shifted < ASYMPTOTIC_FROM) {
    sum += 1 / shifted;
    shifted += 1;
  }
  const inverse = 1 / (shifted * shifted);
  return Math.log(shifted) - 0.5 / shifted - inverse * polynomial(DIGAMMA_SERIES, inverse) - sum;
}

/**
 * Trigamma function, the second derivative of log gamma.
 *
 * Answers ψ′(x), the variance of the logarithm of a gamma variable with shape x.
 *
 * @param x finite number above 0
 * @returns ψ′(x)
 * @throws RangeError or TypeError when x is not a finite number above 0
 * @source Abramowitz & Stegun (1964) 6.4.6 (recurrence), 6.4.12 (asymptotic series)
 * @example trigamma(2) // 0.6449340668482264
 */
export function trigamma(x: number): number {
  checkPositive('trigamma', 'x', x);
  let sum = 0;
  let shifted = x;
  while (shifted < ASYMPTOTIC_FROM) {
    sum += 1 / (shifted * shifted);
    shifted += 1;
  }
  const inverse = 1 / (shifted * shifted);
  return sum + 1 / shifted + inverse / 2 + (inverse * polynomial(TRIGAMMA_SERIES, inverse)) / shifted;
}
