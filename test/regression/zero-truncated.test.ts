import { describe, expect, it } from 'vitest';
import { logGamma } from '../../lib/numerics/special-functions.ts';
import type { CountSpec } from '../../lib/regression/count-design.ts';
import { negativeBinomial } from '../../lib/regression/negative-binomial.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import { zeroTruncatedNegativeBinomial, zeroTruncatedPoisson } from '../../lib/regression/zero-truncated.ts';
import {
  byTerm,
  expectReference,
  type Json,
  type Levels,
  numbers,
  readCases,
  readTable,
} from './reference-cases.ts';
import { namedColumns } from './reference-counts.ts';

// test/reference/g_counts.json: own R code, glmmTMB and VGAM agreeing to 6e-7.
const reference = readCases('g_counts.json').find(({ id }) => id === 'g-seeds-zero-truncated')!;
const { columns, levels } = reference.input.design as { columns: string[]; levels: Levels };
const table = readTable('g_seeds_pos.csv');
const seeds: CountSpec = { counts: numbers(table, 'seeds'), columns: namedColumns(table, columns, levels) };

type Expected = { readonly [key: string]: Json };

/** Log-likelihood of counts without zeros with one mean, by the definition. */
function logLikelihood(counts: readonly number[], b: number, logTheta: number): number {
  const [mu, theta] = [Math.exp(b), Math.exp(logTheta)];
  const zero = (theta / (theta + mu)) ** theta;
  return counts.reduce((sum, y) => {
    const gammas = logGamma(y + theta) - logGamma(theta) - logGamma(y + 1);
    return sum + gammas + Math.log(zero) + y * Math.log(mu / (theta + mu)) - Math.log(1 - zero);
  }, 0);
}

describe('zeroTruncatedPoisson', () => {
  it('agrees with R on simulated seeds', () => {
    const expected = reference.expected.zt_poisson as Expected;
    const fit = zeroTruncatedPoisson(seeds);
    expect(fit.terms.map(({ term }) => term)).toEqual(columns);
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
    expectReference(reference, 'loglik', fit.logLik, expected.loglik);
  });

  it('has the sample mean as mean without zeros, where there is only an intercept', () => {
    // The likelihood equation, mu / (1 − exp(−mu)) = ȳ (Johnson, Kemp & Kotz 2005, equation 4.76).
    const fit = zeroTruncatedPoisson({ counts: [1, 1, 2, 1, 3, 2], columns: {} });
    const mu = Math.exp(fit.coefficients![0]!);
    expect(mu / (1 - Math.exp(-mu))).toBeCloseTo(10 / 6, 12);
    expect(fit.fitted![0]).toBeCloseTo(10 / 6, 12);
    // Information of log mu: n mu (dm/dmu), m the mean without zeros.
    const e = Math.exp(-mu);
    const slope = (1 - e - mu * e) / (1 - e) ** 2;
    expect(fit.terms[0]!.se).toBeCloseTo(1 / Math.sqrt(6 * mu * slope), 10);
  });

  it('gives no number where a level has one seed in every fruit, and names it', () => {
    const fit = zeroTruncatedPoisson({ counts: [1, 1, 1, 4, 3], columns: { old: [1, 1, 1, 0, 0] } });
    expect(fit.separatedBy).toEqual(['old']);
    expect(fit.logLik).toBeNull();
    expect(waldIntervals(fit)[1]).toMatchObject({ estimate: null, because: 'separated' });
  });

  it('refuses a count of 0', () => {
    expect(() => zeroTruncatedPoisson({ counts: [3, 0], columns: {} })).toThrow(
      'zeroTruncatedPoisson: counts must be whole numbers of at least 1, got 0 in row 2',
    );
  });
});

