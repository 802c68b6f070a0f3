import { checkCounts } from '../numerics/arguments.ts';
import { checkLevel, type Interval } from './interval.ts';
import { type ContinuityOption, wilson } from './one-sample.ts';

/**
 * Newcombe's hybrid score interval for the difference of two independent proportions.
 *
 * Answers by how much the first chance of success exceeds the second. Good at any size, 0 and n included. Not for
 * matched counts (the same pair of plants in both groups): see `mantelHaenszel`.
 *
 * @param successes1, trials1 first group, x1 of n1: whole numbers, 0 ≤ x1 ≤ n1, n1 ≥ 1
 * @param successes2, trials2 second group
 * @param options `level` in (0, 1), 0.95 by default; `continuity: true` for method 11 (Wilson limits with correction)
 * @returns `estimate` x1/n1 − x2/n2 with the ends, within −1 to 1
 * @throws RangeError or TypeError naming the argument
 * @source Newcombe (1998) Statistics in Medicine 17, 873–890, methods 10 and 11
 * @example newcombe(56, 70, 48, 80) // { estimate: 0.2000000..., lower: 0.0524314..., upper: 0.3338726... }
 */
export function newcombe(
  successes1: number,
  trials1: number,
  successes2: number,
  trials2: number,
  { level = 0.95, continuity = false }: ContinuityOption = {},
): Interval {
  checkCounts('newcombe', successes1, trials1, '1');
  checkCounts('newcombe', successes2, trials2, '2');
  checkLevel('newcombe', level);
  const first = wilson(successes1, trials1, { level, continuity });
  const second = wilson(successes2, trials2, { level, continuity });
  const estimate = first.estimate - second.estimate;
  const below = Math.hypot(first.estimate - first.lower, second.upper - second.estimate);
  const above = Math.hypot(first.upper - first.estimate, second.estimate - second.lower);
  return { estimate, lower: estimate - below, upper: estimate + above };
}
