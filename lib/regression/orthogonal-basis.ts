/** An orthonormal basis of the columns, so that neither scale nor near collinearity spoils the normal equations. */

/** X = Q R with Q′ M Q = I, M the diagonal of row weights. */
export interface OrthogonalBasis {
  readonly m: number;
  readonly p: number;
  /** Q, m × p, row by row; written out at the first use. */
  readonly rows: Float64Array;
  /** Q as p columns, or by its entries that are not zero. */
  readonly entries: readonly Float64Array[] | SparseRows;
  /** R, p × p upper triangular, row by row, its diagonal positive. */
  readonly triangle: Float64Array;
}

/** Entries that are not zero: row i has those from `start[i]` to `start[i + 1]`, in columns `index`. */
export interface SparseRows {
  readonly start: Int32Array;
  readonly index: Int32Array;
  readonly value: Float64Array;
}

/** A column that is a linear combination of columns before it. */
export interface Dependence {
  readonly column: number;
  readonly on: readonly number[];
}

// A column whose part of its own is below this share of its length is taken as dependent.
const smallestShare = 1e-10;
const mostlyOwn = 0.7;

/** Squared length under the weights; two sums at a time, which the processor can overlap. */
function squaredLength(vector: Float64Array, weights: Float64Array): number {
  let s0 = 0;
  let s1 = 0;
  let i = 0;
  for (; i + 1 < vector.length; i += 2) {
    s0 += weights[i]! * vector[i]! * vector[i]!;
    s1 += weights[i + 1]! * vector[i + 1]! * vector[i + 1]!;
  }
  if (i < vector.length) s0 += weights[i]! * vector[i]! * vector[i]!;
  return s0 + s1;
}

/**
 * Takes away from `vector` its part along `directions`, adding the coefficients to column j of R: three directions at a
 * time, those before taken away already, so that memory is read a third as often. Returns the squared length of the rest.
 */
function project(
  vector: Float64Array,
  directions: readonly Float64Array[],
  weights: Float64Array,
  triangle: Float64Array,
  p: number,
): number {
  const j = directions.length;
  let squared = 0;
  for (let k = 0; k < j; k += 3) {
    const a = directions[k]!;
    const b = directions[Math.min(k + 1, j - 1)]!;
    const c = directions[Math.min(k + 2, j - 1)]!;
    let alongA = 0;
    let alongB = 0;
    let alongC = 0;
    for (let i = 0; i < vector.length; i += 1) {
      const x = weights[i]! * vector[i]!;
      alongA += x * a[i]!;
      alongB += x * b[i]!;
      alongC += x * c[i]!;
    }
    if (k + 1 >= j) alongB = 0;
    if (k + 2 >= j) alongC = 0;
    squared = 0;
    for (let i = 0; i < vector.length; i += 1) {
      const rest = vector[i]! - (alongA * a[i]! + alongB * b[i]! + alongC * c[i]!);
      vector[i] = rest;
      squared += weights[i]! * rest * rest;
    }
    triangle[k * p + j]! += alongA;
    if (k + 1 < j) triangle[(k + 1) * p + j]! += alongB;
    if (k + 2 < j) triangle[(k + 2) * p + j]! += alongC;
  }
  return squared;
}

/** Coefficients of column j on the columns before it: back substitution in R. */
function combination(triangle: Float64Array, j: number, p: number): readonly number[] {
  const coefficients = new Float64Array(j);
  for (let k = j - 1; k >= 0; k -= 1) {
    let sum = triangle[k * p + j]!;
    for (let l = k + 1; l < j; l += 1) sum -= triangle[k * p + l]! * coefficients[l]!;
    coefficients[k] = sum / triangle[k * p + k]!;
  }
  const largest = coefficients.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return [...coefficients.keys()].filter((k) => Math.abs(coefficients[k]!) > 1e-8 * largest);
}

/**
 * Orthogonal basis of columns by Gram-Schmidt with one reorthogonalisation where it is needed ("twice is enough":
 * Parlett 1998, The Symmetric Eigenvalue Problem, section 6.9).
 *
 * @param columns p arrays of length m
 * @param weights m positive row weights, the trials
 * @returns the basis, or the first column that depends on those before it
 */
