/** Rows that agree in every column: the binomial likelihood knows only their sums. */

import { randomStream } from '../numerics/random.ts';
import { type ColumnSource, widthOf, withColumns } from './column-source.ts';
import type { Design } from './design.ts';
import { PairCodes } from './pair-codes.ts';

/** A design with its equal rows joined: m ≤ n rows, in order of first appearance. */
export interface JoinedRows {
  readonly m: number;
  /** For each of the n rows, the joined row it went to. */
  readonly rowOf: Int32Array;
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  readonly offset: Float64Array;
  /** p arrays of length m, in the order of the design; written out of `sources` at the first use. */
  readonly columns: readonly Float64Array[];
  readonly sources: readonly ColumnSource[];
}

/** What is joined: n rows of counts, an offset and columns. */
export type RowsToJoin = Pick<Design, 'n' | 'successes' | 'trials' | 'offset' | 'sources'>;

/** n whole numbers, `lowest` taken from each, are below `range`. */
interface WholeNumbers {
  readonly values: ArrayLike<number>;
  readonly lowest: number;
  readonly range: number;
}

/** Days, counts and indicators are whole numbers of a small range; null for any other column. */
function wholeNumbers(values: Float64Array, mostRange: number): WholeNumbers | null {
  let lowest = values[0]!;
  let highest = lowest;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (value < lowest) lowest = value;
    else if (value > highest) highest = value;
    if (value !== Math.floor(value)) return null;
  }
  const range = highest - lowest + 1;
  return range <= mostRange ? { values, lowest, range } : null;
}

function isConstant(values: Float64Array): boolean {
  const first = values[0]!;
  for (let i = 1; i < values.length; i += 1) if (values[i] !== first) return false;
  return true;
}

/** Splits `count` codes by whole numbers, through a table of all that can be; the new count, in order of appearance. */
function splitByTable(
  rowOf: Int32Array,
  count: number,
  { values, lowest, range }: WholeNumbers,
  most: number,
): number {
  const table = new Int32Array(count * range);
  let next = 0;
  for (let i = 0; i < rowOf.length; i += 1) {
    const place = rowOf[i]! * range + (values[i]! - lowest);
    let code = table[place]!;
    if (code === 0) {
      next += 1;
      code = next;
      table[place] = code;
      if (next > most) return next;
    }
    rowOf[i] = code - 1;
  }
  return next;
}

/** Splits the codes by any numbers; the new count. */
function splitByHash(rowOf: Int32Array, values: ArrayLike<number>, most: number): number {
  const codes = new PairCodes();
  for (let i = 0; i < rowOf.length; i += 1) {
    // Adding 0 makes -0 and 0 one value.
    rowOf[i] = codes.codeOf(rowOf[i]!, values[i]! + 0);
    if (codes.count > most) return codes.count;
  }
  return codes.count;
}

/** Splits the codes by one more source; the new count, past `most` where that was too many to go on. */
function split(rowOf: Int32Array, count: number, source: ColumnSource, most: number): number {
  const room = Math.max(65_536, 2 * rowOf.length);
  if (!('codes' in source) && isConstant(source.values)) return count;
  const whole =
    'codes' in source
      ? { values: source.codes, lowest: 0, range: source.width + 1 }
      : wholeNumbers(source.values, room);
  if (whole !== null && count * whole.range <= room) return splitByTable(rowOf, count, whole, most);
  return splitByHash(rowOf, 'codes' in source ? source.codes : source.values, most);
}

/** A design of fewer rows is joined outright. */
const fewestSampled = 1000;

const joinedBefore = new WeakMap<RowsToJoin, JoinedRows>();

/**
 * Joins the rows of a design that agree in all columns and in the offset.
 *
 * A season of storage methods and whole days has few distinct rows however many flowers, so fits cost the distinct
 * rows only. Where more than about half of the rows differ, every row is kept as it is. The answer to a design is kept
 * as long as the design is, since everything asked of a fit asks for it again.
 *
 * @param design n rows, p columns
 */
export function joinRows(design: RowsToJoin): JoinedRows {
  const known = joinedBefore.get(design);
  if (known !== undefined) return known;
  const joined = joinedAnew(design);
  joinedBefore.set(design, joined);
  return joined;
}

function joinedAnew(design: RowsToJoin): JoinedRows {
  const { n } = design;
  if (looksUnlike(design)) return unjoined(design);
  const rowOf = new Int32Array(n);
  const most = n / 2 + 64;
  let m = 1;
  for (const source of [...design.sources, { values: design.offset }]) {
    m = split(rowOf, m, source, most);
    if (m > most) return unjoined(design);
  }
  return gather(design, rowOf, m);
}

/**
 * Whether no two of about 4 √n rows agree, a sample of neighbours drawn all over the design: were less than half of the rows
 * distinct, 16 pairs of scattered ones would agree on average, or half of the neighbours where equal rows stand together.
 */
function looksUnlike({ n, offset, sources }: RowsToJoin): boolean {
  const pairs = Math.ceil(2 * Math.sqrt(n));
  if (n < fewestSampled) return false;
  const rows = new Int32Array(2 * pairs);
  const { uniform } = randomStream(1);
  for (let k = 0; k < pairs; k += 1) {
    rows[2 * k] = Math.floor(uniform() * (n - 1));
    rows[2 * k + 1] = rows[2 * k]! + 1;
  }
  const distinct = new Set(rows).size;
  const rowOf = new Int32Array(rows.length);
  let count = 1;
  for (const source of [...sources, { values: offset }]) {
    const sampled: ColumnSource =
      'codes' in source
        ? { codes: rows.map((i) => source.codes[i]!), width: source.width }
        : { values: Float64Array.from(rows, (i) => source.values[i]!) };
    count = split(rowOf, count, sampled, rows.length);
    if (count === distinct) return true;
  }
  return false;
}

function unjoined({ n, successes, trials, offset, sources }: RowsToJoin): JoinedRows {
  const rowOf = new Int32Array(n);
  for (let i = 0; i < n; i += 1) rowOf[i] = i;
  return withColumns({ m: n, rowOf, successes, trials, offset, sources });
}

function gather(design: RowsToJoin, rowOf: Int32Array, m: number): JoinedRows {
  const first = new Int32Array(m).fill(-1);
  const successes = new Float64Array(m);
  const trials = new Float64Array(m);
  for (let i = 0; i < design.n; i += 1) {
    const row = rowOf[i]!;
    if (first[row]! < 0) first[row] = i;
    successes[row]! += design.successes[i]!;
    trials[row]! += design.trials[i]!;
  }
  const firsts = (values: Float64Array): Float64Array => Float64Array.from(first, (i) => values[i]!);
  const sources = design.sources.map(
    (source): ColumnSource =>
      'codes' in source
        ? { codes: Int32Array.from(first, (i) => source.codes[i]!), width: widthOf(source) }
        : { values: firsts(source.values) },
  );
  return withColumns({ m, rowOf, successes, trials, offset: firsts(design.offset), sources });
}
