import { describe, expect, it } from 'vitest';
import { cholesky } from '../../lib/numerics/linear-algebra.ts';
import { coefficientsAt, sdsAt, unwhitened, whiteningOf } from '../../lib/regression/whitening.ts';
import { fullMatrixLaplace } from './full-matrix-laplace.ts';
import { smallModel } from './small-mixed-model.ts';

const start = {
  coefficients: Float64Array.of(0.1, -0.3),
  covariance: Float64Array.of(0.05, -0.02, -0.02, 0.06),
};
const whitening = whiteningOf(smallModel, start);
const both = [0, 1];

describe('whiteningOf', () => {
  it('begins at the start, with standard deviations between 0.25 and 1.5', () => {
    expect([...coefficientsAt(whitening, new Float64Array(4))]).toEqual([0.1, -0.3]);
    for (const sd of whitening.likelySds) {
      expect(sd).toBeGreaterThanOrEqual(0.25);
      expect(sd).toBeLessThanOrEqual(1.5);
    }
  });

  // The oracle is fullMatrixLaplace: full matrices, no shared code. A wrong metric costs steps only.
  it('gives the approximation a curvature of 1 to a factor of five in every direction', () => {
    const first = Float64Array.of(0, 0, ...both.map((g) => whitening.likelySds[g]! / whitening.units[g]!));
    const value = (k: number, step: number): number => {
      const theta = first.slice();
      theta[k]! += step;
      return fullMatrixLaplace(
        smallModel,
        [...coefficientsAt(whitening, theta)],
        [...sdsAt(whitening, both, theta)],
      );
    };
    for (let k = 0; k < 4; k += 1) {
      const curvature = 2 * value(k, 0) - value(k, 0.1) - value(k, -0.1);
      expect(curvature / 0.01).toBeGreaterThan(1 / 5);
      expect(curvature / 0.01).toBeLessThan(5);
    }
  });

  it('refuses a covariance that is none', () => {
    const flat = { ...start, covariance: Float64Array.of(1, 1, 1, 1) };
    expect(() => whiteningOf(smallModel, flat)).toThrow('positive definite covariance');
  });
});

describe('unwhitened', () => {
  it('turns unit information into the covariance that the coordinates stand for', () => {
    const identity = Float64Array.from({ length: 16 }, (_, k) => (k % 5 === 0 ? 1 : 0));
    const covariance = unwhitened(whitening, both, cholesky(identity, 4)!);
    // root root′ beside the squared units, by hand.
    const { root, units } = whitening;
    expect(covariance[0]).toBeCloseTo(root[0]! ** 2, 14);
    expect(covariance[1]).toBeCloseTo(root[0]! * root[2]!, 14);
    expect(covariance[5]).toBeCloseTo(root[2]! ** 2 + root[3]! ** 2, 14);
    expect(covariance[10]).toBeCloseTo(units[0]! ** 2, 14);
    expect(covariance[15]).toBeCloseTo(units[1]! ** 2, 14);
    expect([covariance[2], covariance[11]]).toEqual([0, 0]);
  });
});
