import { describe, expect, it } from 'vitest';
import { adjustedP, compareAt } from '../../lib/regression/comparisons.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { expectReference, type Json } from './reference-cases.ts';
import { gridCases, gridOf } from './reference-grid.ts';

describe('compareAt', () => {
  // test/reference/f_standardisation.json: emmeans, R 4.2.2.
  it.each(gridCases.map((reference) => [reference.id, reference] as const))(
    'agrees with the contrasts of emmeans on %s',
    (_, reference) => {
      const { contrasts_logit, contrast_p_adjusted, contrasts_regrid_response } = reference.expected
        .emmeans as unknown as {
        contrasts_logit: Record<'estimate' | 'se' | 'z' | 'p', readonly number[]>;
        contrast_p_adjusted: Record<'bonferroni' | 'holm' | 'tukey', Record<string, number>>;
        contrasts_regrid_response: Record<'estimate' | 'se', readonly number[]>;
      };
      const check = (actual: unknown, wanted: Json, key = 'emmeans') =>
        expectReference(reference, key, actual, wanted);
      const { fit, rows } = gridOf(reference, 'equal');
      const linear = compareAt(fit, rows);
      check(
        linear.map((c) => c.estimate),
        contrasts_logit.estimate,
      );
      check(
        linear.map((c) => c.se),
        contrasts_logit.se,
      );
      check(
        linear.map((c) => c.estimate! / c.se!),
        contrasts_logit.z,
      );
      check(
        linear.map((c) => c.p),
        contrasts_logit.p,
      );
      for (const adjust of ['bonferroni', 'holm', 'tukey'] as const) {
        check(
          compareAt(fit, rows, { adjust }).map((c) => c.p),
          Object.values(contrast_p_adjusted[adjust]),
          'contrast_p_adjusted',
        );
      }
      const chances = compareAt(fit, rows, { scale: 'probability' });
      check(
        chances.map((c) => c.estimate),
        contrasts_regrid_response.estimate,
      );
      check(
        chances.map((c) => c.se),
        contrasts_regrid_response.se,
      );
    },
  );

  const spec = {
    successes: [2, 8, 5],
    trials: [10, 10, 10],
    columns: { room: [1, 0, 0], frozen: [0, 1, 0] },
  };
  const rows = [{}, { room: 1 }, { frozen: 1 }];

  it('compares each row with each later one, first the first', () => {
    const fit = logistic(spec);
    expect(compareAt(fit, rows).map(({ first, second }) => [first, second])).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
    ]);
    // Saturated: the log odds ratio of 2/10 against 5/10, by hand.
    expect(compareAt(fit, rows)[0]!.estimate).toBeCloseTo(Math.log(2 / 8), 12);
    expect(compareAt(fit, rows)[0]!.se).toBeCloseTo(Math.sqrt(1 / 2 + 1 / 8 + 1 / 5 + 1 / 5), 12);
    expect(compareAt(fit, [{}, {}])[0]).toMatchObject({ estimate: 0, se: 0, lower: 0, upper: 0, p: null });
  });

  it('is unknown where the fit is separated, and says which option or row is wrong', () => {
    const split = logistic({ ...spec, successes: [0, 8, 5] });
    expect(compareAt(split, rows)[0]).toMatchObject({
      estimate: null,
      se: null,
      p: null,
      because: 'separated',
    });
    const fit = logistic(spec);
    expect(() => compareAt(fit, [{}])).toThrow('compareAt: rows must hold at least two, got 1');
    expect(() => compareAt(fit, [{}, { cellar: 1 }])).toThrow(
      'compareAt: rows must give finite numbers to columns',
    );
    expect(() => compareAt(fit, rows, { adjust: 'sidak' as 'holm' })).toThrow(
      'compareAt: adjust must be one of none, bonferroni, holm, tukey, got "sidak"',
    );
    expect(() => compareAt(fit, rows, { scale: 'odds' as 'linear' })).toThrow(
      'compareAt: scale must be one of',
    );
    expect(() => compareAt(fit, rows, { level: 1 })).toThrow('compareAt: level');
  });
});

describe('adjustedP', () => {
  it("agrees with R's p.adjust", () => {
    // R 4.2.2: p.adjust(2 * pnorm(-c(0.5, 2.5, 1.9, 2.2)), "holm"), and "bonferroni".
    const zs = [0.5, -2.5, 1.9, 2.2];
    expect(adjustedP(zs, 4, 'holm').map((p) => p.toFixed(10))).toEqual([
      '0.6170750775',
      '0.0496773226',
      '0.1148662393',
      '0.0834206851',
    ]);
    expect(adjustedP(zs, 4, 'bonferroni').map((p) => p.toFixed(10))).toEqual([
      '1.0000000000',
      '0.0496773226',
      '0.2297324785',
      '0.1112275801',
    ]);
  });
});
