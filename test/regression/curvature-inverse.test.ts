import { describe, expect, it } from 'vitest';
import { emptyInverse, invertCurvature } from '../../lib/regression/curvature-inverse.ts';
import { modeFinder } from '../../lib/regression/latent-mode.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { denseCurvature, denseDesign, denseVector, gauss } from './dense-laplace.ts';
import { eliminate } from './full-matrix-laplace.ts';
import { EXAMPLES } from './latent-examples.ts';
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
      for (let k = latent.touchStart[a]!; k < latent.touchStart[a + 1]!; k += 1) {
        expect(inverse.cross[k]).toBeCloseTo(wanted[a]![4 + latent.touchIndex[k]!]!, 12);
      }
    }
    for (let k = 0; k < 9; k += 1) {
      expect(inverse.core[k]).toBeCloseTo(wanted[4 + Math.floor(k / 3)]![4 + (k % 3)]!, 12);
    }
  });
  // The oracle is Gauss's elimination on the whole dense matrix. Mothers and vials meet, two mothers never do.
  it('has what rows need of three factors, and 0 for two levels that never meet', () => {
    const { spec, scales } = EXAMPLES.get('with three factors, some rows without one')!;
    const model = latentModel(spec);
    const { curvature, point } = modeFinder(model).find(scales);
    const inverse = emptyInverse(model);
    for (let turn = 0; turn < 2; turn += 1) invertCurvature(model, curvature, inverse);
    const h = denseCurvature(spec, denseDesign(spec, scales), denseVector(model, point));
    // In the dense order mothers are 0 to 2, pairs 3 to 7, vials 8 and 9, columns 10 and 11; the pairs are eliminated.
    const place = [0, 1, 2, 8, 9, 10, 11];
    const kind = ['mother', 'mother', 'mother', 'vial', 'vial', 'column', 'column'];
    place.forEach((from, j) => {
      const wanted = gauss(
        h,
        h.map((_, k) => (k === from ? 1 : 0)),
      ).x;
      place.forEach((to, k) => {
        const apart = j !== k && kind[j] === kind[k] && kind[j] !== 'column';
        expect(inverse.core[j * 7 + k]).toBeCloseTo(apart ? 0 : wanted[to]!, 12);
      });
    });
  });
});
