import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DesignSpec } from '../../lib/regression/design.ts';
import type { Fit, Link } from '../../lib/regression/fit.ts';
import { collinearColumns, logistic } from '../../lib/regression/logistic.ts';
import {
  byTerm,
  expectReference,
  formulaDesign,
  type Levels,
  readCases,
  readTable,
} from './reference-cases.ts';

describe('logistic by maximum likelihood', () => {
  // test/reference/c_glm.json: R 4.2.2 glm polished, agreeing with a 50-digit Newton iteration.
  for (const reference of readCases('c_glm.json')) {
    it(`agrees with R's glm on ${reference.id}`, () => {
      const { input, expected } = reference;
      const { formula, levels } = input.design as { formula: string; levels: Levels };
      const link = input.link as Link;
      const fit = logistic(formulaDesign(readTable(input.data as string), formula, levels), { link });
      const p = fit.terms.length;
      expect(fit.convergence.settled).toBe(true);
      expect(fit.separated).toBe(false);
      expectReference(
        reference,
        'coefficients',
        byTerm(fit.terms, (t) => t.estimate),
        expected.coefficients,
      );
      expectReference(
        reference,
        'se',
        byTerm(fit.terms, (t) => t.se),
        expected.se,
      );
      const rows = fit.terms.map((_, j) => [...fit.covariance.slice(j * p, (j + 1) * p)]);
      expectReference(reference, 'vcov', rows, expected.vcov);
      expectReference(reference, 'loglik', fit.logLik, expected.loglik);
      expectReference(reference, 'deviance', fit.deviance, expected.deviance);
      expectReference(reference, 'fitted_first10', fit.fitted, expected.fitted_first10);
    });
  }
});

describe("logistic with Firth's penalty", () => {
  // test/reference/d_firth.json: own R code, brglm2 and logistf 1.26.1 agreeing to 1e-13.
  const separating = new Map([
    ['d-endometrial', ['NV']],
    ['d-endometrial-NV', ['NV']],
    ['d-lizards', []],
    ['d-2x2-0-9-5-6', ['groupb']],
    ['d-2x2-0-4-4-0', ['groupb']],
    ['d-2x2-3-0-2-5', ['groupb']],
    ['d-2x2-0-1-1-0', ['groupb']],
    ['d-2x2-0-9-0-7', ['(Intercept)']],
    ['d-season-separated-father', ['fatherF']],
    ['d-birthwt', []],
    ['d-perfect-continuous', ['x']],
    ['d-all-zero-9', ['(Intercept)']],
  ]);
  for (const reference of readCases('d_firth.json')) {
    it(`agrees with brglm2 and logistf on ${reference.id}, and names what separates`, () => {
      const { input, expected } = reference;
      const { levels } = input.design as { levels: Levels };
      const design = formulaDesign(readTable(input.data as string), input.formula as string, levels);
      const fit = logistic(design, { method: 'firth' });
      expect(fit.convergence.settled).toBe(true);
      expectReference(
        reference,
        'coefficients',
        byTerm(fit.terms, (t) => t.estimate),
        expected.coefficients,
      );
      expectReference(
        reference,
        'se',
        byTerm(fit.terms, (t) => t.se),
        expected.se,
      );
      expectReference(reference, 'penalized_loglik', fit.penalisedLogLik, expected.penalized_loglik);
      expectReference(reference, 'fitted_first10', fit.fitted, expected.fitted_first10);
      // Read off the tables by hand: the cells that hold one outcome only.
      expect(fit.separatedBy).toEqual(separating.get(reference.id));
      expect(fit.separated).toBe(fit.separatedBy.length > 0);
    });
  }
});

/** Slow oracle: log-likelihood written out, climbed by Newton steps from numerical derivatives. */
function slowLogistic(
  y: readonly number[],
  m: readonly number[],
  x: readonly number[],
): readonly [number, number] {
  const logLik = (a: number, b: number) =>
    y.reduce((sum, successes, i) => {
      const eta = a + b * x[i]!;
      return sum + successes * eta - m[i]! * Math.log(1 + Math.exp(eta));
    }, 0);
  let [a, b] = [0, 0];
  const h = 1e-4;
  for (let step = 0; step < 60; step += 1) {
    const f = (i: number, j: number) => logLik(a + i * h, b + j * h);
    const [ga, gb] = [(f(1, 0) - f(-1, 0)) / (2 * h), (f(0, 1) - f(0, -1)) / (2 * h)];
    const [aa, bb] = [
      (f(1, 0) - 2 * f(0, 0) + f(-1, 0)) / h ** 2,
      (f(0, 1) - 2 * f(0, 0) + f(0, -1)) / h ** 2,
    ];
    const ab = (f(1, 1) - f(1, -1) - f(-1, 1) + f(-1, -1)) / (4 * h ** 2);
    const determinant = aa * bb - ab * ab;
    const [da, db] = [(-bb * ga + ab * gb) / determinant, (-aa * gb + ab * ga) / determinant];
    const damping = Math.min(1, 1 / Math.max(Math.abs(da), Math.abs(db)));
    a += damping * da;
    b += damping * db;
  }
  return [a, b];
}

