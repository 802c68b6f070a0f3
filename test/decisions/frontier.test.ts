import { describe, expect, it } from 'vitest';
import { frontierOf } from '../../lib/decisions/frontier.ts';
import { everyShare, seedsUpTo, smallProblem } from './small-problem.ts';

/** A problem without crosses that must be tried: those come before both goals. */
function free(seed: number) {
  const problem = smallProblem(seed);
  return { ...problem, pairFewest: problem.pairFewest.map(() => 0) };
}

describe('frontierOf', () => {
  it('reaches every corner of the frontier of all shares, and nothing beats its mixes', () => {
    for (const seed of seedsUpTo(200)) {
      const problem = free(seed);
      const all: { fruits: number; varieties: number }[] = [];
      everyShare(problem, (share) => all.push({ fruits: share.fruits(), varieties: share.varieties() }));
      const points = frontierOf(problem, 12);
      expect(points.length).toBeLessThanOrEqual(12);
      for (const weight of [0.001, 0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9, 0.999]) {
        const value = (point: { fruits: number; varieties: number }) =>
          weight * point.fruits + (1 - weight) * point.varieties;
        const best = Math.max(...all.map(value));
        // What differs by less than a millionth is one mix.
        expect(best - Math.max(...points.map(value)), `seed ${seed}`).toBeLessThan(2e-6);
      }
      points.slice(1).forEach((point, at) => {
        expect(point.fruits).toBeLessThan(points[at]!.fruits);
        expect(point.varieties).toBeGreaterThan(points[at]!.varieties);
      });
    }
  });

  it('keeps both ends where only two mixes are wanted', () => {
    const many = seedsUpTo(60)
      .map(free)
      .find((problem) => frontierOf(problem, 12).length > 2)!;
    const all = frontierOf(many, 12);
    const two = frontierOf(many, 2);
    expect(two.map(({ fruits }) => fruits)).toEqual([all[0]!.fruits, all.at(-1)!.fruits]);
  });
});
