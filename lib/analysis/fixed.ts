import { auc } from '../regression/auc.ts';
import type { DesignSpec } from '../regression/design.ts';
import { brier } from '../regression/diagnostics.ts';
import type { Fit } from '../regression/fit.ts';
import { collinearColumns, logistic } from '../regression/logistic.ts';
import { likelihoodRatio, profileIntervals } from '../regression/profile.ts';
import type { Season } from '../season/season.ts';
import { onScale } from './age-scale.ts';
import { storageOrder, usedFlowers } from './flowers.ts';
import type { AgeScale, FixedModel, ModelTerm } from './models.ts';
import { type AgedFlower, agedFlowers } from './within-between.ts';

/** Options of the textbook model. */
export interface FixedModelOptions {
  /** Level of the ranges, a proportion in (0, 1), 0.95 by default. */
  readonly level?: number;
  /** `log1p-days` (the default): the logarithm of one day more than the age; or `days`. */
  readonly ageScale?: AgeScale;
}

/** A design and the methods whose age term it cannot hold. */
interface FixedDesign {
  readonly spec: DesignSpec;
  readonly withoutAgeTerm: readonly string[];
}

/** The columns with those of one method beside one another. */
function byMethod(columns: ReadonlyMap<string, Float64Array>, methods: readonly string[]) {
  const names = methods.flatMap((storage) => [`storage: ${storage}`, `age: ${storage}`]);
  return new Map(names.filter((name) => columns.has(name)).map((name) => [name, columns.get(name)!]));
}

/** Storage against the first method of the order, and age within each stored method that was tried at two ages. */
function fixedDesign(flowers: readonly AgedFlower[], ageScale: AgeScale): FixedDesign {
  const methods = storageOrder(flowers);
  const successes = flowers.map(({ fruit }) => fruit);
  const is = (storage: string): Float64Array =>
    Float64Array.from(flowers, (flower) => (flower.storage === storage ? 1 : 0));
  // An age follows from the methods' own columns where its method was tried at one age: those stand first.
  const columns = new Map(methods.slice(1).map((storage) => [`storage: ${storage}`, is(storage)]));
  const withoutAgeTerm: string[] = [];
  for (const storage of methods.filter((method) => method !== 'fresh')) {
    const age = is(storage).map((one, i) => one * onScale(flowers[i]!.ageDays, ageScale));
    columns.set(`age: ${storage}`, age);
    if (collinearColumns({ successes, columns }).length === 0) continue;
    columns.delete(`age: ${storage}`);
    withoutAgeTerm.push(storage);
  }
  return { spec: { successes, columns: byMethod(columns, methods) }, withoutAgeTerm };
}

/** Maximum likelihood, or Firth's penalty where the columns separate fruits from failures. */
function fitted(spec: DesignSpec): Fit {
  const fit = logistic(spec);
  return fit.separated ? logistic(spec, { method: 'firth' }) : fit;
}

function termsOf(fit: Fit, level: number): ModelTerm[] {
  const ranges = profileIntervals(fit, { level });
  return fit.terms.map(({ term, estimate, se }, j) => {
    const { lower, upper } = ranges[j]!;
    return { term, estimate, se, lower, upper, p: likelihoodRatio(fit, { drop: [term] }).p };
  });
}

function withoutFit(ageScale: AgeScale, flowers: number, because: string): FixedModel {
  const nothing = { separated: false, separatedBy: [], withoutAgeTerm: [], terms: [] };
  return { method: null, ageScale, ...nothing, flowers, logLik: null, auc: null, brier: null, because };
}

/**
 * The textbook model: logistic regression of fruit set on storage and on pollen age within each stored method.
 *
 * Answers: how do the odds of a fruit change with storage and age, all flowers alike? Not for judging frozen pollen,
 * which goes to other pairs than fresh does (`freshVersusStored`), nor for vials: flowers of a parent, a vial and a
 * morning are taken as independent. Rows with a known age only. Fresh pollen is the reference (else the commonest
 * method) and has age 0, so storage and age are never two terms of the same thing. A method tried at one age has no
 * age term. Where maximum likelihood is infinite, Firth's penalty is used; `p` is of the (penalised) likelihood ratio
 * and the ranges are profile ranges, both with every column kept in the penalty.
 *
 * @param season the season as read
 * @param options `level` and `ageScale`
 * @returns terms on the logit scale; nothing but `because` (`no-flowers`, `no-aged-flowers`, `not-settled`) where there is no fit
 * @throws RangeError where `level` is not between 0 and 1
 * @see McCullagh & Nelder (1989) Generalized Linear Models, chapter 4; Firth (1993) Biometrika 80:27;
 *   Heinze & Schemper (2002) Stat Med 21:2409
 * @example
 * fixedModel(season).terms.map(({ term }) => term); // ['(Intercept)', 'storage: frozen', 'age: frozen']
 */
export function fixedModel(
  season: Season,
  { level = 0.95, ageScale = 'log1p-days' }: FixedModelOptions = {},
): FixedModel {
  const used = usedFlowers(season);
  const flowers = agedFlowers(used);
  if (used.length === 0) return withoutFit(ageScale, 0, 'no-flowers');
  if (flowers.length === 0) return withoutFit(ageScale, 0, 'no-aged-flowers');
  const { spec, withoutAgeTerm } = fixedDesign(flowers, ageScale);
  const fit = fitted(spec);
  if (!fit.convergence.settled) return withoutFit(ageScale, flowers.length, 'not-settled');
  return {
    method: fit.method,
    ageScale,
    separated: fit.separated,
    separatedBy: fit.separatedBy,
    withoutAgeTerm,
    flowers: flowers.length,
    terms: termsOf(fit, level),
    logLik: fit.logLik,
    auc: auc(fit).estimate,
    brier: brier(fit).score,
  };
}
