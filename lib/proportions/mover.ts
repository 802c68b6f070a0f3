/** Ranges of ratios and products from the ranges of their parts: recovery of variance estimates (MOVER). */

import { type Estimate, type Interval, unknown } from './interval.ts';

function checkPart(caller: string, name: string, { estimate, lower, upper }: Interval): void {
  if (lower >= 0 && lower <= estimate && estimate <= upper && Number.isFinite(upper)) return;
  throw new RangeError(
    `${caller}: ${name} must hold finite 0 ≤ lower ≤ estimate ≤ upper, got ${lower}, ${estimate}, ${upper}`,
  );
}

/**
 * Ratio of two independent estimates with Donner and Zou's interval.
 *
 * Answers by what factor the first exceeds the second, from the interval of each; unlike formulas on the log scale it
 * has ends where a count is none or all. Not for estimates that share trials.
 *
 * The lower end L is where first − L · second has 0 as the lower end of its MOVER interval, the upper end likewise:
 * L = (θ1θ2 − √(θ1²θ2² − l1(2θ1 − l1) u2(2θ2 − u2))) / (u2(2θ2 − u2)), and for the upper end u1 and l2 with a plus.
 *
 * @param first interval θ1 with its ends l1 and u1, not negative
 * @param second interval θ2 of the same level, not negative
 * @returns the ratio; null because `zero-count` where the second is 0; an end that does not exist is null because
 *   `unbounded`: the second may be too near 0
 * @throws RangeError naming the argument
 * @source Donner & Zou (2012) Statistical Methods in Medical Research 21, 347–359
 * @example moverRatio({ estimate: 0.5, lower: 0.4, upper: 0.6 }, { estimate: 0.5, lower: 0.4, upper: 0.6 }).estimate // 1
 */
export function moverRatio(first: Interval, second: Interval): Estimate {
  checkPart('moverRatio', 'first', first);
  checkPart('moverRatio', 'second', second);
  if (second.estimate === 0) return unknown('zero-count');
  const product = first.estimate * second.estimate;
  const end = (ownEnd: number, otherEnd: number, sign: 1 | -1): number | null => {
    const above = ownEnd * (2 * first.estimate - ownEnd);
    const below = otherEnd * (2 * second.estimate - otherEnd);
    // Beyond this the second's own range reaches so far that no ratio is ruled out.
    if (!(below > 0)) return null;
    return (product + sign * Math.sqrt(Math.max(0, product * product - above * below))) / below;
  };
  const lower = end(first.lower, second.upper, -1);
  const upper = end(first.upper, second.lower, 1);
  const open = lower === null || upper === null;
  return {
    estimate: first.estimate / second.estimate,
    lower: lower === null ? null : Math.max(0, lower),
    upper,
    ...(open ? { because: 'unbounded' } : {}),
  };
}

/**
 * Product of independent estimates with Zou and Donner's interval on the log scale.
 *
 * Answers what several rates come to together (fruit set × seeds × germination), from the interval of each: the distances of
 * the log ends from the log estimates are added as squares, for each side apart. Not for estimates that share trials.
 *
 * @param parts at least one interval, all of the same level, not negative
 * @returns the product; null because `zero-count` where an estimate is 0; the lower end is 0 where one of the parts' is
 * @throws RangeError naming the argument
 * @source Zou & Donner (2008) Statistics in Medicine 27, 1693–1702, for sums of any estimates, here of logarithms
 * @example moverProduct([{ estimate: 0.5, lower: 0.25, upper: 1 }]) // { estimate: 0.5, lower: 0.25, upper: 1 }
 */
export function moverProduct(parts: readonly Interval[]): Estimate {
  if (parts.length === 0)
    throw new RangeError('moverProduct: parts must hold at least one interval, got none');
  parts.forEach((part, i) => {
    checkPart('moverProduct', `parts[${i}]`, part);
  });
  if (parts.some(({ estimate }) => estimate === 0)) return unknown('zero-count');
  const estimate = parts.reduce((product, part) => product * part.estimate, 1);
  const distance = (endOf: (part: Interval) => number): number =>
    Math.sqrt(parts.reduce((sum, part) => sum + Math.log(endOf(part) / part.estimate) ** 2, 0));
  return {
    estimate,
    lower: parts.some(({ lower }) => lower === 0) ? 0 : estimate * Math.exp(-distance(({ lower }) => lower)),
    upper: estimate * Math.exp(distance(({ upper }) => upper)),
  };
}
