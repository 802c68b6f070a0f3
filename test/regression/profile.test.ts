import { describe, expect, it } from 'vitest';
import type { Link } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { likelihoodRatio, profileIntervals } from '../../lib/regression/profile.ts';
import {
  byTerm,
  expectReference,
  formulaDesign,
  type Json,
  type Levels,
  type ReferenceCase,
  readCases,
  readTable,
  termNames,
} from './reference-cases.ts';

function intervalEnds(intervals: ReturnType<typeof profileIntervals>) {
  return { lower: byTerm(intervals, (t) => t.lower), upper: byTerm(intervals, (t) => t.upper) };
}

function fitOf({ input }: ReferenceCase, method: 'maximum-likelihood' | 'firth') {
  const { levels, formula } = input.design as { levels: Levels; formula?: string };
  const table = readTable(input.data as string);
  const right = (formula ?? input.formula) as string;
  const link = (input.link ?? 'logit') as Link;
  return { fit: logistic(formulaDesign(table, right, levels), { method, link }), table, levels };
}

describe('profileIntervals and likelihoodRatio by maximum likelihood', () => {
  // test/reference/c_glm.json: profile ends found as roots in R 4.2.2; drop1 tests of its glm.
  for (const reference of readCases('c_glm.json')) {
    it(`agree with R on ${reference.id}`, () => {
      const { fit, table, levels } = fitOf(reference, 'maximum-likelihood');
      expectReference(
        reference,
        'profile_ci',
        intervalEnds(profileIntervals(fit)),
        reference.expected.profile_ci,
      );
      const tests = (reference.expected.lr_drop1 ?? {}) as Record<string, Json>;
      for (const [term, wanted] of Object.entries(tests)) {
        const { statistic, df, p } = likelihoodRatio(fit, {
          drop: termNames(table, term, levels, fit.design.names),
        });
        expectReference(reference, 'lr_drop1', { lr: statistic, df, p }, wanted);
      }
    });
  }
});

describe('profileIntervals and likelihoodRatio of the penalised likelihood', () => {
  // test/reference/d_firth.json: own R code and logistf 1.26.1, all columns kept in the determinant.
  for (const reference of readCases('d_firth.json')) {
    it(`agree with logistf on ${reference.id}`, () => {
      const { fit } = fitOf(reference, 'firth');
      const { expected } = reference;
      const ends = intervalEnds(profileIntervals(fit));
      expectReference(reference, 'penalized_profile_ci', ends, expected.penalized_profile_ci);
      const tests = fit.design.names.map((name) => [name, likelihoodRatio(fit, { drop: [name] })] as const);
      const part = (key: 'statistic' | 'p') => new Map(tests.map(([name, test]) => [name, test[key]]));
      expectReference(reference, 'penalized_lr_chisq', part('statistic'), expected.penalized_lr_chisq);
      expectReference(reference, 'penalized_lr_p', part('p'), expected.penalized_lr_p);
      const { df, chisq, p } = expected.lr_overall as Record<string, number>;
      if (df === 0) return;
      const overall = likelihoodRatio(fit, { drop: fit.design.names.slice(1) });
      expectReference(reference, 'penalized_lr_chisq', overall, { statistic: chisq!, df: df! });
      expectReference(reference, 'penalized_lr_p', overall.p, p);
    });
  }
});

