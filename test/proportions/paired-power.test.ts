import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { binomialDensity } from '../../lib/numerics/binomial.ts';
import {
  type PairedDesign,
  powerPairedDesign,
  sampleSizePairedDesign,
} from '../../lib/proportions/paired-power.ts';
import { sampleSizeTwoProportions } from '../../lib/proportions/sample-size.ts';
import { mantelHaenszel, type Table } from '../../lib/proportions/stratified.ts';

interface Simulated {
  readonly design: PairedDesign;
  readonly level: number;
  readonly power: number;
  readonly standardError: number;
}

const { cases } = JSON.parse(
  readFileSync(new URL('../reference/paired-power.json', import.meta.url), 'utf8'),
) as { cases: readonly Simulated[] };

/** All tables of pairs that are alike, each with its probability: power without simulation. */
function enumeratedPower(
  { pairs, flowersPerKind: m, freshRate, storedRate }: PairedDesign,
  level: number,
): number {
  let power = 0;
  const grow = (tables: readonly Table[], probability: number): void => {
    if (tables.length === pairs) {
      const { p } = mantelHaenszel(tables).test;
      if (p !== null && p <= 1 - level) power += probability;
      return;
    }
    for (let a = 0; a <= m; a += 1) {
      for (let c = 0; c <= m; c += 1) {
        const both = binomialDensity(a, m, freshRate) * binomialDensity(c, m, storedRate);
        grow(
          [
            ...tables,
            [
              [a, m - a],
              [c, m - c],
            ],
          ],
          probability * both,
        );
      }
    }
  };
  grow([], 1);
  return power;
}

describe('powerPairedDesign', () => {
  it('agrees with all tables enumerated, for alike pairs, within four standard errors', () => {
    for (const design of [
      { pairs: 1, flowersPerKind: 12, freshRate: 0.8, storedRate: 0.35, pairSd: 0 },
      { pairs: 2, flowersPerKind: 4, freshRate: 0.9, storedRate: 0.3, pairSd: 0 },
      { pairs: 3, flowersPerKind: 2, freshRate: 0.9, storedRate: 0.1, pairSd: 0 },
      { pairs: 1, flowersPerKind: 20, freshRate: 0.4, storedRate: 0.4, pairSd: 0 },
    ]) {
      for (const level of [0.95, 0.8]) {
        const { power, standardError } = powerPairedDesign(design, { level, simulations: 20_000, seed: 5 });
        expect(Math.abs(power - enumeratedPower(design, level))).toBeLessThan(4 * standardError);
        expect(standardError).toBeLessThan(0.004);
      }
    }
  });

  it('agrees with simulations in R of pairs that differ, within four standard errors of both', () => {
    // test/reference/paired-power.json: R 4.2.2, rbinom over normal logits, mantelhaen.test, 200,000 seasons a case.
    expect(cases.length).toBe(6);
    for (const { design, level, power: wanted, standardError: theirs } of cases) {
      const { power, standardError } = powerPairedDesign(design, { level, simulations: 20_000, seed: 3 });
      expect(Math.abs(power - wanted), JSON.stringify(design)).toBeLessThan(
        4 * Math.hypot(standardError, theirs),
      );
    }
  });

  const usual = { pairs: 15, flowersPerKind: 3, freshRate: 0.65, storedRate: 0.4, pairSd: 1 };
  const powerOf = (change: Partial<PairedDesign>) => powerPairedDesign({ ...usual, ...change }).power;

  it('rises with pairs, with flowers and with the difference', () => {
    for (const powers of [
      [2, 5, 10, 20, 40].map((pairs) => powerOf({ pairs })),
      [1, 2, 4, 8].map((flowersPerKind) => powerOf({ flowersPerKind })),
      [0.65, 0.55, 0.45, 0.3, 0.1].map((storedRate) => powerOf({ storedRate })),
    ]) {
      powers.slice(1).forEach((power, k) => {
        expect(power).toBeGreaterThan(powers[k]!);
      });
    }
  });

  it('gives the same answer for the same seed, another for another, and less error with more simulations', () => {
    const few = powerPairedDesign(usual, { seed: 4 });
    expect(powerPairedDesign(usual, { seed: 4 })).toEqual(few);
    expect(powerPairedDesign(usual, { seed: 5 })).not.toEqual(few);
    // Four times the seasons, half the error: but for the power itself, which moves within a few errors.
    const many = powerPairedDesign(usual, { seed: 4, simulations: 8000 });
    expect(few.standardError / many.standardError).toBeGreaterThan(1.9);
    expect(few.standardError / many.standardError).toBeLessThan(2.1);
  });

  it('never claims to be without error', () => {
    const sure = powerPairedDesign({ ...usual, pairs: 60, freshRate: 0.95, storedRate: 0.05 });
    expect(sure.power).toBe(1);
    expect(sure.standardError).toBeGreaterThan(0);
    // One flower of each kind in one pair: p is at best 0.317, so nothing is ever found.
    expect(powerOf({ pairs: 1, flowersPerKind: 1 })).toBe(0);
  });

  it('refuses what is no design', () => {
    const refuses = (change: Partial<PairedDesign>, message: string) =>
      expect(() => powerOf(change)).toThrow(message);
    refuses({ pairs: 0 }, 'powerPairedDesign: pairs must be a whole number of at least 1, got 0');
    refuses(
      { flowersPerKind: 1.5 },
      'powerPairedDesign: flowersPerKind must be a whole number of at least 1',
    );
    refuses({ freshRate: 1 }, 'powerPairedDesign: freshRate must be a number between 0 and 1, got 1');
    refuses({ storedRate: 0 }, 'powerPairedDesign: storedRate must be a number between 0 and 1, got 0');
    refuses({ pairSd: -1 }, 'powerPairedDesign: pairSd must be a number of at least 0, got -1');
    refuses({ pairSd: Number.NaN }, 'powerPairedDesign: pairSd must be a finite number, got NaN');
    expect(() => powerPairedDesign(usual, { level: 95 })).toThrow('powerPairedDesign: level');
    expect(() => powerPairedDesign(usual, { simulations: 0 })).toThrow('powerPairedDesign: simulations');
    expect(() => powerPairedDesign(usual, { seed: 0.5 })).toThrow('powerPairedDesign: seed');
  });
});

