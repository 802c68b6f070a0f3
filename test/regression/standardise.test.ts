import { describe, expect, it } from 'vitest';
import type { FitMethod } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { type Scenario, standardise } from '../../lib/regression/standardise.ts';
import {
  expectReference,
  formulaDesign,
  type Json,
  type Levels,
  readCases,
  readTable,
  type Table,
  texts,
} from './reference-cases.ts';
import {
  indicator,
  median,
  pairMeans,
  type SeasonRows,
  seasonDesign,
  seasonRows,
} from './reference-seasons.ts';

/** The exposure set to a level: its indicators, and the products of these with another factor's. */
function exposureSetting(
  table: Table,
  exposure: string,
  level: string,
  levels: Levels,
  names: readonly string[],
) {
  const setting = new Map<string, number | readonly number[]>();
  for (const name of names) {
    const [first, second] = name.split(':');
    if (!first!.startsWith(exposure)) continue;
    const on = first === `${exposure}${level}` ? 1 : 0;
    if (second === undefined) setting.set(name, on);
    else {
      const factor = Object.keys(levels!).find((key) => second.startsWith(key))!;
      setting.set(
        name,
        indicator(texts(table, factor), second.slice(factor.length)).map((value) => on * value),
      );
    }
  }
  return setting;
}

function summary(
  fit: ReturnType<typeof logistic>,
  reference: Scenario,
  treated: Scenario,
  weights?: readonly number[],
) {
  const { probabilities, contrasts, covariance } = standardise(fit, {
    set: [reference, treated],
    ...(weights ? { weights } : {}),
  });
  const { difference, ratio, logOddsRatio } = contrasts[0]!;
  return {
    p_treated: probabilities[1]!.estimate,
    se_p_treated: probabilities[1]!.se,
    p_reference: probabilities[0]!.estimate,
    se_p_reference: probabilities[0]!.se,
    difference: difference.estimate,
    se_difference: difference.se,
    ci_difference: [difference.lower, difference.upper],
    z: difference.estimate! / difference.se!,
    p_value: difference.p,
    ratio: ratio.estimate,
    se_log_ratio: ratio.se,
    ci_ratio: [ratio.lower, ratio.upper],
    marginal_log_odds_ratio: logOddsRatio.estimate,
    se_marginal_log_odds_ratio: logOddsRatio.se,
    covariance_p_treated_p_reference: covariance![1],
  };
}

describe('standardise', () => {
  // test/reference/f_standardisation.json: R 4.2.2 g-computation with analytic gradients, covariate rows fixed.
  for (const reference of readCases('f_standardisation.json')) {
    it(`agrees with R on ${reference.id}`, () => {
      const { formula, exposure, treated, levels, fit: kind, data } = reference.input;
      const table = readTable(data as string);
      const method: FitMethod = kind === 'firth' ? 'firth' : 'maximum-likelihood';
      const fit = logistic(formulaDesign(table, formula as string, levels as Levels), { method });
      const set = (level: string) =>
        exposureSetting(table, exposure as string, level, levels as Levels, fit.design.names);
      for (const level of treated as readonly string[]) {
        const key = `${level}_vs_${String(reference.input.reference)}`;
        const from = set(reference.input.reference as string);
        const all = (reference.expected.standardised as Record<string, Json>)[key];
        expectReference(reference, 'standardised', summary(fit, from, set(level)), all);
        const only = (reference.expected.standardised_over_treated_rows_only as Record<string, Json>)[key];
        if (only === undefined) continue;
        const weights = indicator(texts(table, exposure as string), level);
        expectReference(reference, 'standardised', summary(fit, from, set(level), weights), only);
      }
    });
  }
});

function scenarioOf(rows: SeasonRows, storage: string): Scenario {
  const ages = rows.ageDays.filter((_, i) => rows.storage[i] === storage);
  return {
    storagefridge: storage === 'fridge' ? 1 : 0,
    storagefreezer: storage === 'freezer' ? 1 : 0,
    log1p_age: storage === 'fresh' ? 0 : Math.log1p(median(ages)),
  };
}

const asObserved = (storage: string): Scenario => ({
  storagefridge: storage === 'fridge' ? 1 : 0,
  storagefreezer: storage === 'freezer' ? 1 : 0,
});

