import { describe, expect, it } from 'vitest';
import { laplaceSurface } from '../../lib/regression/laplace-gradient.ts';
import { fullMatrixLaplace } from './full-matrix-laplace.ts';
import { smallModel } from './small-mixed-model.ts';

const beta = Float64Array.of(0.4, -0.5);

// The oracle is fullMatrixLaplace: full matrices, no shared code.
describe('laplaceSurface', () => {
  it('has the value of the approximation worked out with full matrices', () => {
    const surface = laplaceSurface(smallModel);
    for (const sds of [
      [0.7, 1.3],
      [1.6, 0.2],
      [0.05, 0.9],
    ]) {
      const { value } = surface.slope(beta, Float64Array.from(sds));
      expect(value).toBeCloseTo(fullMatrixLaplace(smallModel, [...beta], sds), 10);
    }
  });

  it('has the gradient that central differences of that value have', () => {
    const sds = [0.7, 1.3];
    const slope = laplaceSurface(smallModel).slope(beta, Float64Array.from(sds));
    const step = 1e-4;
    const difference = (at: (x: number) => number): number => (at(step) - at(-step)) / (2 * step);
    [...beta].forEach((_, j) => {
      const central = difference((x) =>
        fullMatrixLaplace(
          smallModel,
          [...beta].map((v, k) => (k === j ? v + x : v)),
          sds,
        ),
      );
      expect(slope.byCoefficient[j]).toBeCloseTo(central, 6);
    });
    sds.forEach((_, g) => {
      const central = difference((x) =>
        fullMatrixLaplace(
          smallModel,
          [...beta],
          sds.map((v, k) => (k === g ? v + x : v)),
        ),
      );
      expect(slope.bySd[g]).toBeCloseTo(central, 6);
    });
  });

  // By symmetry: u and −u are alike, so the approximation is even in each standard deviation.
  it('is even in a standard deviation, and level where it is 0', () => {
    const surface = laplaceSurface(smallModel);
    const above = surface.slope(beta, Float64Array.of(0.7, 1.3));
    const below = surface.slope(beta, Float64Array.of(0.7, -1.3));
    expect(below.value).toBeCloseTo(above.value, 9);
    expect(below.bySd[1]).toBeCloseTo(-above.bySd[1]!, 7);
    expect(surface.slope(beta, Float64Array.of(0.7, 0)).bySd[1]).toBe(0);
  });

  it('loses no digits near 0: the slope falls in proportion to the standard deviation', () => {
    const surface = laplaceSurface(smallModel);
    const per = (sd: number): number => surface.slope(beta, Float64Array.of(0.7, sd)).bySd[1]! / sd;
    expect(per(1e-9)).toBeCloseTo(per(1e-5), 6);
  });

  it('gives the same numbers wherever it was evaluated before', () => {
    const fresh = laplaceSurface(smallModel).slope(beta, Float64Array.of(0.7, 1.3));
    const surface = laplaceSurface(smallModel);
    surface.slope(Float64Array.of(-3, 2), Float64Array.of(2.5, 0));
    const after = surface.slope(beta, Float64Array.of(0.7, 1.3));
    expect(after.value).toBeCloseTo(fresh.value, 9);
    expect(after.bySd[0]).toBeCloseTo(fresh.bySd[0]!, 7);
  });
});
