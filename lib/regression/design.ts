/** A binomial response with its columns and grouping factors: the input of every fit. */

import { type ColumnSource, labelledColumns, untouchedSources, withColumns } from './column-source.ts';

/** Labels of a grouping factor, one a row; null for a row of no level, which only `mixedLogistic` has a meaning for. */
export type GroupLabels = ArrayLike<string | number | null>;

/** A covariate: n numbers, or n labels, which make treatment contrasts (see `DesignSpec.columns`). */
export type ColumnValues = ArrayLike<number> | ArrayLike<string>;

/** What a caller writes: plain arrays, all of the same length (one entry a row). */
export interface DesignSpec {
  /** Number of successes in each row, whole numbers from 0 to `trials`. */
  readonly successes: ArrayLike<number>;
  /** Number of trials in each row, whole numbers of at least 1; all 1 where left out. */
  readonly trials?: ArrayLike<number>;
  /**
   * Covariates by name, in the order of the coefficients. A column of labels stands for an indicator of each of its
   * levels but the first in sorted order, named as R names them (`motherJade` for level Jade of column mother); without
   * an intercept the first such column has all its levels. However many the levels, a row costs one number.
   */
  readonly columns: Readonly<Record<string, ColumnValues>> | ReadonlyMap<string, ColumnValues>;
  /** Labels of grouping factors by name, for random effects, strata and clusters. */
  readonly groups?: Readonly<Record<string, GroupLabels>> | ReadonlyMap<string, GroupLabels>;
  /** Known part of the linear predictor in each row; 0 where left out. */
  readonly offset?: ArrayLike<number>;
  /** Whether the first coefficient is an intercept; true unless told otherwise. */
  readonly intercept?: boolean;
}

/** A grouping factor: `codes[i]` is the index in `levels` of row i, −1 for none. Levels stand in order of appearance. */
export interface Factor {
  readonly name: string;
  readonly codes: Int32Array;
  readonly levels: readonly string[];
}

/** A checked design: n rows, p columns (the intercept among them), column-major values. */
export interface Design {
  readonly n: number;
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  readonly offset: Float64Array;
  /** Names of the p columns; `(Intercept)` first where there is one. */
  readonly names: readonly string[];
  /** p arrays of length n; written out of `sources` at the first use. */
  readonly columns: readonly Float64Array[];
  /** The same columns as they were given; a design with other columns needs other sources. */
  readonly sources: readonly ColumnSource[];
  readonly groups: readonly Factor[];
}

/** Entries of a record or a Map in order: plants are data, so a name such as `__proto__` must survive. */
function entriesOf<T>(source: Readonly<Record<string, T>> | ReadonlyMap<string, T>): [string, T][] {
  return source instanceof Map ? [...source.entries()] : Object.entries(source);
}

/** A copy of `values`, checked to be n finite numbers, as many as the response has. */
export function finiteNumbers(
  caller: string,
  name: string,
  values: ArrayLike<number>,
  n: number,
  response = 'successes',
): Float64Array {
  if (values.length !== n) {
    throw new RangeError(
      `${caller}: ${name} must have ${n} entries as ${response} has, got ${values.length}`,
    );
  }
  // For plain arrays the constructor is many times faster than `from`.
  const copy = new Float64Array(values);
  for (let i = 0; i < n; i += 1) {
    // Infinite and missing values alone differ from themselves after a subtraction.
    if (copy[i]! - copy[i]! !== 0) {
      throw new RangeError(`${caller}: ${name} must hold finite numbers, got ${values[i]} in row ${i + 1}`);
    }
  }
  return copy;
}

function isLabelled(values: ColumnValues): values is ArrayLike<string> {
  return typeof values[0] === 'string';
}

