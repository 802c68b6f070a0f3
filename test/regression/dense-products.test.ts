import { describe, expect, it } from 'vitest';
import { cholesky, solveCholesky } from '../../lib/numerics/linear-algebra.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { addDenseProducts, denseLengths, piece } from '../../lib/regression/dense-products.ts';

const m = 2 * piece + 77;
const random = randomStream(5);
const draw = () => Float64Array.from({ length: m }, random.normal);

// The oracle goes row by row. Every number of columns up to nine has its own pattern of twos and threes.
describe.each([1, 2, 3, 4, 5, 6, 7, 8, 9])('products of %i dense columns', (p) => {
  const columns = Array.from({ length: p }, draw);
  const weight = Float64Array.from({ length: m }, random.uniform);
  const score = draw();

  it('are those of the rows, added to what is there', () => {
    const matrix = new Float64Array(p * p).fill(0.5);
    const sums = new Float64Array(p).fill(2);
    addDenseProducts(columns, m, { weight, score }, matrix, sums);
    for (let j = 0; j < p; j += 1) {
      let wanted = 2;
      for (let i = 0; i < m; i += 1) wanted += score[i]! * columns[j]![i]!;
      expect(sums[j]).toBeCloseTo(wanted, 10);
      for (let k = 0; k < p; k += 1) {
        let product = 0.5;
        for (let i = 0; k <= j && i < m; i += 1) product += weight[i]! * columns[j]![i]! * columns[k]![i]!;
        expect(matrix[j * p + k]).toBeCloseTo(product, 10);
      }
    }
  });

  it('give the squared lengths under an inverse', () => {
    const matrix = new Float64Array(p * p);
    addDenseProducts(columns, m, { weight, score }, matrix, new Float64Array(p));
    const factor = cholesky(matrix, p)!;
    const lengths = draw();
    denseLengths(columns, m, factor, lengths);
    for (let i = 0; i < m; i += 1) {
      const row = columns.map((column) => column[i]!);
      const wanted = solveCholesky(factor, p, row).reduce((sum, value, k) => sum + value * row[k]!, 0);
      expect(Math.abs(lengths[i]! - wanted)).toBeLessThan(1e-13);
    }
  });
});
