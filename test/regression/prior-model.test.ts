import { describe, expect, it } from 'vitest';
import type { PriorModel } from '../../lib/regression/prior-model.ts';
import { hyperSize, latentOf, scalesAt, tailBounds } from '../../lib/regression/prior-model.ts';

const model: PriorModel = {
  successes: Float64Array.of(1, 2),
  trials: Float64Array.of(2, 2),
  columns: [
    { name: '(Intercept)', values: Float64Array.of(1, 1), mean: 0.3, sd: 1.2 },
    { name: 'age', values: Float64Array.of(0, 2), mean: -1, sd: 0.5, below: 0 },
  ],
  factors: [{ name: 'pair', codes: Int32Array.of(0, 1), size: 2, scale: 0.8 }],
  exclusive: { factor: 'pair', mean: -2.6, sd: 0.8 },
};

describe('latentOf', () => {
  it('moves the prior means into the offset', () => {
    // Row 0: 0.3 × 1 − 1 × 0; row 1: 0.3 − 2.
    expect([...latentOf(model).offset]).toEqual([0.3, 0.3 - 2]);
  });

  it('names the exclusive factor by its index, −1 for none', () => {
    expect(latentOf(model).exclusive).toBe(0);
    expect(latentOf({ ...model, exclusive: null }).exclusive).toBe(-1);
  });
});

describe('tailBounds', () => {
  it('states a bound in prior standard deviations from the prior mean', () => {
    // (0 + 1) ÷ 0.5
    expect([...tailBounds(model)]).toEqual([2]);
    expect(tailBounds({ ...model, columns: model.columns.slice(0, 1) }).length).toBe(0);
  });
});

describe('scalesAt', () => {
  it('counts a standard deviation a factor, and the share', () => {
    expect(hyperSize(model)).toBe(2);
    expect(hyperSize({ ...model, exclusive: null })).toBe(1);
  });

  it('takes a factor’s standard deviation from the half-normal quantile of Phi(u)', () => {
    // R 4.2: -0.8 * qnorm(pnorm(-u) / 2).
    const expected = [
      [-1, 0.16013894893351277],
      [0, 0.53959180015686536],
      [1, 1.1276869674347636],
      [3, 2.5641239364791466],
      [8, 6.4679288059132354],
    ] as const;
    for (const [u, sd] of expected) expect(scalesAt(model, [u, 0]).factors[0]! / sd).toBeCloseTo(1, 12);
  });

  it('takes the share from the logit-normal', () => {
    // R 4.2: plogis(-2.6), plogis(-2.6 + 0.8 * 2).
    expect(scalesAt(model, [0, 0]).exclusive).toBeCloseTo(0.06913842034334682, 15);
    expect(scalesAt(model, [0, 2]).exclusive).toBeCloseTo(0.2689414213699951, 15);
    expect(scalesAt({ ...model, exclusive: null }, [0]).exclusive).toBe(0);
  });

  it('passes the prior standard deviations of the columns on', () => {
    expect([...scalesAt(model, [0, 0]).columns]).toEqual([1.2, 0.5]);
  });
});