export function orthogonalBasis(
  columns: readonly Float64Array[],
  weights: Float64Array,
): OrthogonalBasis | Dependence {
  const p = columns.length;
  const m = weights.length;
  const triangle = new Float64Array(p * p);
  const directions: Float64Array[] = [];
  for (let j = 0; j < p; j += 1) {
    const vector = columns[j]!.slice();
    const length = Math.sqrt(squaredLength(vector, weights));
    let own = j === 0 ? length : Math.sqrt(project(vector, directions, weights, triangle, p));
    // What cancelled no digit is orthogonal to rounding.
    if (own < mostlyOwn * length) own = Math.sqrt(project(vector, directions, weights, triangle, p));
    if (!(own > smallestShare * length)) return { column: j, on: combination(triangle, j, p) };
    triangle[j * p + j] = own;
    const scale = 1 / own;
    for (let i = 0; i < m; i += 1) vector[i]! *= scale;
    directions.push(vector);
  }
  return withRows({ m, p, triangle, entries: directions }, () => {
    const rows = new Float64Array(m * p);
    directions.forEach((direction, j) => {
      for (let i = 0; i < m; i += 1) rows[i * p + j] = direction[i]!;
    });
    return rows;
  });
}

/** A basis whose rows are written out at the first use. */
export function withRows(basis: Omit<OrthogonalBasis, 'rows'>, write: () => Float64Array): OrthogonalBasis {
  let rows: Float64Array | null = null;
  return {
    ...basis,
    get rows() {
      rows ??= write();
      return rows;
    },
  };
}

/**
 * Orthogonal basis of columns that must be linearly independent.
 *
 * @throws RangeError naming the columns where one is a linear combination of others
 */
export function independentBasis(
  caller: string,
  names: readonly string[],
  columns: readonly Float64Array[],
  weights: Float64Array,
): OrthogonalBasis {
  const basis = orthogonalBasis(columns, weights);
  if (!('column' in basis)) return basis;
  const others = basis.on.map((j) => names[j]).join(', ');
  const why = others === '' ? 'which is zero in every row' : `which follows from ${others}`;
  throw new RangeError(
    `${caller}: columns must not be linear combinations of one another, got ${names[basis.column]}, ${why}`,
  );
}

type Triangle = Pick<OrthogonalBasis, 'p' | 'triangle'>;

/** Coefficients of the columns from those of the basis: solves R beta = gamma. */
export function columnCoefficients(basis: Triangle, gamma: Float64Array): Float64Array {
  return backSubstituted(basis, gamma.slice());
}

function backSubstituted({ p, triangle }: Triangle, beta: Float64Array): Float64Array {
  for (let j = p - 1; j >= 0; j -= 1) {
    let sum = beta[j]!;
    for (let k = j + 1; k < p; k += 1) sum -= triangle[j * p + k]! * beta[k]!;
    beta[j] = sum / triangle[j * p + j]!;
  }
  return beta;
}

/** Coefficients of the basis from those of the columns: gamma = R beta. */
export function basisCoefficients(basis: Triangle, beta: ArrayLike<number>): Float64Array {
  const { p, triangle } = basis;
  const gamma = new Float64Array(p);
  for (let j = 0; j < p; j += 1) {
    for (let k = j; k < p; k += 1) gamma[j]! += triangle[j * p + k]! * beta[k]!;
  }
  return gamma;
}

/** Covariance of the columns' coefficients, R⁻¹ C R⁻ᵀ, from the p × p covariance of the basis' coefficients. */
export function columnCovariance(basis: Triangle, covariance: Float64Array): Float64Array {
  const { p } = basis;
  const half = new Float64Array(p * p);
  const column = new Float64Array(p);
  for (let j = 0; j < p; j += 1) {
    // Row j of C is column j, C being symmetric.
    half.set(backSubstituted(basis, covariance.slice(j * p, (j + 1) * p)), j * p);
  }
  const whole = new Float64Array(p * p);
  for (let k = 0; k < p; k += 1) {
    for (let j = 0; j < p; j += 1) column[j] = half[j * p + k]!;
    whole.set(backSubstituted(basis, column), k * p);
  }
  return whole;
}

/** Logarithm of |R|². */
export function logSquaredDeterminant(basis: Triangle): number {
  let sum = 0;
  for (let j = 0; j < basis.p; j += 1) sum += Math.log(basis.triangle[j * basis.p + j]!);
  return 2 * sum;
}
