import { describe, expect, it } from 'vitest';
import { countDesignOf } from '../../lib/regression/count-design.ts';
import {
  climbOverdispersed,
  climbPoisson,
  countFitAt,
  covarianceAt,
  leadingBlock,
  logFactorials,
  overdispersionTest,
  shapeUnknown,
} from '../../lib/regression/count-fit.ts';
import { negativeBinomialRow, poissonRow } from '../../lib/regression/count-rows.ts';
import { rowPredictors } from '../../lib/regression/shape-climb.ts';

const family = {
  smallest: 0,
  poisson: poissonRow,
  overdispersed: negativeBinomialRow,
  leaving: (count: number, mu: number) => ((count - mu) ** 2 - count) / 2,
};
const design = (counts: readonly number[], stored: readonly number[], exposure?: readonly number[]) =>
  countDesignOf({ counts, columns: { stored }, ...(exposure ? { exposure } : {}) }, 'seeds', 0);

describe('climbPoisson', () => {
  it('has the group means as its maximum, with variances of 1 / total (exact for two groups)', () => {
    const made = design([3, 5, 4, 10, 11], [0, 0, 0, 1, 1], [1, 1, 2, 1, 1]);
    const climbed = climbPoisson('seeds', made, family);
    const fit = countFitAt(made, climbed, covarianceAt(climbed), (mu) => mu);
    // 12 seeds on an exposure of 4, 21 on 2.
    expect(fit.coefficients![0]).toBeCloseTo(Math.log(12 / 4), 12);
    expect(fit.coefficients![1]).toBeCloseTo(Math.log(21 / 2 / 3), 12);
    expect(fit.covariance![0]).toBeCloseTo(1 / 12, 12);
    expect(fit.covariance![3]).toBeCloseTo(1 / 12 + 1 / 21, 12);
    [3, 3, 6, 10.5, 10.5].forEach((mu, i) => {
      expect(fit.fitted![i]).toBeCloseTo(mu, 11);
    });
    expect(fit.df).toBe(2);
  });

  it('names the columns along which means run to zero, and only those', () => {
    const separated = (counts: readonly number[], stored: readonly number[]) =>
      climbPoisson('seeds', design(counts, stored), family).separatedBy;
    expect(separated([0, 0, 3, 2], [1, 1, 0, 0])).toEqual(['stored']);
    expect(separated([0, 0, 0, 0], [1, 1, 0, 0])).toEqual(['(Intercept)']);
    expect(separated([0, 0, 1, 2], [1, 2, 3, 3])).toEqual(['stored']);
    // A single count above zero on either side holds the slope.
    expect(separated([0, 1, 3, 0], [1, 1, 0, 0])).toEqual([]);
    expect(separated([0, 0, 3, 2], [0, 2, 1, 1])).toEqual([]);
  });

  it('names columns that depend on others', () => {
    expect(() => climbPoisson('seeds', design([1, 2, 3], [2, 2, 2]), family)).toThrow(
      'seeds: columns must not be linear combinations of one another, got stored, which follows from (Intercept)',
    );
  });

  it('fits through exposures of 600 orders of magnitude, and refuses those whose counts are no numbers', () => {
    const made = design([1, 2, 3], [0, 1, 0], [1e300, 1e-300, 1e300]);
    const { end, model } = climbPoisson('seeds', made, family);
    expect(end.convergence.settled).toBe(true);
    [2, 2, 2].forEach((mu, i) => {
      expect(Math.exp(rowPredictors(model, end.point.gamma)[i]!)).toBeCloseTo(mu, 9);
    });
    const huge = design([1, 1, 1, 1, 1], [0, 1, 0, 1, 0], [1.7e308, 1.7e308, 1e-308, 1e-308, 1e-308]);
    expect(() => climbPoisson('seeds', huge, family)).toThrow('seeds: exposure must leave expected counts');
  });
});

describe('climbOverdispersed', () => {
  it('is null where counts vary less than a Poisson', () => {
    const made = design([4, 5, 4, 9, 10, 9], [0, 0, 0, 1, 1, 1]);
    expect(climbOverdispersed(made, family, climbPoisson('seeds', made, family))).toBeNull();
  });
});

describe('the parts of a count fit', () => {
  it('takes half the tail of a chi-square, for the hypothesis lies on the edge', () => {
    // Upper 5 % point of chi-square with 1 df: 3.841458820694124 (R qchisq).
    expect(overdispersionTest(3.841458820694124 / 2, 0).p).toBeCloseTo(0.025, 14);
    expect(overdispersionTest(-10, -10)).toEqual({ statistic: 0, df: 1, p: 1 });
  });

  it('sums the logarithms of the factorials', () => {
    expect(logFactorials(design([0, 1, 3, 5], [0, 1, 0, 1]))).toBeCloseTo(-Math.log(6 * 120), 13);
  });

  it('cuts a leading block out of a matrix', () => {
    expect([...leadingBlock(Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8, 9), 3, 2)]).toEqual([1, 2, 4, 5]);
  });

  it('has no number for a shape that is unknown', () => {
    expect(shapeUnknown('no-overdispersion')).toEqual({
      estimate: null,
      se: null,
      logSe: null,
      because: 'no-overdispersion',
    });
  });
});
