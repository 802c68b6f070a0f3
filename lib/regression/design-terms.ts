/** Terms of a model: how typed variables become named columns of numbers. */

import { columnsOf, type IndicatorSource, type NamedSources } from './column-source.ts';
import { fullKnots, naturalSpline, type SplineKnots } from './natural-spline.ts';

/** A variable as measured: finite numbers, or labels; null where it is missing. */
export type Variable = ArrayLike<number | string | null>;

/** Entries by name; a Map where a name may be anything, such as that of a plant. */
export type Named<T> = Readonly<Record<string, T>> | ReadonlyMap<string, T>;

/** A term of one variable. */
export type SimpleTerm =
  | { readonly kind: 'numeric'; readonly variable: string }
  /** log(1 + the variable), for ages. */
  | { readonly kind: 'log1p'; readonly variable: string }
  /** Treatment contrasts: an indicator of each level but the first. */
  | { readonly kind: 'factor'; readonly variable: string }
  | ({ readonly kind: 'natural-spline'; readonly variable: string } & SplineKnots);

/** A term of a model. */
export type DesignTerm =
  | SimpleTerm
  /** Products of the columns of two or more terms, which must stand in the model themselves. */
  | { readonly kind: 'interaction'; readonly of: readonly SimpleTerm[] }
  /** The columns of `term` in each level of a factor, the first one too, in place of `term` itself. */
  | { readonly kind: 'within'; readonly factor: string; readonly term: SimpleTerm };

export type ColumnList = readonly (readonly [name: string, values: Float64Array])[];

/** What the terms are made from: n rows, and for each factor its levels, the reference first. */
export interface TermSource {
  readonly caller: string;
  readonly n: number;
  readonly variables: ReadonlyMap<string, Variable>;
  readonly levels: ReadonlyMap<string, readonly string[]>;
}

export function mapOf<T>(named: Named<T>): ReadonlyMap<string, T> {
  return named instanceof Map ? named : new Map(Object.entries(named));
}

/** The short name of a term, by which interactions know their parts. */
export function termName(term: DesignTerm): string {
  if (term.kind === 'interaction') return term.of.map(termName).join(':');
  if (term.kind === 'within') return `${term.factor}:${termName(term.term)}`;
  if (term.kind === 'log1p') return `log1p(${term.variable})`;
  return term.kind === 'natural-spline' ? `ns(${term.variable})` : term.variable;
}

/** The simple terms that a term is made of. */
export function partsOf(term: DesignTerm): readonly SimpleTerm[] {
  if (term.kind === 'interaction') return term.of;
  return term.kind === 'within' ? [{ kind: 'factor', variable: term.factor }, term.term] : [term];
}

/** Throws where a term stands twice, or an interaction without the terms it is made of. */
export function checkTerms(caller: string, terms: readonly DesignTerm[]): void {
  const names = terms.map(termName);
  names.forEach((name, k) => {
    if (names.indexOf(name) < k) throw new RangeError(`${caller}: terms must differ, got ${name} twice`);
  });
  for (const term of terms) {
    if (term.kind !== 'interaction') continue;
    if (term.of.length < 2) {
      throw new RangeError(`${caller}: an interaction must be of two terms or more, got ${term.of.length}`);
    }
    for (const left of term.of) {
      const margin = term.of.filter((part) => part !== left);
      const name = margin.map(termName).join(':');
      if (!names.includes(name)) {
        throw new RangeError(
          `${caller}: terms must hold ${name} where they hold the interaction ${termName(term)}, got ${names.join(', ')}`,
        );
      }
    }
  }
}

/** The variable of that name, checked to have n entries. */
export function variableOf({ caller, n, variables }: Omit<TermSource, 'levels'>, name: string): Variable {
  const values = variables.get(name);
  if (values === undefined) {
    throw new RangeError(
      `${caller}: terms must name variables (${[...variables.keys()].join(', ')}), got ${name}`,
    );
  }
  if (values.length !== n) {
    throw new RangeError(`${caller}: variable ${name} must have ${n} entries, got ${values.length}`);
  }
  return values;
}

