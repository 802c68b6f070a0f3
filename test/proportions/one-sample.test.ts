import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Interval, LevelOption } from '../../lib/proportions/interval.ts';
import {
  agrestiCoull,
  clopperPearson,
  jeffreys,
  midP,
  twoSidedZ,
  wilson,
} from '../../lib/proportions/one-sample.ts';
import { expectReference, type ReferenceCase, readCases } from '../regression/reference-cases.ts';

type Method = (x: number, n: number, options: LevelOption) => Interval;

/** The keys of the reference cases and what they mean here. */
const METHODS: Readonly<Record<string, Method>> = {
  wilson,
  wilson_cc: (x, n, options) => wilson(x, n, { ...options, continuity: true }),
  clopper_pearson: clopperPearson,
  agresti_coull_untruncated: (x, n, options) => agrestiCoull(x, n, { ...options, truncate: false }),
  agresti_coull_truncated: agrestiCoull,
  jeffreys_equal_tailed: (x, n, options) => jeffreys(x, n, { ...options, ends: 'equal-tailed' }),
  jeffreys_boundary: jeffreys,
  jeffreys_bcd_modified: (x, n, options) => jeffreys(x, n, { ...options, ends: 'brown-cai-dasgupta' }),
  mid_p: midP,
};

const cases = readCases('a_one_proportion.json');

function intervalOf(key: string, { input }: ReferenceCase): number[] {
  const { x, n, level } = input as { x: number; n: number; level: number };
  const { lower, upper } = METHODS[key]!(x, n, { level });
  return [lower, upper];
}

describe.each(Object.keys(METHODS))('interval of one proportion, %s', (key) => {
  it('has the reference ends', () => {
    const own = cases.filter(({ expected }) => key in expected);
    expect(own.length).toBeGreaterThan(40);
    for (const each of own) expectReference(each, key, intervalOf(key, each), each.expected[key]);
  });

  it('has the published ends, to half a unit of their last digit', () => {
    const own = cases.filter(({ expected }) => key in ((expected.published as object | undefined) ?? {}));
    for (const each of own) {
      const printed = (each.expected.published as Record<string, readonly number[]>)[key]!;
      const digits = Math.max(...printed.map((end) => (String(end).split('.')[1] ?? '').length));
      intervalOf(key, each).forEach((end, i) => {
        expect(Math.abs(end - printed[i]!), `${each.id} ${each.source}`).toBeLessThanOrEqual(
          0.5001 * 10 ** -digits,
        );
      });
    }
    // Newcombe (1998) prints four of the methods, Brown, Cai & DasGupta (2001) their modified one.
    const published = ['wilson', 'wilson_cc', 'clopper_pearson', 'mid_p', 'jeffreys_bcd_modified'];
    expect(own.length > 0).toBe(published.includes(key));
  });
});

