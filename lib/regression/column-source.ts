/** Columns of a design as they were given: numbers, or labels, which stand for an indicator of each level. */

/** A column of n numbers. */
export interface NumberSource {
  readonly values: Float64Array;
}

/** n codes from 0 to `width`: code 0 is the reference, code k the k-th of `width` indicator columns. */
export interface IndicatorSource {
  readonly codes: Int32Array;
  readonly width: number;
}

/** What one or several neighbouring columns of a design are made of. */
export type ColumnSource = NumberSource | IndicatorSource;

/** Number of columns that a source stands for. */
export function widthOf(source: ColumnSource): number {
  return 'codes' in source ? source.width : 1;
}

/** The columns of some sources in order: n numbers each. */
export function columnsOf(sources: readonly ColumnSource[]): readonly Float64Array[] {
  return sources.flatMap((source) => ('codes' in source ? indicators(source) : [source.values]));
}

function indicators({ codes, width }: IndicatorSource): Float64Array[] {
  const columns = Array.from({ length: width }, () => new Float64Array(codes.length));
  for (let i = 0; i < codes.length; i += 1) {
    if (codes[i]! > 0) columns[codes[i]! - 1]![i] = 1;
  }
  return columns;
}

/**
 * Sources together with their columns, which are written out at the first use: a million rows of forty levels are
 * four megabytes as codes and three hundred as columns.
 */
export function withColumns<T extends { readonly sources: readonly ColumnSource[] }>(
  rest: T,
): T & { readonly columns: readonly Float64Array[] } {
  let columns: readonly Float64Array[] | null = null;
  return Object.defineProperty(rest, 'columns', {
    enumerable: true,
    get: () => {
      columns ??= columnsOf(rest.sources);
      return columns;
    },
  }) as T & { readonly columns: readonly Float64Array[] };
}

/** Columns with their names, in order. */
export interface NamedSources {
  readonly names: readonly string[];
  readonly sources: readonly ColumnSource[];
}

const untouched = new WeakMap<object, NamedSources>();

/**
 * A specification whose `columns` are written out at the first look at them, a Map by name. Until then a fit of it takes
 * the sources as they are.
 */
export function specOfSources<T extends object>(
  rest: T,
  named: NamedSources,
): T & { readonly columns: ReadonlyMap<string, Float64Array> } {
  const spec = { ...rest };
  let columns: ReadonlyMap<string, Float64Array> | null = null;
  untouched.set(spec, named);
  return Object.defineProperty(spec, 'columns', {
    enumerable: true,
    get: () => {
      // Whoever has the columns may change them.
      untouched.delete(spec);
      if (columns === null) {
        const written = columnsOf(named.sources);
        columns = new Map(named.names.map((name, j) => [name, written[j]!]));
      }
      return columns;
    },
  }) as T & { readonly columns: ReadonlyMap<string, Float64Array> };
}

/** The sources of such a specification; undefined for any other, or once its columns have been looked at. */
export function untouchedSources(spec: object): NamedSources | undefined {
  return untouched.get(spec);
}

/** Names of the indicator columns and their codes, from n labels. */
export interface LabelledColumns {
  readonly names: readonly string[];
  readonly source: IndicatorSource;
}

/**
 * Treatment contrasts of labels: the levels sorted by code point, an indicator of each but the first, named as R
 * names them, the column's name before the level's.
 *
 * @param everyLevel whether the first level has an indicator too, as where there is no intercept
 * @throws RangeError where an entry is no string, or all are alike and there is nothing to compare
 */
export function labelledColumns(
  caller: string,
  name: string,
  labels: ArrayLike<unknown>,
  everyLevel: boolean,
): LabelledColumns {
  const index = new Map<string, number>();
  const codes = new Int32Array(labels.length);
  for (let i = 0; i < codes.length; i += 1) {
    const label = labels[i];
    if (typeof label !== 'string') {
      throw new RangeError(`${caller}: column ${name} must hold labels only, got ${label} in row ${i + 1}`);
    }
    let code = index.get(label);
    if (code === undefined) {
      code = index.size;
      index.set(label, code);
    }
    codes[i] = code;
  }
  const levels = [...index.keys()].sort();
  if (levels.length < 2) {
    throw new RangeError(`${caller}: column ${name} must have two levels or more, got ${levels[0]} only`);
  }
  const first = everyLevel ? 1 : 0;
  const rank = new Int32Array(levels.length);
  levels.forEach((level, k) => {
    rank[index.get(level)!] = k + first;
  });
  for (let i = 0; i < codes.length; i += 1) codes[i] = rank[codes[i]!]!;
  const named = everyLevel ? levels : levels.slice(1);
  return { names: named.map((level) => name + level), source: { codes, width: named.length } };
}
