import { describe, expect, it } from 'vitest';
import { logistic } from '../../lib/regression/logistic.ts';
import { predictAt } from '../../lib/regression/predict-at.ts';
import { expectReference, type Json } from './reference-cases.ts';
import { gridCases, gridOf } from './reference-grid.ts';

describe('predictAt', () => {
  // test/reference/f_standardisation.json: emmeans, R 4.2.2.
  it.each(gridCases.map((reference) => [reference.id, reference] as const))(
    'agrees with emmeans on %s',
    (_, reference) => {
      const check = (actual: unknown, wanted: Json) => expectReference(reference, 'emmeans', actual, wanted);
      const { logit, response, logit_proportional_weights } = reference.expected.emmeans as unknown as {
        readonly [key: string]: { readonly [key: string]: readonly number[] };
      };
      const equal = gridOf(reference, 'equal');
      const predictions = predictAt(equal.fit, equal.rows);
      check(
        predictions.map((p) => p.linear),
        logit!.emmean!,
      );
      check(
        predictions.map((p) => p.se),
        logit!.se!,
      );
      check(
        predictions.map((p) => Math.log(p.lower! / (1 - p.lower!))),
        logit!.lower!,
      );
      check(
        predictions.map((p) => Math.log(p.upper! / (1 - p.upper!))),
        logit!.upper!,
      );
      check(
        predictions.map((p) => p.estimate),
        response!.prob!,
      );
      check(
        predictions.map((p) => p.se! * p.estimate! * (1 - p.estimate!)),
        response!.se!,
      );
      check(
        predictions.map((p) => p.lower),
        response!.lower!,
      );
      check(
        predictions.map((p) => p.upper),
        response!.upper!,
      );
      const proportional = gridOf(reference, 'proportional');
      const weighted = predictAt(proportional.fit, proportional.rows);
      check(
        weighted.map((p) => p.linear),
        logit_proportional_weights!.emmean!,
      );
      check(
        weighted.map((p) => p.se),
        logit_proportional_weights!.se!,
      );
    },
  );

  const spec = { successes: [2, 8], trials: [10, 10], columns: { stored: [1, 0] } };

  it('is unknown where the fit is separated, and refuses names and values that are none', () => {
    const split = logistic({ ...spec, successes: [0, 8] });
    expect(predictAt(split, [{ stored: 1 }])[0]).toMatchObject({
      estimate: null,
      se: null,
      because: 'separated',
    });
    const fit = logistic(spec);
    expect(() => predictAt(fit, [{ storage: 1 }])).toThrow(RangeError);
    expect(() => predictAt(fit, [{ stored: Number.NaN }])).toThrow(RangeError);
    expect(() => predictAt(fit, [{ stored: 1 }], { level: 1.2 })).toThrow(RangeError);
  });
});
