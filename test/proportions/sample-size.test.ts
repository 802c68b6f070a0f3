import { describe, expect, it } from 'vitest';
import { powerTwoProportions } from '../../lib/proportions/power.ts';
import { detectableProportion, sampleSizeTwoProportions } from '../../lib/proportions/sample-size.ts';
import { expectReference, type Json, type ReferenceCase, readCases } from '../regression/reference-cases.ts';

const cases = readCases('h_power.json');
const sizes = cases.filter(({ id }) => id.startsWith('h-size'));

interface Question {
  readonly p1: number;
  readonly p2: number;
  readonly power: number;
  readonly alpha: number;
}

function questionOf({ input }: ReferenceCase): Question {
  return input as unknown as Question;
}

describe('sampleSizeTwoProportions', () => {
  it('has the reference sizes of the normal approximations', () => {
    expect(sizes.length).toBe(3);
    for (const each of sizes) {
      const { p1, p2, power, alpha } = questionOf(each);
      const options = { power, level: 1 - alpha };
      const normal = sampleSizeTwoProportions(p1, p2, options);
      const strict = sampleSizeTwoProportions(p1, p2, { ...options, method: 'normal-both-tails' });
      const continuity = sampleSizeTwoProportions(p1, p2, { ...options, method: 'continuity' });
      const arcsine = sampleSizeTwoProportions(p1, p2, { ...options, method: 'arcsine' });
      expectReference(each, 'n_power_prop_test', normal.unrounded, each.expected.n_power_prop_test);
      expectReference(
        each,
        'n_power_prop_test_strict',
        strict.unrounded,
        each.expected.n_power_prop_test_strict,
      );
      const closed = {
        n1: normal.unrounded,
        n1_ceiling: normal.trials1,
        n1_continuity: continuity.unrounded,
        n1_continuity_ceiling: continuity.trials2,
        arcsine_n_per_group: arcsine.unrounded,
      };
      expectReference(each, 'closed_form', closed, each.expected.closed_form);
    }
  });

  it.each(sizes.map((each) => [each.id, each] as const))(
    "has the reference size of Fisher's test, %s",
    (_, each) => {
      const { p1, p2, power, alpha } = questionOf(each);
      const level = 1 - alpha;
      const { trials1, trials2, unrounded, firstReaching } = sampleSizeTwoProportions(p1, p2, {
        power,
        level,
        method: 'fisher',
      });
      const { expected } = each;
      expect(firstReaching).toBe(expected.exact_fisher_first_n_reaching_power);
      expect(trials1).toBe(expected.exact_fisher_smallest_n_after_which_power_stays_above_scanned);
      expect([trials2, unrounded]).toEqual([trials1, null]);
      const first = firstReaching!;
      const powers = {
        power_at_n: powerTwoProportions(p1, first, p2, first, { level, method: 'fisher' }),
        power_at_n_minus_1: powerTwoProportions(p1, first - 1, p2, first - 1, { level, method: 'fisher' }),
      };
      expectReference(each, 'exact_fisher_first_n', powers, expected.exact_fisher_first_n as Json);
    },
  );

  it('reaches its power with groups of unequal size', () => {
    for (const ratio of [0.5, 2, 3]) {
      const { trials1, trials2, unrounded } = sampleSizeTwoProportions(0.4, 0.6, { ratio });
      expect(powerTwoProportions(0.4, trials1, 0.6, trials2)).toBeGreaterThanOrEqual(0.8 - 1e-9);
      expect(trials2).toBe(Math.ceil(ratio * unrounded!));
    }
  });

  it('needs fewer trials to find a difference in a direction named beforehand', () => {
    const [two, one] = (['two-sided', 'one-sided'] as const).map((alternative) =>
      sampleSizeTwoProportions(0.4, 0.6, { alternative }),
    );
    expect(one!.trials1).toBeLessThan(two!.trials1);
    expect(
      powerTwoProportions(0.4, one!.trials1, 0.6, one!.trials1, { alternative: 'one-sided' }),
    ).toBeGreaterThan(0.8);
  });

  it('refuses questions that have no size', () => {
    expect(() => sampleSizeTwoProportions(0.5, 0.5)).toThrow(
      'sampleSizeTwoProportions: p2 must differ from p1 (0.5), got 0.5',
    );
    expect(() => sampleSizeTwoProportions(0, 0.5)).toThrow('sampleSizeTwoProportions: p1');
    expect(() => sampleSizeTwoProportions(0.2, 0.5, { power: 1 })).toThrow('sampleSizeTwoProportions: power');
    expect(() => sampleSizeTwoProportions(0.2, 0.5, { power: 0.01 })).toThrow(
      'power must be above 1 - level',
    );
    expect(() => sampleSizeTwoProportions(0.2, 0.5, { level: 95 })).toThrow(
      'sampleSizeTwoProportions: level',
    );
    expect(() => sampleSizeTwoProportions(0.2, 0.5, { ratio: 0 })).toThrow('sampleSizeTwoProportions: ratio');
    expect(() => sampleSizeTwoProportions(0.2, 0.5, { method: 'fisher', ratio: 2 })).toThrow(
      'ratio must be 1',
    );
    expect(() => sampleSizeTwoProportions(0.2, 0.5, { method: 'fisher', alternative: 'one-sided' })).toThrow(
      'alternative with method fisher must be one of two-sided',
    );
    expect(() => sampleSizeTwoProportions(0.2, 0.5, { method: 'guess' as 'normal' })).toThrow('method');
  });

  it('says at once that a tiny difference is too much to enumerate', () => {
    expect(() => sampleSizeTwoProportions(0.5, 0.501, { method: 'fisher' })).toThrow(
      'method must not be fisher above 1000 trials a group',
    );
  });
});

describe('detectableProportion', () => {
  it('has the reference values above and below', () => {
    const own = cases.filter(({ id }) => id.startsWith('h-detectable'));
    expect(own.length).toBe(2);
    for (const each of own) {
      const {
        p1,
        n_per_group: n,
        power,
        alpha,
      } = each.input as Record<'p1' | 'n_per_group' | 'power' | 'alpha', number>;
      for (const direction of ['above', 'below'] as const) {
        const found = detectableProportion(p1, n, { power, level: 1 - alpha, direction });
        expectReference(each, `p2_${direction}`, found, each.expected[`p2_${direction}`]);
      }
    }
  });

  it('is null where no chance is far enough', () => {
    expect(detectableProportion(0.5, 3)).toBeNull();
    expect(detectableProportion(0.05, 20, { direction: 'below' })).toBeNull();
  });

  it('refuses chances, sizes and options that are none', () => {
    expect(() => detectableProportion(1, 10)).toThrow('detectableProportion: p1');
    expect(() => detectableProportion(0.5, 0)).toThrow('detectableProportion: trials');
    expect(() => detectableProportion(0.5, 10, { power: 0 })).toThrow('detectableProportion: power');
    expect(() => detectableProportion(0.5, 10, { direction: 'up' as 'above' })).toThrow('direction');
  });
});
