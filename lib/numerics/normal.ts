import { checkNumber, checkProbability } from './arguments.ts';
import { polynomial } from './special-functions.ts';

/** Which tail a probability belongs to: `lower` is P(X ≤ x), the default; `upper` is P(X > x). */
export type Tail = 'lower' | 'upper';

/** Option of cumulative distribution and quantile functions. */
export interface TailOption {
  readonly tail?: Tail;
}

/** Option of densities: `log: true` gives the natural logarithm. */
export interface LogOption {
  readonly log?: boolean;
}

const LOG_SQRT_TWO_PI = 0.9189385332046728;
const SQRT_TWO_PI = 2.5066282746310007;
const SQRT_32 = 5.656854249492381;

/** Cody's rational approximations of the normal distribution function, constants of equations 5.1 to 5.3. */
// biome-ignore format: tables
const CENTRE = {
  top: [18154.98125334356, 1067.6894854603709, 161.02823106855587, 2.2352520354606837,
    0.06568233791820745],
  bottom: [45507.78933502673, 10260.932208618979, 976.0985517377767, 47.202581904688245, 1],
};
// biome-ignore format: tables
const MIDDLE = {
  top: [9842.714838383978, 11602.65143764735, 6848.190450536283, 2494.5375852903726,
    597.2702763948002, 93.50665613217785, 8.883149794388377, 0.39894151208813466,
    1.0765576773720192e-8],
  bottom: [19685.429676859992, 38912.00328609327, 34900.95272114598, 18615.571640885097,
    6485.558298266761, 1519.3775994075547, 235.387901782625, 22.266688044328117, 1],
};
// biome-ignore format: tables
const FAR = {
  top: [0.000029112874951168793, 0.0014216191932278934, 0.022235277870649807, 0.12740116116024736,
    0.215898534057957, 0.023073441764940174],
  bottom: [0.00007297515550839662, 0.0037823963320275824, 0.06598813786892856, 0.4682382124808651,
    1.284260096144911, 1],
};

/** Mills' ratio P(X > x) / density(x) for x ≥ 0.67448975. */
function millsRatio(x: number): number {
  if (x <= SQRT_32) return SQRT_TWO_PI * (polynomial(MIDDLE.top, x) / polynomial(MIDDLE.bottom, x));
  const inverse = 1 / (x * x);
  const correction = (inverse * polynomial(FAR.top, inverse)) / polynomial(FAR.bottom, inverse);
  return (1 - SQRT_TWO_PI * correction) / x;
}

/** exp(−x²/2) with x split at a sixteenth, so that the square of the large part is exact. */
function gaussian(x: number): number {
  const coarse = Math.trunc(x * 16) / 16;
  return Math.exp((-coarse * coarse) / 2) * Math.exp((-(x - coarse) * (x + coarse)) / 2);
}

/**
 * Density of the standard normal distribution.
 *
 * @param x number
 * @param options `log: true` for its natural logarithm
 * @returns density at x
 * @throws TypeError or RangeError when x is not a number
 * @source Abramowitz & Stegun (1964) 26.2.1, the square split as in Cody (1969)
 * @example normalDensity(0) // 0.39894228...
 */
export function normalDensity(x: number, { log = false }: LogOption = {}): number {
  checkNumber('normalDensity', 'x', x);
  return log ? -0.5 * x * x - LOG_SQRT_TWO_PI : gaussian(x) / SQRT_TWO_PI;
}

/** P(X > x) for x ≥ 0.67448975. */
function upperTail(x: number): number {
  return (gaussian(x) / SQRT_TWO_PI) * millsRatio(x);
}

/** P(X ≤ x) − 1/2 for |x| < 0.67448975, the quartile. */
function centre(x: number): number {
  return x * (polynomial(CENTRE.top, x * x) / polynomial(CENTRE.bottom, x * x));
}

const QUARTILE = 0.67448975;

