/** What rounding took from a product or a complement, for deviances that multiply it by thousands in far tails. */

const SPLITTER = 134217729;
const LARGEST = 1e290;

/** The upper half of a number's digits; the rest is what is left. */
function upperHalf(x: number): number {
  const scaled = SPLITTER * x;
  return scaled - (scaled - x);
}

/**
 * a · b less the double nearest to it, exactly; 0 where the splitting would overflow.
 *
 * @source Dekker (1971) Numerische Mathematik 18, 224–242
 */
export function productRest(a: number, b: number): number {
  const product = a * b;
  if (!(Math.abs(a) < LARGEST && Math.abs(b) < LARGEST && Math.abs(product) < LARGEST)) return 0;
  const [aHigh, bHigh] = [upperHalf(a), upperHalf(b)];
  const [aLow, bLow] = [a - aHigh, b - bHigh];
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
}

/** What the larger of two shares lacks to be 1 less the smaller one. */
export function complementRest(share: number, other: number): number {
  return share < other ? 0 : 1 - share - other;
}
