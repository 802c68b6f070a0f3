/** The range of k standard normal numbers: the studentized range with infinitely many degrees of freedom. */

import { checkNumber, checkWhole } from './arguments.ts';
import { normalCdf, normalDensity } from './normal.ts';

const step = 1 / 32;
const reach = 9;

/**
 * Upper tail of the range of k independent standard normal numbers: the probability that the largest minus the least
 * exceeds `range`.
 *
 * The integral of k φ(z) (Φ(z)ᵏ⁻¹ − (Φ(z) − Φ(z − q))ᵏ⁻¹) by the trapezoidal rule, which for such integrands is exact to
 * working precision; the difference of powers is taken without cancellation, so small tails keep their digits.
 *
 * @param range q, a number; 1 at or below 0
 * @param count k, whole number of at least 2
 * @returns a probability
 * @throws RangeError or TypeError naming the argument
 * @source Hartley (1942) Biometrika 32, 334–348; as R's `ptukey(q, k, Inf, lower.tail = FALSE)`
 * @example normalRangeTail(3, 10) // 0.5121840739...
 */
export function normalRangeTail(range: number, count: number): number {
  checkNumber('normalRangeTail', 'range', range);
  checkWhole('normalRangeTail', 'count', count, 2);
  if (range <= 0) return 1;
  if (range === Infinity) return 0;
  let sum = 0;
  // Where φ(z) is below the smallest share of the tail nothing is added; the tail itself lies near z = q / 2.
  for (let z = -reach; z <= reach + range; z += step) {
    const below = normalCdf(z);
    const missed = normalCdf(z - range) / below;
    const lost = missed >= 1 ? 1 : -Math.expm1((count - 1) * Math.log1p(-missed));
    sum += normalDensity(z) * below ** (count - 1) * lost;
  }
  return Math.min(1, count * step * sum);
}
