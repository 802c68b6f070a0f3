/** What a mixed fit says with its variances taken as known: effects of levels, precision of coefficients. */

import { cholesky, invertCholesky } from '../numerics/linear-algebra.ts';
import type { Factor } from './design.ts';
import { type LaplaceSurface, scaledSums } from './laplace-gradient.ts';
import { solveCurvature } from './latent-curvature.ts';
import type { LatentMode } from './latent-mode.ts';

/** Conditional mode of one random intercept. */
export interface GroupEffect {
  readonly group: string;
  readonly level: string;
  readonly estimate: number;
  /** Conditional standard deviation, given coefficients and variances. */
  readonly se: number;
}

/**
 * Conditional modes of a group's random intercepts, with their conditional standard deviations.
 *
 * @param group a group of the design; one that is not `kept` has all its effects at 0
 * @param kept the factors on the surface, and `sds` theirs
 * @param surface last evaluated at `mode`
 */
export function groupEffects(
  { name, levels }: Factor,
  kept: readonly Factor[],
  sds: Float64Array,
  { latent, inverse }: LaplaceSurface,
  { point }: LatentMode,
): GroupEffect[] {
  const g = kept.findIndex((factor) => factor.name === name);
  if (g < 0) return levels.map((level) => ({ group: name, level, estimate: 0, se: 0 }));
  const inBlock = g === latent.eliminated;
  const effects = inBlock ? point.block : point.core.subarray(latent.factorStart[g]!);
  const start = inBlock ? 0 : latent.factorStart[g]!;
  return levels.map((level, a) => {
    const k = start + a;
    const variance = inBlock ? inverse.diagonal[k]! : inverse.core[k * (latent.coreSize + 1)]!;
    return { group: name, level, estimate: sds[g]! * effects[a]!, se: sds[g]! * Math.sqrt(variance) };
  });
}

/**
 * Covariance of the coefficients were the variances known, p × p: the inverse of X′WX − X′WZS H⁻¹ SZ′WX.
 *
 * @source Bates, Mächler, Bolker & Walker (2015) Journal of Statistical Software 67(1), section 3
 */
export function conditionalCovariance(
  { model, latent, finder }: LaplaceSurface,
  sds: Float64Array,
  { curvature }: LatentMode,
): Float64Array {
  const p = model.columns.length;
  const { weight } = finder.work;
  const information = new Float64Array(p * p);
  const sums = model.columns.map((column) =>
    scaledSums(
      latent,
      sds,
      column.map((value, i) => value * weight[i]!),
    ),
  );
  const solved = sums.map((sum) => solveCurvature(latent, curvature, sum));
  for (let j = 0; j < p; j += 1) {
    for (let k = 0; k <= j; k += 1) {
      let sum = 0;
      for (let i = 0; i < weight.length; i += 1) {
        sum += weight[i]! * model.columns[j]![i]! * model.columns[k]![i]!;
      }
      sums[j]!.core.forEach((value, c) => {
        sum -= value * solved[k]!.core[c]!;
      });
      sums[j]!.block.forEach((value, a) => {
        sum -= value * solved[k]!.block[a]!;
      });
      information[j * p + k] = sum;
    }
  }
  const factor = cholesky(information, p);
  return factor === null ? new Float64Array(p * p) : invertCholesky(factor, p);
}
