import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findIncreasingRoot, findRoot } from '../../lib/numerics/find-root.ts';

describe('findRoot', () => {
  it("finds the root of Wallis's cubic", () => {
    // Wallis (1685), x³ − 2x − 5 = 0: 2.0945514815 4232659148 (Whittaker & Robinson 1924, section 43)
    expect(findRoot((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 14);
  });

  it('needs few evaluations for a smooth function', () => {
    let calls = 0;
    findRoot(
      (x) => {
        calls += 1;
        return Math.exp(x) - 2;
      },
      -10,
      10,
    );
    // Chandrupatla (1997) needs about a quarter of the steps of bisection, which takes 56 here
    expect(calls).toBeLessThan(20);
  });

  it('finds a root between infinite values', () => {
    expect(findRoot((x) => 1 / x - 1 / (1 - x), 0, 1)).toBeCloseTo(0.5, 15);
    expect(findRoot((x) => 3 / x - 1 / (1 - x), 0, 1)).toBeCloseTo(0.75, 15);
  });

  it('takes ends in either order, and an end that is the root', () => {
    expect(findRoot((x) => x - 1, 3, 0)).toBe(1);
    expect(findRoot((x) => x - 1, 1, 3)).toBe(1);
    expect(findRoot((x) => x - 3, 1, 3)).toBe(3);
  });

  it('finds any root of a monotone function, flat or steep', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.constantFrom(1, 3, 9), (root, power) => {
        const found = findRoot((x) => (x - root) ** power, -7, 6);
        expect(Math.abs(found - root)).toBeLessThan(1e-12);
      }),
    );
  });

  it('stops early where a tolerance allows it', () => {
    const found = findRoot((x) => Math.cos(x), 1, 2, { tolerance: 1e-3 });
    expect(Math.abs(found - Math.PI / 2)).toBeLessThan(2e-3);
  });

  it('refuses ends of one sign, ends that are not finite, and a function that is not a number there', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(
      'findRoot: f must have opposite signs at lower and upper, got 2 at -1 and 2 at 1',
    );
    expect(() => findRoot((x) => x, -Infinity, 1)).toThrow(
      'findRoot: lower must be a finite number, got -Infinity',
    );
    expect(() => findRoot((x) => Math.sqrt(x), -1, 1)).toThrow(RangeError);
    expect(() => findRoot((x) => x, -1, 1, { tolerance: 0 })).toThrow('tolerance');
  });
});

describe('findIncreasingRoot', () => {
  it('finds the root from a start far away on either side', () => {
    for (const start of [-300, -1, 0, 5, 300]) {
      const found = findIncreasingRoot((x) => [Math.exp(x) - 3, Math.exp(x)], start);
      expect(found).toBeCloseTo(1.0986122886681098, 14); // log 3
    }
  });

  it('survives a function that is minus infinity on one side', () => {
    const found = findIncreasingRoot((x) => (x <= 0 ? [-Infinity, 0] : [Math.log(x), 1 / x]), -4);
    expect(found).toBeCloseTo(1, 14);
  });

  it('survives slopes that send Newton astray', () => {
    // x / √(1 + x²): Newton diverges from any |x| above 1
    const found = findIncreasingRoot((x) => [x / Math.hypot(1, x), Math.hypot(1, x) ** -3], 50);
    expect(Math.abs(found)).toBeLessThan(1e-15);
  });

  it('refuses a start that is not finite', () => {
    expect(() => findIncreasingRoot((x) => [x, 1], Number.NaN)).toThrow(
      'findIncreasingRoot: start must be a finite number, got NaN',
    );
  });
});
