import { describe, expect, it } from 'vitest';
import { emptyInverse, invertCurvature } from '../../lib/regression/curvature-inverse.ts';
import { modeFinder } from '../../lib/regression/latent-mode.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { eliminate } from './full-matrix-laplace.ts';
import { smallModel } from './small-mixed-model.ts';

describe('invertCurvature', () => {
  // The oracle is Gaussian elimination on the whole matrix S Z′WZ S + I.
  it('has the entries of the inverse of the whole matrix', () => {
    const latent = latentModel({ ...smallModel, columns: [], exclusive: -1 });
    const finder = modeFinder(latent);
    const sds = [0.8, 1.1];
    const scales = { columns: new Float64Array(0), factors: Float64Array.from(sds), exclusive: 0 };
    const { curvature } = finder.find(scales);
    const inverse = emptyInverse(latent);
    invertCurvature(latent, curvature, inverse);
    const column = (i: number): number[] =>
      smallModel.factors.flatMap(({ codes, size }, g) =>
        Array.from({ length: size }, (_, a) => (codes[i] === a ? sds[g]! : 0)),
      );
    const whole = Array.from({ length: 7 }, (_, a) =>
      Array.from({ length: 7 }, (_, b) =>
        [...finder.work.weight].reduce(
          (sum, weight, i) => sum + weight * column(i)[a]! * column(i)[b]!,
          a === b ? 1 : 0,
        ),
      ),
    );
    const unit = (k: number): number[] => Array.from({ length: 7 }, (_, j) => (j === k ? 1 : 0));
    const wanted = Array.from({ length: 7 }, (_, k) => eliminate(whole, unit(k)).x);
    // Plants (0 to 3) are the larger factor, so they are eliminated; mornings (4 to 6) are the core.
    for (let a = 0; a < 4; a += 1) {
      expect(inverse.diagonal[a]).toBeCloseTo(wanted[a]![a]!, 12);
      latent.touched[a]!.forEach((core, k) => {
        expect(inverse.cross[a]![k]).toBeCloseTo(wanted[a]![4 + core]!, 12);
      });
    }
    for (let k = 0; k < 9; k += 1) {
      expect(inverse.core[k]).toBeCloseTo(wanted[4 + Math.floor(k / 3)]![4 + (k % 3)]!, 12);
    }
  });
});
