/** Unconstrained minimisation of a smooth function of a few variables. */

export interface Minimum {
  readonly x: Float64Array;
  readonly value: number;
  readonly iterations: number;
  readonly settled: boolean;
}

/** A function with its gradient at a point. */
export type Slope = (x: Float64Array) => { readonly value: number; readonly gradient: Float64Array };

export interface MinimiseOptions {
  /** Stops when the expected gain of a step falls below this. */
  readonly tolerance?: number;
  readonly maxIterations?: number;
  /** Longest step in any variable. */
  readonly maxStep?: number;
}

/**
 * Minimum by the BFGS quasi-Newton method with a backtracking line search.
 *
 * Source: Nocedal & Wright (2006), Numerical Optimization, algorithm 6.1 with the initial scaling (6.20) and the
 * sufficient decrease condition (3.4).
 *
 * @param slope value and gradient of the function
 * @param start where to begin; left as it is
 */
export function minimise(slope: Slope, start: Float64Array, options: MinimiseOptions = {}): Minimum {
  const { tolerance = 1e-10, maxIterations = 200, maxStep = 2 } = options;
  const n = start.length;
  let x: Float64Array = start.slice();
  let { value, gradient } = slope(x);
  const inverse = identity(n);
  let fresh = true;
  for (let iteration = 1; iteration <= maxIterations; iteration += 1) {
    const direction = descent(inverse, gradient, n, maxStep);
    const gain = -dot(direction, gradient);
    if (!(gain > tolerance)) return { x, value, iterations: iteration, settled: true };
    const moved = backtrack(slope, x, value, direction, gain);
    if (moved === null) {
      if (fresh) return { x, value, iterations: iteration, settled: gain < Math.sqrt(tolerance) };
      inverse.set(identity(n));
      fresh = true;
      continue;
    }
    updateInverse(inverse, n, moved.step, gradient, moved.gradient, fresh);
    fresh = false;
    ({ x, value, gradient } = moved);
  }
  return { x, value, iterations: maxIterations, settled: false };
}

/** Gradient by central differences: 2 n evaluations, error of order step². */
export function centralGradient(f: (x: Float64Array) => number, x: Float64Array, step: number): Float64Array {
  const gradient = new Float64Array(x.length);
  const at = x.slice();
  for (let k = 0; k < x.length; k += 1) {
    at[k] = x[k]! + step;
    const above = f(at);
    at[k] = x[k]! - step;
    gradient[k] = (above - f(at)) / (2 * step);
    at[k] = x[k]!;
  }
  return gradient;
}

/** Matrix of second derivatives by differences of the gradient, n × n, made symmetric. */
export function differenceHessian(
  gradientAt: (x: Float64Array) => Float64Array,
  x: Float64Array,
  step: number,
): Float64Array {
  const n = x.length;
  const hessian = new Float64Array(n * n);
  const at = x.slice();
  for (let k = 0; k < n; k += 1) {
    at[k] = x[k]! + step;
    const above = gradientAt(at);
    at[k] = x[k]! - step;
    const below = gradientAt(at);
    at[k] = x[k]!;
    for (let j = 0; j < n; j += 1) hessian[k * n + j] = (above[j]! - below[j]!) / (2 * step);
  }
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const mean = (hessian[i * n + j]! + hessian[j * n + i]!) / 2;
      hessian[i * n + j] = mean;
      hessian[j * n + i] = mean;
    }
  }
  return hessian;
}

function identity(n: number): Float64Array {
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) matrix[i * n + i] = 1;
  return matrix;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}

function descent(inverse: Float64Array, gradient: Float64Array, n: number, maxStep: number): Float64Array {
  const direction = new Float64Array(n);
  let longest = 0;
  for (let i = 0; i < n; i += 1) {
    let sum = 0;
    for (let j = 0; j < n; j += 1) sum -= inverse[i * n + j]! * gradient[j]!;
    direction[i] = sum;
    longest = Math.max(longest, Math.abs(sum));
  }
  if (longest > maxStep) for (let i = 0; i < n; i += 1) direction[i]! *= maxStep / longest;
  return direction;
}

interface Move {
  readonly x: Float64Array;
  readonly value: number;
  readonly gradient: Float64Array;
  readonly step: Float64Array;
}

function backtrack(
  slope: Slope,
  x: Float64Array,
  value: number,
  direction: Float64Array,
  gain: number,
): Move | null {
  for (let size = 1; size > 1e-8; size /= 2) {
    const step = direction.map((d) => d * size);
    const next = x.map((v, i) => v + step[i]!);
    const there = slope(next);
    if (there.value <= value - 1e-4 * size * gain) return { x: next, step, ...there };
  }
  return null;
}

/** The BFGS update of the inverse Hessian; skipped where the curvature along the step is not positive. */
function updateInverse(
  inverse: Float64Array,
  n: number,
  step: Float64Array,
  before: Float64Array,
  after: Float64Array,
  first: boolean,
): void {
  const change = after.map((g, i) => g - before[i]!);
  const curvature = dot(step, change);
  if (!(curvature > 1e-14)) return;
  if (first) {
    const scale = curvature / dot(change, change);
    for (let i = 0; i < n; i += 1) inverse[i * n + i] = scale;
  }
  const product = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) product[i]! += inverse[i * n + j]! * change[j]!;
  }
  const factor = (1 + dot(change, product) / curvature) / curvature;
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) {
      inverse[i * n + j]! +=
        factor * step[i]! * step[j]! - (product[i]! * step[j]! + step[i]! * product[j]!) / curvature;
    }
  }
}
