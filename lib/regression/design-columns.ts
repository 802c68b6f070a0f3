/** Designs from typed columns: numbers, factors, interactions and splines become a design of full rank. */

import { checkChoice } from '../numerics/arguments.ts';
import { columnsOf, type NamedSources, specOfSources, untouchedSources } from './column-source.ts';
import { type DesignSpec, designOf, type GroupLabels } from './design.ts';
import {
  checkTerms,
  type DesignTerm,
  mapOf,
  type Named,
  partsOf,
  type SimpleTerm,
  sourcesOfTerm,
  type TermSource,
  type Variable,
  variableOf,
} from './design-terms.ts';
import { joinRows } from './joined-rows.ts';
import { fullKnots } from './natural-spline.ts';
import { orthogonalBasis } from './orthogonal-basis.ts';
import { sparseBasis } from './sparse-basis.ts';

/** A response of n rows with typed variables and the terms made from them. */
export interface TypedDesignSpec extends Omit<DesignSpec, 'columns'> {
  readonly variables: Named<Variable>;
  readonly terms: readonly DesignTerm[];
  /** Levels of factors by variable, the reference first; those in the data, sorted, where left out. */
  readonly levels?: Named<readonly string[]>;
}

/** A design of full rank, with all that was left out on the way to it. */
export interface TypedDesign {
  /** Ready for a fit. */
  readonly design: DesignSpec;
  /** The terms with the boundary knots that were used: these make the same columns of other values. */
  readonly terms: readonly DesignTerm[];
  /** Levels of each factor that have rows, the reference first. */
  readonly levels: ReadonlyMap<string, readonly string[]>;
  /** Stated levels without a row: they have no column. */
  readonly emptyLevels: readonly { readonly variable: string; readonly level: string }[];
  /** Rows left out since a variable or a group is missing; `row` counts from 1. */
  readonly leftOut: readonly { readonly row: number; readonly variable: string }[];
  /** Columns left out since they are linear combinations of the columns `on` before them. */
  readonly collinear: readonly { readonly column: string; readonly on: readonly string[] }[];
}

const isMissing = (value: number | string | null | undefined): boolean =>
  value === null || value === undefined;

function anyMissing(values: Variable, n: number): boolean {
  for (let i = 0; i < n; i += 1) if (isMissing(values[i])) return true;
  return false;
}

/** The first missing variable or group of each row that has one, in row order. */
function missingRows(
  source: Omit<TermSource, 'levels'>,
  terms: readonly DesignTerm[],
  groups: ReadonlyMap<string, GroupLabels>,
): TypedDesign['leftOut'] {
  const used = new Set(terms.flatMap(partsOf).map(({ variable }) => variable));
  const sources = [...used].map((name) => [name, variableOf(source, name)] as const);
  const all: readonly (readonly [string, Variable])[] = [...sources, ...groups];
  if (!all.some(([, values]) => anyMissing(values, source.n))) return [];
  return Array.from({ length: source.n }, (_, i) => i).flatMap((i) => {
    const missing = all.find(([, values]) => isMissing(values[i]));
    return missing === undefined ? [] : [{ row: i + 1, variable: missing[0] }];
  });
}

function factorsOf(terms: readonly DesignTerm[]): readonly string[] {
  const factors = terms.flatMap(partsOf).filter(({ kind }) => kind === 'factor');
  return [...new Set(factors.map(({ variable }) => variable))];
}

/** Levels with rows and stated levels without, of one factor. */
function splitLevels(
  source: Omit<TermSource, 'levels'>,
  name: string,
  stated: readonly string[] | undefined,
): { readonly used: readonly string[]; readonly empty: readonly string[] } {
  const values = variableOf(source, name);
  const present = new Set<string>();
  for (let i = 0; i < values.length; i += 1) present.add(String(values[i]));
  const wanted = stated ?? [...present].sort();
  const used = wanted.filter((level) => present.has(level));
  if (new Set(wanted).size < wanted.length) {
    throw new RangeError(`${source.caller}: levels of ${name} must differ, got ${wanted.join(', ')}`);
  }
  if (present.size < 2) {
    throw new RangeError(
      `${source.caller}: factor ${name} must have rows of two levels, got ${[...present].join(', ') || 'none'} only`,
    );
  }
  return { used, empty: wanted.filter((level) => !present.has(level)) };
}