describe('zeroTruncatedNegativeBinomial', () => {
  it('agrees with R on simulated seeds', () => {
    const expected = reference.expected.zt_negbin as Expected;
    const fit = zeroTruncatedNegativeBinomial(seeds);
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
    expectReference(reference, 'theta', fit.theta.estimate, expected.theta);
    expectReference(reference, 'se_log_theta', fit.theta.logSe, expected.se_log_theta);
    expectReference(reference, 'loglik', fit.logLik, expected.loglik);
    const poisson = zeroTruncatedPoisson(seeds);
    expect(fit.poissonLogLik).toBe(poisson.logLik);
    expect(fit.overdispersion.statistic).toBeCloseTo(2 * (fit.logLik! - poisson.logLik!), 9);
  });

  it('has the log-likelihood of the definition, which no neighbour exceeds', () => {
    const counts = [1, 9, 2, 15, 4, 36, 1, 8];
    const fit = zeroTruncatedNegativeBinomial({ counts, columns: {} });
    const logLik = (b: number, logTheta: number) => logLikelihood(counts, b, logTheta);
    const [b, t] = [fit.coefficients![0]!, Math.log(fit.theta.estimate!)];
    expect(fit.logLik).toBeCloseTo(logLik(b, t), 10);
    for (const [db, dt] of [
      [1e-4, 0],
      [-1e-4, 0],
      [0, 1e-4],
      [0, -1e-4],
      [1e-4, 1e-4],
      [1e-4, -1e-4],
    ] as const) {
      expect(logLik(b + db, t + dt)).toBeLessThan(fit.logLik!);
    }
    // The mean without zeros is mu / (1 − P(0)).
    const [mu, theta] = [Math.exp(b), fit.theta.estimate!];
    expect(fit.fitted![0]).toBeCloseTo(mu / (1 - (theta / (theta + mu)) ** theta), 10);
  });

  it('is the fit without truncation where zeros are next to impossible', () => {
    const counts = [180, 220, 260, 150, 310, 205, 190, 240];
    const stored = [0, 0, 0, 0, 1, 1, 1, 1];
    const truncated = zeroTruncatedNegativeBinomial({ counts, columns: { stored } });
    const whole = negativeBinomial({ counts, columns: { stored } });
    expect(truncated.theta.estimate).toBeCloseTo(whole.theta.estimate!, 6);
    expect(truncated.coefficients![1]).toBeCloseTo(whole.coefficients![1]!, 9);
    expect(truncated.logLik).toBeCloseTo(whole.logLik!, 9);
    expect(truncated.theta.logSe).toBeCloseTo(whole.theta.logSe!, 8);
  });

  it('says that counts vary no more than a zero-truncated Poisson, and then is that fit', () => {
    const spec = { counts: [3, 4, 5, 4, 3, 4], columns: {} };
    const fit = zeroTruncatedNegativeBinomial(spec);
    const poisson = zeroTruncatedPoisson(spec);
    expect(fit.theta).toEqual({ estimate: null, se: null, logSe: null, because: 'no-overdispersion' });
    expect(fit.terms).toEqual(poisson.terms);
    expect(fit.logLik).toBe(poisson.logLik);
    expect(fit.overdispersion.p).toBe(1);
  });

  it('says that many ones beside a huge count are at the logarithmic distribution, and gives no number', () => {
    const counts = [1, 1, 1, 1, 1, 1, 1, 1, 2, 1000];
    // The likelihood rises all the way to theta = 0: its best over the means, by a search, at ever smaller theta.
    const best = (theta: number) => {
      let most = -Infinity;
      for (let b = -20; b < 10; b += 0.01) most = Math.max(most, logLikelihood(counts, b, Math.log(theta)));
      return most;
    };
    const onTheWay = [1, 0.1, 0.01, 0.001].map(best);
    expect(onTheWay).toEqual([...onTheWay].sort((a, b) => a - b));
    const fit = zeroTruncatedNegativeBinomial({ counts, columns: {} });
    expect(fit.convergence).toMatchObject({ settled: false, reason: 'logarithmic-limit' });
    expect(fit.terms[0]).toEqual({ term: '(Intercept)', estimate: null, se: null });
    expect(fit.theta).toMatchObject({ estimate: null, because: 'logarithmic-limit' });
    expect(waldIntervals(fit)[0]).toMatchObject({ estimate: null, se: null, because: 'logarithmic-limit' });
  });

  it('gives no number where every count is 1', () => {
    const fit = zeroTruncatedNegativeBinomial({ counts: [1, 1, 1], columns: {} });
    expect(fit.separatedBy).toEqual(['(Intercept)']);
    expect(fit.theta.because).toBe('separated');
    expect(fit.overdispersion.because).toBe('separated');
  });

  it('refuses a count of 0', () => {
    expect(() => zeroTruncatedNegativeBinomial({ counts: [3, 0], columns: {} })).toThrow(
      'zeroTruncatedNegativeBinomial: counts must be whole numbers of at least 1, got 0 in row 2',
    );
  });
});
