import { describe, expect, it } from 'vitest';
import { logMeanExp, systematicResample, truncateWeights } from '../../lib/numerics/importance.ts';
import { randomStream } from '../../lib/numerics/random.ts';

describe('logMeanExp', () => {
  it('is the log of the mean', () => {
    expect(logMeanExp([Math.log(1), Math.log(2), Math.log(6)])).toBeCloseTo(Math.log(3), 14);
  });

  it('keeps its digits where exp would overflow or vanish', () => {
    expect(logMeanExp([1000, 1000 + Math.log(3)])).toBeCloseTo(1000 + Math.log(2), 12);
    expect(logMeanExp([-1000, -1000 + Math.log(3)])).toBeCloseTo(-1000 + Math.log(2), 12);
  });

  it('counts what is impossible as 0', () => {
    expect(logMeanExp([Number.NEGATIVE_INFINITY, Math.log(4)])).toBeCloseTo(Math.log(2), 14);
    expect(logMeanExp([Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY])).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('truncateWeights', () => {
  it('gives equal weights their number as worth, whatever constant they share', () => {
    const { weights, effective } = truncateWeights([700, 700, 700, 700]);
    expect(Array.from(weights)).toEqual([0.25, 0.25, 0.25, 0.25]);
    expect(effective).toBe(4);
  });

  it('only normalises weights that are below the cut', () => {
    // 1, 2, 3, 2 of 8; 1 ÷ sum of squares = 64 ÷ 18 (Kong 1992).
    const { weights, effective } = truncateWeights([1, 2, 3, 2].map(Math.log));
    [0.125, 0.25, 0.375, 0.25].forEach((w, k) => {
      expect(weights[k]).toBeCloseTo(w, 14);
    });
    expect(effective).toBeCloseTo(64 / 18, 12);
  });

  it('cuts a weight at the square root of their number times their mean', () => {
    // 15 ones and 85: mean 100 / 16 = 6.25, cut at 4 × 6.25 = 25, so 25 of 40 (Ionides 2008, by hand).
    const { weights } = truncateWeights([...Array(15).fill(0), Math.log(85)]);
    expect(weights[15]).toBeCloseTo(25 / 40, 13);
    expect(weights[0]).toBeCloseTo(1 / 40, 13);
  });

  it('adds up to 1', () => {
    const { weights } = truncateWeights([-3, 0, 2, 40, 1, -800]);
    expect(weights.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 14);
  });
});

describe('systematicResample', () => {
  const weights = Float64Array.of(0.1, 0, 0.35, 0.55);

  it.each([1, 2, 3, 4, 5])(
    'draws each index its expected number of times, but for rounding (seed %s)',
    (seed) => {
      // Systematic resampling takes floor(n w) or ceil(n w) copies (Carpenter, Clifford & Fearnhead 1999).
      const chosen = systematicResample(weights, 7, randomStream(seed));
      expect(chosen.length).toBe(7);
      weights.forEach((weight, k) => {
        const copies = chosen.filter((index) => index === k).length;
        expect(Math.abs(copies - 7 * weight)).toBeLessThan(1);
      });
    },
  );

  it('draws exact shares exactly', () => {
    const chosen = systematicResample(Float64Array.of(0.25, 0.5, 0.25), 4, randomStream(3));
    expect(Array.from(chosen)).toEqual([0, 1, 1, 2]);
  });

  it('stays within the indices where rounding leaves the weights short of 1', () => {
    const chosen = systematicResample(Float64Array.of(0.3, 0.3, 0.3), 50, randomStream(9));
    expect(Math.max(...chosen)).toBe(2);
  });

  it('is right on average', () => {
    let copies = 0;
    const random = randomStream(11);
    for (let run = 0; run < 2000; run += 1) {
      copies += systematicResample(weights, 7, random).filter((index) => index === 2).length;
    }
    // 7 × 0.35 = 2.45 copies: 2 or 3, so a standard deviation of at most 1/2 a run; 4 standard errors of 2,000 runs.
    expect(Math.abs(copies / 2000 - 2.45)).toBeLessThan((4 * 0.5) / Math.sqrt(2000));
  });
});
