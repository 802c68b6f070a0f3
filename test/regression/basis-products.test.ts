import { describe, expect, it } from 'vitest';
import { cholesky, solveCholesky } from '../../lib/numerics/linear-algebra.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { addProducts, predictRows, scoreOf, squaredLengths } from '../../lib/regression/basis-products.ts';
import type { ColumnSource } from '../../lib/regression/column-source.ts';
import { columnsOf } from '../../lib/regression/column-source.ts';
import { type OrthogonalBasis, orthogonalBasis } from '../../lib/regression/orthogonal-basis.ts';
import { sparseBasis } from '../../lib/regression/sparse-basis.ts';

const m = 1100;
const random = randomStream(3);
const numbers = (next: () => number) => Float64Array.from({ length: m }, next);
const sources: ColumnSource[] = [
  { values: numbers(() => 1) },
  { codes: Int32Array.from({ length: m }, (_, i) => i % 7), width: 6 },
  { codes: Int32Array.from({ length: m }, () => Math.floor(11 * random.uniform())), width: 10 },
  { values: numbers(random.normal) },
];
const weights = numbers(random.uniform);
const rowScore = numbers(random.normal);
const offset = numbers(random.normal);

const bases: [string, OrthogonalBasis][] = [
  ['dense', orthogonalBasis(columnsOf(sources), weights) as OrthogonalBasis],
  ['sparse', sparseBasis(sources, weights)!],
];

describe.each(bases)('products of a %s basis', (_, basis) => {
  const { p } = basis;
  const row = (i: number) => basis.rows.subarray(i * p, (i + 1) * p);
  const inner = (a: Float64Array, b: Float64Array) => a.reduce((sum, x, k) => sum + x * b[k]!, 0);

  it('are those of its rows, one by one', () => {
    const gamma = Float64Array.from({ length: p }, random.normal);
    const eta = new Float64Array(m);
    predictRows(basis, offset, gamma, eta);
    const matrix = new Float64Array(p * p);
    const score = new Float64Array(p);
    addProducts(basis, { weight: weights, score: rowScore }, matrix, score);
    expect([...scoreOf(basis, rowScore)].map((x, k) => x - score[k]!).every((d) => Math.abs(d) < 1e-12)).toBe(
      true,
    );
    const factor = cholesky(matrix, p)!;
    const lengths = new Float64Array(m);
    squaredLengths(basis, factor, lengths);
    const slowMatrix = new Float64Array(p * p);
    const slowScore = new Float64Array(p);
    for (let i = 0; i < m; i += 1) {
      expect(eta[i]).toBeCloseTo(offset[i]! + inner(row(i), gamma), 11);
      expect(lengths[i]).toBeCloseTo(inner(row(i), solveCholesky(factor, p, row(i))), 11);
      for (let j = 0; j < p; j += 1) {
        slowScore[j]! += rowScore[i]! * row(i)[j]!;
        for (let k = 0; k <= j; k += 1) slowMatrix[j * p + k]! += weights[i]! * row(i)[j]! * row(i)[k]!;
      }
    }
    matrix.forEach((value, k) => {
      expect(value).toBeCloseTo(slowMatrix[k]!, 11);
    });
    score.forEach((value, k) => {
      expect(value).toBeCloseTo(slowScore[k]!, 11);
    });
  });
});
