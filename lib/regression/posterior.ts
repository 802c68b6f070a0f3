/**
 * The posterior of a binomial logit model with weak priors, integrated over its variances.
 *
 * Coefficients are normal beforehand (some truncated from above), standard deviations of grouping factors
 * half-normal, the share of exclusive levels logit-normal. The hyperparameters are explored around the mode of
 * their Laplace-approximated marginal posterior (Tierney & Kadane 1986; Rue, Martino & Chopin 2009); for each of
 * a spread of hyperparameter points, coefficients are drawn from the normal approximation at the mode, and every
 * draw is weighted by exact likelihood × prior ÷ proposal (importance sampling). So Laplace's approximation
 * decides only where to look, not what the answer is.
 */

import { logMeanExp, systematicResample, truncateWeights } from '../numerics/importance.ts';
import { normalLogCdf } from '../numerics/normal.ts';
import type { RandomStream } from '../numerics/random.ts';
import { randomStream } from '../numerics/random.ts';
import type { HyperProposal } from './hyper-proposal.ts';
import { hyperPoints, hyperProposal } from './hyper-proposal.ts';
import { drawNoise, drawNormal, mirror, refill } from './latent-draws.ts';
import { emptyPoint, type LatentPoint, type LatentScales } from './latent-likelihood.ts';
import type { ModeFinder } from './latent-mode.ts';
import { density, modeFinder } from './latent-mode.ts';
import type { LatentModel } from './latent-model.ts';
import type { PriorModel } from './prior-model.ts';
import { hyperSize, latentOf, scalesAt, tailBounds } from './prior-model.ts';

export interface PosteriorOptions {
  /** Seed of the random numbers: the same seed, model and version give the same draws. */
  readonly seed?: number;
  /** Number of draws returned. */
  readonly draws?: number;
  /** Number of hyperparameter points. */
  readonly points?: number;
  /** Draws proposed at each point, an even number. */
  readonly perPoint?: number;
  /** A proposal found for a like model: saves looking for the mode again. */
  readonly proposal?: HyperProposal;
}

/** One draw of everything, on the logit scale. */
export interface PosteriorDraw {
  /** Coefficients in the order of the model's columns. */
  readonly columns: Float64Array;
  /** Effects of each factor's levels, in the order of the model's factors. */
  readonly effects: readonly Float64Array[];
  /** Standard deviation of each factor. */
  readonly sds: Float64Array;
  /** Share of exclusive levels; 0 without. */
  readonly exclusiveShare: number;
  /** 1 for each level of the exclusive factor that never succeeds in this draw. */
  readonly exclusive: Uint8Array;
}

export interface Posterior {
  readonly draws: readonly PosteriorDraw[];
  /** Probability of each level of the exclusive factor that it never succeeds. */
  readonly exclusive: Float64Array;
  /** Log of the marginal likelihood, without binomial coefficients. */
  readonly logMarginal: number;
  /** Number of independent draws that the proposals were worth. */
  readonly effective: number;
  readonly proposal: HyperProposal;
  /** Whether every mode was found. */
  readonly settled: boolean;
}

/** A mode this near is good enough to look around: the weights are exact wherever the proposal stands. */
const ROUGH = { tolerance: 1e-4 };

/** All proposed draws in a few large arrays. */
interface Proposed {
  /** Number of draws. */
  readonly size: number;
  /** size × coreSize and size × blockSize. */
  readonly cores: Float64Array;
  readonly blocks: Float64Array;
  /** Scales of each draw. */
  readonly scales: readonly LatentScales[];
  readonly logWeights: Float64Array;
  /** size × levels of the exclusive factor: probability of the kind that never succeeds. */
  readonly barren: Float32Array;
  readonly settled: boolean;
}

/**
 * Draws from the posterior of a model with priors.
 *
 * @param model n rows, columns and factors with their priors
 * @returns equally weighted draws, the share of each exclusive level, and how well the sampling went
 * @throws RangeError where the model is malformed
 */
export function posterior(model: PriorModel, options: PosteriorOptions = {}): Posterior {
  const { seed = 1, draws: count = 2000, points = 80, perPoint = 50 } = options;
  const random = randomStream(seed);
  const finder = modeFinder(latentOf(model));
  const d = hyperSize(model);
  const proposal = options.proposal ?? explore(model, finder, d);
  const proposed = propose(model, finder, proposal, { points, perPoint }, random);
  const { weights, effective } = truncateWeights(proposed.logWeights);
  const chosen = systematicResample(weights, count, random);
  return {
    draws: Array.from(chosen, (k) => drawOf(model, finder.model, proposed, k, random)),
    exclusive: averageBarren(finder.model, proposed, weights),
    logMarginal: logMeanExp(proposed.logWeights) - logMassBelow(tailBounds(model)),
    effective,
    proposal,
    settled: proposed.settled,
  };
}

