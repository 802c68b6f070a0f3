import { describe, expect, it } from 'vitest';
import {
  basisCoefficients,
  columnCoefficients,
  columnCovariance,
  logSquaredDeterminant,
  orthogonalBasis,
} from '../../lib/regression/orthogonal-basis.ts';

const f = (...values: number[]): Float64Array => Float64Array.from(values);

describe('orthogonalBasis', () => {
  const columns = [f(1, 1, 1, 1), f(2020, 2021, 2022, 2023), f(0, 1, 0, 5)];
  const weights = f(1, 2, 3, 4);
  const basis = orthogonalBasis(columns, weights);

  it('is orthonormal under the weights and gives the columns back', () => {
    if ('column' in basis) throw new Error('the columns are independent');
    for (let a = 0; a < 3; a += 1) {
      for (let b = 0; b < 3; b += 1) {
        let sum = 0;
        for (let i = 0; i < 4; i += 1) sum += weights[i]! * basis.rows[3 * i + a]! * basis.rows[3 * i + b]!;
        expect(sum).toBeCloseTo(a === b ? 1 : 0, 13);
      }
    }
    columns.forEach((column, j) => {
      const unit = new Float64Array(3);
      unit[j] = 1;
      const gamma = basisCoefficients(basis, unit);
      const again = [0, 1, 2, 3].map((i) => gamma.reduce((sum, g, k) => sum + g * basis.rows[3 * i + k]!, 0));
      again.forEach((value, i) => {
        expect(value).toBeCloseTo(column[i]!, 9);
      });
    });
  });

  it('carries coefficients and covariances there and back', () => {
    if ('column' in basis) throw new Error('the columns are independent');
    const beta = columnCoefficients(basis, basisCoefficients(basis, [3, -0.001, 7]));
    expect(beta[0]).toBeCloseTo(3, 8);
    expect(beta[1]).toBeCloseTo(-0.001, 11);
    expect(beta[2]).toBeCloseTo(7, 10);
    // R⁻¹ R⁻ᵀ is the inverse of X′MX; entries from R 4.2.2: solve(t(X) %*% (w * X)).
    const covariance = columnCovariance(basis, f(1, 0, 0, 0, 1, 0, 0, 0, 1));
    expect(covariance[8]).toBeCloseTo(0.0471698113208, 10);
    expect(logSquaredDeterminant(basis)).toBeCloseTo(Math.log(2120), 6);
  });

  it('finds the first dependent column and what it follows from', () => {
    const dependent = [f(1, 1, 1), f(0, 1, 2), f(4, 0, 0), f(3, 5, 7)];
    expect(orthogonalBasis([...dependent.slice(0, 2), dependent[3]!], f(1, 1, 1))).toEqual({
      column: 2,
      on: [0, 1],
    });
    expect(orthogonalBasis([f(0, 0, 0)], f(1, 1, 1))).toEqual({ column: 0, on: [] });
  });
});