describe('sampleSizePairedDesign', () => {
  const flowers = { flowersPerKind: 3, freshRate: 0.65, storedRate: 0.4, pairSd: 1 };

  it('is the smallest number of pairs that reaches the power, as powerPairedDesign simulates it', () => {
    for (const power of [0.5, 0.8, 0.9]) {
      const { pairs, ...reached } = sampleSizePairedDesign(flowers, { power, seed: 9 });
      expect(reached.power).toBeGreaterThanOrEqual(power);
      expect(powerPairedDesign({ ...flowers, pairs }, { seed: 9 })).toEqual(reached);
      expect(powerPairedDesign({ ...flowers, pairs: pairs - 1 }, { seed: 9 }).power).toBeLessThan(power);
    }
  });

  it('needs about the flowers of two groups where pairs are alike', () => {
    // R 4.2.2, power.prop.test(p1 = .6, p2 = .4, power = .8): n = 96.9 a group.
    const alike = { flowersPerKind: 10, freshRate: 0.6, storedRate: 0.4, pairSd: 0 };
    const { pairs } = sampleSizePairedDesign(alike, { simulations: 5000 });
    const { trials1 } = sampleSizeTwoProportions(0.6, 0.4);
    expect(trials1).toBe(97);
    expect(Math.abs(pairs * 10 - trials1)).toBeLessThanOrEqual(15);
  });

  it('needs more pairs for a smaller difference, a higher power and a higher level', () => {
    const size = (change: object, options: object = {}) =>
      sampleSizePairedDesign({ ...flowers, ...change }, options).pairs;
    const usual = size({});
    expect(size({ storedRate: 0.5 })).toBeGreaterThan(usual);
    expect(size({ flowersPerKind: 1 })).toBeGreaterThan(usual);
    expect(size({}, { power: 0.95 })).toBeGreaterThan(usual);
    expect(size({}, { level: 0.99 })).toBeGreaterThan(usual);
  });

  it('refuses what has no answer', () => {
    const refuses = (change: object, options: object, message: string) =>
      expect(() => sampleSizePairedDesign({ ...flowers, ...change }, options)).toThrow(message);
    refuses({ storedRate: 0.65 }, {}, 'storedRate must differ from freshRate (0.65), got 0.65');
    refuses({}, { power: 1 }, 'sampleSizePairedDesign: power must be a number between 0 and 1, got 1');
    refuses({}, { power: 0.01 }, 'sampleSizePairedDesign: power must be above 1 - level');
    refuses({ storedRate: 0.649 }, { simulations: 20 }, 'sampleSizePairedDesign: storedRate must be further');
    refuses({ pairSd: Infinity }, {}, 'sampleSizePairedDesign: pairSd must be a finite number');
  });
});
