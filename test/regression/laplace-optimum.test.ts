import { describe, expect, it } from 'vitest';
import { laplaceOptimum } from '../../lib/regression/laplace-optimum.ts';
import { climb, fullMatrixLaplace } from './full-matrix-laplace.ts';
import { smallModel } from './small-mixed-model.ts';

const start = { coefficients: Float64Array.of(0, 0), covariance: Float64Array.of(0.1, -0.05, -0.05, 0.1) };

// The oracle is a climb over fullMatrixLaplace: full matrices, no gradient, no shared code.
describe('laplaceOptimum', () => {
  it('finds the maximum that a search without gradients finds', () => {
    const { coefficients, sds, value, convergence } = laplaceOptimum(smallModel, start);
    const slow = climb(
      ([a, b, plant, morning]) => fullMatrixLaplace(smallModel, [a!, b!], [plant!, morning!]),
      [1, 1, 2, 2],
    );
    expect(convergence.settled).toBe(true);
    [...coefficients, ...sds].forEach((estimate, k) => {
      expect(Math.abs(estimate)).toBeCloseTo(Math.abs(slow[k]!), 5);
    });
    expect(value).toBeCloseTo(fullMatrixLaplace(smallModel, slow.slice(0, 2), slow.slice(2)), 9);
  });

  it('has the inverse of the matrix of second differences as covariance', () => {
    const { coefficients, sds, covariance, kept } = laplaceOptimum(smallModel, start);
    const size = 2 + kept.length;
    const at = [...coefficients, ...sds];
    const value = (x: readonly number[]): number => fullMatrixLaplace(smallModel, x.slice(0, 2), x.slice(2));
    const step = 1e-3;
    const moved = (j: number, a: number, k: number, b: number): number =>
      value(at.map((v, i) => v + step * ((i === j ? a : 0) + (i === k ? b : 0))));
    for (let j = 0; j < size; j += 1) {
      for (let k = 0; k < size; k += 1) {
        let product = 0;
        for (let l = 0; l < size; l += 1) {
          const second =
            (moved(j, 1, l, 1) - moved(j, 1, l, -1) - moved(j, -1, l, 1) + moved(j, -1, l, -1)) /
            (4 * step * step);
          product -= second * covariance[l * size + k]!;
        }
        expect(product).toBeCloseTo(j === k ? 1 : 0, 3);
      }
    }
  });

  it('does not depend on where it starts', () => {
    const far = { coefficients: Float64Array.of(3, -2), covariance: Float64Array.of(5, 0, 0, 0.01) };
    const one = laplaceOptimum(smallModel, start);
    const other = laplaceOptimum(smallModel, far);
    expect(other.value).toBeCloseTo(one.value, 9);
    expect(other.coefficients[1]).toBeCloseTo(one.coefficients[1]!, 6);
  });

  // Every level has the same counts, so levels cannot differ: by symmetry.
  it('sets a standard deviation to 0 where levels are alike, and leaves its factor out', () => {
    const [plant, morning] = smallModel.factors;
    const alike = {
      ...smallModel,
      successes: new Float64Array(12).fill(2),
      trials: new Float64Array(12).fill(5),
      offset: new Float64Array(12),
      factors: [plant!, morning!],
    };
    const { sds, kept, convergence } = laplaceOptimum(alike, start);
    expect([...sds]).toEqual([0, 0]);
    expect(kept).toEqual([]);
    expect(convergence.settled).toBe(true);
  });

  it('refuses a start whose covariance is none', () => {
    const flat = { coefficients: Float64Array.of(0, 0), covariance: new Float64Array(4) };
    expect(() => laplaceOptimum(smallModel, flat)).toThrow(
      'laplaceOptimum: start must have a positive definite covariance',
    );
  });
});
