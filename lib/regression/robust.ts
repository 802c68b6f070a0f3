/** Cluster-robust standard errors. */

import { checkChoice } from '../numerics/arguments.ts';
import type { Fit, Term } from './fit.ts';
import { emptyResponse, respond } from './response.ts';

export interface ClusterOptions {
  /** Name of the grouping factor of the design whose levels are the clusters. */
  readonly cluster: string;
  /**
   * Factor for few clusters: `none`, `clusters` (G / (G − 1), the default) or `clusters-and-terms`
   * (G / (G − 1) · (N − 1) / (N − p), N trials).
   */
  readonly adjustment?: 'none' | 'clusters' | 'clusters-and-terms';
}

/** Coefficients as fitted, with standard errors that allow for likeness within clusters. */
export interface RobustFit {
  readonly terms: readonly Term[];
  /** p × p, row by row. */
  readonly covariance: Float64Array;
  readonly clusters: number;
  readonly convergence: Fit['convergence'];
}

/** Sums of the scores of each cluster, G × p. */
function clusterScores(fit: Fit, codes: Int32Array, clusters: number): Float64Array {
  const { design, coefficients, link } = fit;
  const p = coefficients.length;
  const eta = design.offset.slice();
  design.columns.forEach((column, j) => {
    for (let i = 0; i < eta.length; i += 1) eta[i]! += column[i]! * coefficients[j]!;
  });
  const response = emptyResponse(design.n);
  respond(link, eta, design, response);
  const sums = new Float64Array(clusters * p);
  design.columns.forEach((column, j) => {
    for (let i = 0; i < eta.length; i += 1) sums[codes[i]! * p + j]! += response.score[i]! * column[i]!;
  });
  return sums;
}

/** V (sum of s s′) V: the meat between two slices of the model's covariance. */
function sandwich(covariance: Float64Array, sums: Float64Array, clusters: number, p: number): Float64Array {
  const result = new Float64Array(p * p);
  const influence = new Float64Array(p);
  for (let g = 0; g < clusters; g += 1) {
    for (let j = 0; j < p; j += 1) {
      influence[j] = 0;
      for (let k = 0; k < p; k += 1) influence[j]! += covariance[j * p + k]! * sums[g * p + k]!;
    }
    for (let j = 0; j < p; j += 1) {
      for (let k = 0; k < p; k += 1) result[j * p + k]! += influence[j]! * influence[k]!;
    }
  }
  return result;
}

function smallSampleFactor(adjustment: string, clusters: number, trials: number, p: number): number {
  if (adjustment === 'none') return 1;
  const ofClusters = clusters / (clusters - 1);
  return adjustment === 'clusters' ? ofClusters : (ofClusters * (trials - 1)) / (trials - p);
}

/**
 * Cluster-robust (sandwich) covariance of a fit.
 *
 * Answers how far the coefficients are known when flowers of one cluster (a mother, a morning) are alike, the model
 * being right on average. Not for few clusters (below about 30 it is too small), nor for the effect of each cluster:
 * see `mixedLogistic`. Give the result to `waldIntervals`.
 *
 * @param fit a fit of `logistic` whose design has the group
 * @param options `cluster`, a group's name; `adjustment` for few clusters
 * @returns `terms` with the same estimates and robust standard errors, `covariance` p × p, the number of `clusters`
 * @throws RangeError when the design has no such group, or it has one level only
 * @source Liang & Zeger (1986) Biometrika 73, 13–22; Zeileis, Köll & Graham (2020) Journal of Statistical Software 95
 * @example waldIntervals(clusterRobust(fit, { cluster: 'mother' }))[1].se // 0.31505...
 */
export function clusterRobust(fit: Fit, { cluster, adjustment = 'clusters' }: ClusterOptions): RobustFit {
  checkChoice('clusterRobust', 'adjustment', adjustment, ['none', 'clusters', 'clusters-and-terms']);
  const { design } = fit;
  const factor = design.groups.find(({ name }) => name === cluster);
  if (factor === undefined) {
    const names = design.groups.map(({ name }) => name).join(', ') || 'none';
    throw new RangeError(`clusterRobust: cluster must name one of the groups (${names}), got ${cluster}`);
  }
  const clusters = factor.levels.length;
  if (clusters < 2) {
    throw new RangeError(`clusterRobust: cluster must have at least two levels, got ${clusters}`);
  }
  const p = fit.coefficients.length;
  const trials = design.trials.reduce((sum, value) => sum + value, 0);
  const factorOfSize = smallSampleFactor(adjustment, clusters, trials, p);
  const covariance = sandwich(fit.covariance, clusterScores(fit, factor.codes, clusters), clusters, p);
  for (let k = 0; k < covariance.length; k += 1) covariance[k]! *= factorOfSize;
  const terms = fit.terms.map(({ term, estimate }, j) => ({
    term,
    estimate,
    se: Math.sqrt(covariance[j * p + j]!),
  }));
  return { terms, covariance, clusters, convergence: fit.convergence };
}
