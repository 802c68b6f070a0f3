import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logGamma } from '../../lib/numerics/special-functions.ts';
import { betaBinomial } from '../../lib/regression/beta-binomial.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import { byTerm, expectReference, type Levels, numbers, readCases, readTable } from './reference-cases.ts';
import { namedColumns } from './reference-counts.ts';

/** log of the beta-binomial probability by its definition (Johnson, Kemp & Kotz 2005, equation 6.16). */
function logProbability(y: number, m: number, mean: number, correlation: number): number {
  const total = 1 / correlation - 1;
  const logBeta = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b);
  const choose = logGamma(m + 1) - logGamma(y + 1) - logGamma(m - y + 1);
  return (
    choose + logBeta(y + total * mean, m - y + total * (1 - mean)) - logBeta(total * mean, total * (1 - mean))
  );
}

// Crowder (1978) Applied Statistics 27, 34–37, Table 3: O. aegyptiaca 75 bean, 75 cucumber, 73 bean, 73 cucumber.
const germinated = [10, 23, 23, 26, 17, 5, 53, 55, 32, 46, 10, 8, 10, 8, 23, 0, 3, 22, 15, 32, 3];
const sown = [39, 62, 81, 51, 39, 6, 74, 72, 51, 79, 13, 16, 30, 28, 45, 4, 12, 41, 30, 51, 7];
const place = [...sown.keys()];
const younger = place.map((i) => (i >= 11 ? 1 : 0));
const cucumber = place.map((i) => ((i >= 5 && i < 11) || i >= 16 ? 1 : 0));
const orobanche = {
  successes: germinated,
  trials: sown,
  columns: { younger, cucumber, both: younger.map((value, i) => value * cucumber[i]!) },
};

