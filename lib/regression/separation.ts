/** Complete and quasi-complete separation: whether maximum likelihood is infinite, and along which columns. */

import { columnCoefficients, type OrthogonalBasis, orthogonalBasis } from './orthogonal-basis.ts';
import {
  along,
  norm,
  outcomeCone,
  outcomeSigns,
  rises,
  separatingDirection,
  zeroProduct,
} from './outcome-cone.ts';
import type { Counts } from './response.ts';

interface Direction {
  /** Columns that the direction uses. */
  readonly columns: readonly number[];
  /** Rows of the design that it separates strictly. */
  readonly rows: ReadonlySet<number>;
}

/** A separating direction of the active rows that uses the given columns only. */
function directionOf(
  columns: readonly Float64Array[],
  counts: Counts,
  active: readonly number[],
  allowed: readonly number[],
): Direction | null {
  const basis = orthogonalBasis(
    allowed.map((j) => columns[j]!),
    counts.trials,
  );
  if ('column' in basis) return null;
  const cone = outcomeCone(basis, outcomeSigns(counts), active);
  const direction = cone === null ? null : separatingDirection(cone);
  if (cone === null || direction === null) return null;
  const coefficients = columnCoefficients(basis, direction);
  const sizes = coefficients.map((value, k) => Math.abs(value) * norm(columns[allowed[k]!]!));
  const most = Math.max(...sizes);
  const rows = new Set<number>();
  for (let i = 0; i < cone.count; i += 1) {
    if (along(cone, i, direction) > 10 * zeroProduct) rows.add(cone.source[i]!);
  }
  return { columns: allowed.filter((_, k) => sizes[k]! > 1e-7 * most), rows };
}

/** Leaves out columns, the last first, as long as those left still separate. */
function withFewestColumns(
  columns: readonly Float64Array[],
  counts: Counts,
  active: readonly number[],
  start: Direction,
): Direction {
  let direction = start;
  for (const column of [...start.columns].reverse()) {
    if (!direction.columns.includes(column) || direction.columns.length === 1) continue;
    const fewer = directionOf(
      columns,
      counts,
      active,
      direction.columns.filter((j) => j !== column),
    );
    if (fewer !== null) direction = fewer;
  }
  return direction;
}

/** What separation takes: the columns that run to infinity, and the rows that the limit explains perfectly. */
export interface Separation {
  readonly columns: readonly number[];
  readonly rows: ReadonlySet<number>;
}

/** The columns of `separatingColumns`, in increasing order, with the rows separated strictly. */
export function separation(columns: readonly Float64Array[], counts: Counts): Separation {
  const found = new Set<number>();
  const rows = new Set<number>();
  const sign = outcomeSigns(counts);
  let active = [...sign.keys()].filter((i) => sign[i] !== 0);
  const all = [...columns.keys()];
  while (active.length > 0) {
    const direction = directionOf(columns, counts, active, all);
    if (direction === null || direction.rows.size === 0) break;
    const fewest = withFewestColumns(columns, counts, active, direction);
    for (const column of fewest.columns) found.add(column);
    for (const row of fewest.rows) rows.add(row);
    active = active.filter((i) => !fewest.rows.has(i));
  }
  return { columns: [...found].sort((a, b) => a - b), rows };
}

/**
 * Detection of separation in binary regression.
 *
 * Answers whether the maximum-likelihood estimate of a binomial regression (any of the links here) fails to exist,
 * and which columns run to infinity. Separating directions are found one after another, each cut down to the fewest
 * columns, until the rows that are left overlap.
 *
 * @param columns p linearly independent columns of m rows
 * @param counts successes and trials of the m rows
 * @returns indices of the columns in increasing order; none where the estimate exists
 * @source Albert & Anderson (1984) Biometrika 71, 1–10; Correia, Guimarães & Zylkin (2019) arXiv:1903.01633,
 *   section 2 (separation found one direction at a time)
 */
export function separatingColumns(columns: readonly Float64Array[], counts: Counts): readonly number[] {
  return separation(columns, counts).columns;
}

/** Whether a coefficient can run to infinity, upwards or downwards, with no loss of likelihood. */
export interface Recession {
  readonly up: boolean;
  readonly down: boolean;
}

/**
 * For each column, on which sides its profile likelihood never falls: there its interval has no end.
 *
 * @param columns p linearly independent columns of m rows
 * @param counts successes and trials of the m rows
 * @source Rockafellar (1970) Convex Analysis, theorems 8.7 and 9.2 (recession of a partial maximum)
 */
export function recessions(columns: readonly Float64Array[], counts: Counts): readonly Recession[] {
  const basis = orthogonalBasis(columns, counts.trials);
  const sign = outcomeSigns(counts);
  const pure = [...sign.keys()].filter((i) => sign[i] !== 0);
  const cone = 'column' in basis ? null : outcomeCone(basis, sign, pure);
  if ('column' in basis || cone === null) return columns.map(() => ({ up: false, down: false }));
  return columns.map((_, j) => {
    const target = coefficientOf(basis, j);
    return {
      up: rises(cone, target),
      down: rises(
        cone,
        target.map((value) => -value),
      ),
    };
  });
}

/** The vector c with beta_j = c · gamma: row j of R⁻¹. */
function coefficientOf(basis: OrthogonalBasis, j: number): Float64Array {
  return Float64Array.from({ length: basis.p }, (_, k) => {
    const unit = new Float64Array(basis.p);
    unit[k] = 1;
    return columnCoefficients(basis, unit)[j]!;
  });
}
