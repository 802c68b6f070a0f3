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

  it('have density, cumulative distribution function and quantile for each of seven families', () => {
    const names = Object.keys(distributions);
    for (const family of ['normal', 'student', 'chiSquare', 'gamma', 'beta', 'binomial', 'hypergeometric']) {
      for (const kind of ['Density', 'Cdf', 'Quantile']) expect(names).toContain(`${family}${kind}`);
    }
  });
});
