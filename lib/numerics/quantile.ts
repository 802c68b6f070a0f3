/**
 * Sample quantile of sorted values by linear interpolation of the order statistics: type 7 of Hyndman & Fan
 * (1996), The American Statistician 50:361–365.
 *
 * simple-statistics has another definition (their type 2), whose steps show in ranges from few draws.
 *
 * @param sorted values in ascending order, at least one; infinite ones are allowed at the ends
 * @param p a proportion from 0 to 1
 * @example quantileOfSorted([1, 2, 3, 4], 0.5) // 2.5
 */
export function quantileOfSorted(sorted: ArrayLike<number>, p: number): number {
  if (sorted.length === 0)
    throw new RangeError('quantileOfSorted: sorted must have at least one value, got none');
  if (!(p >= 0 && p <= 1)) throw new RangeError(`quantileOfSorted: p must be from 0 to 1, got ${p}`);
  const at = (sorted.length - 1) * p;
  const below = Math.floor(at);
  const low = sorted[below]!;
  if (at === below) return low;
  const high = sorted[below + 1]!;
  // Equal ends may be infinite: no arithmetic on them.
  return low === high ? low : low + (at - below) * (high - low);
}
