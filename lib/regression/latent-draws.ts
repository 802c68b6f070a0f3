/** Draws from the normal approximation at a mode, with some coefficients held below a bound. */

import { normalCdf, normalQuantile } from '../numerics/normal.ts';
import type { RandomStream } from '../numerics/random.ts';
import type { LatentPoint } from './latent-likelihood.ts';
import type { LatentMode } from './latent-mode.ts';
import type { LatentModel } from './latent-model.ts';

export interface NormalDraw {
  readonly point: LatentPoint;
  /** Log density of the proposal at the point, up to (2 pi) to the power of half the dimension. */
  readonly logDensity: number;
}

/** Upper bounds of the last dense columns on the standard normal scale; none where empty. */
export type TailBounds = Float64Array;

/** Random numbers of one draw: kept so that the mirrored draw (−z, 1 − u) can use them again. */
export interface DrawNoise {
  readonly core: Float64Array;
  readonly block: Float64Array;
  /** Uniforms of the bounded coefficients. */
  readonly bounded: Float64Array;
}

export function drawNoise(model: LatentModel, bounds: TailBounds, random: RandomStream): DrawNoise {
  const fill = (length: number, next: () => number): Float64Array => Float64Array.from({ length }, next);
  return {
    core: fill(model.coreSize, random.normal),
    block: fill(model.blockSize, random.normal),
    bounded: fill(bounds.length, random.uniform),
  };
}

/** The mirror image of a draw's noise: halves the sampling error of anything nearly linear. */
export function mirrored(noise: DrawNoise): DrawNoise {
  return {
    core: noise.core.map((z) => -z),
    block: noise.block.map((z) => -z),
    bounded: noise.bounded.map((u) => 1 - u),
  };
}

/**
 * One draw of N(mode, H⁻¹) with the last coefficients of the core below their bounds.
 *
 * The factor's back substitution draws the last coefficient first, from its marginal, and each further one given
 * those after it; a bounded one is drawn from its truncated normal (Geweke, Hajivassiliou & Keane's sampler:
 * Geweke 1991; its weight goes into the log density).
 */
export function drawNormal(
  model: LatentModel,
  mode: LatentMode,
  noise: DrawNoise,
  bounds: TailBounds,
): NormalDraw {
  const { factor, diagonal, cross } = mode.curvature;
  const size = model.coreSize;
  const firstBounded = size - bounds.length;
  const shift = noise.core.slice();
  let logDensity = mode.logDeterminant / 2;
  for (let i = size - 1; i >= 0; i -= 1) {
    const row = i * size;
    const pivot = factor[row + i]!;
    // shift[i] holds the noise minus what the later coefficients have taken.
    if (i >= firstBounded) {
      const room = bounds[i - firstBounded]! - mode.point.core[i]!;
      const already = noise.core[i]! - shift[i]!;
      const mass = normalCdf(room * pivot + already);
      const z = normalQuantile(noise.bounded[i - firstBounded]! * mass);
      logDensity -= (z * z) / 2 + Math.log(mass);
      shift[i] = z - already;
    } else {
      logDensity -= (noise.core[i]! * noise.core[i]!) / 2;
    }
    const value = shift[i]! / pivot;
    shift[i] = value;
    for (let k = 0; k < i; k += 1) shift[k]! -= factor[row + k]! * value;
  }
  const block = new Float64Array(model.blockSize);
  for (let a = 0; a < model.blockSize; a += 1) {
    const list = model.touched[a]!;
    const values = cross[a]!;
    let sum = 0;
    for (let k = 0; k < list.length; k += 1) sum += values[k]! * shift[list[k]!]!;
    const z = noise.block[a]!;
    logDensity -= (z * z) / 2;
    block[a] = mode.point.block[a]! - sum / diagonal[a]! + z / Math.sqrt(diagonal[a]!);
  }
  const core = shift;
  for (let k = 0; k < size; k += 1) core[k]! += mode.point.core[k]!;
  return { point: { core, block }, logDensity };
}