/** Three kinds of flowers and an age, with both outcomes in each kind. */
const seasons = fc
  .tuple(
    fc.array(fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 })), {
      minLength: 5,
      maxLength: 8,
    }),
    fc.infiniteStream(fc.integer({ min: 0, max: 9 })),
  )
  .map(([counts, ages]) => ({
    successes: counts.map(([fruits]) => fruits),
    trials: counts.map(([fruits, failures]) => fruits + failures),
    kind: counts.map((_, i) => i % 3),
    age: counts.map((_, i) => ages.next().value + i / 10),
  }));

type Season = typeof seasons extends fc.Arbitrary<infer T> ? T : never;

function specOf({ successes, trials, kind, age }: Season, reference = 0): DesignSpec {
  const kinds = [0, 1, 2].filter((level) => level !== reference);
  const columns = new Map(kinds.map((level) => [`kind${level}`, kind.map((k) => (k === level ? 1 : 0))]));
  return { successes, trials, columns: columns.set('age', age) };
}

function expectSameFit(a: Fit, b: Fit): void {
  a.terms.forEach(({ term, estimate, se }) => {
    const other = b.terms.find((candidate) => candidate.term === term)!;
    expect(other.estimate).toBeCloseTo(estimate, 7);
    expect(other.se).toBeCloseTo(se, 7);
  });
}

