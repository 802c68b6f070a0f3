import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditionalPoint } from '../../lib/regression/conditional-likelihood.ts';
import { designOf } from '../../lib/regression/design.ts';
import { strataOf } from '../../lib/regression/strata.ts';

/** log of the sum over all placements of k successes, one by one. */
function bruteForce(eta: readonly number[], successes: readonly number[]): number {
  const k = successes.reduce((sum, y) => sum + y, 0);
  let total = 0;
  for (let set = 0; set < 1 << eta.length; set += 1) {
    const members = eta.filter((_, i) => (set >> i) & 1);
    if (members.length === k) total += Math.exp(members.reduce((sum, value) => sum + value, 0));
  }
  return successes.reduce((sum, y, i) => sum + y * eta[i]!, 0) - Math.log(total);
}

function point(successes: readonly number[], x: readonly number[], beta: number) {
  const design = designOf({
    successes,
    columns: { x },
    groups: { pair: x.map(() => 'a') },
    intercept: false,
  });
  const { strata } = strataOf(design, design.groups[0]!);
  return conditionalPoint(strata, Float64Array.from(x), 1, Float64Array.of(beta));
}

describe('conditionalPoint', () => {
  it('agrees with summing over all placements, and with differences of it', () => {
    const row = fc.tuple(fc.integer({ min: 0, max: 1 }), fc.double({ min: -2, max: 2, noNaN: true }));
    const rows = fc.array(row, { minLength: 2, maxLength: 9 });
    fc.assert(
      fc.property(rows, fc.double({ min: -3, max: 3, noNaN: true }), (drawn, beta) => {
        const successes = drawn.map(([y]) => y);
        const k = successes.reduce((sum, y) => sum + y, 0);
        fc.pre(k > 0 && k < drawn.length);
        const x = drawn.map(([, value]) => value);
        const slow = (b: number) =>
          bruteForce(
            x.map((value) => b * value),
            successes,
          );
        const { objective, score, curvature } = point(successes, x, beta);
        const h = 1e-4;
        expect(objective).toBeCloseTo(slow(beta), 9);
        expect(score[0]).toBeCloseTo((slow(beta + h) - slow(beta - h)) / (2 * h), 5);
        expect(curvature[0]).toBeCloseTo(-(slow(beta + h) - 2 * slow(beta) + slow(beta - h)) / (h * h), 4);
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  it('is minus the log of the binomial coefficient at zero, in strata of hundreds', () => {
    const x = Array.from({ length: 1000 }, (_, i) => i / 1000);
    const successes = x.map((_, i) => (i % 2 === 0 ? 1 : 0));
    // lchoose(1000, 500) in R 4.2.2.
    expect(point(successes, x, 0).objective).toBeCloseTo(-689.467261567851, 8);
    expect(Number.isFinite(point(successes, x, 40).objective)).toBe(true);
  });
});
