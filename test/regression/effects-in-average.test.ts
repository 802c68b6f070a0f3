import { describe, expect, it } from 'vitest';
import { curveOf } from '../../lib/regression/effects-in-average.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { mixedLogistic } from '../../lib/regression/mixed-logistic.ts';
import { standardise } from '../../lib/regression/standardise.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import { byTerm, expectCovariance, expectReference, type Json, readCases } from './reference-cases.ts';
import { median, seasonDesign, seasonRows } from './reference-seasons.ts';

describe('standardise of a mixed fit', () => {
  // test/reference/k_seasons.json: Laplace fits in R 4.2.2; modes and variances held fixed.
  const cases = readCases('k_seasons.json').filter(({ id }) => id.includes('-glmm'));
  it.each(cases.map((reference) => [reference.id, reference] as const))(
    'agrees with R on %s',
    (_, reference) => {
      const rows = seasonRows(reference.input.data as string);
      const { mother, pair } = rows;
      const father = pair.map((name) => name.split(' × ')[1]!);
      const labels = new Map([
        ['mother', mother],
        ['father', father],
        ['pair', pair],
      ]);
      const groups = new Map(
        (reference.input.random_intercepts as string[]).map((name) => [name, labels.get(name)!] as const),
      );
      const fit = mixedLogistic({ ...seasonDesign(rows, 'A'), groups });
      const scenario = (storage: string) => ({
        storagefridge: storage === 'fridge' ? 1 : 0,
        storagefreezer: storage === 'freezer' ? 1 : 0,
        log1p_age:
          storage === 'fresh'
            ? 0
            : Math.log1p(median(rows.ageDays.filter((_age, i) => rows.storage[i] === storage))),
      });
      const set = ['fresh', 'fridge', 'freezer'].map(scenario);
      const check = (wanted: Json, effects: 'modes' | 'zero', scenarioIndex: number) => {
        const { probabilities, contrasts } = standardise(fit, { set, effects });
        const { difference } = contrasts[scenarioIndex - 1]!;
        const [reached, from] = [probabilities[scenarioIndex]!, probabilities[0]!];
        const actual = {
          p_treated: reached.estimate,
          se_p_treated: reached.se,
          p_reference: from.estimate,
          se_p_reference: from.se,
          difference: difference.estimate,
          se_difference: difference.se,
          ci_difference: [difference.lower, difference.upper],
        };
        expectReference(reference, 'standardised', actual, wanted);
      };
      const { conditional_on_modes, typical_plant_u0, population_averaged } = reference.expected
        .standardised as unknown as Record<string, Record<string, Json>>;
      check(conditional_on_modes!.freezer_vs_fresh!, 'modes', 2);
      check(conditional_on_modes!.fridge_vs_fresh!, 'modes', 1);
      check(typical_plant_u0!.freezer_vs_fresh!, 'zero', 2);
      const averaged = standardise(fit, { set, effects: 'averaged' });
      const [fresh, fridge, freezer] = averaged.probabilities.map(({ estimate }) => estimate);
      expectReference(
        reference,
        'standardised',
        {
          p_fresh: fresh,
          p_fridge: fridge,
          p_freezer: freezer,
          difference_freezer_fresh: averaged.contrasts[1]!.difference.estimate,
        },
        population_averaged!,
      );
      expectCovariance(fit.covariance, reference.expected.vcov_fixef);
      const wald = waldIntervals(fit);
      if (reference.expected.z) {
        expectReference(
          reference,
          'z',
          byTerm(wald, (t) => t.estimate! / t.se!),
          reference.expected.z,
        );
      }
    },
  );
});

describe('curveOf', () => {
  const spec = {
    successes: [1, 4, 2, 5],
    trials: [5, 5, 5, 5],
    columns: {},
    groups: { plant: ['a', 'b', 'c', 'd'] },
  };

  it('leaves a fit without random effects as it is', () => {
    const curve = curveOf(logistic(spec), 'averaged');
    expect(curve.probability(0)).toBe(0.5);
    expect(curve.slope(0)).toBe(0.25);
    expect([...curve.offset]).toEqual([0, 0, 0, 0]);
  });

  it("averages over plants never seen: nearer to a half, as Zeger's approximation says", () => {
    const fit = mixedLogistic(spec);
    const { variance } = fit.variances[0]!;
    const curve = curveOf(fit, 'averaged');
    // Zeger, Liang & Albert (1988) Biometrics 44, 1049–1060: eta / √(1 + c² σ²) with c = 16 √3 / (15 π).
    const c = (16 * Math.sqrt(3)) / (15 * Math.PI);
    const near = 1 / (1 + Math.exp(-2 / Math.sqrt(1 + c * c * variance)));
    expect(variance).toBeGreaterThan(0.1);
    expect(Math.abs(curve.probability(2) - near)).toBeLessThan(0.01);
    const h = 1e-5;
    expect((curve.probability(1 + h) - curve.probability(1 - h)) / (2 * h)).toBeCloseTo(curve.slope(1), 8);
  });

  it('refuses an effect that is none', () => {
    expect(() => standardise(mixedLogistic(spec), { set: [{}], effects: 'none' as 'zero' })).toThrow(
      'standardise: effects must be one of modes, zero, averaged, got "none"',
    );
  });
});
