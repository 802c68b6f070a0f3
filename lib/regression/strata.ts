/** Strata of a design: those with both outcomes, their columns centred, and separation within them. */

import type { Design, Factor } from './design.ts';
import { columnCoefficients, type OrthogonalBasis } from './orthogonal-basis.ts';
import { norm, type OutcomeCone, separatingDirection } from './outcome-cone.ts';

/** A stratum with both outcomes: its rows, by position among all informative rows. */
export interface Stratum {
  readonly from: number;
  readonly to: number;
  /** Of the rows `from` to `to` - 1. */
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  readonly offset: Float64Array;
  /** Sums over the stratum. */
  readonly totalSuccesses: number;
  readonly totalTrials: number;
}

/** The informative strata, and the design's row at each position. */
export interface InformativeStrata {
  readonly strata: readonly Stratum[];
  readonly rows: readonly number[];
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Gathers the rows of each stratum and keeps the strata that have both a success and a failure. */
export function strataOf(design: Design, factor: Factor): InformativeStrata {
  const members: number[][] = factor.levels.map(() => []);
  factor.codes.forEach((code, i) => {
    members[code]!.push(i);
  });
  const strata: Stratum[] = [];
  const rows: number[] = [];
  for (const own of members) {
    const pick = (values: Float64Array): Float64Array => Float64Array.from(own, (i) => values[i]!);
    const successes = pick(design.successes);
    const trials = pick(design.trials);
    const totalSuccesses = sum(successes);
    const totalTrials = sum(trials);
    if (totalSuccesses === 0 || totalSuccesses === totalTrials) continue;
    const from = rows.length;
    rows.push(...own);
    const offset = pick(design.offset);
    strata.push({ from, to: rows.length, successes, trials, offset, totalSuccesses, totalTrials });
  }
  return { strata, rows };
}

/** The design's columns on the informative rows, less their mean within each stratum. */
export function withinStrata(
  design: Design,
  strata: readonly Stratum[],
  rows: readonly number[],
): readonly Float64Array[] {
  return design.columns.map((column) => {
    const values = Float64Array.from(rows, (i) => column[i]!);
    const length = norm(values);
    for (const { from, to, trials, totalTrials } of strata) {
      let mean = 0;
      for (let i = from; i < to; i += 1) mean += (trials[i - from]! * values[i]!) / totalTrials;
      for (let i = from; i < to; i += 1) values[i]! -= mean;
    }
    // What rounding leaves of a column without variation is no variation.
    return norm(values) > 1e-12 * length ? values : values.fill(0);
  });
}

/** Differences, at length 1, between every row with a success and every row with a failure of the same stratum. */
function differences(strata: readonly Stratum[], { p, rows }: OrthogonalBasis): number[] {
  const vectors: number[] = [];
  for (const { from, to, successes, trials } of strata) {
    for (let s = from; s < to; s += 1) {
      if (successes[s - from] === 0) continue;
      for (let f = from; f < to; f += 1) {
        if (f === s || successes[f - from] === trials[f - from]) continue;
        const vector = Float64Array.from({ length: p }, (_, k) => rows[s * p + k]! - rows[f * p + k]!);
        const length = norm(vector);
        if (length < 1e-12) continue;
        for (const value of vector) vectors.push(value / length);
      }
    }
  }
  return vectors;
}

/**
 * Columns along which the conditional likelihood rises for ever: some combination of them is nowhere lower for a
 * success than for a failure of the same stratum, and somewhere higher.
 *
 * @returns indices of columns; none where the conditional estimate is finite
 */
export function separatingWithin(strata: readonly Stratum[], basis: OrthogonalBasis): readonly number[] {
  const vectors = Float64Array.from(differences(strata, basis));
  const count = vectors.length / basis.p;
  const cone: OutcomeCone = { p: basis.p, mixed: [], count, vectors, source: new Int32Array(count) };
  const direction = separatingDirection(cone);
  if (direction === null) return [];
  const beta = columnCoefficients(basis, direction);
  const sizes = beta.map((value, j) => Math.abs(value) * basis.triangle[j * basis.p + j]!);
  const most = Math.max(...sizes);
  return [...sizes.keys()].filter((j) => sizes[j]! > 1e-7 * most);
}
