import { describe, expect, it } from 'vitest';
import { columnCoefficients, independentBasis } from '../../lib/regression/orthogonal-basis.ts';
import {
  climbFromLimit,
  climbShape,
  observedCovariance,
  type RowLikelihood,
  rowPredictors,
} from '../../lib/regression/shape-climb.ts';

// Normal observations with the variance as shape: the maximum and its information are known exactly (any textbook).
const y = [1, 4, 6, 3, 9, 8];
const x = [0, 1, 2, 3, 4, 5];
const columns = [new Float64Array(6).fill(1), Float64Array.from(x)];
const basis = independentBasis('test', ['one', 'x'], columns, new Float64Array(6).fill(1));
const offset = new Float64Array(6);

const normalRow: RowLikelihood = (i, eta, logVariance, slopes) => {
  const distance = y[i]! - eta;
  const precision = Math.exp(-logVariance);
  slopes.value = (-logVariance - distance * distance * precision) / 2;
  slopes.eta = distance * precision;
  slopes.etaEta = -precision;
  slopes.shape = (-1 + distance * distance * precision) / 2;
  slopes.etaShape = -distance * precision;
  slopes.shapeShape = (-distance * distance * precision) / 2;
};

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const sxx = mean(x.map((v) => (v - 2.5) ** 2)) * 6;
const slope = (mean(x.map((v, i) => (v - 2.5) * y[i]!)) * 6) / sxx;
const intercept = mean(y) - 2.5 * slope;
const variance = mean(y.map((v, i) => (v - intercept - slope * x[i]!) ** 2));

describe('climbShape', () => {
  it('finds the least squares line and the mean square, from where the likelihood is not concave', () => {
    const model = { basis, offset, row: normalRow, shaped: true };
    const end = climbShape(model, Float64Array.of(0, 0, 8))!;
    expect(end.convergence.settled).toBe(true);
    const [b0, b1] = columnCoefficients(basis, end.point.gamma.slice(0, 2));
    expect(b0).toBeCloseTo(intercept, 11);
    expect(b1).toBeCloseTo(slope, 11);
    expect(Math.exp(end.point.gamma[2]!)).toBeCloseTo(variance, 11);
    rowPredictors(model, end.point.gamma).forEach((eta, i) => {
      expect(eta).toBeCloseTo(intercept + slope * x[i]!, 11);
    });
  });

  it('gives the covariance of the columns and of the logarithm of the shape', () => {
    const model = { basis, offset, row: normalRow, shaped: true };
    const { point } = climbShape(model, Float64Array.of(0, 0, 1))!;
    const covariance = observedCovariance(model, point)!;
    const wanted = [
      variance * (1 / 6 + 2.5 ** 2 / sxx),
      (-variance * 2.5) / sxx,
      0,
      (-variance * 2.5) / sxx,
      variance / sxx,
      0,
      0,
      0,
      2 / 6,
    ];
    wanted.forEach((value, k) => {
      expect(covariance[k]).toBeCloseTo(value, 10);
    });
  });

  it('leaves the shape out where it is not estimated', () => {
    const model = { basis, offset: new Float64Array(6).fill(1), row: normalRow, shaped: false };
    const { point } = climbShape(model, new Float64Array(2))!;
    // A variance of exp(0) = 1, and an offset of 1 taken from the intercept.
    expect(columnCoefficients(basis, point.gamma)[0]).toBeCloseTo(intercept - 1, 11);
    expect(observedCovariance(model, point)![3]).toBeCloseTo(1 / sxx, 12);
  });

  it('says that a start cannot be evaluated', () => {
    const row: RowLikelihood = (_i, eta, _shape, slopes) => {
      slopes.value = Math.log(eta);
    };
    expect(climbShape({ basis, offset, row, shaped: false }, Float64Array.of(-1, -1))).toBeNull();
  });
});

describe('climbFromLimit', () => {
  /** Least squares with a bonus by u = 1 / shape: `rise` · u − u², whose maximum is at u = rise / 2. */
  const bonus =
    (rise: number): RowLikelihood =>
    (i, eta, logShape, slopes) => {
      const u = Math.exp(-logShape);
      slopes.value = -((y[i]! - eta) ** 2) / 2 + rise * u - u * u;
      slopes.eta = y[i]! - eta;
      slopes.etaEta = -1;
      slopes.shape = -rise * u + 2 * u * u;
      slopes.shapeShape = rise * u - 4 * u * u;
    };
  const plain = climbShape({ basis, offset, row: bonus(0), shaped: false }, new Float64Array(2))!;
  const gamma = plain.point.gamma;
  // With logShape 0, u is 1 and the bonus of six rows is −6.
  const objective = plain.point.objective + 6;

  it('is null where nothing does better than the limit', () => {
    const model = { basis, offset, row: bonus(-1), shaped: true };
    expect(climbFromLimit(model, { gamma, objective, leaves: false }, 0)).toBeNull();
  });

  it('finds a maximum near the limit from a guess that is worse than the limit', () => {
    const model = { basis, offset, row: bonus(1e-3), shaped: true };
    const end = climbFromLimit(model, { gamma, objective, leaves: true }, 0)!;
    expect(end.convergence.settled).toBe(true);
    expect(Math.exp(-end.point.gamma[2]!)).toBeCloseTo(5e-4, 10);
  });
});