function withBoundary(source: Omit<TermSource, 'levels'>, term: SimpleTerm): SimpleTerm {
  if (term.kind !== 'natural-spline') return term;
  const values = variableOf(source, term.variable) as ArrayLike<number>;
  return { ...term, ...fullKnots(source.caller, `variable ${term.variable}`, values, term) };
}

function withBoundaries(source: Omit<TermSource, 'levels'>, term: DesignTerm): DesignTerm {
  if (term.kind === 'within') return { ...term, term: withBoundary(source, term.term) };
  if (term.kind !== 'interaction') return withBoundary(source, term);
  return { ...term, of: term.of.map((part) => withBoundary(source, part)) };
}

function allSources(source: TermSource, terms: readonly DesignTerm[], intercept: boolean): NamedSources {
  const firstFactor = intercept ? -1 : terms.findIndex(({ kind }) => kind === 'factor');
  const parts = terms.map((term, k) => sourcesOfTerm(source, term, k === firstFactor));
  const names = parts.flatMap((part) => part.names);
  const twice = names.find((name, k) => name === '(Intercept)' || names.indexOf(name) < k);
  if (twice !== undefined) {
    throw new RangeError(`${source.caller}: columns must have names of their own, got ${twice} twice`);
  }
  return { names, sources: parts.flatMap((part) => part.sources) };
}

/** A design without the columns that depend on those before them, and these by name. */
function fullRank(
  caller: string,
  response: Omit<DesignSpec, 'columns'>,
  named: NamedSources,
): Pick<TypedDesign, 'design' | 'collinear'> {
  const spec = specOfSources(response, named);
  const design = designOf(spec, caller);
  const joined = joinRows(design);
  // A sparse basis is one of independent columns.
  if (sparseBasis(joined.sources, joined.trials) !== null) return { design: spec, collinear: [] };
  const kept = [...design.names.keys()];
  const collinear: { column: string; on: readonly string[] }[] = [];
  for (;;) {
    const basis = orthogonalBasis(
      kept.map((j) => joined.columns[j]!),
      joined.trials,
    );
    if (!('column' in basis)) break;
    const on = basis.on.map((k) => design.names[kept[k]!]!);
    collinear.push({ column: design.names[kept.splice(basis.column, 1)[0]!]!, on });
  }
  if (collinear.length === 0) return { design: spec, collinear };
  const dropped = new Set(collinear.map(({ column }) => column));
  const columns = [...spec.columns].filter(([name]) => !dropped.has(name));
  return { design: { ...response, columns: new Map(columns) }, collinear };
}

/** The rows that are kept, of an array of n entries. */
function rowsOf<T>(values: ArrayLike<T>, rows: readonly number[], n: number): ArrayLike<T> {
  // An array of another length goes on as it is, so that the check of the design names it.
  return values.length === n ? rows.map((i) => values[i]!) : values;
}

/** The specification without the rows that miss something. */
function completeRows(spec: TypedDesignSpec, leftOut: TypedDesign['leftOut']): TypedDesignSpec {
  const n = spec.successes.length;
  const out = new Set(leftOut.map(({ row }) => row - 1));
  const rows = Array.from({ length: n }, (_, i) => i).filter((i) => !out.has(i));
  if (rows.length === 0)
    throw new RangeError('designColumns: a row must have all variables, got none that has');
  const rowsOfEach = <T>(named: Named<ArrayLike<T>>): ReadonlyMap<string, ArrayLike<T>> =>
    new Map([...mapOf(named)].map(([name, values]) => [name, rowsOf(values, rows, n)]));
  return {
    ...spec,
    successes: rowsOf(spec.successes, rows, n),
    ...(spec.trials && { trials: rowsOf(spec.trials, rows, n) }),
    ...(spec.offset && { offset: rowsOf(spec.offset, rows, n) }),
    ...(spec.groups && { groups: rowsOfEach(spec.groups) }),
    variables: rowsOfEach(spec.variables),
  };
}

