import { describe, expect, it } from 'vitest';
import { conditionalCovariance, groupEffects } from '../../lib/regression/given-variances.ts';
import { laplaceSurface } from '../../lib/regression/laplace-gradient.ts';
import { eliminate } from './full-matrix-laplace.ts';
import { smallModel } from './small-mixed-model.ts';

const sds = Float64Array.of(0.7, 1.3);
const factors = smallModel.factors.map(({ name, codes, size }) => ({
  name,
  codes,
  levels: Array.from({ length: size }, (_, a) => `${name} ${a}`),
}));

/** X′WX, X′WZ and Z′WZ + D⁻¹ in one matrix: two coefficients, four plants, three mornings. */
function jointInformation(weight: Float64Array): number[][] {
  const row = (i: number): number[] => [
    ...smallModel.columns.map((column) => column[i]!),
    ...factors.flatMap(({ codes, levels }) => levels.map((_, a) => (codes[i] === a ? 1 : 0))),
  ];
  const precision = [0, 0, ...new Array<number>(4).fill(0.7 ** -2), ...new Array<number>(3).fill(1.3 ** -2)];
  return precision.map((own, j) =>
    precision.map((_, k) =>
      weight.reduce((sum, w, i) => sum + w * row(i)[j]! * row(i)[k]!, j === k ? own : 0),
    ),
  );
}

function inverseDiagonal(matrix: number[][], k: number): number {
  const unit = matrix.map((_, j) => (j === k ? 1 : 0));
  return eliminate(matrix, unit).x[k]!;
}

// The oracle is Gaussian elimination on the whole information matrix of coefficients and effects.
describe('with the variances taken as known', () => {
  const surface = laplaceSurface(smallModel);
  const { mode } = surface.slope(Float64Array.of(0.4, -0.5), sds);
  const whole = jointInformation(surface.finder.work.weight);

  it('the covariance of the coefficients is their block of the inverse of the whole information', () => {
    const covariance = conditionalCovariance(surface, sds, mode);
    [0, 1].forEach((k) => {
      const column = eliminate(
        whole,
        whole.map((_, j) => (j === k ? 1 : 0)),
      ).x;
      expect(covariance[k]).toBeCloseTo(column[0]!, 10);
      expect(covariance[2 + k]).toBeCloseTo(column[1]!, 10);
    });
  });

  it('the conditional standard deviations of effects come from their block alone, coefficients held', () => {
    const block = whole.slice(2).map((row) => row.slice(2));
    const effects = factors.flatMap((factor) => groupEffects(factor, factors, sds, surface, mode));
    expect(effects.map(({ level }) => level).slice(3, 5)).toEqual(['plant 3', 'morning 0']);
    effects.forEach(({ se }, k) => {
      expect(se ** 2).toBeCloseTo(inverseDiagonal(block, k), 10);
    });
  });

  it('the effects solve the equations of the mode: D⁻¹u = Z′(y − mu)', () => {
    const { score } = surface.finder.work;
    factors.forEach((factor, g) => {
      groupEffects(factor, factors, sds, surface, mode).forEach(({ estimate }, a) => {
        const sum = score.reduce((total, s, i) => total + (factor.codes[i] === a ? s : 0), 0);
        expect(estimate / sds[g]! ** 2).toBeCloseTo(sum, 8);
      });
    });
  });

  it('a group without a variance has all its effects at 0', () => {
    const other = { name: 'vial', codes: new Int32Array(12), levels: ['V1'] };
    expect(groupEffects(other, factors, sds, surface, mode)).toEqual([
      { group: 'vial', level: 'V1', estimate: 0, se: 0 },
    ]);
  });
});
