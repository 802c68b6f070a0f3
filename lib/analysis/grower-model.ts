/** The grower's model: the fruit model on both age scales, averaged, with a record of how it was worked out. */

import type { PosteriorDraw } from '../regression/posterior.ts';
import { scaleWeights } from './age-scale-weights.ts';
import type { Flower } from './flowers.ts';
import type { FruitModel } from './fruit-model.ts';
import { fruitModel } from './fruit-model.ts';
import type { AgeScale } from './models.ts';
import type { Priors } from './priors.ts';
import { GROWER_PRIORS, referenceDays } from './priors.ts';
import { agedFlowers } from './within-between.ts';

/** A prior as it was used, in words a statistician can check: normal, half-normal, truncated normal. */
export interface PriorRecord {
  readonly parameter: string;
  /** What it is about; `of` is the stored method or the random effect, `atDays` the age it is stated at. */
  readonly about: 'fresh' | 'storage' | 'age' | 'share' | 'mean-age' | 'sd' | 'incompatible';
  readonly of: string | null;
  readonly atDays: number | null;
  readonly distribution: 'normal' | 'half-normal' | 'normal below 0' | 'logit-normal';
  readonly centre: number;
  readonly spread: number;
}

/** Key `models.grower`: how the model behind age curves, pairs and vials was worked out. */
export interface GrowerModelRecord {
  readonly flowers: number;
  readonly ageScales: readonly { readonly ageScale: AgeScale; readonly weight: number }[];
  readonly priors: readonly PriorRecord[];
  readonly draws: number;
  /** Number of independent draws these are worth. */
  readonly effectiveDraws: number;
  readonly settled: boolean;
  readonly because?: string;
}

/** One draw together with the model whose columns it belongs to. */
export interface ModelDraw {
  readonly model: FruitModel;
  readonly draw: PosteriorDraw;
}

export interface GrowerModel {
  readonly draws: readonly ModelDraw[];
  /** Probability of each seen pair that it never sets fruit, in the order of `models[0].pairs`. */
  readonly incompatible: readonly number[];
  readonly models: readonly FruitModel[];
  readonly record: GrowerModelRecord;
}

export interface GrowerModelOptions {
  /** One scale only; both averaged where null. */
  readonly ageScale: AgeScale | null;
  /** Storage methods of the vials: predictions are wanted for these too. */
  readonly methods: readonly string[];
}

const DRAWS = 1000;
/** Fewer independent draws than this are not shown. */
const FEWEST_EFFECTIVE = 100;
const SEED = 20260101;

/**
 * Fits the grower's model to the used flowers of a season.
 *
 * @returns the model, or only its record with a `because` where there is nothing to fit
 */
export function growerModel(
  flowers: readonly Flower[],
  options: GrowerModelOptions,
): GrowerModel | { readonly record: GrowerModelRecord & { readonly because: string } } {
  const aged = agedFlowers(flowers);
  const priors = priorRecords(GROWER_PRIORS, options.methods);
  if (aged.length === 0) return { record: emptyRecord(priors, 'no-aged-flowers') };
  const stored = aged.some(({ storage }) => storage !== 'fresh');
  const scales = scalesFor(options.ageScale, stored);
  const models: FruitModel[] = [];
  for (const ageScale of scales) {
    const proposal = models[0]?.fit.proposal;
    models.push(
      fruitModel(aged, {
        ageScale,
        priors: GROWER_PRIORS,
        seed: SEED,
        draws: DRAWS,
        methods: options.methods,
        ...(proposal ? { proposal } : {}),
      }),
    );
  }
  const weights = scaleWeights(models.map(({ fit }) => fit.logMarginal));
  const effective = effectiveDraws(models, weights);
  const record: GrowerModelRecord = {
    flowers: aged.length,
    ageScales: scales.map((ageScale, k) => ({ ageScale, weight: weights[k]! })),
    priors: priorRecords(GROWER_PRIORS, models[0]!.methods),
    draws: DRAWS,
    effectiveDraws: Math.round(effective),
    settled: models.every(({ fit }) => fit.settled) && effective >= FEWEST_EFFECTIVE,
  };
  if (!record.settled) return { record: { ...record, because: 'model-not-settled' } };
  return {
    draws: mixedDraws(models, weights),
    incompatible: models[0]!.pairs.map((pair) =>
      models.reduce((sum, model, k) => sum + weights[k]! * model.fit.exclusive[pair.code]!, 0),
    ),
    models,
    record,
  };
}

/** Both scales where there is stored pollen and none is asked for: fresh pollen has no age to scale. */
function scalesFor(ageScale: AgeScale | null, stored: boolean): AgeScale[] {
  if (ageScale !== null) return [ageScale];
  return stored ? ['log1p-days', 'days'] : ['log1p-days'];
}

/** Worth of the mixture: independent draws of each part, in the mixture's proportions. */
function effectiveDraws(models: readonly FruitModel[], weights: readonly number[]): number {
  return 1 / models.reduce((sum, { fit }, k) => sum + (weights[k]! * weights[k]!) / fit.effective, 0);
}

function mixedDraws(models: readonly FruitModel[], weights: readonly number[]): ModelDraw[] {
  const first = Math.round(weights[0]! * DRAWS);
  const counts = models.map((_, k) => (k === 0 ? first : DRAWS - first));
  return models.flatMap((model, k) =>
    Array.from({ length: counts[k]! }, (_, i) => ({
      model,
      // Even steps, since neighbouring draws share their hyperparameters.
      draw: model.fit.draws[Math.floor(((i + 0.5) * DRAWS) / counts[k]!)]!,
    })),
  );
}

function emptyRecord(
  priors: readonly PriorRecord[],
  because: string,
): GrowerModelRecord & { because: string } {
  return { flowers: 0, ageScales: [], priors, draws: 0, effectiveDraws: 0, settled: false, because };
}

/** The priors in the order of the model's terms. */
export function priorRecords(priors: Priors, methods: readonly string[]): PriorRecord[] {
  const normal = (
    parameter: string,
    what: Pick<PriorRecord, 'about' | 'of' | 'atDays'>,
    { mean, sd, below }: { mean: number; sd: number; below?: number },
  ) => ({
    parameter,
    ...what,
    distribution: below === undefined ? ('normal' as const) : ('normal below 0' as const),
    centre: mean,
    spread: sd,
  });
  return [
    normal('fresh pollen, average pair', { about: 'fresh', of: null, atDays: null }, priors.intercept),
    ...methods.flatMap((storage) => {
      const days = referenceDays(storage);
      const of = (about: PriorRecord['about'], atDays: number | null = null) => ({
        ...{ about, atDays },
        of: storage,
      });
      return [
        normal(`${storage} at age 0 against fresh`, of('storage'), priors.storage),
        normal(`${storage} after ${days} days`, of('age', days), priors.age),
        normal(`pair's share of ${storage}`, of('share'), priors.share),
        normal(`pair's mean age of ${storage}`, of('mean-age'), priors.meanAge),
      ];
    }),
    ...Object.entries(priors.sds).map(([name, spread]) => ({
      parameter: `standard deviation of ${name}`,
      ...{ about: 'sd' as const, of: name, atDays: null },
      distribution: 'half-normal' as const,
      centre: 0,
      spread,
    })),
    {
      parameter: 'share of incompatible pairs',
      ...{ about: 'incompatible' as const, of: null, atDays: null },
      distribution: 'logit-normal' as const,
      centre: priors.incompatible.mean,
      spread: priors.incompatible.sd,
    },
  ];
}
