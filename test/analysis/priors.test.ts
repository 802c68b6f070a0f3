import { describe, expect, it } from 'vitest';
import { onScale } from '../../lib/analysis/age-scale.ts';
import { ageTerm, GROWER_PRIORS, NEUTRAL_PRIORS, referenceDays } from '../../lib/analysis/priors.ts';
import { logistic01 } from '../../lib/regression/latent-likelihood.ts';

describe('priors', () => {
  it('hold that pollen fades and does not improve, and lean to a loss in storage', () => {
    expect(GROWER_PRIORS.age.below).toBe(0);
    expect(GROWER_PRIORS.age.mean).toBeLessThan(0);
    expect(GROWER_PRIORS.storage.mean).toBeLessThan(0);
    expect(GROWER_PRIORS.storage.below).toBeUndefined();
  });

  it('do not lean to a loss where the question is whether there is one', () => {
    expect([NEUTRAL_PRIORS.storage.mean, NEUTRAL_PRIORS.age.mean, NEUTRAL_PRIORS.share.mean]).toEqual([
      0, 0, 0,
    ]);
    expect(NEUTRAL_PRIORS.age.below).toBeUndefined();
  });

  it('reach the published losses of stored pollen within one and a half standard deviations', () => {
    // Date palm, Kadri 2022 (abstract): fruit set 85 % fresh, 75 % after −30 °C, 65 % after 4 °C.
    const logit = (p: number) => Math.log(p / (1 - p));
    for (const stored of [0.75, 0.65]) {
      const loss = logit(stored) - logit(0.85);
      expect(Math.abs(loss - GROWER_PRIORS.storage.mean)).toBeLessThan(1.5 * GROWER_PRIORS.storage.sd);
    }
  });

  it('reach what kept at 28 °C was published to lose, by storage and age together', () => {
    // Date palm, Kadri 2022 (abstract): fruit set 85 % fresh, 45 % after 28 °C.
    const loss = Math.log(0.45 / 0.55) - Math.log(0.85 / 0.15);
    const { storage, age } = GROWER_PRIORS;
    expect(Math.abs(loss - storage.mean - age.mean)).toBeLessThan(1.5 * Math.hypot(storage.sd, age.sd));
  });

  it('let 2 to 26 in 100 pairs be incompatible', () => {
    const { mean, sd } = GROWER_PRIORS.incompatible;
    expect(logistic01(mean - 1.96 * sd)).toBeCloseTo(0.015, 2);
    expect(logistic01(mean + 1.96 * sd)).toBeCloseTo(0.26, 2);
  });
});

describe('ageTerm', () => {
  it.each(['room', 'refrigerated', 'frozen', 'buried in sand'])(
    'is 0 at age 0 and 1 at the reference age of %s',
    (storage) => {
      for (const scale of ['days', 'log1p-days'] as const) {
        expect(ageTerm(0, storage, scale)).toBe(0);
        expect(ageTerm(referenceDays(storage), storage, scale)).toBe(1);
      }
    },
  );

  it('is proportional to days, or to log(1 + days)', () => {
    expect(ageTerm(730, 'frozen', 'days')).toBe(2);
    expect(ageTerm(15, 'room', 'log1p-days')).toBeCloseTo(2, 14);
    expect(onScale(3, 'days')).toBe(3);
    expect(onScale(Math.E - 1, 'log1p-days')).toBeCloseTo(1, 15);
  });

  it('gives a method of the grower’s own 90 days, whatever its name', () => {
    expect(['buried in sand', '__proto__', 'constructor'].map(referenceDays)).toEqual([90, 90, 90]);
  });
});
