/** What a fitted fruit model expects: rates of pairs, methods, ages and vials, draw by draw. */

import type { PosteriorDraw } from '../regression/posterior.ts';
import type { FruitModel, SeenPair } from './fruit-model.ts';
import { ageTerm } from './priors.ts';

/**
 * Mean of logistic(eta + e) over e ~ N(0, spread²): three-point Gauss–Hermite quadrature, exact for polynomials
 * of degree five (Abramowitz & Stegun 1964, table 25.10). Its error is below 0.0014 for standard deviations up to 1,
 * 0.007 at 1.5 and 0.018 at 2.
 *
 * @param eta linear predictor, logit scale
 * @param spread exp(−sqrt(3) × standard deviation) of what varies around it, as `spreadOf` gives
 */
export function averagedRate(eta: number, spread: number): number {
  return averagedRateAgainst(Math.exp(-eta), spread);
}

/** The same from the odds against, exp(−eta): 0 where they are infinite. */
export function averagedRateAgainst(against: number, spread: number): number {
  return 2 / (3 * (1 + against)) + (1 / (1 + against * spread) + 1 / (1 + against / spread)) / 6;
}

/** The factor that `averagedRate` wants for a standard deviation. */
export function spreadOf(sd: number): number {
  return Math.exp(-Math.sqrt(3) * sd);
}

/** Standard deviation of a factor in a draw; 0 where the model does not have it. */
export function sdOf(model: FruitModel, draw: PosteriorDraw, factor: string): number {
  const g = model.index.factors.get(factor);
  return g === undefined ? 0 : draw.sds[g]!;
}

/** What varies from one day of use to another, as a standard deviation: morning, season and grower. */
export function occasionSd(model: FruitModel, draw: PosteriorDraw): number {
  return Math.hypot(sdOf(model, draw, 'morning'), sdOf(model, draw, 'season'), sdOf(model, draw, 'grower'));
}

/** Position of a coefficient in every draw of a model. */
function columnAt(model: FruitModel, name: string): number {
  return model.index.columns.get(name)!;
}

/** Where the effects of a level stand in every draw of a model; null where the data never had it. */
export function levelAt(
  model: FruitModel,
  factor: string,
  level: string,
): { g: number; code: number } | null {
  const g = model.index.factors.get(factor);
  const code = model.index.levels.get(factor)?.get(level);
  return g === undefined || code === undefined ? null : { g, code };
}

/** Linear predictor of a seen pair with fresh pollen, without morning and season: a function of a draw. */
export function pairPredictor(model: FruitModel, pair: SeenPair): (draw: PosteriorDraw) => number {
  const intercept = columnAt(model, '(Intercept)');
  const mother = levelAt(model, 'seedParent', pair.seedParent)!;
  const father = levelAt(model, 'pollenParent', pair.pollenParent)!;
  const pairs = model.index.factors.get('pair')!;
  const between = [...pair.between].map(([name, value]) => ({ at: columnAt(model, name), value }));
  return ({ columns, effects }) => {
    let eta =
      columns[intercept]! +
      effects[mother.g]![mother.code]! +
      effects[father.g]![father.code]! +
      effects[pairs]![pair.code]!;
    for (const { at, value } of between) eta += value * columns[at]!;
    return eta;
  };
}

/**
 * What a method at an age adds to the linear predictor of fresh pollen: a function of a draw; null for a method
 * the model does not have.
 */
export function storagePredictor(
  model: FruitModel,
  storage: string,
  ageDays: number,
): ((draw: PosteriorDraw) => number) | null {
  if (storage === 'fresh') return () => 0;
  if (!model.methods.includes(storage)) return null;
  const level = columnAt(model, `storage: ${storage}`);
  const slope = columnAt(model, `age: ${storage}`);
  const term = ageTerm(ageDays, storage, model.ageScale) - ageTerm(model.originDays, storage, model.ageScale);
  return ({ columns }) => columns[level]! + term * columns[slope]!;
}
