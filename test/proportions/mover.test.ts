import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moverProduct, moverRatio } from '../../lib/proportions/mover.ts';
import { wilson } from '../../lib/proportions/one-sample.ts';
import { facts } from '../season-facts-reference.ts';

const part = (lower: number, estimate: number, upper: number) => ({ estimate, lower, upper });

describe('moverRatio', () => {
  // Failures of fresh and frozen pollen against those of unpollinated flowers, 7 of 7 (scripts/reference/season-facts.R:
  // roots of the MOVER difference found by uniroot).
  it.each([
    ['fresh', 40, 113],
    ['frozen', 74, 120],
  ])('has the ends that R finds as roots of the difference: %s', (storage, failures, flowers) => {
    const expected = facts.corrected.find((each) => each.storage === storage)!;
    const ratio = moverRatio(wilson(failures, flowers), wilson(7, 7));
    expect(1 - ratio.estimate!).toBeCloseTo(expected.estimate, 9);
    expect(1 - ratio.upper!).toBeCloseTo(expected.lower, 9);
    expect(1 - ratio.lower!).toBeCloseTo(expected.upper, 9);
  });

  // The definition: first − R × second has an end at 0 where R is an end of the ratio.
  it('has ends at which the difference of first and R times second ends at zero', () => {
    const count = fc.record({
      trials: fc.integer({ min: 3, max: 60 }),
      share: fc.double({ min: 0.35, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(count, count, (a, b) => {
        const first = wilson(Math.round(a.share * a.trials), a.trials);
        const second = wilson(Math.round(b.share * b.trials), b.trials);
        const { lower, upper } = moverRatio(first, second);
        const low = (r: number) =>
          first.estimate -
          r * second.estimate -
          Math.hypot(first.estimate - first.lower, r * (second.upper - second.estimate));
        const high = (r: number) =>
          first.estimate -
          r * second.estimate +
          Math.hypot(first.upper - first.estimate, r * (second.estimate - second.lower));
        if (lower !== null) expect(low(lower)).toBeCloseTo(0, 9);
        if (upper !== null) expect(high(upper)).toBeCloseTo(0, 9);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('is the first divided by a constant where the second has no range', () => {
    const { estimate, lower, upper } = moverRatio(part(0.2, 0.5, 0.6), part(0.5, 0.5, 0.5));
    expect(estimate).toBe(1);
    expect(lower).toBeCloseTo(0.4, 12);
    expect(upper).toBeCloseTo(1.2, 12);
  });

  it('leaves an end open where the second may be next to nothing', () => {
    expect(moverRatio(part(0.2, 0.5, 0.8), part(0.1, 0.2, 0.9))).toMatchObject({
      lower: null,
      because: 'unbounded',
    });
  });

  it('does not divide by zero', () => {
    expect(moverRatio(part(0.2, 0.5, 0.8), part(0, 0, 0.4))).toMatchObject({
      estimate: null,
      because: 'zero-count',
    });
  });

  it.each([
    [part(0.6, 0.5, 0.8)],
    [part(-0.1, 0.5, 0.8)],
    [part(0.1, 0.5, Number.POSITIVE_INFINITY)],
    [part(Number.NaN, 0.5, 0.8)],
  ])('refuses ends that are none', (wrong) => {
    expect(() => moverRatio(wrong, part(0.1, 0.2, 0.3))).toThrow(
      /^moverRatio: first must hold finite 0 ≤ lower ≤ estimate ≤ upper, got/,
    );
    expect(() => moverRatio(part(0.1, 0.2, 0.3), wrong)).toThrow(RangeError);
  });
});

describe('moverProduct', () => {
  // scripts/reference/season-facts.R: fruit set × seeds a fruit × germination.
  it('multiplies rates and means with the range that R finds', () => {
    const { fruitSet, seeds, germination, seedAFlower } = facts;
    const parts = [
      part(fruitSet.final.lower, fruitSet.final.fruits / fruitSet.final.flowers, fruitSet.final.upper),
      part(seeds.lower, seeds.seeds / seeds.fruits, seeds.upper),
      part(germination.lower, germination.germinated / germination.sown, germination.upper),
    ];
    const product = moverProduct(parts);
    expect(product.estimate).toBeCloseTo(seedAFlower.estimate, 9);
    expect(product.lower).toBeCloseTo(seedAFlower.lower, 9);
    expect(product.upper).toBeCloseTo(seedAFlower.upper, 9);
  });

  // Exact arithmetic: log distances 3 ln 2 and 4 ln 2 make 5 ln 2.
  it('adds distances of logarithms as squares, each side for itself', () => {
    const product = moverProduct([part(1 / 8, 1, 2 ** 3), part(1 / 16, 1, 2 ** 4)]);
    expect(product.estimate).toBe(1);
    expect(product.lower).toBeCloseTo(1 / 32, 12);
    expect(product.upper).toBeCloseTo(32, 12);
  });

  it('reaches down to 0 where a part does, and is unknown where a part is 0', () => {
    expect(moverProduct([part(0, 0.2, 0.4), part(1, 2, 3)]).lower).toBe(0);
    expect(moverProduct([part(0, 0, 0.4), part(1, 2, 3)])).toMatchObject({
      estimate: null,
      because: 'zero-count',
    });
  });

  it('refuses ends that are none, naming the part', () => {
    expect(() => moverProduct([part(1, 2, 3), part(3, 2, 1)])).toThrow(/parts\[1\]/);
  });
});
