/** Rows that agree in every column: the binomial likelihood knows only their sums. */

import type { Design } from './design.ts';

/** A design with its equal rows joined: m ≤ n rows, in order of first appearance. */
export interface JoinedRows {
  readonly m: number;
  /** For each of the n rows, the joined row it went to. */
  readonly rowOf: Int32Array;
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  readonly offset: Float64Array;
  /** p arrays of length m, in the order of the design. */
  readonly columns: readonly Float64Array[];
}

const float = new Float64Array(1);
const bits = new Int32Array(float.buffer);

function hash(code: number, value: number): number {
  float[0] = value;
  let h = Math.imul(bits[0]!, 0x9e3779b1) ^ Math.imul(bits[1]!, 0x85ebca6b) ^ Math.imul(code, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return (h ^ (h >>> 13)) >>> 0;
}

/** Open addressing from (code, value) to a new code; grows, and never holds an object a key. */
class PairCodes {
  count = 0;
  private slots = new Int32Array(1024);
  private codes = new Int32Array(512);
  private values = new Float64Array(512);

  codeOf(code: number, value: number): number {
    const mask = this.slots.length - 1;
    for (let slot = hash(code, value) & mask; ; slot = (slot + 1) & mask) {
      const found = this.slots[slot]! - 1;
      if (found < 0) return this.add(slot, code, value);
      if (this.codes[found] === code && this.values[found] === value) return found;
    }
  }

  private add(slot: number, code: number, value: number): number {
    const added = this.count;
    this.count += 1;
    this.slots[slot] = this.count;
    this.codes[added] = code;
    this.values[added] = value;
    if (this.count === this.codes.length) this.grow();
    return added;
  }

  private grow(): void {
    const codes = new Int32Array(2 * this.count);
    const values = new Float64Array(2 * this.count);
    codes.set(this.codes);
    values.set(this.values);
    const mask = 4 * this.count - 1;
    const slots = new Int32Array(mask + 1);
    for (let k = 0; k < this.count; k += 1) {
      let slot = hash(codes[k]!, values[k]!) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = k + 1;
    }
    this.codes = codes;
    this.values = values;
    this.slots = slots;
  }
}

function isConstant(values: Float64Array): boolean {
  const first = values[0]!;
  for (let i = 1; i < values.length; i += 1) if (values[i] !== first) return false;
  return true;
}

/** Splits the codes by one more column; false where so many rows differ that joining no longer pays. */
function refine(rowOf: Int32Array, values: Float64Array, codes: PairCodes): boolean {
  const most = rowOf.length / 2 + 64;
  for (let i = 0; i < rowOf.length; i += 1) {
    // Adding 0 makes -0 and 0 one value.
    rowOf[i] = codes.codeOf(rowOf[i]!, values[i]! + 0);
    if (codes.count > most) return false;
  }
  return true;
}

/**
 * Joins the rows of a design that agree in all columns and in the offset.
 *
 * A season of storage methods and whole days has few distinct rows however many flowers, so fits cost the distinct
 * rows only. Where more than about half of the rows differ, every row is kept as it is.
 *
 * @param design n rows, p columns
 */
export function joinRows(design: Design): JoinedRows {
  const { n } = design;
  const rowOf = new Int32Array(n);
  let m = 1;
  for (const values of [...design.columns, design.offset]) {
    if (isConstant(values)) continue;
    const codes = new PairCodes();
    if (!refine(rowOf, values, codes)) return unjoined(design);
    m = codes.count;
  }
  return gather(design, rowOf, m);
}

function unjoined(design: Design): JoinedRows {
  const rowOf = Int32Array.from({ length: design.n }, (_, i) => i);
  return { m: design.n, rowOf, ...design };
}

function gather(design: Design, rowOf: Int32Array, m: number): JoinedRows {
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
  return { m, rowOf, successes, trials, offset: firsts(design.offset), columns: design.columns.map(firsts) };
}