/**
 * Cumulative distribution function of the standard normal distribution.
 *
 * Answers P(X ≤ x), or P(X > x) with `tail: 'upper'`, each to about 2e-16 relatively: ask for the tail you need,
 * since 1 minus the other one loses its digits.
 *
 * @param x number
 * @param options `tail`, `lower` by default
 * @returns probability
 * @throws TypeError or RangeError when x is not a number
 * @source Cody (1969) Mathematics of Computation 23, 631–637
 * @example normalCdf(1.96) // 0.9750021048517795
 */
export function normalCdf(x: number, { tail = 'lower' }: TailOption = {}): number {
  checkNumber('normalCdf', 'x', x);
  const toLeft = tail === 'lower' ? x : -x;
  if (toLeft === Infinity) return 1;
  if (toLeft === -Infinity) return 0;
  if (Math.abs(x) < QUARTILE) return 0.5 + centre(toLeft);
  return toLeft < 0 ? upperTail(-toLeft) : 1 - upperTail(toLeft);
}

/**
 * Logarithm of the cumulative distribution function of the standard normal distribution.
 *
 * For likelihoods of a probit model, where the probability itself underflows below x = −38.
 *
 * @param x number
 * @param options `tail`, `lower` by default
 * @returns log P(X ≤ x), or log P(X > x)
 * @throws TypeError or RangeError when x is not a number
 * @source Cody (1969) Mathematics of Computation 23, 631–637
 * @example normalLogCdf(-100) // -5005.524208694205
 */
export function normalLogCdf(x: number, { tail = 'lower' }: TailOption = {}): number {
  checkNumber('normalLogCdf', 'x', x);
  const toLeft = tail === 'lower' ? x : -x;
  if (toLeft === -Infinity) return -Infinity;
  if (toLeft < -QUARTILE) return -0.5 * x * x - LOG_SQRT_TWO_PI + Math.log(millsRatio(-toLeft));
  return Math.log1p(-normalCdf(-toLeft));
}

/** Wichura's rational approximations of the normal quantile (PPND16). */
// biome-ignore format: tables
const QUANTILE_CENTRE = {
  top: [3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946,
    45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227],
  bottom: [1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597,
    39307.89580009271, 28729.085735721943, 5226.495278852854],
};
// biome-ignore format: tables
const QUANTILE_TAIL = {
  top: [1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045,
    1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414],
  bottom: [1, 2.053191626637759, 1.6763848301838038, 0.6897673349851,
    0.14810397642748008, 0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-9],
};
// biome-ignore format: tables
const QUANTILE_FAR = {
  top: [6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487,
    0.026532189526576124, 0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7],
  bottom: [1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615,
    0.0007868691311456133, 0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15],
};

/** Quantile of a lower tail p ≤ 0.075, a negative number. */
function tailQuantile(p: number): number {
  const r = Math.sqrt(-Math.log(p));
  const table = r <= 5 ? QUANTILE_TAIL : QUANTILE_FAR;
  const shifted = r <= 5 ? r - 1.6 : r - 5;
  return -polynomial(table.top, shifted) / polynomial(table.bottom, shifted);
}

/**
 * Quantile function of the standard normal distribution.
 *
 * Answers the z that has probability p to its left, or to its right with `tail: 'upper'`.
 *
 * @param p probability, from 0 to 1
 * @param options `tail`, `lower` by default
 * @returns z; −Infinity or Infinity at p = 0 and 1
 * @throws RangeError or TypeError when p is not a number from 0 to 1
 * @source Wichura (1988) Applied Statistics 37, 477–484, algorithm AS 241
 * @example normalQuantile(0.975) // 1.9599639845400538
 */
export function normalQuantile(p: number, { tail = 'lower' }: TailOption = {}): number {
  checkProbability('normalQuantile', 'p', p);
  const sign = tail === 'lower' ? 1 : -1;
  if (p === 0) return -sign * Infinity;
  if (p === 1) return sign * Infinity;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (sign * q * polynomial(QUANTILE_CENTRE.top, r)) / polynomial(QUANTILE_CENTRE.bottom, r);
  }
  return q < 0 ? sign * tailQuantile(p) : -sign * tailQuantile(1 - p);
}
