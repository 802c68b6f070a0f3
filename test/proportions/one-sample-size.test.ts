import { describe, expect, it } from 'vitest';
import { wilson } from '../../lib/proportions/one-sample.ts';
import { powerOfWilson, sampleSizeOneProportion } from '../../lib/proportions/one-sample-size.ts';
import { facts } from '../season-facts-reference.ts';

describe('powerOfWilson', () => {
  // Exact arithmetic: against 9 in 10, ten trials' range leaves 0.9 out up to 7 successes; of 1024 equally likely outcomes
  // those of 0 to 7 successes are 968.
  it('is the share of outcomes whose range leaves the chance out', () => {
    expect(powerOfWilson(0.5, 10, 0.9)).toBeCloseTo(968 / 1024, 12);
  });

  it('counts exactly those outcomes whose Wilson range leaves the chance out', () => {
    for (const [trials, hypothesis] of [
      [1, 0.3],
      [7, 0.45],
      [40, 0.2],
    ] as const) {
      const chance = 0.6;
      let expected = 0;
      let ways = 1;
      for (let x = 0; x <= trials; x += 1) {
        const { lower, upper } = wilson(x, trials);
        if (lower > hypothesis || upper < hypothesis)
          expected += ways * chance ** x * (1 - chance) ** (trials - x);
        ways = (ways * (trials - x)) / (x + 1);
      }
      expect(powerOfWilson(chance, trials, hypothesis)).toBeCloseTo(expected, 12);
    }
  });

  it('is the error of the range where there is nothing to find: near 5 in 100', () => {
    // Brown, Cai & DasGupta (2001) Stat Sci 16:101: Wilson's coverage lies near the nominal level.
    const error = powerOfWilson(0.3, 100, 0.3);
    expect(error).toBeGreaterThan(0.03);
    expect(error).toBeLessThan(0.07);
  });

  it.each([
    [0, 10, 0.5],
    [0.5, 0, 0.5],
    [0.5, 10, 1],
  ])('refuses what is no chance and no number of trials: %s, %s, %s', (probability, trials, hypothesis) => {
    expect(() => powerOfWilson(probability, trials, hypothesis)).toThrow(/^powerOfWilson: /);
  });
});

describe('sampleSizeOneProportion', () => {
  // scripts/reference/season-facts.R: every outcome's range by R's prop.test without correction.
  it.each(facts.sizes)('is what R finds by enumeration: $probability against $line at $level', (size) => {
    expect(sampleSizeOneProportion(size.probability, size.line, { level: size.level })).toBe(size.trials);
  });

  it('is enough from there on, and the one before is not', () => {
    const n = sampleSizeOneProportion(0.5, 0.3);
    expect(powerOfWilson(0.5, n - 1, 0.3)).toBeLessThan(0.8);
    for (let more = 0; more < 12; more += 1) {
      expect(powerOfWilson(0.5, n + more, 0.3)).toBeGreaterThanOrEqual(0.8);
    }
  });

  it('grows with the power that is wanted', () => {
    expect(sampleSizeOneProportion(0.5, 0.3, { power: 0.9 })).toBeGreaterThan(
      sampleSizeOneProportion(0.5, 0.3),
    );
  });

  it('refuses a chance equal to the one in question, and one too near to tell', () => {
    expect(() => sampleSizeOneProportion(0.3, 0.3)).toThrow(/must differ from hypothesis \(0.3\)/);
    expect(() => sampleSizeOneProportion(0.3, 0.301)).toThrow(/for 5000 trials to be enough/);
    expect(() => sampleSizeOneProportion(0.5, 0.3, { power: 1 })).toThrow(/power must be/);
  });
});