describe('logistic, by either method', () => {
  const methods = ['maximum-likelihood', 'firth'] as const;

  it('agrees with Newton steps from numerical derivatives', () => {
    fc.assert(
      fc.property(seasons, ({ successes, trials, age }) => {
        const fit = logistic({ successes, trials, columns: { age } });
        const slow = slowLogistic(successes, trials, age);
        expect(fit.coefficients[0]).toBeCloseTo(slow[0], 4);
        expect(fit.coefficients[1]).toBeCloseTo(slow[1], 4);
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  it('does not depend on the order of rows or on joining and splitting them', () => {
    fc.assert(
      fc.property(seasons, fc.constantFrom(...methods), (season, method) => {
        const whole = logistic(specOf(season), { method });
        const flip = <T>(values: readonly T[]): T[] => [...values].reverse();
        const turned: Season = {
          successes: flip(season.successes),
          trials: flip(season.trials),
          kind: flip(season.kind),
          age: flip(season.age),
        };
        expectSameFit(whole, logistic(specOf(turned), { method }));
        const twice = <T>(values: readonly T[]): T[] => [...values, ...values];
        const split: Season = {
          successes: [...season.successes, ...season.successes.map(() => 0)],
          trials: [...season.successes, ...season.trials.map((m, i) => m - season.successes[i]!)],
          kind: twice(season.kind),
          age: twice(season.age),
        };
        expectSameFit(whole, logistic(specOf(split), { method }));
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  it('gives the same probabilities whichever kind is the reference, and mirrors fruit and no fruit', () => {
    fc.assert(
      fc.property(seasons, fc.constantFrom(...methods), (season, method) => {
        const fit = logistic(specOf(season), { method });
        const recoded = logistic(specOf(season, 2), { method });
        fit.fitted.forEach((value, i) => {
          expect(recoded.fitted[i]).toBeCloseTo(value, 8);
        });
        expect(recoded.logLik).toBeCloseTo(fit.logLik, 8);
        const failures = season.trials.map((m, i) => m - season.successes[i]!);
        const mirrored = logistic(specOf({ ...season, successes: failures }), { method });
        mirrored.terms.forEach(({ estimate, se }, j) => {
          expect(estimate).toBeCloseTo(-fit.terms[j]!.estimate, 7);
          expect(se).toBeCloseTo(fit.terms[j]!.se, 7);
        });
      }),
      { numRuns: 60, seed: 8 },
    );
  });

  it('takes a known part of the linear predictor', () => {
    // Exact: with offset 1 in every row the intercept is logit(0.3) - 1.
    const fit = logistic({ successes: [3], trials: [10], columns: {}, offset: [1] });
    expect(fit.coefficients[0]).toBeCloseTo(Math.log(3 / 7) - 1, 12);
  });

  it('keeps its digits for columns far from zero, such as years', () => {
    const years = [2021, 2022, 2023, 2024];
    const spec = { successes: [3, 5, 4, 8], trials: [10, 10, 10, 10] };
    const near = logistic({ ...spec, columns: { year: years.map((year) => year - 2021) } });
    const far = logistic({ ...spec, columns: { year: years.map((year) => 1e6 * year) } });
    expect(far.coefficients[1]! * 1e6).toBeCloseTo(near.coefficients[1]!, 9);
    expect(far.terms[1]!.se * 1e6).toBeCloseTo(near.terms[1]!.se, 9);
    expect(far.logLik).toBeCloseTo(near.logLik, 10);
  });
});

describe('logistic under separation', () => {
  it('says that nothing may be shown, and gives the supremum of the likelihood', () => {
    const fit = logistic({ successes: [0, 9], trials: [9, 9], columns: { stored: [1, 0] } });
    expect(fit).toMatchObject({ separated: true, separatedBy: ['stored'] });
    expect(fit.convergence).toMatchObject({ settled: false, reason: 'separated' });
    expect(fit.logLik).toBeCloseTo(0, 8);
    for (const link of ['probit', 'cloglog'] as const) {
      const other = logistic({ successes: [0, 9], trials: [9, 9], columns: { stored: [1, 0] } }, { link });
      expect(other.separatedBy).toEqual(['stored']);
      expect(other.convergence.settled).toBe(false);
    }
  });

  it('names the intercept of a constant outcome', () => {
    for (const successes of [
      [0, 0, 0],
      [1, 1, 1],
    ]) {
      expect(logistic({ successes, columns: { age: [1, 2, 4] } }).separatedBy).toEqual(['(Intercept)']);
    }
  });
});

describe('logistic given what it cannot use', () => {
  const spec = { successes: [1, 0, 1, 0], columns: { age: [1, 2, 3, 4] } };

  it('names the column that is a linear combination of others', () => {
    const columns = { fresh: [1, 0, 1, 0], stored: [0, 1, 0, 1], age: [1, 2, 3, 4] };
    expect(() => logistic({ ...spec, columns })).toThrow(
      /linear combinations of one another, got stored, which follows from \(Intercept\), fresh/,
    );
    expect(() => logistic({ ...spec, columns: { age: [0, 0, 0, 0] } })).toThrow(
      /got age, which is zero in every row/,
    );
    expect(collinearColumns({ ...spec, columns: { ...columns, twice: [2, 4, 6, 8] } })).toEqual([
      'stored',
      'twice',
    ]);
    expect(collinearColumns(spec)).toEqual([]);
  });

  it('refuses no columns and more columns than rows', () => {
    expect(() => logistic({ ...spec, columns: {}, intercept: false })).toThrow(RangeError);
    expect(() => logistic({ successes: [1, 0], columns: { a: [1, 2], b: [0, 1] } })).toThrow(
      /must not outnumber/,
    );
  });

  it('refuses counts that are none, other lengths, and numbers that are not finite', () => {
    const wrong: readonly DesignSpec[] = [
      { successes: [], columns: {} },
      { ...spec, successes: [1, 0, 2, 0] },
      { ...spec, successes: [1, 0, -1, 0] },
      { ...spec, successes: [1, 0, 0.5, 0] },
      { ...spec, successes: [1, 0, Number.NaN, 0] },
      { ...spec, trials: [1, 1, 1, 0] },
      { ...spec, trials: [1, 1, 1] },
      { ...spec, trials: [1, 1, 1.5, 1] },
      { ...spec, columns: { age: [1, 2, 3] } },
      { ...spec, columns: { age: [1, 2, 3, Number.POSITIVE_INFINITY] } },
      { ...spec, columns: { age: [1, 2, 3, Number.NaN] } },
      { ...spec, offset: [0, 0, 0, Number.NaN] },
      { ...spec, offset: [0] },
    ];
    for (const design of wrong) expect(() => logistic(design)).toThrow(RangeError);
  });

  it('explains why Firth is for the logit only, and refuses unknown choices', () => {
    expect(() => logistic(spec, { method: 'firth', link: 'probit' })).toThrow(
      /two different methods, got probit/,
    );
    expect(() => logistic(spec, { link: 'cauchit' as Link })).toThrow(RangeError);
    expect(() => logistic(spec, { method: 'ridge' as 'firth' })).toThrow(RangeError);
  });
});
