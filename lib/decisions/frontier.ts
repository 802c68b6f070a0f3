/** The best mixes between most fruits and most varieties. */

import type { Allocation, AllocationProblem } from './allocation.ts';
import { bestAllocation } from './exchange.ts';

/** A mix that no other beats at its weights. */
export interface FrontierPoint {
  readonly counts: Int32Array;
  readonly fruits: number;
  readonly varieties: number;
  /** Expected fruits and varieties together, at this mix's weights, that a better mix could still have: 0 where none. */
  readonly within: number;
}

/** The other goal counts this much at the ends, so that of equals the better is taken. */
const A_LITTLE = 1e-6;
/** Two mixes that differ by less are one. */
const ALIKE = 1e-6;
/** Searches, at most. */
const MOST_SEARCHES = 14;

/** A gap between two neighbours in which a mix may lie. */
interface Gap {
  readonly left: FrontierPoint;
  readonly right: FrontierPoint;
}

/**
 * The frontier of fruits and varieties: both ends, then between two neighbours the mix that is best for the weights at
 * which the two are worth the same, as long as there is one (Aneja & Nair 1979, Management Science 25:73–78). The widest gap
 * comes first, so that few mixes show most of the frontier.
 *
 * @param most mixes, at most, from 2 on
 * @returns mixes from most fruits to most varieties, none beaten in both by another
 */
export function frontierOf(problem: AllocationProblem, most: number): FrontierPoint[] {
  const found = (fruits: number, varieties: number) =>
    pointOf(bestAllocation(problem, { fruits, varieties }));
  const first = found(1 - A_LITTLE, A_LITTLE);
  const last = found(A_LITTLE, 1 - A_LITTLE);
  if (alike(first, last)) return [last];
  const points = [first, last];
  const gaps: Gap[] = [{ left: first, right: last }];
  for (let searches = 2; searches < MOST_SEARCHES && points.length < most && gaps.length > 0; searches += 1) {
    const { left, right } = gaps.splice(widest(gaps), 1)[0]!;
    const across = left.fruits - right.fruits;
    const up = right.varieties - left.varieties;
    const between = found(up / (up + across), across / (up + across));
    const value = (point: FrontierPoint) => up * point.fruits + across * point.varieties;
    if (value(between) <= value(left) + ALIKE * (up + across)) continue;
    points.push(between);
    gaps.push({ left, right: between }, { left: between, right });
  }
  return points.sort((a, b) => b.fruits - a.fruits);
}

function pointOf({ allocation, within }: { allocation: Allocation; within: number }): FrontierPoint {
  return {
    counts: allocation.counts,
    fruits: allocation.fruits(),
    varieties: allocation.varieties(),
    within,
  };
}

function alike(a: FrontierPoint, b: FrontierPoint): boolean {
  return a.fruits - b.fruits < ALIKE || b.varieties - a.varieties < ALIKE;
}

/** The gap whose triangle, in which all undiscovered mixes lie, is largest at most. */
function widest(gaps: readonly Gap[]): number {
  const size = ({ left, right }: Gap) => (left.fruits - right.fruits) * (right.varieties - left.varieties);
  return gaps.reduce((best, gap, at) => (size(gap) > size(gaps[best]!) ? at : best), 0);
}
