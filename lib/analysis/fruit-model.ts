/**
 * The model with priors behind age curves, pairs, vials and the like-for-like difference: logit of fruit set on
 * storage and pollen age within storage, with between-pair terms, crossed effects of seed parent, pollen parent,
 * pair, vial, morning and season, and pairs that never set fruit as a kind of their own.
 */

import type { HyperProposal } from '../regression/hyper-proposal.ts';
import type { Posterior } from '../regression/posterior.ts';
import { posterior } from '../regression/posterior.ts';
import type { PriorColumn, PriorFactor, PriorModel } from '../regression/prior-model.ts';
import { byCodePoint } from './flowers.ts';
import { type FruitRow, joinedRows } from './fruit-rows.ts';
import type { AgeScale } from './models.ts';
import { type NameFreeRanks, nameFreeRanks } from './name-free-order.ts';
import type { NormalPrior, Priors } from './priors.ts';
import { ageTerm } from './priors.ts';
import type { AgedFlower } from './within-between.ts';
import { withinBetween } from './within-between.ts';

export interface FruitModelOptions {
  readonly ageScale: AgeScale;
  readonly priors: Priors;
  readonly seed: number;
  readonly draws: number;
  /** Methods that predictions are wanted for, tried or not; an untried one keeps its prior. */
  readonly methods?: readonly string[];
  /** Age in days at which a method's storage effect stands; 0 where left out. */
  readonly originDays?: number;
  /** Where to look in hyperparameter space, found by a like model. */
  readonly proposal?: HyperProposal;
}

/** Index of each effect in a draw. */
export interface FruitIndex {
  readonly columns: ReadonlyMap<string, number>;
  readonly factors: ReadonlyMap<string, number>;
  /** Levels of each factor, by name. */
  readonly levels: ReadonlyMap<string, ReadonlyMap<string, number>>;
}

/** One ordered pair of the data. */
export interface SeenPair {
  readonly seedParent: string;
  readonly pollenParent: string;
  /** Level of the pair in the model. */
  readonly code: number;
  readonly flowers: number;
  readonly fruits: number;
  /** Values of the between-pair columns, by column name. */
  readonly between: ReadonlyMap<string, number>;
}

export interface FruitModel {
  readonly ageScale: AgeScale;
  readonly originDays: number;
  readonly methods: readonly string[];
  readonly index: FruitIndex;
  /** Plants, vials and growers in an order that no name has a part in. */
  readonly ranks: NameFreeRanks;
  readonly pairs: readonly SeenPair[];
  readonly rows: readonly FruitRow[];
  readonly fit: Posterior;
}

/**
 * Fits the model.
 *
 * @param flowers used flowers with known pollen ages, in any order and under any names (the result depends on neither)
 * @param options scale, priors, seed, number of draws
 */
export function fruitModel(flowers: readonly AgedFlower[], options: FruitModelOptions): FruitModel {
  const { ageScale, priors, originDays = 0 } = options;
  const ranks = nameFreeRanks(flowers);
  const rows = joinedRows(flowers, ranks);
  const methods = storedMethods([...rows.map(({ storage }) => storage), ...(options.methods ?? [])]);
  const columns = columnsOf(rows, methods, options);
  const factors = factorsOf(rows, priors);
  const model: PriorModel = {
    successes: Float64Array.from(rows, ({ fruits }) => fruits),
    trials: Float64Array.from(rows, (row) => row.flowers),
    columns,
    factors: factors.map(({ factor }) => factor),
    exclusive: { factor: 'pair', ...priors.incompatible },
  };
  const fit = posterior(model, {
    seed: options.seed,
    draws: options.draws,
    ...(options.proposal ? { proposal: options.proposal } : {}),
    ...effort(rows.length),
  });
  const index = {
    columns: new Map(columns.map(({ name }, c) => [name, c])),
    factors: new Map(factors.map(({ factor }, g) => [factor.name, g])),
    levels: new Map(factors.map(({ factor, levels }) => [factor.name, levels])),
  };
  return { ageScale, originDays, methods, index, ranks, pairs: seenPairs(rows, columns, index), rows, fit };
}

/** Fewer points where there is more data, for there the hyperparameters are better known. */
function effort(rows: number): { points: number; perPoint: number } {
  return rows > 2000 ? { points: 48, perPoint: 60 } : { points: 60, perPoint: 40 };
}

