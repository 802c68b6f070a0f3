import { describe, expect, it } from 'vitest';
import { logistic } from '../../lib/regression/logistic.ts';
import { predictAt } from '../../lib/regression/predict-at.ts';
import {
  expectReference,
  formulaDesign,
  type Levels,
  numbers,
  readCases,
  readTable,
} from './reference-cases.ts';

interface Grid {
  readonly emmean: readonly number[];
  readonly se: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
}

/** Value of one column at the reference grid: means of covariates, factors averaged, the exposure at a level. */
function gridValue(
  name: string,
  exposure: string,
  level: string,
  levels: Levels,
  mean: (name: string) => number,
): number {
  return name
    .split(':')
    .map((part) => {
      if (part.startsWith(exposure)) return part === `${exposure}${level}` ? 1 : 0;
      const factor = Object.keys(levels!).find((key) => part.startsWith(key));
      return factor === undefined ? mean(part) : 1 / levels![factor]!.length;
    })
    .reduce((product, value) => product * value, 1);
}

describe('predictAt', () => {
  // test/reference/f_standardisation.json: emmeans, R 4.2.2 (log1p taken at the mean age, as emmeans does).
  for (const reference of readCases('f_standardisation.json').filter(
    ({ expected }) => 'emmeans' in expected,
  )) {
    it(`agrees with emmeans on ${reference.id}`, () => {
      const { formula, exposure, levels: given, data } = reference.input;
      const levels = given as Levels;
      const table = readTable(data as string);
      const fit = logistic(formulaDesign(table, formula as string, levels));
      // emmeans takes a covariate of two values as a factor: both count alike.
      const average = (name: string): number => {
        const all = numbers(table, name);
        const distinct = [...new Set(all)];
        const values = distinct.length === 2 ? distinct : all;
        return values.reduce((sum, value) => sum + value, 0) / values.length;
      };
      const mean = (name: string): number => {
        const inner = /^log1p\((.+)\)$/.exec(name)?.[1];
        return inner === undefined ? average(name) : Math.log1p(average(inner));
      };
      const rows = levels![exposure as string]!.map(
        (level) =>
          new Map(
            fit.design.names
              .slice(1)
              .map((name) => [name, gridValue(name, exposure as string, level, levels, mean)]),
          ),
      );
      const { logit, response } = reference.expected.emmeans as unknown as {
        logit: Grid;
        response: { prob: readonly number[]; lower: readonly number[]; upper: readonly number[] };
      };
      const predictions = predictAt(fit, rows);
      expectReference(
        reference,
        'emmeans',
        predictions.map((p) => p.linear),
        logit.emmean,
      );
      expectReference(
        reference,
        'emmeans',
        predictions.map((p) => p.se),
        logit.se,
      );
      expectReference(
        reference,
        'emmeans',
        predictions.map((p) => p.estimate),
        response.prob,
      );
      expectReference(
        reference,
        'emmeans',
        predictions.map((p) => p.lower),
        response.lower,
      );
      expectReference(
        reference,
        'emmeans',
        predictions.map((p) => p.upper),
        response.upper,
      );
    });
  }

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
