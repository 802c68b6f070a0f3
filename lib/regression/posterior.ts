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
import type { RandomStream } from '../numerics/random.ts';
import { randomStream } from '../numerics/random.ts';
import type { HyperProposal } from './hyper-proposal.ts';
import { hyperPoints, hyperProposal } from './hyper-proposal.ts';
import { drawNoise, drawNormal, mirrored } from './latent-draws.ts';
import type { LatentPoint, LatentScales } from './latent-likelihood.ts';
import type { ModeFinder } from './latent-mode.ts';
import { density, modeFinder } from './latent-mode.ts';
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
const ROUGH = 1e-6;

interface Proposed {
  readonly point: LatentPoint;
  readonly scales: LatentScales;
  readonly logWeight: number;
  /** By level of the exclusive factor: probability that it is of the kind that never succeeds. */
  readonly barren: Float32Array;
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
  const { proposed, settled } = propose(model, finder, proposal, { points, perPoint }, random);
  const logWeights = proposed.map(({ logWeight }) => logWeight);
  const { weights, effective } = truncateWeights(logWeights);
  const chosen = systematicResample(weights, count, random);
  return {
    draws: Array.from(chosen, (k) => drawOf(model, finder, proposed[k]!, random)),
    exclusive: averageBarren(finder, proposed, weights),
    logMarginal: logMeanExp(logWeights),
    effective,
    proposal,
    settled,
  };
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
): { proposed: Proposed[]; settled: boolean } {
  const bounds = tailBounds(model);
  const proposed: Proposed[] = [];
  let settled = true;
  let start: LatentPoint | undefined;
  for (const { u, logDensity } of hyperPoints(proposal, points, random)) {
    const scales = scalesAt(model, u);
    const mode = finder.find(scales, start, ROUGH);
    start = mode.point;
    settled &&= mode.settled;
    const prior = -halfSquare(u) - logDensity;
    for (let k = 0; k < perPoint; k += 2) {
      const noise = drawNoise(finder.model, bounds, random);
      for (const side of [noise, mirrored(noise)]) {
        const draw = drawNormal(finder.model, mode, side, bounds);
        const target = density(finder.model, scales, draw.point, finder.work);
        proposed.push({
          point: draw.point,
          scales,
          logWeight: prior + target - draw.logDensity,
          barren: Float32Array.from(finder.work.level, (ordinary) => 1 - ordinary),
        });
      }
    }
  }
  return { proposed, settled };
}

function averageBarren(
  finder: ModeFinder,
  proposed: readonly Proposed[],
  weights: Float64Array,
): Float64Array {
  const average = new Float64Array(finder.model.barren.length);
  proposed.forEach(({ barren }, k) => {
    for (let a = 0; a < average.length; a += 1) average[a]! += weights[k]! * barren[a]!;
  });
  return average;
}

/** Brings a proposed point back from the standard normal scale. */
function drawOf(
  model: PriorModel,
  finder: ModeFinder,
  chosen: Proposed,
  random: RandomStream,
): PosteriorDraw {
  const { model: latent } = finder;
  const { point, scales } = chosen;
  const columns = Float64Array.from(
    model.columns,
    ({ mean, sd }, c) => mean + sd * point.core[latent.columnStart + c]!,
  );
  const effects = model.factors.map((factor, g) => {
    const scale = scales.factors[g]!;
    if (g === latent.eliminated) return point.block.map((v) => scale * v);
    const from = latent.factorStart[g]!;
    return point.core.slice(from, from + factor.size).map((v) => scale * v);
  });
  return {
    columns,
    effects,
    sds: scales.factors,
    exclusiveShare: scales.exclusive,
    exclusive: Uint8Array.from(chosen.barren, (p) => (p > 0 && random.uniform() < p ? 1 : 0)),
  };
}
