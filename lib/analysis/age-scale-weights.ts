/**
 * Which age scale do the vials speak for? One season cannot tell, so both are kept, weighted by how well each
 * foretells a vial from all others.
 */

import { expMinus } from '../numerics/exponential.ts';
import { logMeanExp } from '../numerics/importance.ts';
import type { PosteriorDraw } from '../regression/posterior.ts';
import type { FruitModel, FruitRow } from './fruit-model.ts';
import { levelAt, pairPredictor, sdOf, storagePredictor } from './fruit-rate.ts';

/** Seven-point Gauss–Hermite quadrature for the standard normal (Abramowitz & Stegun 1964, table 25.10, rescaled). */
const NODES = [-3.750439717725742, -2.366759410734541, -1.154405394739968, 0];
const WEIGHTS = [0.0005482688559722, 0.03075712396758642, 0.2401231786050127, 0.4571428571428571];

/** Enough draws for a weight: each is a mean over draws that are nearly independent. */
const DRAWS = 200;

/**
 * Log score of each scale: the sum over vials of the log probability of the vial's flowers given all others, by
 * importance weights from the full fit with the vial's own effect integrated out (Vehtari et al. 2016, JMLR
 * 17(103), integrated leave-one-out).
 */
export function leaveOneVialOut(model: FruitModel): number {
  const step = Math.max(1, Math.floor(model.fit.draws.length / DRAWS));
  const draws = model.fit.draws.filter((_, k) => k % step === 0);
  let score = 0;
  for (const rows of vialRows(model.rows)) {
    const predictors = rows.map((row) => rowPredictor(model, row));
    const withVial = rows[0]!.vial !== null;
    const inverse = draws.map((draw) => {
      const etas = predictors.map((eta) => eta(draw));
      return -logProbability(rows, etas, withVial ? sdOf(model, draw, 'vial') : 0);
    });
    score -= logMeanExp(inverse);
  }
  return score;
}

/** Linear predictor of a row without its vial: a function of a draw; −Infinity where its pair never sets fruit. */
function rowPredictor(model: FruitModel, row: FruitRow): (draw: PosteriorDraw) => number {
  const code = model.index.levels.get('pair')!.get(String(row.pair))!;
  const pair = pairPredictor(model, model.pairs.find((seen) => seen.code === code)!);
  const storage = storagePredictor(model, row.storage, row.ageDays)!;
  const morning = levelAt(model, 'morning', row.morning)!;
  const season = levelAt(model, 'season', row.season)!;
  return (draw) =>
    draw.exclusive[code]
      ? Number.NEGATIVE_INFINITY
      : pair(draw) +
        storage(draw) +
        draw.effects[morning.g]![morning.code]! +
        draw.effects[season.g]![season.code]!;
}

/** Weights of the scales, adding up to 1, from their log scores (Yao et al. 2018, pseudo-BMA). */
export function scaleWeights(scores: readonly number[]): number[] {
  const top = Math.max(...scores);
  const raw = scores.map((score) => Math.exp(score - top));
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((weight) => weight / sum);
}

/** The stored rows by vial; those without a vial by pollen parent and storage. */
function vialRows(rows: readonly FruitRow[]): FruitRow[][] {
  const lots = new Map<string, FruitRow[]>();
  for (const row of rows) {
    if (row.storage === 'fresh') continue;
    const lot = JSON.stringify(row.vial === null ? [row.pollenParent, row.storage] : row.vial);
    const known = lots.get(lot);
    if (known) known.push(row);
    else lots.set(lot, [row]);
  }
  return [...lots.values()];
}

/** Log probability of some rows whose vial effect is N(0, sd²). */
function logProbability(rows: readonly FruitRow[], etas: readonly number[], sd: number): number {
  if (sd === 0) return logBinomial(rows, etas, 0);
  const terms: number[] = [];
  NODES.forEach((node, k) => {
    terms.push(Math.log(WEIGHTS[k]!) + logBinomial(rows, etas, node * sd));
    if (node !== 0) terms.push(Math.log(WEIGHTS[k]!) + logBinomial(rows, etas, -node * sd));
  });
  return logMeanExp(terms) + Math.log(terms.length);
}

/** Products of 1 + exp(−|eta|) are this large at most before their logarithm is taken: one for many rows. */
const LARGE_PRODUCT = 1e250;
const MOST_FLOWERS = 64;

function logBinomial(rows: readonly FruitRow[], etas: readonly number[], shift: number): number {
  let sum = 0;
  let product = 1;
  for (let i = 0; i < rows.length; i += 1) {
    if (etas[i] === Number.NEGATIVE_INFINITY) continue;
    const { fruits, flowers } = rows[i]!;
    const eta = etas[i]! + shift;
    const e = expMinus(Math.abs(eta));
    sum += eta > 0 ? (fruits - flowers) * eta : fruits * eta;
    if (flowers > MOST_FLOWERS) {
      sum -= flowers * Math.log1p(e);
      continue;
    }
    product *= (1 + e) ** flowers;
    if (product > LARGE_PRODUCT) {
      sum -= Math.log(product);
      product = 1;
    }
  }
  return sum - Math.log(product);
}
