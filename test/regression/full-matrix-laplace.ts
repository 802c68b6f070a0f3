/** A slow, obvious second implementation of mixed logistic regression: full matrices, effects on their own scale. */

import type { MixedModel } from '../../lib/regression/laplace-gradient.ts';

/** Solves A x = b and gives det A, by Gaussian elimination with pivoting. */
export function eliminate(matrix: number[][], b: readonly number[]): { x: number[]; determinant: number } {
  const n = b.length;
  const rows = matrix.map((row, i) => [...row, b[i]!]);
  let determinant = 1;
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k; i < n; i += 1) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    if (pivot !== k) {
      [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
      determinant = -determinant;
    }
    determinant *= rows[k]![k]!;
    for (let i = k + 1; i < n; i += 1) {
      const factor = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= n; j += 1) rows[i]![j]! -= factor * rows[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = rows[i]![n]!;
    for (let j = i + 1; j < n; j += 1) sum -= rows[i]![j]! * x[j]!;
    x[i] = sum / rows[i]![i]!;
  }
  return { x, determinant };
}

/** n × q matrix of zeros and ones, the levels of all factors side by side. */
function effectsMatrix(model: MixedModel): number[][] {
  return Array.from(model.successes, (_, i) =>
    model.factors.flatMap(({ codes, size }) =>
      Array.from({ length: size }, (_, a) => (codes[i] === a ? 1 : 0)),
    ),
  );
}

/**
 * log p(y | u) − u′D⁻¹u / 2 − log det D / 2 − log det(Z′WZ + D⁻¹) / 2 at its mode in u, without binomial
 * coefficients, D the diagonal of (positive) variances (Breslow & Clayton 1993, equations 2 to 5).
 */
export function fullMatrixLaplace(
  model: MixedModel,
  coefficients: readonly number[],
  sds: readonly number[],
): number {
  const z = effectsMatrix(model);
  const variances = model.factors.flatMap(({ size }, g) => new Array<number>(size).fill(sds[g]! ** 2));
  const fixed = Array.from(model.offset, (known, i) =>
    coefficients.reduce((sum, beta, j) => sum + beta * model.columns[j]![i]!, known),
  );
  const etaAt = (u: readonly number[]): number[] =>
    z.map((row, i) => row.reduce((sum, one, c) => sum + one * u[c]!, fixed[i]!));
  const derivatives = (u: readonly number[]): { slope: number[]; curvature: number[][] } => {
    const p = etaAt(u).map((x) => 1 / (1 + Math.exp(-x)));
    const score = p.map((mean, i) => model.successes[i]! - model.trials[i]! * mean);
    const weight = p.map((mean, i) => model.trials[i]! * mean * (1 - mean));
    const slope = u.map((value, c) =>
      z.reduce((sum, row, i) => sum + row[c]! * score[i]!, -value / variances[c]!),
    );
    const curvature = u.map((_, c) =>
      u.map((_, d) =>
        z.reduce((sum, row, i) => sum + row[c]! * row[d]! * weight[i]!, c === d ? 1 / variances[c]! : 0),
      ),
    );
    return { slope, curvature };
  };
  let u = variances.map(() => 0);
  for (let step = 0; step < 50; step += 1) {
    const { slope, curvature } = derivatives(u);
    const { x } = eliminate(curvature, slope);
    u = u.map((value, c) => value + x[c]!);
  }
  const { slope, curvature } = derivatives(u);
  const logLik = etaAt(u).reduce(
    (sum, eta, i) => sum + model.successes[i]! * eta - model.trials[i]! * Math.log1p(Math.exp(eta)),
    0,
  );
  const penalty = u.reduce((sum, value, c) => sum + value ** 2 / variances[c]!, 0);
  const logDetD = variances.reduce((sum, variance) => sum + Math.log(variance), 0);
  return logLik - (penalty + logDetD + Math.log(eliminate(curvature, slope).determinant)) / 2;
}

/** Maximum by trying each coordinate up and down with shrinking steps (Hooke & Jeeves 1961, without pattern moves). */
export function climb(f: (x: readonly number[]) => number, start: readonly number[]): number[] {
  let x = [...start];
  let value = f(x);
  for (let step = 0.5; step > 1e-7; step /= 2) {
    for (let improved = true; improved; ) {
      improved = false;
      for (let k = 0; k < x.length; k += 1) {
        for (const sign of [1, -1]) {
          const trial = x.map((v, j) => (j === k ? v + sign * step : v));
          const reached = f(trial);
          if (reached <= value) continue;
          [x, value, improved] = [trial, reached, true];
        }
      }
    }
  }
  return x;
}