describe('profileIntervals under separation', () => {
  // 0 of 9 fresh, 5 of 11 stored: ends by R 4.2.2 optimize and uniroot on the two binomial likelihoods.
  const spec = { successes: [0, 5], trials: [9, 11], columns: { stored: [0, 1] } };

  it('leaves the open end null and finds the other', () => {
    const fit = logistic(spec);
    expect(fit.logLik).toBeCloseTo(-1.44353673216151, 9);
    const [intercept, stored] = profileIntervals(fit);
    expect(intercept).toMatchObject({ estimate: null, lower: null, because: 'separated' });
    expect(intercept!.upper).toBeCloseTo(-1.43591535513518, 7);
    expect(stored).toMatchObject({ estimate: null, upper: null, because: 'separated' });
    expect(stored!.lower).toBeCloseTo(0.960557818239298, 7);
  });

  it('mirrors when successes and failures change places', () => {
    const [intercept, stored] = profileIntervals(logistic({ ...spec, successes: [9, 6] }));
    expect(intercept).toMatchObject({ upper: null });
    expect(intercept!.lower).toBeCloseTo(1.43591535513518, 7);
    expect(stored).toMatchObject({ lower: null });
    expect(stored!.upper).toBeCloseTo(-0.960557818239298, 7);
  });

  it('bounds neither end of a column that has nothing left to be told from', () => {
    // 0 of 9 and 0 of 7: any difference is possible.
    const [intercept, stored] = profileIntervals(logistic({ ...spec, successes: [0, 0], trials: [9, 7] }));
    expect([intercept!.lower, stored!.lower, stored!.upper]).toEqual([null, null, null]);
    // Log odds of the p with (1 - p)^9 = exp(-3.841458820694124 / 2), by hand.
    expect(intercept!.upper).toBeCloseTo(Math.log(Math.expm1(3.841458820694124 / 18)), 7);
  });

  it('finds every finite end where several columns run away', () => {
    // B never took, C always did. R 4.2.2: uniroot on glm deviances without the rows that the limit explains perfectly.
    // An earlier search, started far out, stuck at singular points and gave ends that were too low.
    const father = ['A', 'B', 'C', 'D'].flatMap((name) => [name, name, name]);
    const is = (name: string): number[] => father.map((own) => (own === name ? 1 : 0));
    const fit = logistic({
      successes: [5, 4, 2, 0, 0, 0, 6, 4, 7, 6, 3, 1],
      trials: [9, 8, 7, 5, 4, 6, 6, 4, 7, 8, 7, 8],
      columns: { b: is('B'), c: is('C'), d: is('D'), age: father.map((_, i) => [0, 10, 60][i % 3]!) },
    });
    expect(fit.separatedBy).toEqual(['b', 'c']);
    const [, b, c, , age] = profileIntervals(fit);
    expect(b).toMatchObject({ estimate: null, lower: null, because: 'separated' });
    expect(b!.upper).toBeCloseTo(-1.70042078782, 7);
    expect(c).toMatchObject({ estimate: null, upper: null, because: 'separated' });
    expect(c!.lower).toBeCloseTo(2.61345585508, 7);
    expect(age!.estimate).toBeCloseTo(-0.03111754141476, 8);
    expect(age!.lower).toBeCloseTo(-0.06041855188872, 8);
    expect(age!.upper).toBeCloseTo(-0.006707314709516, 8);
  });

  it('keeps the finite ends of the endometrial data', () => {
    const fit = logistic(formulaDesign(readTable('d_endometrial.csv'), 'HG ~ NV + PI + EH', null));
    expect(fit.separatedBy).toEqual(['NV']);
    const nv = profileIntervals(fit)[1]!;
    expect(nv.upper).toBeNull();
    expect(nv.lower).toBeGreaterThan(0);
    // Likelihood-ratio test of NV by R 4.2.2: glm(HG ~ PI + EH) against glm(HG ~ NV + PI + EH).
    expect(likelihoodRatio(fit, { drop: ['NV'] }).statistic).toBeCloseTo(9.35764301238068, 6);
  });
});

describe('likelihoodRatio', () => {
  it('refuses names that are no columns', () => {
    const fit = logistic({ successes: [2, 5], trials: [9, 11], columns: { stored: [0, 1] } });
    expect(() => likelihoodRatio(fit, { drop: [] })).toThrow(RangeError);
    expect(() => likelihoodRatio(fit, { drop: ['age'] })).toThrow(/drop must name columns of the fit/);
    expect(() => profileIntervals(fit, { level: 1 })).toThrow(RangeError);
  });
});

describe('likelihoodRatio of a three-way interaction', () => {
  // Bartlett (1935) Supplement to the Journal of the Royal Statistical Society 2, 248–252: plum root cuttings alive of
  // 240, planted at once or in spring, long or short. Counts from memory; they give the published values.
  const cuttings = {
    successes: [156, 84, 107, 31],
    trials: [240, 240, 240, 240],
    columns: { inSpring: [0, 1, 0, 1], short: [0, 0, 1, 1], both: [0, 0, 0, 1] },
  };

  it('finds none among plum root cuttings: 2.294 on 1 degree of freedom', () => {
    const { statistic, df } = likelihoodRatio(logistic(cuttings), { drop: ['both'] });
    expect(statistic!.toFixed(3)).toBe('2.294');
    expect(df).toBe(1);
  });

  it('finds the log odds ratios of planting at once, 1.238 for long and 1.691 for short ones', () => {
    const estimates = new Map(logistic(cuttings).terms.map(({ term, estimate }) => [term, estimate]));
    expect((-estimates.get('inSpring')!).toFixed(3)).toBe('1.238');
    expect((-estimates.get('inSpring')! - estimates.get('both')!).toFixed(3)).toBe('1.691');
  });
});
