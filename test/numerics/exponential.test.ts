import { describe, expect, it } from 'vitest';
import { expMinus } from '../../lib/numerics/exponential.ts';

/** Decimal places of the whole-number arithmetic below. */
const PLACES = 400n;
const ONE = 10n ** PLACES;

/** A double as an exact multiple of 10^−PLACES, as far as these places go: every double is a whole number times 2^k. */
function exact(x: number): bigint {
  let whole = x;
  let halvings = 0n;
  while (!Number.isInteger(whole)) {
    whole *= 2;
    halvings += 1n;
  }
  return (BigInt(whole) * ONE) >> halvings;
}

/** exp(−x) by the plain series of exp(x / 1024), 10 times squared, and its reciprocal, in 400 places. */
function slowExpMinus(x: number): bigint {
  const small = exact(x) / 1024n;
  let sum = ONE;
  let term = ONE;
  for (let k = 1n; term > 0n; k += 1n) {
    term = (term * small) / ONE / k;
    sum += term;
  }
  for (let k = 0; k < 10; k += 1) sum = (sum * sum) / ONE;
  return (ONE * ONE) / sum;
}

// The oracle is the series itself in whole-number arithmetic of 400 places.
describe('expMinus', () => {
  it('agrees with 400-digit arithmetic to 3 units in the last place', () => {
    const grid = Array.from({ length: 200 }, (_, k) => (k * Math.SQRT2) / 16);
    for (const x of [...grid, 1e-300, 1e-17, 1e-8, 0.0054, 0.0055, 36.7, 100.1, 333.3, 700, 708]) {
      const wanted = slowExpMinus(x);
      const error = Number(((exact(expMinus(x)) - wanted) * 10n ** 20n) / wanted) / 1e20;
      expect(Math.abs(error), `exp(-${x})`).toBeLessThan(3 * 2 ** -53);
    }
  });

  it('is 1 at 0, falls to the smallest numbers and then to 0', () => {
    expect(expMinus(0)).toBe(1);
    expect(expMinus(740)).toBeGreaterThan(0);
    expect(expMinus(740)).toBeLessThan(1e-320);
    expect(expMinus(746)).toBe(0);
    expect(expMinus(Infinity)).toBe(0);
    expect(expMinus(Number.NaN)).toBeNaN();
  });

  it('never rises', () => {
    let before = 1;
    for (let k = 1; k < 20_000; k += 1) {
      const here = expMinus(k / 512);
      expect(here).toBeLessThan(before);
      before = here;
    }
  });
});
