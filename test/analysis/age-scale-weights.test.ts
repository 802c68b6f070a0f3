import { describe, expect, it } from 'vitest';
import { scaleWeights } from '../../lib/analysis/age-scale-weights.ts';

describe('scaleWeights', () => {
  it('weighs by the exponential of the log marginal likelihoods', () => {
    // exp(0) : exp(log 3) = 1 : 3.
    const [a, b] = scaleWeights([-7, -7 + Math.log(3)]);
    expect(a).toBeCloseTo(0.25, 14);
    expect(b).toBeCloseTo(0.75, 14);
  });

  it('does not vanish or overflow far from 0', () => {
    expect(scaleWeights([-5000, -5000])).toEqual([0.5, 0.5]);
    expect(scaleWeights([900, -900])).toEqual([1, 0]);
  });
});
