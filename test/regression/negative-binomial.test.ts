import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { digamma, logGamma } from '../../lib/numerics/special-functions.ts';
import type { CountSpec } from '../../lib/regression/count-design.ts';
import { negativeBinomial } from '../../lib/regression/negative-binomial.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import { byTerm, expectReference, type Levels, numbers, readCases, readTable } from './reference-cases.ts';
import { namedColumns, seasonSeeds } from './reference-counts.ts';

const RESPONSES: Readonly<Record<string, string>> = { 'g_quine.csv': 'Days', 'g_seeds120.csv': 'seeds' };
const counted = readCases('g_counts.json').filter(({ expected }) => 'lr_poisson_vs_nb' in expected);
const seasons = readCases('k_seasons.json').filter(({ id }) => id.endsWith('-seeds-nb'));

const estimates = (fit: ReturnType<typeof negativeBinomial>) => byTerm(fit.terms, (t) => t.estimate);
const errors = (fit: ReturnType<typeof negativeBinomial>) => byTerm(fit.terms, (t) => t.se);

describe('negativeBinomial', () => {
  // test/reference/g_counts.json: R 4.2.2, MASS glm.nb and glmmTMB nbinom2 agreeing, polished.
  it.each(counted.map((reference) => [reference.id, reference] as const))(
    'agrees with R on %s',
    (_, reference) => {
      const { input, expected } = reference;
      const file = input.data as string;
      const table = readTable(file);
      const { columns, levels } = input.design as { columns: string[]; levels: Levels };
      const fit = negativeBinomial({
        counts: numbers(table, RESPONSES[file]!),
        columns: namedColumns(table, columns, levels),
      });
      const p = fit.terms.length;
      const joint = fit.terms.map(
        ({ term }, j) => [term, Math.sqrt(fit.jointCovariance![j * (p + 2)]!)] as const,
      );
      expect(fit.convergence.settled).toBe(true);
      expect([...estimates(fit).keys()]).toEqual(columns);
      for (const [key, value] of Object.entries({
        coefficients: estimates(fit),
        se: errors(fit),
        se_joint: new Map(joint),
        theta: fit.theta.estimate,
        se_theta_given_beta: fit.theta.seGivenMeans,
        se_theta_joint: fit.theta.se,
        loglik: fit.logLik,
        deviance: fit.deviance,
        aic: 2 * fit.df - 2 * fit.logLik!,
        pearson_chisq: fit.pearson,
        poisson_loglik: fit.poissonLogLik,
        lr_poisson_vs_nb: fit.overdispersion.statistic,
        p_lr_half_chisq1: fit.overdispersion.p,
      })) {
        expectReference(reference, key, value, expected[key]);
      }
    },
  );

  it('has the values that Venables and Ripley print for the quine data', () => {
    // Modern Applied Statistics with S (2002), section 7.4 and ?glm.nb: theta 1.275 (0.161); 1.598 (0.213), −1063.025.
    const [main, nested] = counted.slice(0, 2).map(({ input }) => {
      const { columns, levels } = input.design as { columns: string[]; levels: Levels };
      const table = readTable('g_quine.csv');
      return negativeBinomial({
        counts: numbers(table, 'Days'),
        columns: namedColumns(table, columns, levels),
      });
    });
    expect([main!.theta.estimate!.toFixed(3), main!.theta.seGivenMeans!.toFixed(3)]).toEqual([
      '1.275',
      '0.161',
    ]);
    expect([nested!.theta.estimate!.toFixed(3), nested!.theta.seGivenMeans!.toFixed(3)]).toEqual([
      '1.598',
      '0.213',
    ]);
    expect((2 * nested!.logLik!).toFixed(3)).toBe('-1063.025');
  });

  // test/reference/k_seasons.json: R 4.2.2, MASS glm.nb.
  it.each(seasons.map((reference) => [reference.id, reference] as const))(
    'agrees with R on the seeds of a whole season, %s',
    (_, reference) => {
      const fit = negativeBinomial(seasonSeeds(readTable(reference.input.data as string)));
      const { expected } = reference;
      expect(fit.design.n).toBe(expected.n);
      expectReference(reference, 'coefficients', estimates(fit), expected.coefficients);
      expectReference(reference, 'se', errors(fit), expected.se);
      expectReference(reference, 'theta', fit.theta.estimate, expected.theta);
      expectReference(reference, 'loglik', fit.logLik, expected.loglik);
    },
  );

  const counts = [12, 40, 3, 22, 9, 31, 0, 55];
  const stored = [1, 0, 1, 0, 1, 0, 1, 0];

  it('solves its own equations where there is only an intercept', () => {
    // Johnson, Kemp & Kotz (2005) 5.8.3: the mean is the sample mean, and Σ digamma(y + θ) − digamma(θ) = n log(1 + ȳ / θ).
    const { theta, coefficients } = negativeBinomial({ counts, columns: {} });
    const mean = 172 / 8;
    expect(Math.exp(coefficients![0]!)).toBeCloseTo(mean, 10);
    const left = counts.reduce((sum, y) => sum + digamma(y + theta.estimate!) - digamma(theta.estimate!), 0);
    expect(left).toBeCloseTo(8 * Math.log1p(mean / theta.estimate!), 10);
  });

  it('has the log-likelihood of the definition, which no neighbour exceeds, and its curvature as information', () => {
    const fit = negativeBinomial({ counts, columns: { stored } });
    const logLik = ([b0, b1, logTheta]: readonly number[]) => {
      const theta = Math.exp(logTheta!);
      return counts.reduce((sum, y, i) => {
        const mu = Math.exp(b0! + b1! * stored[i]!);
        const gammas = logGamma(y + theta) - logGamma(theta) - logGamma(y + 1);
        return sum + gammas + theta * Math.log(theta / (theta + mu)) + y * Math.log(mu / (theta + mu));
      }, 0);
    };
    const top = [...fit.coefficients!, Math.log(fit.theta.estimate!)];
    const moved = (...steps: readonly (readonly [place: number, step: number])[]) => {
      const point = [...top];
      for (const [place, step] of steps) point[place]! += step;
      return logLik(point);
    };
    expect(fit.logLik).toBeCloseTo(logLik(top), 11);
    const h = 1e-3;
    const information = top.map((_, j) =>
      top.map((_, k) => {
        const cross = (a: number, b: number) => moved([j, a * h], [k, b * h]);
        return -(cross(1, 1) - cross(1, -1) - cross(-1, 1) + cross(-1, -1)) / (4 * h * h);
      }),
    );
    // Information times covariance is the identity.
    information.forEach((row, j) => {
      for (let k = 0; k < 3; k += 1) {
        const product = row.reduce((sum, value, l) => sum + value * fit.jointCovariance![l * 3 + k]!, 0);
        expect(product).toBeCloseTo(j === k ? 1 : 0, 4);
      }
      expect(moved([j, 1e-4])).toBeLessThan(fit.logLik!);
      expect(moved([j, -1e-4])).toBeLessThan(fit.logLik!);
    });
  });

  it('gives group means whatever theta, since NB2 with a log link is exact for two groups', () => {
    const fit = negativeBinomial({ counts, columns: { stored } });
    expect(Math.exp(fit.coefficients![0]!)).toBeCloseTo(148 / 4, 9);
    expect(Math.exp(fit.coefficients![1]!)).toBeCloseTo(24 / 148, 9);
  });

  it('says that counts vary no more than Poisson, and then is the Poisson fit', () => {
    const fit = negativeBinomial({ counts: [4, 5, 4, 9, 10, 9], columns: { stored: [0, 0, 0, 1, 1, 1] } });
    expect(fit.theta).toEqual({
      estimate: null,
      se: null,
      logSe: null,
      seGivenMeans: null,
      because: 'no-overdispersion',
    });
    expect(fit.jointCovariance).toBeNull();
    expect(fit.convergence.settled).toBe(true);
    expect(fit.df).toBe(2);
    expect(fit.logLik).toBe(fit.poissonLogLik);
    expect(fit.overdispersion).toEqual({ statistic: 0, df: 1, p: 1 });
    // Exact for two groups: log of the ratio 28 / 13, variance 1 / 13 + 1 / 28.
    expect(fit.terms[1]!.estimate).toBeCloseTo(Math.log(28 / 13), 12);
    expect(fit.terms[1]!.se).toBeCloseTo(Math.sqrt(1 / 13 + 1 / 28), 12);
    // Poisson deviance, 2 Σ y log(y / mu), and Pearson's chi-square, by hand from the means 13/3 and 28/3.
    const own = [4, 5, 4].map((y) => y * Math.log((3 * y) / 13));
    const other = [9, 10, 9].map((y) => y * Math.log((3 * y) / 28));
    expect(fit.deviance).toBeCloseTo(2 * [...own, ...other].reduce((sum, value) => sum + value, 0), 12);
    expect(fit.pearson).toBeCloseTo((2 / 3) * (3 / 13) + (2 / 3) * (3 / 28), 12);
  });

  it('finds a large theta where counts vary a trace more than Poisson', () => {
    // An estimate is there exactly where Σ (y − ȳ)² passes Σ y (Johnson, Kemp & Kotz 2005, section 5.8.3).
    const near = [90, 100, 110, 100, 92, 108, 112, 88, 100, 100];
    const excess = near.reduce((sum, y) => sum + (y - 100) ** 2 - y, 0);
    expect(excess).toBe(-384);
    const more = [80, 120, 100, 100, 88, 112, 86, 114, 100, 100];
    expect(more.reduce((sum, y) => sum + (y - 100) ** 2 - y, 0)).toBe(480);
    expect(negativeBinomial({ counts: near, columns: {} }).theta.because).toBe('no-overdispersion');
    const { theta, logLik, poissonLogLik } = negativeBinomial({ counts: more, columns: {} });
    expect(theta.estimate).toBeGreaterThan(100);
    expect(theta.estimate).toBeLessThan(400);
    expect(logLik!).toBeGreaterThan(poissonLogLik!);
  });

  it('gives no number where a level has no seeds at all, and names it', () => {
    const fit = negativeBinomial({ counts: [0, 0, 0, 4, 13, 4], columns: { barren: [1, 1, 1, 0, 0, 0] } });
    expect(fit.convergence).toMatchObject({ settled: false, reason: 'separated' });
    expect(fit.separatedBy).toEqual(['barren']);
    expect([fit.coefficients, fit.covariance, fit.fitted, fit.logLik, fit.deviance]).toEqual(
      Array.from({ length: 5 }, () => null),
    );
    expect(fit.theta).toMatchObject({ estimate: null, because: 'separated' });
    expect(fit.overdispersion).toEqual({ statistic: null, df: null, p: null, because: 'separated' });
    expect(waldIntervals(fit)[1]).toMatchObject({ estimate: null, lower: null, because: 'separated' });
    expect(negativeBinomial({ counts: [0, 0, 0], columns: {} }).separatedBy).toEqual(['(Intercept)']);
  });

  it('makes ranges of its terms with waldIntervals', () => {
    const fit = negativeBinomial({ counts, columns: { stored } });
    const { estimate, se } = fit.terms[1]!;
    const interval = waldIntervals(fit)[1]!;
    // Normal quantile 1.959963984540054 (R qnorm(0.975)).
    expect(interval.lower).toBeCloseTo(estimate! - 1.959963984540054 * se!, 12);
    expect(interval.upper).toBeCloseTo(estimate! + 1.959963984540054 * se!, 12);
  });

  const season = fc
    .array(
      fc.record({
        count: fc.integer({ min: 0, max: 80 }),
        stored: fc.integer({ min: 0, max: 1 }),
        place: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { minLength: 8, maxLength: 30 },
    )
    .filter((rows) => new Set(rows.map((row) => row.stored)).size === 2);
  const specOf = (rows: readonly { count: number; stored: number }[]): CountSpec => ({
    counts: rows.map((row) => row.count),
    columns: { stored: rows.map((row) => row.stored) },
  });
  const expectSame = (value: number | null, wanted: number | null, slack = 1e-8) => {
    if (value === null || wanted === null) expect(value).toBe(wanted);
    else expect(Math.abs(value - wanted)).toBeLessThanOrEqual(slack * (1 + Math.abs(wanted)));
  };

  it('does not depend on the order of the rows', () => {
    fc.assert(
      fc.property(season, (rows) => {
        const fit = negativeBinomial(specOf(rows));
        const other = negativeBinomial(specOf([...rows].sort((a, b) => a.place - b.place)));
        expectSame(other.logLik, fit.logLik);
        expectSame(other.terms[1]!.estimate, fit.terms[1]!.estimate);
        expectSame(other.terms[1]!.se, fit.terms[1]!.se);
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it('turns its signs when the levels are recoded, and moves the intercept alone with the exposure', () => {
    fc.assert(
      fc.property(season, (rows) => {
        const fit = negativeBinomial(specOf(rows));
        const fresh = rows.map((row) => 1 - row.stored);
        const recoded = negativeBinomial({ ...specOf(rows), columns: { fresh } });
        expectSame(recoded.logLik, fit.logLik);
        const effect = fit.terms[1]!.estimate;
        expectSame(recoded.terms[1]!.estimate, effect === null ? null : -effect);
        const halved = negativeBinomial({ ...specOf(rows), exposure: rows.map(() => 0.5) });
        expectSame(halved.terms[1]!.estimate, effect);
        const intercept = fit.terms[0]!.estimate;
        expectSame(halved.terms[0]!.estimate, intercept === null ? null : intercept + Math.LN2);
      }),
      { numRuns: 60, seed: 8 },
    );
  });

  it('never gives a number that is none', () => {
    fc.assert(
      fc.property(season, (rows) => {
        const { design: _, ...fit } = negativeBinomial(specOf(rows));
        const values = [fit.logLik, fit.deviance, fit.pearson, fit.theta.estimate, fit.theta.se];
        for (const { estimate, se } of fit.terms) values.push(estimate, se);
        for (const value of values) expect(value === null || Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 200, seed: 9 },
    );
  });

  it('refuses what is no design of counts', () => {
    expect(() => negativeBinomial({ counts: [1, 2.5], columns: {} })).toThrow(
      'negativeBinomial: counts must be whole numbers of at least 0, got 2.5 in row 2',
    );
    expect(() => negativeBinomial({ counts: [1, 2, 3], columns: { a: [1, 1, 1] } })).toThrow(
      'negativeBinomial: columns must not be linear combinations of one another, got a, which follows from (Intercept)',
    );
  });
});