function numbersOf(source: TermSource, name: string): Float64Array {
  const values = variableOf(source, name);
  return Float64Array.from({ length: source.n }, (_, i) => {
    const value = values[i];
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      const got = typeof value === 'string' ? JSON.stringify(value) : String(value);
      throw new RangeError(
        `${source.caller}: variable ${name} must hold finite numbers, got ${got} in row ${i + 1}`,
      );
    }
    return value;
  });
}

function logsOf(source: TermSource, name: string): Float64Array {
  return numbersOf(source, name).map((value, i) => {
    if (value <= -1) {
      throw new RangeError(
        `${source.caller}: variable ${name} must be above -1 for its logarithm, got ${value} in row ${i + 1}`,
      );
    }
    return Math.log1p(value);
  });
}

/** Codes of a factor's levels: those from `from` on have an indicator each, those before stand for the reference. */
function indicatorSource(source: TermSource, name: string, from: number): IndicatorSource {
  const values = variableOf(source, name);
  const levels = source.levels.get(name) ?? [];
  const codeOf = new Map(levels.map((level, k) => [level, k + 1 - from]));
  const codes = new Int32Array(source.n);
  for (let i = 0; i < source.n; i += 1) {
    const code = codeOf.get(String(values[i]));
    if (code === undefined) {
      throw new RangeError(
        `${source.caller}: factor ${name} must have one of its levels (${levels.join(', ')}), got ` +
          `${String(values[i])} in row ${i + 1}`,
      );
    }
    codes[i] = code;
  }
  return { codes, width: levels.length - from };
}

const levelNames = (source: TermSource, name: string, from: number): string[] =>
  (source.levels.get(name) ?? []).slice(from).map((level) => `${name}${level}`);

function indicators(source: TermSource, name: string, from: number): ColumnList {
  const columns = columnsOf([indicatorSource(source, name, from)]);
  return levelNames(source, name, from).map((level, k) => [level, columns[k]!]);
}

function simpleColumns(source: TermSource, term: SimpleTerm, allLevels: boolean): ColumnList {
  const { variable } = term;
  if (term.kind === 'factor') return indicators(source, variable, allLevels ? 0 : 1);
  if (term.kind === 'numeric') return [[variable, numbersOf(source, variable)]];
  if (term.kind === 'log1p') return [[termName(term), logsOf(source, variable)]];
  const values = numbersOf(source, variable);
  const spline = fullKnots(source.caller, `variable ${variable}`, values, term);
  return naturalSpline(values, spline).map((column, k) => [`${termName(term)}${k + 1}`, column]);
}

/** Products of columns; those of the first term vary fastest, as in R. */
function products(left: ColumnList, right: ColumnList): ColumnList {
  return right.flatMap(([name, values]) =>
    left.map(
      ([first, factor]) => [`${first}:${name}`, factor.map((value, i) => value * values[i]!)] as const,
    ),
  );
}

/**
 * The named columns of one term.
 *
 * @param allLevels whether a factor has a column for its first level too, as the first factor without an intercept has
 */
export function columnsOfTerm(source: TermSource, term: DesignTerm, allLevels = false): ColumnList {
  if (term.kind === 'within') {
    const factor = simpleColumns(source, { kind: 'factor', variable: term.factor }, true);
    return products(factor, simpleColumns(source, term.term, false));
  }
  if (term.kind !== 'interaction') return simpleColumns(source, term, allLevels);
  return term.of.map((part) => simpleColumns(source, part, false)).reduce(products);
}

/** The same columns as sources: a factor stays codes, however many its levels. */
export function sourcesOfTerm(source: TermSource, term: DesignTerm, allLevels = false): NamedSources {
  if (term.kind === 'factor') {
    const from = allLevels ? 0 : 1;
    return {
      names: levelNames(source, term.variable, from),
      sources: [indicatorSource(source, term.variable, from)],
    };
  }
  const columns = columnsOfTerm(source, term, allLevels);
  return { names: columns.map(([name]) => name), sources: columns.map(([, values]) => ({ values })) };
}