function storedMethods(storages: readonly string[]): string[] {
  return [...new Set(storages)].filter((storage) => storage !== 'fresh').sort(byCodePoint);
}

function columnsOf(
  rows: readonly FruitRow[],
  methods: readonly string[],
  options: FruitModelOptions,
): PriorColumn[] {
  const { ageScale, priors, originDays = 0 } = options;
  const spread = (name: string, values: Float64Array, prior: NormalPrior): PriorColumn => ({
    name,
    values,
    ...prior,
  });
  const within = withinBetween(
    weighted(rows),
    methods,
    (ageDays, storage) => ageTerm(ageDays, storage, ageScale) - ageTerm(originDays, storage, ageScale),
  );
  const pick = (role: string) => within.filter((column) => column.role === role);
  // Columns with a bound come last: the sampler draws them first.
  return [
    spread('(Intercept)', new Float64Array(rows.length).fill(1), priors.intercept),
    ...pick('storage').map(({ name, values }) => spread(name, perRow(values, rows), priors.storage)),
    ...pick('share').map(({ name, values }) =>
      spread(name, centred(perRow(values, rows), rows), priors.share),
    ),
    ...pick('meanAge').map(({ name, values }) =>
      spread(name, centred(perRow(values, rows), rows), priors.meanAge),
    ),
    ...pick('age').map(({ name, values }) => spread(name, perRow(values, rows), priors.age)),
  ];
}

/** Each row as often as it has flowers, so that means over a pair count flowers. */
function weighted(rows: readonly FruitRow[]): AgedFlower[] {
  return rows.flatMap((row) => Array.from({ length: row.flowers }, () => row));
}

/** The first of each row's repeated values. */
function perRow(values: Float64Array, rows: readonly FruitRow[]): Float64Array {
  let at = 0;
  return Float64Array.from(rows, (row) => {
    const value = values[at]!;
    at += row.flowers;
    return value;
  });
}

function centred(values: Float64Array, rows: readonly FruitRow[]): Float64Array {
  let sum = 0;
  let count = 0;
  rows.forEach(({ flowers }, i) => {
    sum += values[i]! * flowers;
    count += flowers;
  });
  return values.map((value) => value - sum / count);
}

interface NamedFactor {
  readonly factor: PriorFactor;
  readonly levels: ReadonlyMap<string, number>;
}

function factorsOf(rows: readonly FruitRow[], priors: Priors): NamedFactor[] {
  const named = (name: keyof Priors['sds'], label: (row: FruitRow) => string | null): NamedFactor => {
    const levels = new Map<string, number>();
    const codes = Int32Array.from(rows, (row) => {
      const level = label(row);
      if (level === null) return -1;
      if (!levels.has(level)) levels.set(level, levels.size);
      return levels.get(level)!;
    });
    return { factor: { name, codes, size: levels.size, scale: priors.sds[name] }, levels };
  };
  const growers = new Set(rows.map(({ grower }) => grower));
  return [
    named('seedParent', (row) => row.seedParent),
    named('pollenParent', (row) => row.pollenParent),
    named('pair', (row) => String(row.pair)),
    named('vial', (row) => (row.storage === 'fresh' ? null : row.vial)),
    named('morning', (row) => row.morning),
    named('season', (row) => row.season),
    ...(growers.size > 1 ? [named('grower', (row) => row.grower)] : []),
  ];
}

function seenPairs(
  rows: readonly FruitRow[],
  columns: readonly PriorColumn[],
  index: FruitIndex,
): SeenPair[] {
  const between = columns.filter(({ name }) => name.startsWith('share: ') || name.startsWith('mean age: '));
  const pairs = new Map<number, SeenPair>();
  rows.forEach((row, i) => {
    const seen = pairs.get(row.pair);
    pairs.set(row.pair, {
      seedParent: row.seedParent,
      pollenParent: row.pollenParent,
      code: index.levels.get('pair')!.get(String(row.pair))!,
      flowers: (seen?.flowers ?? 0) + row.flowers,
      fruits: (seen?.fruits ?? 0) + row.fruits,
      between: seen?.between ?? new Map(between.map(({ name, values }) => [name, values[i]!])),
    });
  });
  return [...pairs.values()];
}
