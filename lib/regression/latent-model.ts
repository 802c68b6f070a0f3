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
  /** Place of each entry in `touchIndex`, under its row's eliminated level; −1 without. */
  readonly entryPlace: Int32Array;
  /** Where each eliminated level's core indices begin in `touchIndex`: blockSize + 1 places. */
  readonly touchStart: Int32Array;
  /** Core indices that each eliminated level touches, in ascending order, one level after the other. */
  readonly touchIndex: Int32Array;
  /** Place in `touchIndex` of each row's factor entries: n × factors, −1 where none. */
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
  const touched = touchedCores(spec, shape, blockSize);
  return {
    ...spec,
    ...shape,
    blockSize,
    ...touched,
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

type Touched = Pick<LatentModel, 'touchStart' | 'touchIndex'>;

/** Which core indices meet each eliminated level in a row: found as sorted numbers, level × coreSize + index. */
function touchedCores(spec: LatentSpec, shape: Shape, blockSize: number): Touched {
  const touchStart = new Int32Array(blockSize + 1);
  if (shape.eliminated < 0) return { touchStart, touchIndex: new Int32Array(0) };
  const { coreSize, columnStart } = shape;
  const levels = spec.factors[shape.eliminated]!.codes;
  const others = spec.factors.map((_, g) => g).filter((g) => g !== shape.eliminated);
  const keys = new Float64Array(shape.n * others.length + blockSize * spec.columns.length);
  let count = 0;
  for (let i = 0; i < shape.n; i += 1) {
    if (levels[i]! < 0) continue;
    for (const g of others) {
      const code = spec.factors[g]!.codes[i]!;
      if (code >= 0) keys[count++] = levels[i]! * coreSize + shape.factorStart[g]! + code;
    }
  }
  for (let a = 0; a < blockSize; a += 1) {
    for (let k = columnStart; k < coreSize; k += 1) keys[count++] = a * coreSize + k;
  }
  const sorted = keys.subarray(0, count).sort();
  const touchIndex = new Int32Array(count);
  let distinct = 0;
  for (let k = 0; k < count; k += 1) {
    if (k > 0 && sorted[k] === sorted[k - 1]) continue;
    const level = Math.floor(sorted[k]! / coreSize);
    touchIndex[distinct++] = sorted[k]! - level * coreSize;
    touchStart[level + 1] = distinct;
  }
  for (let a = 0; a < blockSize; a += 1) touchStart[a + 1] = Math.max(touchStart[a]!, touchStart[a + 1]!);
  return { touchStart, touchIndex: touchIndex.slice(0, distinct) };
}

/** Place of a core index under an eliminated level, by bisection; −1 where the level does not touch it. */
function placeOf({ touchStart, touchIndex }: Touched, level: number, core: number): number {
  let low = touchStart[level]!;
  let high = touchStart[level + 1]!;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (touchIndex[middle]! < core) low = middle + 1;
    else high = middle;
  }
  return low < touchStart[level + 1]! && touchIndex[low] === core ? low : -1;
}

function positions(spec: LatentSpec, shape: Shape, touched: Touched): Int32Array {
  const width = spec.factors.length;
  const position = new Int32Array(shape.n * width).fill(-1);
  if (shape.eliminated < 0) return position;
  const levels = spec.factors[shape.eliminated]!.codes;
  spec.factors.forEach(({ codes }, g) => {
    if (g === shape.eliminated) return;
    for (let i = 0; i < shape.n; i += 1) {
      if (levels[i]! < 0 || codes[i]! < 0) continue;
      position[i * width + g] = placeOf(touched, levels[i]!, shape.factorStart[g]! + codes[i]!);
    }
  });
  return position;
}

type Entries = Pick<LatentModel, 'entryStart' | 'entryCore' | 'entryValue' | 'entryPlace'>;

/** Every row's entries that are not zero, once and for all: every evaluation runs through them. */
function entries(spec: LatentSpec, shape: Shape, touched: Touched): Entries {
  const most = shape.n * (spec.factors.length + spec.columns.length);
  const core = new Int32Array(most);
  const value = new Float64Array(most);
  const place = new Int32Array(most);
  const entryStart = new Int32Array(shape.n + 1);
  const levels = shape.eliminated < 0 ? null : spec.factors[shape.eliminated]!.codes;
  let count = 0;
  for (let i = 0; i < shape.n; i += 1) {
    const level = levels === null ? -1 : levels[i]!;
    const add = (index: number, x: number): void => {
      core[count] = index;
      value[count] = x;
      place[count] = level < 0 ? -1 : placeOf(touched, level, index);
      count += 1;
    };
    spec.factors.forEach(({ codes }, g) => {
      if (g !== shape.eliminated && codes[i]! >= 0) add(shape.factorStart[g]! + codes[i]!, 1);
    });
    spec.columns.forEach((column, c) => {
      if (column[i] !== 0) add(shape.columnStart + c, column[i]!);
    });
    entryStart[i + 1] = count;
  }
  return {
    entryStart,
    entryCore: core.slice(0, count),
    entryValue: value.slice(0, count),
    entryPlace: place.slice(0, count),
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