describe('standardise on whole seasons', () => {
  // test/reference/k_seasons.json: simulated seasons, R 4.2.2.
  const cases = readCases('k_seasons.json');
  for (const reference of cases.filter(({ id }) => id.includes('-standardised-glm-'))) {
    it(`agrees with R on ${reference.id}`, () => {
      const rows = seasonRows(reference.input.data as string);
      const design = seasonDesign(rows, reference.id.at(-1)!);
      for (const [key, method] of [
        ['contrasts', 'maximum-likelihood'],
        ['contrasts_firth', 'firth'],
      ] as const) {
        const fit = logistic(design, { method });
        for (const [name, wanted] of Object.entries(reference.expected[key] as Record<string, Json>)) {
          const storage = name.split('_')[0]!;
          const actual = name.endsWith('age_as_observed')
            ? summary(fit, asObserved('fresh'), asObserved(storage))
            : summary(fit, scenarioOf(rows, 'fresh'), scenarioOf(rows, storage));
          expectReference(reference, key, actual, wanted);
        }
      }
    });
  }

  for (const reference of cases.filter(({ id }) => id.endsWith('-glm-pair-means'))) {
    it(`agrees with R on ${reference.id}`, () => {
      const rows = seasonRows(reference.input.data as string);
      const design = seasonDesign(rows, 'A');
      const columns = design.columns as Record<string, readonly number[]>;
      const fit = logistic({
        ...design,
        columns: {
          ...columns,
          pm_fridge: pairMeans(rows, columns.storagefridge!),
          pm_freezer: pairMeans(rows, columns.storagefreezer!),
          pm_la: pairMeans(rows, columns.log1p_age!),
        },
      });
      const { expected } = reference;
      const terms = new Map(fit.terms.map((term) => [term.term, term]));
      for (const [name, value] of Object.entries(expected.coefficients as Record<string, number>)) {
        expectReference(reference, 'coefficients', terms.get(name)!.estimate, value);
        expectReference(reference, 'se', terms.get(name)!.se, (expected.se as Record<string, number>)[name]);
      }
      expectReference(reference, 'loglik', fit.logLik, expected.loglik);
      const actual = summary(fit, scenarioOf(rows, 'fresh'), scenarioOf(rows, 'freezer'));
      expectReference(reference, 'standardised', actual, expected.standardised_freezer_vs_fresh);
    });
  }
});

describe('standardise with other questions', () => {
  const spec = { successes: [2, 8, 3], trials: [10, 10, 5], columns: { stored: [1, 0, 1], age: [3, 0, 9] } };
  const fit = logistic({ ...spec, columns: { stored: [1, 0, 1] } });

  it('gives the observed rates of a saturated model', () => {
    const { probabilities } = standardise(fit, { set: [{ stored: 0 }, { stored: 1 }] });
    // Exact: 8/10 and (2 + 3)/(10 + 5).
    expect(probabilities.map(({ estimate }) => estimate!.toFixed(12))).toEqual([
      '0.800000000000',
      '0.333333333333',
    ]);
  });

  it('keeps ranges of probabilities between 0 and 1', () => {
    const sure = logistic({ successes: [1, 29], trials: [30, 30], columns: { stored: [1, 0] } });
    const { probabilities } = standardise(sure, { set: [{ stored: 0 }], level: 0.9999 });
    expect(probabilities[0]!.upper).toBeLessThan(1);
    expect(probabilities[0]!.lower).toBeGreaterThan(0);
  });

  it('is unknown where the fit is separated', () => {
    const split = logistic({ successes: [0, 8], trials: [10, 10], columns: { stored: [1, 0] } });
    const result = standardise(split, { set: [{ stored: 0 }, { stored: 1 }] });
    expect(result.contrasts[0]!.difference).toMatchObject({
      estimate: null,
      lower: null,
      because: 'separated',
    });
    expect(result.covariance).toBeNull();
  });

  it('refuses unknown columns, wrong lengths and weights', () => {
    expect(() => standardise(fit, { set: [] })).toThrow(RangeError);
    expect(() => standardise(fit, { set: [{ storage: 1 }] })).toThrow(/set must name columns of the fit/);
    expect(() => standardise(fit, { set: [{ stored: [1, 0] }] })).toThrow(RangeError);
    expect(() => standardise(fit, { set: [{ stored: Number.NaN }] })).toThrow(RangeError);
    expect(() => standardise(fit, { set: [{ stored: 1 }], weights: [1] })).toThrow(RangeError);
    expect(() => standardise(fit, { set: [{ stored: 1 }], weights: [0, 0, 0] })).toThrow(RangeError);
    expect(() => standardise(fit, { set: [{ stored: 1 }], weights: [1, -1, 1] })).toThrow(RangeError);
    expect(() => standardise(fit, { set: [{ stored: 1 }], level: 0 })).toThrow(RangeError);
  });
});