describe('betaBinomial', () => {
  it('agrees with R on the Orobanche seeds', () => {
    // test/reference/g_counts.json: own R code, glmmTMB and VGAM agreeing to 6e-7.
    const reference = readCases('g_counts.json').find(({ id }) => id === 'g-orobanche-betabin')!;
    const { input, expected } = reference;
    const { columns, levels } = input.design as { columns: string[]; levels: Levels };
    const table = readTable(input.data as string);
    const fit = betaBinomial({
      successes: numbers(table, 'germ'),
      trials: numbers(table, 'n'),
      columns: namedColumns(table, columns, levels),
    });
    const { estimate: rho, logitSe } = fit.correlation;
    for (const [key, value] of Object.entries({
      coefficients: byTerm(fit.terms, (t) => t.estimate),
      se: byTerm(fit.terms, (t) => t.se),
      rho,
      logit_rho: Math.log(rho! / (1 - rho!)),
      se_logit_rho: logitSe,
      a_plus_b: 1 / rho! - 1,
      loglik: fit.logLik,
      binomial_loglik: fit.binomialLogLik,
      lr_vs_binomial: fit.overdispersion.statistic,
      p_lr_half_chisq1: fit.overdispersion.p,
    })) {
      expectReference(reference, key, value, expected[key]);
    }
    expect(Math.sqrt(fit.jointCovariance!.at(-1)!)).toBe(logitSe);
  });

  it('starts from the binomial fit of the same table, whose deviance is 33.278 on 17 df (Crowder 1978)', () => {
    const binomial = logistic(orobanche);
    expect(binomial.deviance.toFixed(3)).toBe('33.278');
    expect(germinated.length - binomial.df).toBe(17);
    const fit = betaBinomial(orobanche);
    expect(fit.binomialLogLik).toBe(binomial.logLik);
    // More spread than a binomial: wider, by the root of 1 + (m − 1) correlation or so.
    fit.terms.forEach(({ se }, j) => {
      expect(se!).toBeGreaterThan(binomial.terms[j]!.se);
    });
  });

  it('is exact where every row has two trials', () => {
    // With m = 2 the model fits the shares of rows with 0, 1 and 2 successes: here 9, 4 and 7 of 20, so the mean is 18 / 40 and
    // 2 mean (1 − mean) (1 − correlation) = 4 / 20.
    const successes = [...Array(9).fill(0), ...Array(4).fill(1), ...Array(7).fill(2)] as number[];
    const fit = betaBinomial({ successes, trials: successes.map(() => 2), columns: {} });
    const mean = 18 / 40;
    expect(fit.fitted![0]).toBeCloseTo(mean, 11);
    expect(fit.correlation.estimate).toBeCloseTo(1 - 0.2 / (2 * mean * (1 - mean)), 11);
    expect(fit.logLik).toBeCloseTo(9 * Math.log(9 / 20) + 4 * Math.log(4 / 20) + 7 * Math.log(7 / 20), 10);
  });

  it('has the log-likelihood of the definition, which no neighbour exceeds, and its curvature as information', () => {
    const successes = [2, 9, 5, 8, 1, 12, 0, 4];
    const trials = [10, 12, 9, 11, 10, 12, 8, 15];
    const fresh = [0, 1, 0, 1, 0, 1, 0, 1];
    const fit = betaBinomial({ successes, trials, columns: { fresh } });
    const logLik = ([b0, b1, logit]: readonly number[]) =>
      successes.reduce((sum, y, i) => {
        const mean = 1 / (1 + Math.exp(-b0! - b1! * fresh[i]!));
        return sum + logProbability(y, trials[i]!, mean, 1 / (1 + Math.exp(-logit!)));
      }, 0);
    const rho = fit.correlation.estimate!;
    const top = [...fit.coefficients!, Math.log(rho / (1 - rho))];
    const moved = (...steps: readonly (readonly [place: number, step: number])[]) => {
      const point = [...top];
      for (const [k, step] of steps) point[k]! += step;
      return logLik(point);
    };
    expect(fit.logLik).toBeCloseTo(logLik(top), 11);
    const h = 1e-3;
    top.forEach((_, j) => {
      expect(moved([j, 1e-4])).toBeLessThan(fit.logLik!);
      expect(moved([j, -1e-4])).toBeLessThan(fit.logLik!);
      const row = top.map((_, k) => {
        const cross = (a: number, b: number) => moved([j, a * h], [k, b * h]);
        return -(cross(1, 1) - cross(1, -1) - cross(-1, 1) + cross(-1, -1)) / (4 * h * h);
      });
      for (let k = 0; k < 3; k += 1) {
        const product = row.reduce((sum, value, l) => sum + value * fit.jointCovariance![l * 3 + k]!, 0);
        expect(product).toBeCloseTo(j === k ? 1 : 0, 4);
      }
    });
    expect([...fit.covariance!]).toEqual([0, 1, 3, 4].map((k) => fit.jointCovariance![k]));
  });

  it('says that rows vary no more than a binomial, and then is the binomial fit', () => {
    const spec = { successes: [3, 4, 5, 6], trials: [10, 10, 10, 10], columns: { fresh: [0, 0, 1, 1] } };
    const fit = betaBinomial(spec);
    const binomial = logistic(spec);
    expect(fit.correlation).toEqual({
      estimate: null,
      se: null,
      logitSe: null,
      because: 'no-overdispersion',
    });
    expect(fit.terms).toEqual(binomial.terms);
    expect(fit.logLik).toBe(binomial.logLik);
    expect(fit.overdispersion).toEqual({ statistic: 0, df: 1, p: 1 });
    expect(fit.convergence.settled).toBe(true);
  });

  it('takes a row as one trial where no row has both outcomes', () => {
    // The limit of correlation 1: P(all) is the mean, so 2 of 5 rows give logit(2/5) with variance 1/2 + 1/3.
    const fit = betaBinomial({ successes: [0, 8, 0, 5, 0], trials: [10, 8, 7, 5, 12], columns: {} });
    expect(fit.correlation).toMatchObject({ estimate: null, because: 'all-or-none' });
    expect(fit.terms[0]!.estimate).toBeCloseTo(Math.log(2 / 3), 11);
    expect(fit.terms[0]!.se).toBeCloseTo(Math.sqrt(1 / 2 + 1 / 3), 11);
    expect(fit.logLik).toBeCloseTo(2 * Math.log(0.4) + 3 * Math.log(0.6), 12);
    // What the definition gives with a correlation next to 1 is below, and near it.
    const near = [0, 8, 0, 5, 0].reduce(
      (sum, y, i) => sum + logProbability(y, [10, 8, 7, 5, 12][i]!, 0.4, 0.9999),
      0,
    );
    expect(near).toBeLessThan(fit.logLik!);
    expect(near).toBeGreaterThan(fit.logLik! - 1e-2);
  });

  it('says that single trials cannot tell a correlation', () => {
    const fit = betaBinomial({ successes: [0, 1, 1, 0, 1], columns: {} });
    expect(fit.correlation.because).toBe('single-trials');
    expect(fit.overdispersion).toEqual({ statistic: null, df: null, p: null, because: 'single-trials' });
    expect(fit.terms[0]!.estimate).toBeCloseTo(Math.log(3 / 2), 11);
  });

  it('gives no number under separation, and names the column', () => {
    const spec = { successes: [0, 0, 5, 7], trials: [9, 12, 9, 9], columns: { fresh: [0, 0, 1, 1] } };
    const fit = betaBinomial(spec);
    expect(fit.separatedBy).toEqual(['fresh']);
    expect([fit.coefficients, fit.covariance, fit.fitted, fit.logLik]).toEqual([null, null, null, null]);
    expect(waldIntervals(fit)[1]).toMatchObject({ estimate: null, se: null, because: 'separated' });
    expect(fit.correlation.because).toBe('separated');
    expect(fit.overdispersion.because).toBe('separated');
  });

  const lots = fc.array(
    fc.record({
      trials: fc.integer({ min: 1, max: 30 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      fresh: fc.constantFrom(0, 1),
    }),
    { minLength: 6, maxLength: 20 },
  );
  const specOf = (rows: readonly { trials: number; share: number; fresh: number }[], turned = false) => {
    const made = rows.map((row) => ({ ...row, y: Math.round(row.share * row.trials) }));
    return {
      successes: made.map(({ y, trials }) => (turned ? trials - y : y)),
      trials: made.map(({ trials }) => trials),
      columns: { fresh: made.map(({ fresh }) => fresh) },
    };
  };

  it('turns its signs when successes and failures change places, and gives finite numbers or null', () => {
    const property = fc.property(lots, (rows) => {
      fc.pre(new Set(rows.map(({ fresh }) => fresh)).size === 2);
      const [fit, turned] = [betaBinomial(specOf(rows)), betaBinomial(specOf(rows, true))];
      const [rho, other] = [fit.correlation, turned.correlation];
      expect(other.because).toBe(rho.because);
      fit.terms.forEach(({ estimate, se }, j) => {
        const mirror = turned.terms[j]!;
        if (estimate === null || se === null) {
          expect(mirror.estimate).toBeNull();
        } else {
          expect(Math.abs(mirror.estimate! + estimate)).toBeLessThan(1e-6 * (1 + Math.abs(estimate)));
          expect(Math.abs(mirror.se! - se)).toBeLessThan(1e-6 * (1 + se));
        }
      });
      if (rho.estimate !== null) {
        expect(rho.estimate).toBeGreaterThan(0);
        expect(rho.estimate).toBeLessThan(1);
        expect(Number.isFinite(rho.logitSe)).toBe(true);
        expect(fit.logLik!).toBeGreaterThan(fit.binomialLogLik);
      }
    });
    fc.assert(property, { numRuns: 100, seed: 11 });
  });

  it('refuses what is no design, in its own name', () => {
    expect(() => betaBinomial({ successes: [3], trials: [2], columns: {} })).toThrow(
      'betaBinomial: successes must be a whole number from 0 to trials (2), got 3 in row 1',
    );
    expect(() => betaBinomial({ successes: [1, 1], columns: { a: [1, 0], b: [0, 1] } })).toThrow(
      'betaBinomial: columns must not outnumber the rows (2), got 3',
    );
    expect(() => betaBinomial({ successes: [1, 1, 0], columns: { a: [0, 0, 0] } })).toThrow(
      'betaBinomial: columns must not be linear combinations of one another, got a, which is zero in every row',
    );
  });
});
