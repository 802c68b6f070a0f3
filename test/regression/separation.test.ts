import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recessions, separatingColumns } from '../../lib/regression/separation.ts';

const f = (...values: number[]): Float64Array => Float64Array.from(values);
const ones = (n: number): Float64Array => new Float64Array(n).fill(1);

type Row = readonly [number, number, number];

/**
 * Slow, exact oracle for three columns of small whole numbers: the cone of separating directions is spanned by rays on
 * which two rows are tight (cross products of two rows), or, where it holds a line, by directions on which one or no
 * row is; all of these are tried, in whole numbers.
 */
function separates(rows: readonly Row[], outcomes: readonly number[]): boolean {
  const cross = ([a, b, c]: Row, [d, e, g]: Row): Row => [b * g - c * e, c * d - a * g, a * e - b * d];
  const units: readonly Row[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const all = [...rows, ...units];
  const rays = all.flatMap((first) => all.map((second) => cross(first, second)));
  return rays.some((ray) =>
    [1, -1].some((side) => {
      const products = rows.map((row, i) => {
        const eta = side * (row[0] * ray[0] + row[1] * ray[1] + row[2] * ray[2]);
        return outcomes[i] === 1 ? eta : -eta;
      });
      return products.every((value) => value >= 0) && products.some((value) => value > 0);
    }),
  );
}

describe('separatingColumns', () => {
  it('agrees with an exact search over rays in whole numbers', () => {
    const row = fc.tuple(fc.constant(1), fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }));
    const rows = fc.array(fc.tuple(row, fc.integer({ min: 0, max: 1 })), { minLength: 4, maxLength: 14 });
    let separatedOnes = 0;
    let others = 0;
    fc.assert(
      fc.property(rows, (drawn) => {
        const columns = [0, 1, 2].map((j) => f(...drawn.map(([values]) => values[j]!)));
        const determinant = drawn.some(([a]) =>
          drawn.some(([b]) =>
            drawn.some(([c]) => {
              const [p, q] = [
                [b[1] - a[1], b[2] - a[2]],
                [c[1] - a[1], c[2] - a[2]],
              ] as const;
              return p[0]! * q[1]! !== p[1]! * q[0]!;
            }),
          ),
        );
        fc.pre(determinant);
        const outcomes = drawn.map(([, y]) => y);
        const found = separatingColumns(columns, { successes: f(...outcomes), trials: ones(drawn.length) });
        const wanted = separates(
          drawn.map(([values]) => values as unknown as Row),
          outcomes,
        );
        if (wanted) separatedOnes += 1;
        else others += 1;
        expect(found.length > 0).toBe(wanted);
      }),
      { numRuns: 2000, seed: 7 },
    );
    expect(Math.min(separatedOnes, others)).toBeGreaterThan(100);
  });

  it('finds quasi-complete separation by one row among many', () => {
    // 4999 overlapping rows, and one kind tried once, without fruit.
    const n = 5000;
    const rare = new Float64Array(n);
    rare[n - 1] = 1;
    const x = Float64Array.from({ length: n }, (_, i) => (i * 37) % 101);
    const successes = Float64Array.from({ length: n }, (_, i) =>
      i === n - 1 ? 0 : (i * 7919) % 3 === 0 ? 1 : 0,
    );
    expect(separatingColumns([ones(n), x, rare], { successes, trials: ones(n) })).toEqual([2]);
  });

  it('names each of two fathers who never took', () => {
    const columns = [ones(6), f(0, 0, 1, 0, 0, 0), f(0, 0, 0, 1, 0, 0), f(0, 0, 0, 0, 1, 1)];
    const counts = { successes: f(3, 2, 0, 0, 4, 1), trials: f(5, 6, 4, 9, 8, 7) };
    expect(separatingColumns(columns, counts)).toEqual([1, 2]);
  });

  it('names the columns that separate only together', () => {
    // Fruit where a > b: neither alone separates.
    const columns = [f(3, 1, 2, 0, 2, 3), f(1, 0, 0, 1, 3, 4)];
    const counts = { successes: f(1, 1, 1, 0, 0, 0), trials: ones(6) };
    expect(separatingColumns(columns, counts)).toEqual([0, 1]);
  });

  it('does not mistake steepness for separation', () => {
    // One failure in a million above the threshold, one success in a million below.
    const columns = [ones(2), f(-1, 1)];
    const counts = { successes: f(1, 999999), trials: f(1e6, 1e6) };
    expect(separatingColumns(columns, counts)).toEqual([]);
  });
});

describe('recessions', () => {
  it('tells on which side each coefficient runs away', () => {
    // 0 of 9 fresh, 5 of 11 stored: log odds of fresh fall, the difference rises.
    const counts = { successes: f(0, 5), trials: f(9, 11) };
    expect(recessions([ones(2), f(0, 1)], counts)).toEqual([
      { up: false, down: true },
      { up: true, down: false },
    ]);
  });

  it('is open on both sides where nothing is left to tell a column', () => {
    const counts = { successes: f(0, 0), trials: f(9, 11) };
    expect(recessions([ones(2), f(0, 1)], counts)).toEqual([
      { up: false, down: true },
      { up: true, down: true },
    ]);
  });

  it('is closed where every row has both outcomes', () => {
    const counts = { successes: f(1, 5), trials: f(9, 11) };
    expect(recessions([ones(2), f(0, 1)], counts)).toEqual([
      { up: false, down: false },
      { up: false, down: false },
    ]);
  });
});
