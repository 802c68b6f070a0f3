import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../lib/numerics/normal.ts';
import { randomStream } from '../../lib/numerics/random.ts';

const COUNT = 50_000;

function take(count: number, next: () => number): Float64Array {
  return Float64Array.from({ length: count }, next);
}

/** Kolmogorov's distance between a sample and a distribution function. */
function distance(sample: Float64Array, cdf: (x: number) => number): number {
  const sorted = sample.slice().sort();
  return sorted.reduce((worst, x, k) => {
    const p = cdf(x);
    return Math.max(worst, p - k / sorted.length, (k + 1) / sorted.length - p);
  }, 0);
}

describe('randomStream', () => {
  it.each([
    // The published algorithms written a second time in Python's unbounded whole numbers:
    // splitmix32 → state, xoshiro128** → two times 26 bits, plus a half, ÷ 2^52.
    [1, [0.09156953552660052, 0.8881928099282858, 0.4342701808717523]],
    [20260101, [0.15589293825799, 0.46837963288840434, 0.15552965988765866]],
    [-1, [0.9555829975771205, 0.26826965160973526, 0.8580147794163832]],
  ])('gives the numbers of xoshiro128** from seed %s', (seed, expected) => {
    const { uniform } = randomStream(seed);
    expect(Array.from(take(3, uniform))).toEqual(expected);
  });

  it('gives the same stream for the same seed and another for the next', () => {
    const [a, b, c] = [randomStream(1), randomStream(1), randomStream(2)];
    const first = take(50, a.normal);
    expect(take(50, b.normal)).toEqual(first);
    expect(take(50, c.normal)).not.toEqual(first);
  });

  it('is uniform between 0 and 1, ends left out', () => {
    const sample = take(COUNT, randomStream(3).uniform);
    expect(Math.min(...sample)).toBeGreaterThan(0);
    expect(Math.max(...sample)).toBeLessThan(1);
    // Kolmogorov: sqrt(n) D is above 1.95 once in 1,000 samples (Smirnov 1948).
    expect(distance(sample, (x) => x)).toBeLessThan(1.95 / Math.sqrt(COUNT));
  });

  it('is standard normal, in the tails too', () => {
    const sample = take(COUNT, randomStream(4).normal);
    expect(distance(sample, (x) => normalCdf(x))).toBeLessThan(1.95 / Math.sqrt(COUNT));
    // 2 × pnorm(-3) = 0.0026997960632601866 (R 4.2): a binomial count, within 4 standard deviations.
    const far = sample.filter((x) => Math.abs(x) > 3).length;
    const expected = COUNT * 0.0026997960632601866;
    expect(Math.abs(far - expected)).toBeLessThan(4 * Math.sqrt(expected));
  });

  it('has neighbours that know nothing of each other', () => {
    for (const next of [randomStream(5).uniform, randomStream(6).normal]) {
      const sample = take(COUNT, next);
      const mean = sample.reduce((a, b) => a + b, 0) / COUNT;
      const variance = sample.reduce((sum, x) => sum + (x - mean) ** 2, 0) / COUNT;
      for (const lag of [1, 2, 3]) {
        let sum = 0;
        for (let k = lag; k < COUNT; k += 1) sum += (sample[k]! - mean) * (sample[k - lag]! - mean);
        // The correlation of independent numbers is about N(0, 1 / n).
        expect(Math.abs(sum / COUNT / variance)).toBeLessThan(4 / Math.sqrt(COUNT));
      }
    }
  });

  it('refuses a seed that is not a whole number', () => {
    expect(() => randomStream(0.5)).toThrow('randomStream: seed must be a whole number, got 0.5');
    expect(() => randomStream(Number.NaN)).toThrow(RangeError);
  });
});
