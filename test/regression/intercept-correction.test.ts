import { describe, expect, it } from 'vitest';
import { correctIntercept } from '../../lib/regression/intercept-correction.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { profileIntervals } from '../../lib/regression/profile.ts';
import { standardise } from '../../lib/regression/standardise.ts';
import { formulaDesign, readTable } from './reference-cases.ts';

describe('correctIntercept', () => {
  const design = formulaDesign(readTable('d_endometrial.csv'), 'HG ~ NV + PI + EH', null);
  const firth = logistic(design, { method: 'firth' });

  it('agrees with the two steps done in R on the endometrial data', () => {
    // R 4.2.2: brglm2 (AS_mean), then glm(HG ~ 1 + offset(slopes)): Puhr et al. (2017), section 2.
    const corrected = correctIntercept(firth)!;
    expect(corrected.coefficients[0]).toBeCloseTo(3.7860834944919, 7);
    expect([...corrected.coefficients.slice(1)]).toEqual([...firth.coefficients.slice(1)]);
    expect(corrected.terms.map(({ se }) => se)).toEqual(
      [1.4881774046922, 1.5577953327592, 0.0395601721423, 0.7747659946491].map((se) => expect.closeTo(se, 6)),
    );
    expect(corrected.logLik).toBeCloseTo(-28.287032344739, 7);
  });

  it('makes the mean probability the observed rate, which Firth alone pulls to a half', () => {
    const few = logistic(
      { successes: [1, 2], trials: [20, 9], columns: { stored: [1, 0] } },
      { method: 'firth' },
    );
    const set = [{}];
    const before = standardise(few, { set }).probabilities[0]!.estimate!;
    const after = standardise(correctIntercept(few)!, { set }).probabilities[0]!.estimate!;
    expect(after).toBeCloseTo(3 / 29, 12);
    expect(before).toBeGreaterThan(3 / 29);
  });

  it('has nothing to give where every outcome is the same', () => {
    expect(
      correctIntercept(logistic({ successes: [0], trials: [9], columns: {} }, { method: 'firth' })),
    ).toBeNull();
  });

  it('refuses other fits, and its result refuses to be profiled', () => {
    expect(() => correctIntercept(logistic(design))).toThrow(/by Firth's method/);
    const without = logistic({ ...design, intercept: false }, { method: 'firth' });
    expect(() => correctIntercept(without)).toThrow(RangeError);
    expect(() => profileIntervals(correctIntercept(firth)!)).toThrow(/as fitted/);
  });
});
