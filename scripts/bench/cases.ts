/** What is timed: each case with its data, our fit, R's fit of the same, and how much faster ours is to be. */

import { growerModel } from '../../lib/analysis/grower-model.ts';
import { designColumns } from '../../lib/regression/design-columns.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { mixedLogistic } from '../../lib/regression/mixed-logistic.ts';
import { profileIntervals } from '../../lib/regression/profile.ts';
import { simulatedSeason } from '../simulation/season-world.ts';
import { WORLDS } from '../simulation/worlds.ts';
import { type BenchData, columnsOf, measured, season } from './data.ts';
import { largePlan } from './plan.ts';

/** R's side: an expression over the data frame `d`, and what of its value `fit` is to agree with ours. */
export interface RSide {
  readonly packages: readonly string[];
  readonly fit: string;
  readonly check: string;
}

export interface BenchCase {
  readonly name: string;
  readonly rows: number;
  readonly data: (rows: number) => BenchData;
  /** The fit; returns the number that R must find too, since a fast wrong answer is worth nothing. */
  readonly ours: (data: BenchData) => number;
  readonly r?: RSide;
  /** How far the two may be apart. */
  readonly tolerance?: number;
  /** How many times faster than R, or within how many seconds. */
  readonly target: { readonly ratio: number } | { readonly seconds: number };
  /** Rows to begin with where peak memory is measured; not measured where left out. */
  readonly memoryRows?: number;
}

const mixedTarget = { tolerance: 0.05, target: { ratio: 10 } } as const;

/** lme4 at its defaults; its log-likelihood is good to about 1e-2 there. */
function glmer(effects: string): RSide {
  return {
    packages: ['lme4'],
    fit: `suppressMessages(suppressWarnings(glmer(fruit ~ frozen + age + ${effects}, d, family = binomial)))`,
    check: 'as.numeric(logLik(fit))',
  };
}

/** Ages in units of 100 days, for lme4's optimiser warns of columns of unlike scales. */
function mixedSeason(rows: number, parents: number, pairSd = 0): BenchData {
  const { numbers, labels } = season(rows, parents, pairSd);
  return { numbers: { ...numbers, age: numbers.age!.map((days) => days / 100) }, labels };
}

function mixed(data: BenchData, ...groups: string[]): number {
  return mixedLogistic({
    successes: data.numbers.fruit!,
    columns: columnsOf(data, 'frozen', 'age'),
    groups: Object.fromEntries(groups.map((name) => [name, data.labels[name]!])),
  }).logLik;
}

const measurements = ['frozen', 'age', 'temperature', 'moisture', 'weight'] as const;

function firth(data: BenchData) {
  return logistic(
    { successes: data.numbers.fruit!, columns: columnsOf(data, ...measurements) },
    { method: 'firth' },
  );
}

function twoFactors({ numbers, labels }: BenchData): number {
  const { mother, father } = labels;
  return logistic({ successes: numbers.fruit!, columns: { mother: mother!, father: father! } }).logLik;
}

/** The same by way of typed variables, whose levels are found and whose rank is checked first. */
function typedFactors({ numbers, labels }: BenchData): number {
  const { mother, father } = labels;
  const { design } = designColumns({
    successes: numbers.fruit!,
    variables: { mother: mother!, father: father! },
    terms: [
      { kind: 'factor', variable: 'mother' },
      { kind: 'factor', variable: 'father' },
    ],
  });
  return logistic(design).logLik;
}

/** Set where the plan's season is made, before the clock runs. */
let planned = (): number => Number.NaN;

const noData: BenchData = { numbers: {}, labels: {} };

export const CASES: readonly BenchCase[] = [
  {
    name: 'maximum likelihood, storage and age',
    rows: 1_000_000,
    data: (rows) => season(rows, 1),
    ours: (data) =>
      logistic({ successes: data.numbers.fruit!, columns: columnsOf(data, 'frozen', 'age') }).logLik,
    r: {
      packages: [],
      fit: 'glm(fruit ~ frozen + age, binomial, d)',
      check: 'as.numeric(logLik(fit))',
    },
    target: { ratio: 10 },
    memoryRows: 1_000_000,
  },
  {
    name: 'maximum likelihood, two factors of 40 levels',
    rows: 100_000,
    data: (rows) => season(rows, 40),
    ours: twoFactors,
    r: { packages: [], fit: 'glm(fruit ~ mother + father, binomial, d)', check: 'as.numeric(logLik(fit))' },
    target: { ratio: 50 },
    memoryRows: 200_000,
  },
  {
    name: 'two factors of 40 levels by way of typed variables',
    rows: 100_000,
    data: (rows) => season(rows, 40),
    ours: typedFactors,
    r: { packages: [], fit: 'glm(fruit ~ mother + father, binomial, d)', check: 'as.numeric(logLik(fit))' },
    target: { ratio: 50 },
  },
  {
    name: 'firth, five measurements',
    rows: 5000,
    data: (rows) => measured(rows),
    ours: (data) => firth(data).coefficients[1]!,
    r: {
      packages: ['brglm2'],
      fit: `glm(fruit ~ ${measurements.join(' + ')}, binomial, d, method = "brglmFit", type = "AS_mean")`,
      check: 'coef(fit)[[2]]',
    },
    target: { ratio: 5 },
    memoryRows: 100_000,
  },
  {
    name: 'firth, five measurements with profile ranges',
    rows: 5000,
    data: (rows) => measured(rows),
    ours: (data) => profileIntervals(firth(data))[1]!.upper!,
    r: {
      packages: ['brglm'],
      fit: `{
        fit <<- brglm(fruit ~ ${measurements.join(' + ')}, binomial, d, pl = TRUE)
        suppressMessages(profConfint(profileModel(fit, quantile = qchisq(0.95, 1),
          objective = brglm:::penalizedDeviance, X = model.matrix(fit), verbose = FALSE)))
      }`,
      check: 'fit[2, 2]',
    },
    tolerance: 1e-4,
    target: { ratio: 20 },
  },
  {
    name: 'crossed effects, 100 × 100 parents',
    rows: 5000,
    data: (rows) => mixedSeason(rows, 100),
    ours: (data) => mixed(data, 'mother', 'father'),
    r: glmer('(1 | mother) + (1 | father)'),
    ...mixedTarget,
  },
  {
    name: 'crossed effects, 100 × 100 parents and their pairs',
    rows: 5000,
    data: (rows) => mixedSeason(rows, 100, 0.7),
    ours: (data) => mixed(data, 'mother', 'father', 'pair'),
    r: glmer('(1 | mother) + (1 | father) + (1 | pair)'),
    ...mixedTarget,
    memoryRows: 100_000,
  },
  {
    name: 'crossed effects, 10 × 10 parents',
    rows: 200,
    data: (rows) => mixedSeason(rows, 10),
    ours: (data) => mixed(data, 'mother', 'father'),
    r: glmer('(1 | mother) + (1 | father)'),
    ...mixedTarget,
  },
  {
    name: "the grower's model",
    rows: 300,
    data: () => noData,
    ours: () => {
      const size = { flowers: 300, plants: 16, mornings: 8, seasons: 2 };
      const { flowers } = simulatedSeason(WORLDS.get('matching')!, size, 0);
      return growerModel(flowers, { ageScale: null, methods: [] }).record.effectiveDraws;
    },
    target: { seconds: 0.5 },
  },
  {
    name: 'the plan of 40 seed parents and 200 vials',
    rows: 200,
    data: () => {
      planned = largePlan();
      return noData;
    },
    ours: () => planned(),
    target: { seconds: 2 },
  },
];
