/** A latent model written out in full: one dense design matrix, no elimination, nothing clever. */

import type { LatentScales } from '../../lib/regression/latent-likelihood.ts';
import type { LatentModel, LatentSpec } from '../../lib/regression/latent-model.ts';

/** Design matrix whose columns are already multiplied by their scales, as rows. */
export type Matrix = number[][];

/** Columns in the order: levels of every factor, factor by factor, then the dense columns. */
export function denseDesign(spec: LatentSpec, scales: LatentScales): Matrix {
  return Array.from(spec.successes, (_, i) => [
    ...spec.factors.flatMap(({ codes, size }, g) =>
      Array.from({ length: size }, (_, level) => (codes[i] === level ? scales.factors[g]! : 0)),
    ),
    ...spec.columns.map((column, c) => column[i]! * scales.columns[c]!),
  ]);
}

/** A point of the latent model in the order of `denseDesign`. */
export function denseVector(
  model: LatentModel,
  point: { core: Float64Array; block: Float64Array },
): number[] {
  return [
    ...model.factors.flatMap(({ size }, g) =>
      Array.from({ length: size }, (_, level) =>
        g === model.eliminated ? point.block[level]! : point.core[model.factorStart[g]! + level]!,
      ),
    ),
    ...model.columns.map((_, c) => point.core[model.columnStart + c]!),
  ];
}

export function denseEta(spec: LatentSpec, x: Matrix, v: readonly number[]): number[] {
  return x.map((row, i) => row.reduce((sum, value, k) => sum + value * v[k]!, spec.offset[i]!));
}

/** Log-likelihood minus half of v′v, straight from its definition, exclusive levels included. */
export function denseDensity(
  spec: LatentSpec,
  scales: LatentScales,
  x: Matrix,
  v: readonly number[],
): number {
  const rows = denseEta(spec, x, v).map(
    (eta, i) => spec.successes[i]! * eta - spec.trials[i]! * Math.log(1 + Math.exp(eta)),
  );
  const prior = -v.reduce((sum, value) => sum + value * value, 0) / 2;
  if (spec.exclusive < 0) return rows.reduce((a, b) => a + b, prior);
  const { codes, size } = spec.factors[spec.exclusive]!;
  let total = prior;
  rows.forEach((row, i) => {
    if (codes[i]! < 0) total += row;
  });
  for (let level = 0; level < size; level += 1) {
    const own = rows.filter((_, i) => codes[i] === level).reduce((a, b) => a + b, 0);
    const barren = spec.successes.every((r, i) => codes[i] !== level || r === 0);
    total += Math.log((barren ? scales.exclusive : 0) + (1 - scales.exclusive) * Math.exp(own));
  }
  return total;
}

/** I + X′WX with the binomial weights of an ordinary model. */
export function denseCurvature(spec: LatentSpec, x: Matrix, v: readonly number[]): Matrix {
  const weights = denseEta(spec, x, v).map((eta, i) => {
    const p = 1 / (1 + Math.exp(-eta));
    return spec.trials[i]! * p * (1 - p);
  });
  return v.map((_, j) =>
    v.map((_, k) => x.reduce((sum, row, i) => sum + row[j]! * weights[i]! * row[k]!, j === k ? 1 : 0)),
  );
}

/** Solves A x = b by Gauss's elimination with pivoting; the log of |det A| comes with it. */
export function gauss(a: Matrix, b: readonly number[]): { x: number[]; logDeterminant: number } {
  const m = a.map((row, i) => [...row, b[i]!]);
  let logDet = 0;
  for (let k = 0; k < m.length; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < m.length; i += 1) if (Math.abs(m[i]![k]!) > Math.abs(m[pivot]![k]!)) pivot = i;
    [m[k], m[pivot]] = [m[pivot]!, m[k]!];
    logDet += Math.log(Math.abs(m[k]![k]!));
    for (let i = 0; i < m.length; i += 1) {
      if (i === k) continue;
      const ratio = m[i]![k]! / m[k]![k]!;
      m[i] = m[i]!.map((value, j) => value - ratio * m[k]![j]!);
    }
  }
  return { x: m.map((row, i) => row.at(-1)! / row[i]!), logDeterminant: logDet };
}

/** Mode by undamped Newton steps on the dense model (log-concave, started at 0), and Laplace's approximation. */
export function denseLaplace(
  spec: LatentSpec,
  scales: LatentScales,
): { mode: number[]; logMarginal: number } {
  const x = denseDesign(spec, scales);
  let mode = x[0]!.map(() => 0);
  for (let step = 0; step < 30; step += 1) {
    const eta = denseEta(spec, x, mode);
    const score = eta.map((e, i) => spec.successes[i]! - spec.trials[i]! / (1 + Math.exp(-e)));
    const slope = mode.map((value, k) => x.reduce((sum, row, i) => sum + row[k]! * score[i]!, -value));
    const move = gauss(denseCurvature(spec, x, mode), slope).x;
    mode = mode.map((value, k) => value + move[k]!);
  }
  const { logDeterminant } = gauss(denseCurvature(spec, x, mode), mode);
  return { mode, logMarginal: denseDensity(spec, scales, x, mode) - logDeterminant / 2 };
}
