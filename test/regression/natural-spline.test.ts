import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullKnots, naturalSpline } from '../../lib/regression/natural-spline.ts';

// test/reference/design-columns.json: R 4.2.2, splines::ns, by scripts/reference/design-columns.R.
const reference = JSON.parse(
  readFileSync(new URL('../reference/design-columns.json', import.meta.url), 'utf8'),
) as {
  x: number[];
  tolerance: { columns: number };
  splines: { knots: number[]; boundary: [number, number]; columns: number[][] }[];
};

describe('naturalSpline', () => {
  it.each(reference.splines.map((spline) => [spline.knots.join(', ') || 'no knot', spline] as const))(
    "makes the columns of R's splines::ns with knots at %s, outside the boundary too",
    (_, { knots, boundary, columns }) => {
      const made = naturalSpline(reference.x, { knots, boundary });
      expect(made.length).toBe(columns.length);
      made.forEach((column, k) => {
        column.forEach((value, i) => {
          const wanted = columns[k]![i]!;
          expect(Math.abs(value - wanted), `column ${k + 1}, x = ${reference.x[i]}`).toBeLessThanOrEqual(
            reference.tolerance.columns * Math.max(1, Math.abs(wanted)),
          );
        });
      });
    },
  );

  it('takes the extremes of the values as boundary where none is stated', () => {
    expect(naturalSpline([3, 1, 9], { knots: [4] })).toEqual(
      naturalSpline([3, 1, 9], { knots: [4], boundary: [1, 9] }),
    );
  });

  it('has second differences of 0 outside the boundary and none that jump inside', () => {
    // The definition of a natural cubic spline, checked on differences: h² f'' with h = 0.01.
    const h = 0.01;
    fc.assert(
      fc.property(fc.double({ min: -3, max: 6, noNaN: true }), (x) => {
        for (const [a, b, c] of naturalSpline([x - h, x, x + h], { knots: [1, 2], boundary: [0, 3] }).map(
          (column) => [...column],
        )) {
          const bend = (a! - 2 * b! + c!) / (h * h);
          expect(Math.abs(bend)).toBeLessThan(x < -h || x > 3 + h ? 1e-9 : 5);
          // f'' is piecewise linear and continuous: within h of a boundary it is still small.
          if (Math.abs(x) < h || Math.abs(x - 3) < h) expect(Math.abs(bend)).toBeLessThan(0.1);
        }
      }),
    );
  });

  it('says what is wrong with knots, boundary and values', () => {
    expect(() => naturalSpline([0, 9], { knots: [5, 4] })).toThrow(
      'naturalSpline: knots of the spline must increase strictly between 0 and 9, got 5, 4',
    );
    expect(() => naturalSpline([0, 9], { knots: [9] })).toThrow('got 9');
    expect(() => naturalSpline([0, 9], { knots: [Number.NaN] })).toThrow('got NaN');
    expect(() => naturalSpline([2, 2], { knots: [] })).toThrow(
      'naturalSpline: boundary of the spline must be two finite numbers in increasing order, got 2 and 2',
    );
    expect(() => naturalSpline([], { knots: [] })).toThrow('got Infinity and -Infinity');
    expect(() => naturalSpline([1, Number.NaN], { knots: [], boundary: [0, 1] })).toThrow(
      'naturalSpline: value 2 must be a finite number, got NaN',
    );
  });
});

describe('fullKnots', () => {
  it('names the function and the variable', () => {
    expect(() => fullKnots('designColumns', 'variable age', [1, 2], { knots: [3] })).toThrow(
      'designColumns: knots of variable age must increase strictly between 1 and 2, got 3',
    );
  });
});
