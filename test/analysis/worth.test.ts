import { describe, expect, it } from 'vitest';
import { worthOf } from '../../lib/analysis/worth.ts';
import { fakePredictor } from './fake-predictor.ts';
import { flowersOf } from './flowers-of.ts';

const flowers = flowersOf([
  { seedParent: 'A', pollenParent: 'B' },
  { seedParent: 'B', pollenParent: 'A', storage: 'frozen', ageDays: 30 },
]);
const parents = [
  { seedParent: 'A', weight: 0.25 },
  { seedParent: 'B', weight: 0.75 },
];
const none = () => false;

describe('worthOf', () => {
  it('is what the grower says, whatever the data', () => {
    expect(worthOf(0.3, [], null, [], none)).toEqual({ value: 0.3, source: 'option', freshRate: null });
  });

  it('is half of the mean fruit set of fresh pollen over the seed parents and all fathers, by hand', () => {
    // Father A is for B only (0.6), father B for A only (0.2): a plant is not its own seed parent. Mean 0.4, half 0.2.
    const predict = fakePredictor({ pair: (mother) => (mother === 'B' ? 0.6 : 0.2), storage: () => -9 });
    const { value, source, freshRate } = worthOf(undefined, flowers, predict, parents, none);
    expect(freshRate).toBeCloseTo(0.4, 12);
    expect(value).toBeCloseTo(0.2, 12);
    expect(source).toBe('half-of-fresh');
  });

  it('weighs the seed parents, and counts a pair that never sets fruit in a draw as 0', () => {
    // Father C for A (0.25) at 0.2 and B (0.75), which is 0 in half the draws: 0.05 + 0.75 × 0.3 = 0.275.
    const own = flowersOf([{ seedParent: 'A', pollenParent: 'C' }]);
    const predict = fakePredictor({ pair: (mother) => (mother === 'B' ? [0, 0.6] : 0.2), draws: 2 });
    expect(worthOf(undefined, own, predict, parents, none).freshRate).toBeCloseTo(0.275, 12);
  });

  it('leaves incompatible pairs out', () => {
    const predict = fakePredictor({ pair: (mother) => (mother === 'B' ? 0.6 : 0.2) });
    const incompatible = (mother: string, father: string) => mother === 'A' && father === 'B';
    expect(worthOf(undefined, flowers, predict, parents, incompatible).freshRate).toBeCloseTo(0.6, 12);
  });

  it('is the mean over the occasions to come', () => {
    // Around a half a spread changes nothing; around 0.9 it lowers the mean.
    const rate = (occasion: number, p: number) =>
      worthOf(undefined, flowers, fakePredictor({ pair: () => p, occasion }), parents, none).freshRate!;
    expect(rate(1, 0.5)).toBeCloseTo(0.5, 12);
    expect(rate(1, 0.9)).toBeLessThan(0.88);
  });

  it('must be given where no flower was fresh', () => {
    expect(worthOf(undefined, flowers.slice(1), fakePredictor({}), parents, none)).toEqual({
      value: null,
      source: null,
      freshRate: null,
      because: 'no-fresh-flower',
    });
  });

  it('is null with a reason where there is no model or no seed parent', () => {
    expect(worthOf(undefined, flowers, null, parents, none).because).toBe('no-model');
    expect(worthOf(undefined, flowers, fakePredictor({}), [], none)).toMatchObject({
      value: null,
      because: 'no-seed-parent',
    });
  });
});