/** Names and sources of the columns, the intercept first where there is one. */
export function namedColumns(
  caller: string,
  spec: Pick<DesignSpec, 'columns' | 'intercept'>,
  n: number,
  response = 'successes',
): Pick<Design, 'names' | 'sources'> {
  const names: string[] = [];
  const sources: ColumnSource[] = [];
  let everyLevel = spec.intercept === false;
  if (!everyLevel) {
    names.push('(Intercept)');
    sources.push({ values: new Float64Array(n).fill(1) });
  }
  const known = untouchedSources(spec);
  if (known !== undefined) {
    return { names: [...names, ...known.names], sources: [...sources, ...known.sources] };
  }
  for (const [name, values] of entriesOf<ColumnValues>(spec.columns)) {
    if (isLabelled(values) && values.length === n) {
      const labelled = labelledColumns(caller, name, values, everyLevel);
      everyLevel = false;
      names.push(...labelled.names);
      sources.push(labelled.source);
    } else {
      names.push(name);
      sources.push({
        values: finiteNumbers(caller, `column ${name}`, values as ArrayLike<number>, n, response),
      });
    }
  }
  return { names, sources };
}

/** Throws unless there are columns, and no more than rows. */
export function checkColumnCount(caller: string, { names, n }: Pick<Design, 'names' | 'n'>): void {
  if (names.length === 0)
    throw new RangeError(`${caller}: columns must hold at least one column or the intercept, got none`);
  if (names.length > n) {
    throw new RangeError(`${caller}: columns must not outnumber the rows (${n}), got ${names.length}`);
  }
}

function checkCounts(caller: string, successes: Float64Array, trials: Float64Array): void {
  for (let i = 0; i < trials.length; i += 1) {
    const m = trials[i]!;
    const y = successes[i]!;
    if (m === 1 && (y === 0 || y === 1)) continue;
    if (!Number.isInteger(m) || m < 1) {
      throw new RangeError(`${caller}: trials must be whole numbers of at least 1, got ${m} in row ${i + 1}`);
    }
    if (!Number.isInteger(y) || y < 0 || y > m) {
      throw new RangeError(
        `${caller}: successes must be a whole number from 0 to trials (${m}), got ${y} in row ${i + 1}`,
      );
    }
  }
}

function factorOf(
  caller: string,
  name: string,
  labels: GroupLabels,
  n: number,
  unlabelled: 'refuse' | 'keep',
): Factor {
  if (labels.length !== n) {
    throw new RangeError(
      `${caller}: group ${name} must have ${n} entries as successes has, got ${labels.length}`,
    );
  }
  const index = new Map<string, number>();
  const codes = new Int32Array(n).fill(-1);
  for (let i = 0; i < n; i += 1) {
    if (labels[i] === null) {
      if (unlabelled === 'keep') continue;
      throw new RangeError(
        `${caller}: group ${name} must have a label in each row, got null in row ${i + 1}`,
      );
    }
    const label = String(labels[i]);
    let code = index.get(label);
    if (code === undefined) {
      code = index.size;
      index.set(label, code);
    }
    codes[i] = code;
  }
  return { name, codes, levels: [...index.keys()] };
}

/**
 * Checks a specification and brings it into the form that fits work on.
 *
 * @param spec n rows of counts, p columns, any number of grouping factors
 * @param caller name of the public function, for the message
 * @param unlabelled whether a row may have the label null, and then belong to no level of a factor
 * @returns a design with copies of all arrays
 * @throws RangeError naming the argument, the rule and the value when lengths differ, a value is not finite, or
 *   successes and trials are not counts
 */
export function designOf(
  spec: DesignSpec,
  caller = 'design',
  unlabelled: 'refuse' | 'keep' = 'refuse',
): Design {
  const n = spec.successes.length;
  if (n === 0) throw new RangeError(`${caller}: successes must have at least one entry, got none`);
  const successes = finiteNumbers(caller, 'successes', spec.successes, n);
  const trials = spec.trials ? finiteNumbers(caller, 'trials', spec.trials, n) : new Float64Array(n).fill(1);
  checkCounts(caller, successes, trials);
  return withColumns({
    n,
    successes,
    trials,
    offset: spec.offset ? finiteNumbers(caller, 'offset', spec.offset, n) : new Float64Array(n),
    ...namedColumns(caller, spec, n),
    groups: entriesOf(spec.groups ?? {}).map(([name, labels]) =>
      factorOf(caller, name, labels, n, unlabelled),
    ),
  });
}
