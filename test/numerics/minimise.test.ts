import { describe, expect, it } from 'vitest';
import type { Slope } from '../../lib/numerics/minimise.ts';
import { centralGradient, differenceHessian, minimise } from '../../lib/numerics/minimise.ts';

/** Rosenbrock's valley: minimum 0 at (1, 1) (Moré, Garbow & Hillstrom 1981, ACM TOMS 7:17–41, problem 1). */
const rosenbrock: Slope = ([x, y]) => ({
  value: (1 - x!) ** 2 + 100 * (y! - x! * x!) ** 2,
  gradient: Float64Array.of(-2 * (1 - x!) - 400 * x! * (y! - x! * x!), 200 * (y! - x! * x!)),
});

/** Powell's singular function: minimum 0 at 0, where its Hessian is singular (the same, problem 13). */
const powell: Slope = ([a, b, c, d]) => {
  const [e, f, g, h] = [a! + 10 * b!, c! - d!, b! - 2 * c!, a! - d!];
  return {
    value: e * e + 5 * f * f + g ** 4 + 10 * h ** 4,
    gradient: Float64Array.of(
      2 * e + 40 * h ** 3,
      20 * e + 4 * g ** 3,
      10 * f - 8 * g ** 3,
      -10 * f - 40 * h ** 3,
    ),
  };
};

describe('minimise', () => {
  it('follows a curved valley to its end from the standard start', () => {
    const { x, value, settled } = minimise(rosenbrock, Float64Array.of(-1.2, 1), { tolerance: 1e-14 });
    expect(settled).toBe(true);
    expect(x[0]).toBeCloseTo(1, 5);
    expect(x[1]).toBeCloseTo(1, 5);
    expect(value).toBeLessThan(1e-12);
  });

  it('comes to the minimum of a function whose curvature vanishes there', () => {
    const { value, settled } = minimise(powell, Float64Array.of(3, -1, 0, 1), { tolerance: 1e-14 });
    expect(settled).toBe(true);
    expect(value).toBeLessThan(1e-8);
  });

  it('finds the minimum of a quadratic of very unequal curvatures', () => {
    // 1/2 (x − 3)² + 500 (y + 2)²: minimum at (3, −2) by sight.
    const slope: Slope = ([x, y]) => ({
      value: (x! - 3) ** 2 / 2 + 500 * (y! + 2) ** 2,
      gradient: Float64Array.of(x! - 3, 1000 * (y! + 2)),
    });
    const { x } = minimise(slope, Float64Array.of(0, 0));
    expect(x[0]).toBeCloseTo(3, 4);
    expect(x[1]).toBeCloseTo(-2, 4);
  });

  it('leaves the start as it is, and stops there where it is the minimum', () => {
    const start = Float64Array.of(1, 1);
    const found = minimise(rosenbrock, start);
    expect(found.iterations).toBe(1);
    expect(found.x).toEqual(start);
    expect(found.x).not.toBe(start);
  });

  it('says that it has not settled where it may not go on', () => {
    expect(minimise(rosenbrock, Float64Array.of(-1.2, 1), { maxIterations: 3 }).settled).toBe(false);
  });

  it('does not settle on a slope that does not belong to its function', () => {
    const wrong: Slope = ([x]) => ({ value: x! * x!, gradient: Float64Array.of(-2 * x!) });
    expect(minimise(wrong, Float64Array.of(1)).settled).toBe(false);
  });

  it('never steps further than it may', () => {
    const seen: number[] = [];
    const slope: Slope = ([x]) => {
      seen.push(x!);
      return { value: x! * x! * x! * x!, gradient: Float64Array.of(4 * x! ** 3) };
    };
    minimise(slope, Float64Array.of(10), { maxStep: 0.5, maxIterations: 8 });
    for (let k = 1; k < seen.length; k += 1)
      expect(Math.abs(seen[k]! - seen[k - 1]!)).toBeLessThanOrEqual(0.5);
    expect(seen.length).toBeGreaterThan(5);
  });
});

describe('finite differences', () => {
  const cubic = ([x, y]: Float64Array): number => x! ** 3 + 2 * x! * y! ** 2;

  it('gives the gradient to the square of the step', () => {
    // At (1, 2): 3 x² + 2 y² = 11 and 4 x y = 8; the error of the first is step² times x³'s third derivative ÷ 6 = step².
    const gradient = centralGradient(cubic, Float64Array.of(1, 2), 1e-3);
    expect(gradient[0]).toBeCloseTo(11 + 1e-6, 9);
    expect(gradient[1]).toBeCloseTo(8, 9);
  });

  it('gives a symmetric matrix of second derivatives', () => {
    // At (1, 2): 6 x = 6, 4 y = 8, 4 x = 4; exact, since the gradient is quadratic.
    const gradientAt = ([x, y]: Float64Array) => Float64Array.of(3 * x! * x! + 2 * y! * y!, 4 * x! * y!);
    const hessian = differenceHessian(gradientAt, Float64Array.of(1, 2), 0.125);
    expect(Array.from(hessian)).toEqual([6, 8, 8, 4]);
  });

  it('leaves the point as it is', () => {
    const x = Float64Array.of(1, 2);
    centralGradient(cubic, x, 0.1);
    differenceHessian((at) => at.slice(), x, 0.1);
    expect(Array.from(x)).toEqual([1, 2]);
  });
});
