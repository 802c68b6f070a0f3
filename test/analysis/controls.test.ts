import { describe, expect, it } from 'vitest';
import { controlEffects } from '../../lib/analysis/controls.ts';
import { rawRates } from '../../lib/analysis/raw.ts';
import type { Cross } from '../../lib/season/season.ts';
import { facts, threeSeasons } from '../season-facts-reference.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const effectsOf = (crosses: readonly Partial<Cross>[]) => controlEffects(rawRates(seasonOf(crosses)));

const unpollinated = (fruits: number, flowers: number) =>
  flowersOf(fruits, flowers, { control: 'unpollinated', pollenParent: null, storage: null });

describe('controls', () => {
  it.each(facts.corrected)(
    'leave of $storage pollen in the invented grower’s file what R finds',
    (expected) => {
      const found = controlEffects(rawRates(threeSeasons())).corrected.find(
        ({ control, storage }) => control === 'unpollinated' && storage === expected.storage,
      )!;
      expect(found.corrected.estimate).toBeCloseTo(expected.estimate, 9);
      expect(found.corrected.lower).toBeCloseTo(expected.lower, 9);
      expect(found.corrected.upper).toBeCloseTo(expected.upper, 9);
    },
  );

  // Abbott (1925): (treated − control) ÷ (1 − control), here (0.6 − 0.2) ÷ 0.8.
  it('take a background out by Abbott’s formula', () => {
    const [effect] = effectsOf([...flowersOf(12, 20), ...unpollinated(2, 10)]).corrected;
    expect(effect!.corrected.estimate).toBeCloseTo(0.5, 12);
    expect([effect!.raw.fruits, effect!.raw.flowers]).toEqual([12, 20]);
  });

  it('widen the range even where no control took: 0 of 5 is not 0', () => {
    const [effect] = effectsOf([...flowersOf(12, 20), ...unpollinated(0, 5)]).corrected;
    expect(effect!.corrected.estimate).toBeCloseTo(0.6, 12);
    expect(effect!.corrected.lower!).toBeLessThan(effect!.raw.lower! - 0.1);
  });

  it('may show that the crosses took less often than flowers without pollen: then below 0, not clamped', () => {
    const [effect] = effectsOf([...flowersOf(1, 10), ...unpollinated(5, 10)]).corrected;
    // (0.1 − 0.5) ÷ 0.5
    expect(effect!.corrected.estimate).toBeCloseTo(-0.8, 12);
  });

  it('leave nothing to show where every control took', () => {
    const [effect] = effectsOf([...flowersOf(5, 5), ...unpollinated(3, 3)]).corrected;
    expect(effect!.corrected).toMatchObject({ estimate: null, because: 'background-always-took' });
  });

  it('change nothing where there are none, and say that there are none', () => {
    const { unpollinated: none, selfed, corrected } = effectsOf(flowersOf(1, 2));
    expect(none).toMatchObject({ flowers: 0, estimate: null, because: 'no-flowers' });
    expect(selfed.flowers).toBe(0);
    expect(corrected).toEqual([]);
  });
});
