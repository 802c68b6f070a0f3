/** Draws from the normal approximation at a mode, with some coefficients held below a bound. */

import { solveUpper } from '../numerics/linear-algebra.ts';
import { normalCdf, normalQuantile } from '../numerics/normal.ts';
import type { RandomStream } from '../numerics/random.ts';
import type { LatentPoint } from './latent-likelihood.ts';
import type { LatentMode } from './latent-mode.ts';
import type { LatentModel } from './latent-model.ts';

/** Upper bounds of the last dense columns on the standard normal scale; none where empty. */
export type TailBounds = Float64Array;

/** Random numbers of one draw, kept so that the mirrored draw (−z, 1 − u) can use them again. */
export interface DrawNoise {
  readonly core: Float64Array;
  readonly block: Float64Array;
  /** Uniforms that tell the two kinds of a level that may be barren apart. */
  readonly kind: Float64Array;
  /** Uniforms of the bounded coefficients. */
  readonly bounded: Float64Array;
}

/** Room for the noise of one draw, to be filled again and again: thousands of small arrays would cost more than the draws. */
export function drawNoise(model: LatentModel, bounds: TailBounds): DrawNoise {
  return {
    core: new Float64Array(model.coreSize),
    block: new Float64Array(model.blockSize),
    kind: new Float64Array(model.blockSize),
    bounded: new Float64Array(bounds.length),
  };
}

/** Fills the noise with new random numbers. */
export function refill({ core, block, kind, bounded }: DrawNoise, random: RandomStream): void {
  for (let k = 0; k < core.length; k += 1) core[k] = random.normal();
  for (let a = 0; a < block.length; a += 1) block[a] = random.normal();
  for (let a = 0; a < kind.length; a += 1) kind[a] = random.uniform();
  for (let b = 0; b < bounded.length; b += 1) bounded[b] = random.uniform();
}

/** Turns the noise into its mirror image: the pair halves the sampling error of anything nearly linear. */
export function mirror({ core, block, bounded }: DrawNoise): void {
  for (let k = 0; k < core.length; k += 1) core[k] = -core[k]!;
  for (let a = 0; a < block.length; a += 1) block[a] = -block[a]!;
  for (let b = 0; b < bounded.length; b += 1) bounded[b] = 1 - bounded[b]!;
}

/**
 * One draw of N(mode, H⁻¹) with the last coefficients of the core below their bounds.
 *
 * The factor's back substitution draws the last coefficient first, from its marginal, and each further one given
 * those after it; a bounded one is drawn from its truncated normal (Geweke, Hajivassiliou & Keane's sampler:
 * Geweke 1991; its weight goes into the log density).
 *
 * @param target where the point goes
 * @returns log density of the proposal there, up to (2 pi) to the power of half the dimension
 */
export function drawNormal(
  model: LatentModel,
  mode: LatentMode,
  noise: DrawNoise,
  bounds: TailBounds,
  target: LatentPoint,
): number {
  const logCore = drawCore(model, mode, noise, bounds, target.core);
  const logBlock = drawBlock(model, mode, noise, target);
  for (let k = 0; k < model.coreSize; k += 1) target.core[k]! += mode.point.core[k]!;
  return mode.logDeterminant / 2 + logCore + logBlock;
}

/** The core as a step from the mode; returns its part of the log density without the determinant. */
function drawCore(
  model: LatentModel,
  mode: LatentMode,
  noise: DrawNoise,
  bounds: TailBounds,
  step: Float64Array,
): number {
  const { factor } = mode.curvature;
  const size = model.coreSize;
  const firstBounded = size - bounds.length;
  let logDensity = 0;
  step.set(noise.core);
  for (let i = size - 1; i >= firstBounded; i -= 1) {
    const row = i * size;
    const pivot = factor[row + i]!;
    // step[i] holds the noise minus what the later coefficients have taken.
    const taken = noise.core[i]! - step[i]!;
    const room = bounds[i - firstBounded]! - mode.point.core[i]!;
    const mass = normalCdf(room * pivot + taken);
    const bounded = normalQuantile(noise.bounded[i - firstBounded]! * mass);
    logDensity -= (bounded * bounded) / 2 + Math.log(mass);
    const value = (bounded - taken) / pivot;
    step[i] = value;
    for (let k = 0; k < i; k += 1) step[k]! -= factor[row + k]! * value;
  }
  solveUpper(factor, size, step, firstBounded);
  for (let i = firstBounded - 1; i >= 0; i -= 1) logDensity -= (noise.core[i]! * noise.core[i]!) / 2;
  return logDensity;
}

/**
 * The eliminated block given the core's step; returns its part of the log density.
 *
 * A level that may be barren comes from two kinds: where it is barren its effect is as it was beforehand, else as
 * the normal approximation has it. One normal alone would be too narrow for both.
 */
function drawBlock(model: LatentModel, mode: LatentMode, noise: DrawNoise, target: LatentPoint): number {
  const { diagonal, cross } = mode.curvature;
  const { blockSize, touchStart, touchIndex } = model;
  let logDensity = 0;
  for (let a = 0; a < blockSize; a += 1) {
    const end = touchStart[a + 1]!;
    let sum = 0;
    for (let k = touchStart[a]!; k < end; k += 1) sum += cross[k]! * target.core[touchIndex[k]!]!;
    const z = noise.block[a]!;
    const root = Math.sqrt(diagonal[a]!);
    const centre = mode.point.block[a]! - sum / diagonal[a]!;
    const barren = mode.barren[a] ?? 0;
    const value = noise.kind[a]! < barren ? z : centre + z / root;
    target.block[a] = value;
    if (barren === 0) {
      logDensity -= (z * z) / 2;
    } else {
      const e = (value - centre) * root;
      const ordinary = (1 - barren) * Math.exp((-e * e) / 2);
      logDensity += Math.log(ordinary + (barren / root) * Math.exp((-value * value) / 2));
    }
  }
  return logDensity;
}
