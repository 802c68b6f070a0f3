/**
 * A binomial logit model whose coefficients are all standard normal beforehand: the common ground of mixed
 * logistic regression and of the fits with priors.
 *
 * Row i has eta_i = offset_i + sum_c s_c x_ic v_c + sum_g s_g v_g(code_ig), with v ~ N(0, I): a column's scale
 * s_c is its prior standard deviation, a factor's scale s_g the standard deviation of its effects. A factor may
 * leave a row without an effect (code −1).
 *
 * One factor may be `exclusive`: with probability pi a level of it never succeeds, whatever the rest says. Then
 * a level with a success has likelihood (1 − pi) L, one without has pi + (1 − pi) L.
 *
 * Storage: the levels of one factor (the exclusive one, else the largest) do not touch each other in the information matrix, so that
 * block is diagonal and is eliminated; the rest, the core, is dense.
 */

/** Effects of one grouping factor: `codes[i]` from 0 to size − 1, or −1 where row i has none. */
export interface LatentFactor {
  readonly name: string;
  readonly codes: Int32Array;
  readonly size: number;
}

/** What the caller gives: n rows, dense columns, factors. */
export interface LatentSpec {
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  readonly offset: Float64Array;
  readonly columns: readonly Float64Array[];
  readonly factors: readonly LatentFactor[];
  /** Index in `factors` of the one whose levels may never succeed; −1 for none. */
  readonly exclusive: number;
}

/** The specification with its fixed structure worked out once. */
export interface LatentModel extends LatentSpec {
  readonly n: number;
  /** Index of the eliminated factor; −1 where there is none. */
  readonly eliminated: number;
  /** Number of levels of the eliminated factor. */
  readonly blockSize: number;
  /** Number of core coefficients: other factors first, then the dense columns. */
  readonly coreSize: number;
  /** First core index of each factor (−1 for the eliminated one). */
  readonly factorStart: readonly number[];
  /** First core index of the dense columns. */
  readonly columnStart: number;
  /**
   * The core entries of each row that are not zero: row i has those from `entryStart[i]` to `entryStart[i + 1]`,
   * in ascending order of `entryCore`; `entryValue` is 1 for a factor, the column's value for a column.
   */
  readonly entryStart: Int32Array;
  readonly entryCore: Int32Array;
  readonly entryValue: Float64Array;
  /** Position of each entry in the touched list of its row's eliminated level; −1 without. */
  readonly entryPlace: Int32Array;
  /** Core indices that each eliminated level touches, in ascending order. */
  readonly touched: readonly Int32Array[];
  /** Position in the touched list of each row's factor entries: n × factors, −1 where none. */
  readonly position: Int32Array;
  /** Levels of the exclusive factor without any success: those that may be of the kind that never succeeds. */
  readonly barren: Uint8Array;
}

/** Works out the structure that every evaluation shares. */
export function latentModel(spec: LatentSpec): LatentModel {
  const n = spec.successes.length;
  const eliminated = spec.exclusive >= 0 ? spec.exclusive : largestFactor(spec.factors);
  const factorStart: number[] = [];
  let next = 0;
  spec.factors.forEach((factor, g) => {
    factorStart.push(g === eliminated ? -1 : next);
    if (g !== eliminated) next += factor.size;
  });
  const shape = { n, eliminated, factorStart, columnStart: next, coreSize: next + spec.columns.length };
  const blockSize = eliminated < 0 ? 0 : spec.factors[eliminated]!.size;
  const touched = touchedLists(spec, shape, blockSize);
  return {
    ...spec,
    ...shape,
    blockSize,
    touched,
    ...entries(spec, shape, touched),
    position: positions(spec, shape, touched),
    barren: barrenLevels(spec),
  };
}

type Shape = Pick<LatentModel, 'n' | 'eliminated' | 'factorStart' | 'columnStart' | 'coreSize'>;

function largestFactor(factors: readonly LatentFactor[]): number {
  let best = -1;
  factors.forEach((factor, g) => {
    if (factor.size > 0 && (best < 0 || factor.size > factors[best]!.size)) best = g;
  });
  return best;
}

function touchedLists(spec: LatentSpec, shape: Shape, blockSize: number): Int32Array[] {
  const sets = Array.from({ length: blockSize }, () => new Set<number>());
  if (shape.eliminated < 0) return [];
  const block = spec.factors[shape.eliminated]!.codes;
  for (let i = 0; i < shape.n; i += 1) {
    if (block[i]! < 0) continue;
    const set = sets[block[i]!]!;
    spec.factors.forEach((factor, g) => {
      const code = factor.codes[i]!;
      if (g !== shape.eliminated && code >= 0) set.add(shape.factorStart[g]! + code);
    });
  }
  const columns = spec.columns.map((_, c) => shape.columnStart + c);
  return sets.map((set) => Int32Array.from([...[...set].sort((a, b) => a - b), ...columns]));
}

function positions(spec: LatentSpec, shape: Shape, touched: readonly Int32Array[]): Int32Array {
  const width = spec.factors.length;
  const position = new Int32Array(shape.n * width).fill(-1);
  if (shape.eliminated < 0) return position;
  const block = spec.factors[shape.eliminated]!.codes;
  const where = touched.map((list) => new Map(Array.from(list, (core, k) => [core, k])));
  for (let i = 0; i < shape.n; i += 1) {
    if (block[i]! < 0) continue;
    spec.factors.forEach((factor, g) => {
      const code = factor.codes[i]!;
      if (g === shape.eliminated || code < 0) return;
      position[i * width + g] = where[block[i]!]!.get(shape.factorStart[g]! + code)!;
    });
  }
  return position;
}

type Entries = Pick<LatentModel, 'entryStart' | 'entryCore' | 'entryValue' | 'entryPlace'>;

/** Every row's entries that are not zero, once and for all: every evaluation runs through them. */
function entries(spec: LatentSpec, shape: Shape, touched: readonly Int32Array[]): Entries {
  const core: number[] = [];
  const value: number[] = [];
  const place: number[] = [];
  const entryStart = new Int32Array(shape.n + 1);
  const levels = shape.eliminated < 0 ? null : spec.factors[shape.eliminated]!.codes;
  const where = touched.map((list) => new Map(Array.from(list, (index, k) => [index, k])));
  for (let i = 0; i < shape.n; i += 1) {
    const places = levels === null || levels[i]! < 0 ? null : where[levels[i]!]!;
    const add = (index: number, x: number): void => {
      core.push(index);
      value.push(x);
      place.push(places?.get(index) ?? -1);
    };
    spec.factors.forEach(({ codes }, g) => {
      if (g !== shape.eliminated && codes[i]! >= 0) add(shape.factorStart[g]! + codes[i]!, 1);
    });
    spec.columns.forEach((column, c) => {
      if (column[i] !== 0) add(shape.columnStart + c, column[i]!);
    });
    entryStart[i + 1] = core.length;
  }
  return {
    entryStart,
    entryCore: Int32Array.from(core),
    entryValue: Float64Array.from(value),
    entryPlace: Int32Array.from(place),
  };
}

function barrenLevels(spec: LatentSpec): Uint8Array {
  if (spec.exclusive < 0) return new Uint8Array(0);
  const factor = spec.factors[spec.exclusive]!;
  const barren = new Uint8Array(factor.size).fill(1);
  for (let i = 0; i < factor.codes.length; i += 1) {
    if (factor.codes[i]! >= 0 && spec.successes[i]! > 0) barren[factor.codes[i]!] = 0;
  }
  return barren;
}
