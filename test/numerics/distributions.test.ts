import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as distributions from '../../lib/numerics/distributions.ts';
import { readCases } from '../regression/reference-cases.ts';
import { SETS } from './distribution-cases.ts';

/** The names in R of what the tests of the families check, one by one. */
const CHECKED = [
  ...['pnorm', 'plognorm', 'dnorm', 'dnorm_log', 'qnorm', 'pgamma', 'dgamma', 'dgamma_log', 'qgamma'],
  ...['pchisq', 'dchisq', 'qchisq', 'pbeta', 'dbeta', 'dbeta_log', 'qbeta', 'pt', 'dt', 'dt_log', 'qt'],
  ...['pbinom', 'dbinom', 'dbinom_log', 'qbinom', 'phyper', 'dhyper', 'dhyper_log', 'qhyper'],
  ...['lgamma', 'digamma', 'trigamma'],
];

describe('distributions', () => {
  it('leave no reference case unchecked', () => {
    const ids = SETS.flatMap((set) => readCases(set).map(({ id }) => id));
    expect([...new Set(ids)].sort()).toEqual([...CHECKED].sort());
  });

  it('have quantiles that their tails lead back to, for any shape and tails down to 1e-300', () => {
    // The definition of a quantile. A last digit of x moves log p by its slope there, so that much is let pass.
    const { betaCdf, betaDensity, betaQuantile, gammaCdf, gammaDensity, gammaQuantile } = distributions;
    const { studentCdf, studentDensity, studentQuantile } = distributions;
    const shape = fc.double({ min: Math.log(0.01), max: Math.log(1e6), noNaN: true }).map(Math.exp);
    const small = fc.double({ min: -690, max: Math.log(0.5), noNaN: true }).map(Math.exp);
    const side = fc.constantFrom('lower' as const, 'upper' as const);
    const expectBack = (p: number, back: number, slope: number, what: string): void => {
      expect(Math.abs(Math.log(back / p)), what).toBeLessThan(1e-12 * (1 + slope));
    };
    fc.assert(
      fc.property(small, shape, shape, side, (p, a, b, tail) => {
        const t = studentQuantile(p, a, { tail });
        if (Number.isFinite(t)) {
          const back = studentCdf(t, a, { tail });
          expectBack(p, back, (Math.abs(t) * studentDensity(t, a)) / back, `t ${p} ${a} ${tail}`);
        }
        const x = betaQuantile(p, a, b, { tail });
        if (x > 1e-300 && x < 1) {
          const back = betaCdf(x, a, b, { tail });
          expectBack(p, back, (x * betaDensity(x, a, b)) / back, `beta ${p} ${a} ${b} ${tail}`);
        }
        const g = gammaQuantile(p, a, 1, { tail });
        if (g > 1e-300) {
          const back = gammaCdf(g, a, 1, { tail });
          expectBack(p, back, (g * gammaDensity(g, a)) / back, `gamma ${p} ${a} ${tail}`);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('have density, cumulative distribution function and quantile for each of seven families', () => {
    const names = Object.keys(distributions);
    for (const family of ['normal', 'student', 'chiSquare', 'gamma', 'beta', 'binomial', 'hypergeometric']) {
      for (const kind of ['Density', 'Cdf', 'Quantile']) expect(names).toContain(`${family}${kind}`);
    }
  });
});