const count = fc
  .integer({ min: 1, max: 400 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

const untruncated = 'agresti_coull_untruncated';

describe.each(Object.keys(METHODS))('any interval of one proportion, %s', (key) => {
  const method = METHODS[key]!;
  // Equal tails leave x / n outside at the boundary, where the others are forced to it.
  const holdsEstimate = !['jeffreys_equal_tailed'].includes(key);

  it('lies within 0 to 1 and holds its estimate', () => {
    fc.assert(
      fc.property(count, ([x, n]) => {
        const { estimate, lower, upper } = method(x, n, {});
        expect(estimate).toBe(x / n);
        expect(lower).toBeLessThan(upper);
        if (key !== untruncated) {
          expect(lower).toBeGreaterThanOrEqual(0);
          expect(upper).toBeLessThanOrEqual(1);
        }
        if (holdsEstimate) {
          expect(lower).toBeLessThanOrEqual(estimate);
          expect(upper).toBeGreaterThanOrEqual(estimate);
        }
      }),
    );
  });

  it('is nested: a higher level holds a lower one', () => {
    fc.assert(
      fc.property(count, fc.double({ min: 0.5, max: 0.99, noNaN: true }), ([x, n], level) => {
        // Untruncated, Agresti and Coull's lower end at x = 0 turns back: its centre moves with the level.
        fc.pre(key !== untruncated || (x > 0 && x < n));
        const [inner, outer] = [method(x, n, { level }), method(x, n, { level: level + 0.009 })];
        expect(outer.lower).toBeLessThanOrEqual(inner.lower);
        expect(outer.upper).toBeGreaterThanOrEqual(inner.upper);
      }),
    );
  });

  it('is symmetric: failures have the mirrored interval', () => {
    fc.assert(
      fc.property(count, ([x, n]) => {
        const [here, there] = [method(x, n, {}), method(n - x, n, {})];
        expect(here.lower).toBeCloseTo(1 - there.upper, 12);
        expect(here.upper).toBeCloseTo(1 - there.lower, 12);
      }),
    );
  });
});

describe('wilson', () => {
  it('is exact at the ends, also for a billion trials', () => {
    for (const n of [1, 2, 20, 1e6, 1e9]) {
      expect(wilson(0, n).lower).toBe(0);
      expect(wilson(n, n).upper).toBe(1);
      // z² / (n + z²) by hand from the quadratic at x = 0
      const z2 = twoSidedZ(0.95) ** 2;
      expect(Math.abs(wilson(0, n).upper / (z2 / (n + z2)) - 1)).toBeLessThan(1e-14);
    }
  });

  it('holds the roots of the score equation', () => {
    fc.assert(
      fc.property(count, ([x, n]) => {
        const z2 = twoSidedZ(0.95) ** 2;
        const { lower, upper } = wilson(x, n);
        for (const p of [lower, upper]) expect((x - n * p) ** 2 - z2 * n * p * (1 - p)).toBeCloseTo(0, 7);
      }),
    );
  });

  it('lies within the interval of Agresti and Coull', () => {
    fc.assert(
      fc.property(count, ([x, n]) => {
        const [score, adjusted] = [wilson(x, n), agrestiCoull(x, n, { truncate: false })];
        // Agresti & Coull (1998): same centre, wider
        expect(adjusted.lower).toBeLessThanOrEqual(score.lower + 1e-15);
        expect(adjusted.upper).toBeGreaterThanOrEqual(score.upper - 1e-15);
      }),
    );
  });
});

describe('clopperPearson', () => {
  it('has at 0 of n the exact one-sided bound, which the rule of three is near', () => {
    // Eypasch, Lefering, Kum & Troidl (1995) BMJ 311:619–620: 0 of n, 95 % upper bound about 3 / n; exact 1 − 0.05^(1/n)
    for (const n of [5, 30, 100, 1000]) {
      const exact = 1 - 0.05 ** (1 / n);
      expect(clopperPearson(0, n, { level: 0.9 }).upper).toBeCloseTo(exact, 13);
      if (n >= 30) expect(Math.abs(3 / n / exact - 1)).toBeLessThan(0.06);
      else expect(3 / n / exact).toBeGreaterThan(1.3);
    }
  });

  it('covers at least its level, whatever the true chance', () => {
    // Clopper & Pearson (1934): the definition, by enumeration over n = 12
    const n = 12;
    const ends = Array.from({ length: n + 1 }, (_, x) => clopperPearson(x, n));
    const choose = [1, 12, 66, 220, 495, 792, 924, 792, 495, 220, 66, 12, 1];
    for (let p = 0.01; p < 1; p += 0.01) {
      let covered = 0;
      for (let x = 0; x <= n; x += 1) {
        if (ends[x]!.lower <= p && p <= ends[x]!.upper) covered += choose[x]! * p ** x * (1 - p) ** (n - x);
      }
      expect(covered).toBeGreaterThanOrEqual(0.95);
    }
  });
});

describe('midP', () => {
  it('lies within the exact interval', () => {
    fc.assert(
      fc.property(count, ([x, n]) => {
        const [mid, exact] = [midP(x, n), clopperPearson(x, n)];
        expect(mid.lower).toBeGreaterThanOrEqual(exact.lower);
        expect(mid.upper).toBeLessThanOrEqual(exact.upper);
      }),
    );
  });

  it('keeps its digits at 0 of a million', () => {
    // (1 − p)^n / 2 = 0.025 (Newcombe 1998, method 6): p = 1 − 0.05^(1/n) = −expm1(log 0.05 / n)
    expect(Math.abs(midP(0, 1e6).upper / -Math.expm1(Math.log(0.05) / 1e6) - 1)).toBeLessThan(1e-11);
  });
});

describe('every interval of one proportion', () => {
  const methods = { wilson, clopperPearson, agrestiCoull, jeffreys, midP };
  it.each(Object.entries(methods))(
    '%s refuses counts that are none, and levels outside 0 to 1',
    (name, method) => {
      for (const [x, n] of [
        [-1, 5],
        [6, 5],
        [2.5, 5],
        [Number.NaN, 5],
        [0, 0],
        [1, -1],
        [1, 2.5],
      ] as const) {
        expect(() => method(x, n)).toThrow(RangeError);
      }
      expect(() => method(6, 5)).toThrow(
        `${name}: successes must be a whole number from 0 to trials (5), got 6`,
      );
      expect(() => method(0, 0)).toThrow(`${name}: trials must be a whole number of at least 1, got 0`);
      for (const level of [0, 1, -0.5, 95, Number.NaN]) {
        expect(() => method(1, 5, { level })).toThrow(`${name}: level must be a number between 0 and 1`);
      }
      expect(() => method('1' as unknown as number, 5)).toThrow(TypeError);
      expect(() => method(1, undefined as unknown as number)).toThrow(TypeError);
    },
  );

  it('refuses a treatment of the ends that has no name', () => {
    expect(() => jeffreys(1, 5, { ends: 'other' as 'boundary' })).toThrow(
      'jeffreys: ends must be one of boundary, equal-tailed, brown-cai-dasgupta, got "other"',
    );
  });
});