/** Log prior probability that normal coefficients respect their bounds: what their truncated priors are divided by. */
function logMassBelow(bounds: Float64Array): number {
  return bounds.reduce((sum, bound) => sum + normalLogCdf(bound), 0);
}

function explore(model: PriorModel, finder: ModeFinder, d: number): HyperProposal {
  if (d === 0) return { centre: new Float64Array(0), precision: new Float64Array(0) };
  let start: LatentPoint | undefined;
  return hyperProposal((u) => {
    const mode = finder.find(scalesAt(model, u), start, ROUGH);
    start = mode.point;
    return mode.logMarginal - halfSquare(u);
  }, d);
}

function halfSquare(u: Float64Array): number {
  let sum = 0;
  for (const value of u) sum += value * value;
  return sum / 2;
}

function propose(
  model: PriorModel,
  finder: ModeFinder,
  proposal: HyperProposal,
  { points, perPoint }: { points: number; perPoint: number },
  random: RandomStream,
): Proposed {
  const latent = finder.model;
  const levels = latent.barren.length;
  const size = points * perPoint;
  const cores = new Float64Array(size * latent.coreSize);
  const blocks = new Float64Array(size * latent.blockSize);
  const logWeights = new Float64Array(size);
  const barren = new Float32Array(size * levels);
  const scalesOf: LatentScales[] = [];
  const bounds = tailBounds(model);
  const noise = drawNoise(latent, bounds);
  const point = emptyPoint(latent);
  let settled = true;
  let start: LatentPoint | undefined;
  for (const { u, logDensity } of hyperPoints(proposal, points, random)) {
    const scales = scalesAt(model, u);
    const mode = finder.find(scales, start, ROUGH);
    start = mode.point;
    settled &&= mode.settled;
    const prior = -halfSquare(u) - logDensity;
    for (let side = 0; side < perPoint; side += 1) {
      if (side % 2 === 0) refill(noise, random);
      else mirror(noise);
      const k = scalesOf.push(scales) - 1;
      const logProposal = drawNormal(latent, mode, noise, bounds, point);
      logWeights[k] = prior + density(latent, scales, point, finder.work, false) - logProposal;
      cores.set(point.core, k * latent.coreSize);
      blocks.set(point.block, k * latent.blockSize);
      for (let a = 0; a < levels; a += 1) barren[k * levels + a] = 1 - finder.work.level[a]!;
    }
  }
  return { size, cores, blocks, scales: scalesOf, logWeights, barren, settled };
}

function averageBarren(latent: LatentModel, { size, barren }: Proposed, weights: Float64Array): Float64Array {
  const levels = latent.barren.length;
  const average = new Float64Array(levels);
  for (let k = 0; k < size; k += 1) {
    for (let a = 0; a < levels; a += 1) average[a]! += weights[k]! * barren[k * levels + a]!;
  }
  return average;
}

/** Brings a proposed point back from the standard normal scale; its arrays are views of one. */
function drawOf(
  model: PriorModel,
  latent: LatentModel,
  proposed: Proposed,
  k: number,
  random: RandomStream,
): PosteriorDraw {
  const { coreSize, blockSize, columnStart, factorStart, eliminated } = latent;
  const scales = proposed.scales[k]!;
  const core = proposed.cores.slice(k * coreSize, (k + 1) * coreSize);
  model.columns.forEach(({ mean, sd }, c) => {
    core[columnStart + c] = mean + sd * core[columnStart + c]!;
  });
  const effects = model.factors.map(({ size }, g) => {
    const own =
      g === eliminated
        ? proposed.blocks.slice(k * blockSize, (k + 1) * blockSize)
        : core.subarray(factorStart[g]!, factorStart[g]! + size);
    for (let j = 0; j < own.length; j += 1) own[j]! *= scales.factors[g]!;
    return own;
  });
  const levels = latent.barren.length;
  const exclusive = new Uint8Array(levels);
  for (let a = 0; a < levels; a += 1) {
    const p = proposed.barren[k * levels + a]!;
    if (p > 0 && random.uniform() < p) exclusive[a] = 1;
  }
  return {
    columns: core.subarray(columnStart),
    effects,
    sds: scales.factors,
    exclusiveShare: scales.exclusive,
    exclusive,
  };
}
