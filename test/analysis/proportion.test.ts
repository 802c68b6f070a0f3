import { describe, expect, it } from 'vitest';
import { proportion, proportionOf } from '../../lib/analysis/proportion.ts';

describe('proportion', () => {
  // Newcombe (1998) Stat Med 17:857, Table I: 0 of 20 by the score method is 0.0000 to 0.1611.
  it('gives Wilson’s range', () => {
    const { fruits, flowers, estimate, lower, upper } = proportion(0, 20, 0.95);
    expect([fruits, flowers, estimate, lower]).toEqual([0, 20, 0, 0]);
    expect(upper).toBeCloseTo(0.1611, 4);
  });

  it('names no rate where there is no flower', () => {
    expect(proportion(0, 0, 0.95)).toEqual({
      fruits: 0,
      flowers: 0,
      estimate: null,
      lower: null,
      upper: null,
      because: 'no-flowers',
    });
  });

  it('counts a list of flowers', () => {
    expect(proportionOf([{ fruit: 1 }, { fruit: 0 }, { fruit: 1 }], 0.95)).toMatchObject({
      fruits: 2,
      flowers: 3,
    });
  });
});
