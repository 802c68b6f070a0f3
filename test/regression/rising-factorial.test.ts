import { describe, expect, it } from 'vitest';
import { digamma, logGamma, trigamma } from '../../lib/numerics/special-functions.ts';
import { risingFactorial } from '../../lib/regression/rising-factorial.ts';

const at = (x: number, n: number) => risingFactorial(x, n, { log: 0, first: 0, second: 0 });

/** The three sums by their definition, the smallest terms first. */
function summed(x: number, n: number) {
  const sums = { log: 0, first: 0, second: 0 };
  for (let k = n - 1; k >= 0; k -= 1) {
    sums.log += Math.log1p(k / x);
    sums.first += 1 / (x + k);
    sums.second -= 1 / (x + k) ** 2;
  }
  return sums;
}

function expectClose(actual: number, wanted: number, rel: number, where: string): void {
  expect(Math.abs(actual - wanted), where).toBeLessThanOrEqual(rel * Math.abs(wanted));
}

describe('risingFactorial', () => {
  it('agrees with its terms added one by one, on both sides of every switch', () => {
    for (const x of [1e-6, 0.3, 5, 29.9, 30, 31.5, 400, 1e5, 1e8]) {
      for (const n of [1, 2, 23, 24, 25, 29, 60, 1000]) {
        const wanted = summed(x, n);
        const where = `x ${x}, n ${n}`;
        const found = at(x, n);
        // Where n² / x is tiny, the logarithm is the small rest of n − n.
        expect(Math.abs(found.log - wanted.log), where).toBeLessThanOrEqual(1e-12 * (wanted.log + n * 1e-3));
        expectClose(found.first, wanted.first, 1e-13, where);
        expectClose(found.second, wanted.second, 1e-12, where);
      }
    }
  });

  it('agrees with differences of the gamma functions where those keep their digits', () => {
    for (const [x, n] of [
      [0.7, 3],
      [2.5, 40],
      [12, 200],
    ] as const) {
      const { log, first, second } = at(x, n);
      expectClose(log, logGamma(x + n) - logGamma(x) - n * Math.log(x), 1e-12, 'log');
      expectClose(first, digamma(x + n) - digamma(x), 1e-12, 'first');
      expectClose(second, trigamma(x + n) - trigamma(x), 1e-12, 'second');
    }
  });

  it('is nothing for no factor, and 1 / x for one', () => {
    expect(at(3, 0)).toEqual({ log: 0, first: 0, second: 0 });
    expect(at(4, 1)).toEqual({ log: 0, first: 0.25, second: -0.0625 });
  });
});