/**
 * A design from typed variables: numeric columns, factors with treatment contrasts, log(1 + x), natural splines,
 * interactions, and slopes within the levels of a factor.
 *
 * Answers with the `DesignSpec` of a fit, its columns named as R names them (`storagefrozen`, `log1p(age)`,
 * `storagefrozen:log1p(age)`), and with everything that was left out: levels without a row, rows with missing values,
 * columns that are linear combinations of others. Not for levels of parents or vials, of which there are many with few
 * flowers each: those are groups of `mixedLogistic`.
 *
 * @param spec n rows of successes, trials, offset and groups as in `DesignSpec`; `variables` by name, n entries each;
 *   `terms` in the order of the columns; `levels` of factors, the reference first (data order never matters: levels not
 *   stated are sorted). A stated reference without rows gives its place to the next level
 * @param options `missing`: `refuse` (default) throws at a null, `leave-out` leaves the row out and lists it
 * @returns `design`, ready for a fit; `terms` with the knots that were used; `levels`, `emptyLevels`, `leftOut` rows and
 *   `collinear` columns, each list empty where there is nothing to tell
 * @throws RangeError when an array has another length, a number is not finite, a label is none of the stated levels, a
 *   factor has fewer than two levels with rows, log1p meets a value of at most -1, an interaction stands without its
 *   terms, knots do not increase, two columns have one name, or a value is missing and `missing` is `refuse`
 * @source Chambers & Hastie (1992) Statistical Models in S, chapter 2; Nelder (1977) Journal of the Royal Statistical
 *   Society A 140, 48–77 (no interaction without its margins)
 * @example designColumns({ successes: [3, 1, 2], trials: [4, 4, 4], variables: { storage: ['fresh', 'frozen', 'frozen'] },
 *   terms: [{ kind: 'factor', variable: 'storage' }] }).design.columns.get('storagefrozen') // [0, 1, 1]
 */
export function designColumns(
  spec: TypedDesignSpec,
  { missing = 'refuse' }: { readonly missing?: 'refuse' | 'leave-out' } = {},
): TypedDesign {
  const caller = 'designColumns';
  checkChoice(caller, 'missing', missing, ['refuse', 'leave-out']);
  checkTerms(caller, spec.terms);
  const n = spec.successes.length;
  if (n === 0) throw new RangeError(`${caller}: successes must have at least one entry, got none`);
  const asGiven = { caller, n, variables: mapOf(spec.variables) };
  const leftOut = missingRows(asGiven, spec.terms, mapOf(spec.groups ?? {}));
  if (leftOut.length > 0 && missing === 'refuse') {
    const { row, variable } = leftOut[0]!;
    throw new RangeError(`${caller}: ${variable} must have a value in each row, got none in row ${row}`);
  }
  const complete = leftOut.length === 0 ? spec : completeRows(spec, leftOut);
  const rows = { caller, n: complete.successes.length, variables: mapOf(complete.variables) };
  const stated = mapOf(spec.levels ?? {});
  const split = new Map(
    factorsOf(spec.terms).map((name) => [name, splitLevels(rows, name, stated.get(name))]),
  );
  const levels = new Map([...split].map(([name, { used }]) => [name, used]));
  const terms = spec.terms.map((term) => withBoundaries(rows, term));
  const named = allSources({ ...rows, levels }, terms, spec.intercept !== false);
  const { variables: _, terms: __, levels: ___, ...response } = complete;
  return {
    ...fullRank(caller, response, named),
    terms,
    levels,
    emptyLevels: [...split].flatMap(([variable, { empty }]) => empty.map((level) => ({ variable, level }))),
    leftOut,
  };
}

/**
 * The columns of a design made again, of other values of its variables: for scenarios of `standardise`.
 *
 * Answers with a Map of names and columns that can stand in `set` where it is cut to the columns of the fit. Not for
 * levels that the design has not seen: they have no coefficient.
 *
 * @param made what `designColumns` returned
 * @param variables by name, all of one length: m rows
 * @returns m numbers a column of the design, in its order, the intercept left out
 * @throws RangeError when a variable is missing or of another length, a number is not finite, or a label is new
 * @source Chambers & Hastie (1992) Statistical Models in S, section 7.3.3 (safe prediction)
 * @example columnsAgain(made, { storage: ['frozen', 'fresh'] }).get('storagefrozen') // [1, 0]
 */
export function columnsAgain(
  made: TypedDesign,
  variables: Named<Variable>,
): ReadonlyMap<string, Float64Array> {
  const sources = mapOf(variables);
  const n = sources.values().next().value?.length ?? 0;
  const source = { caller: 'columnsAgain', n, variables: sources, levels: made.levels };
  const kept = new Set(untouchedSources(made.design)?.names ?? mapOf(made.design.columns).keys());
  const { names, sources: all } = allSources(source, made.terms, made.design.intercept !== false);
  const columns = columnsOf(all);
  return new Map(names.map((name, j) => [name, columns[j]!] as const).filter(([name]) => kept.has(name)));
}
