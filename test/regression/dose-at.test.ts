import { describe, expect, it } from 'vitest';
import { normalCdf, normalQuantile } from '../../lib/numerics/normal.ts';
import { doseAt } from '../../lib/regression/dose-at.ts';
import type { Link } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { expectReference, formulaDesign, type Levels, readCases, readTable } from './reference-cases.ts';

interface DoseCase {
  readonly coefficient_index_1based: readonly [number, number];
  readonly p: readonly number[];
  readonly dose: readonly number[];
  readonly se_delta: readonly number[];
  readonly fieller_g: number;
  readonly fieller_lower: readonly number[];
  readonly fieller_upper: readonly number[];
}

describe('doseAt', () => {
  // test/reference/c_glm.json: MASS::dose.p and Fieller's theorem in R 4.2.2.
  for (const reference of readCases('c_glm.json').filter(({ expected }) => 'dose_p' in expected)) {
    it(`agrees with dose.p and Fieller on ${reference.id}`, () => {
      const { formula, levels } = reference.input.design as { formula: string; levels: Levels };
      const table = readTable(reference.input.data as string);
      const fit = logistic(formulaDesign(table, formula, levels), { link: reference.input.link as Link });
      const wanted = reference.expected.dose_p as unknown as DoseCase;
      const [constant, slope] = wanted.coefficient_index_1based.map((index) => fit.design.names[index - 1]!);
      wanted.p.forEach((p, k) => {
        const dose = doseAt(fit, p, { column: slope!, at: { [constant!]: 1 } });
        expectReference(reference, 'dose_p', dose.estimate, wanted.dose[k]);
        expectReference(reference, 'dose_p', dose.se, wanted.se_delta[k]);
        expectReference(reference, 'dose_p', dose.fieller.g, wanted.fieller_g);
        expectReference(reference, 'dose_p', dose.fieller.lower, wanted.fieller_lower[k]);
        expectReference(reference, 'dose_p', dose.fieller.upper, wanted.fieller_upper[k]);
      });
    });
  }

  it('gives the profile-likelihood range of the budworm and beetle data', () => {
    // R 4.2.2: uniroot on the deviance of glm with the dose held (columns recombined, offset link(p)).
    const budworm = logistic(
      formulaDesign(readTable('c_budworm.csv'), 'cbind(dead, alive) ~ sex + ldose - 1', { sex: ['F', 'M'] }),
    );
    const female = { column: 'ldose', at: { sexF: 1 } };
    const half = doseAt(budworm, 0.5, female);
    expect(half.lower).toBeCloseTo(2.817610897715, 8);
    expect(half.upper).toBeCloseTo(3.7315217168038, 8);
    const quarter = doseAt(budworm, 0.25, female);
    expect(quarter.lower).toBeCloseTo(1.7050388413303, 8);
    expect(quarter.upper).toBeCloseTo(2.698883896597, 8);
    const beetle = logistic(
      formulaDesign(readTable('c_bliss_beetle.csv'), 'cbind(killed, survived) ~ dose', null),
      { link: 'cloglog' },
    );
    const lethal = doseAt(beetle, 0.5, { column: 'dose' });
    expect(lethal.lower).toBeCloseTo(1.7705346400347, 9);
    expect(lethal.upper).toBeCloseTo(1.7863481232721, 9);
  });

  // Fruit set 6, 5, 4 of 10 at 0, 10 and 20 days: the slope's likelihood-ratio statistic is below 3.84.
  const flat = logistic({ successes: [6, 5, 4], trials: [10, 10, 10], columns: { ageDays: [0, 10, 20] } });

  it('leaves an end open where the slope may be zero', () => {
    const dose = doseAt(flat, 0.2, { column: 'ageDays' });
    expect(dose.fieller.g).toBeGreaterThan(1);
    expect(dose.upper).toBeNull();
    expect(dose.fieller.upper).toBeNull();
    // R 4.2.2: MASS dose.p, and uniroot on the deviance with the dose held.
    expect(dose.estimate).toBeCloseTo(44.19022583, 6);
    expect(dose.lower).toBeCloseTo(17.881445469116, 7);
    expect(dose.fieller.lower).toBeLessThan(dose.estimate!);
  });

  it('is unbounded on both sides where the sought value is among those tried', () => {
    expect(doseAt(flat, 0.5, { column: 'ageDays' })).toMatchObject({ lower: null, upper: null });
    // By symmetry of the counts about 10 days.
    expect(doseAt(flat, 0.5, { column: 'ageDays' }).estimate).toBeCloseTo(10, 10);
  });

  it('is Ki · sigma of the viability equation at a half, so it moves with the start while sigma stays', () => {
    // Ellis & Roberts (1980) Annals of Botany 45, 13–30: probit v = Ki − p / sigma; p50 = Ki · sigma. Counts of a
    // thousand million grains, so that rounding is nothing.
    const [grains, sigma, ages] = [1e9, 60, [0, 30, 60, 90, 120]];
    for (const ki of [1.5, 0.8]) {
      const alive = ages.map((age) => Math.round(grains * normalCdf(ki - age / sigma)));
      const trials = ages.map(() => grains);
      const fit = logistic({ successes: alive, trials, columns: { ageDays: ages } }, { link: 'probit' });
      expect(doseAt(fit, 0.5, { column: 'ageDays' }).estimate).toBeCloseTo(ki * sigma, 4);
      expect(-1 / fit.terms[1]!.estimate!).toBeCloseTo(sigma, 4);
      // From half of the start the age is another: what `halfAge` of a season asks for.
      const start = normalCdf(ki);
      const half = sigma * (ki - normalQuantile(start / 2));
      expect(doseAt(fit, start / 2, { column: 'ageDays' }).estimate).toBeCloseTo(half, 4);
    }
  });

  it('is unknown without a slope, and under separation', () => {
    const level = logistic({ successes: [5, 5], trials: [10, 10], columns: { ageDays: [-1, 1] } });
    expect(doseAt(level, 0.2, { column: 'ageDays' })).toMatchObject({ estimate: null, because: 'no-slope' });
    const split = logistic({ successes: [10, 0], trials: [10, 10], columns: { ageDays: [0, 9] } });
    expect(doseAt(split, 0.5, { column: 'ageDays' })).toMatchObject({
      estimate: null,
      upper: null,
      because: 'separated',
    });
  });

  it('profiles the penalised likelihood of a Firth fit', () => {
    const split = logistic(
      { successes: [10, 0], trials: [10, 10], columns: { ageDays: [0, 9] } },
      { method: 'firth' },
    );
    const dose = doseAt(split, 0.5, { column: 'ageDays' });
    // By symmetry; the ends mirror each other about the middle.
    expect(dose.estimate).toBeCloseTo(4.5, 10);
    expect(dose.lower! + dose.upper!).toBeCloseTo(9, 7);
    expect(dose.lower).toBeGreaterThan(0);
  });

  it('refuses impossible questions', () => {
    expect(() => doseAt(flat, 0, { column: 'ageDays' })).toThrow(RangeError);
    expect(() => doseAt(flat, 1, { column: 'ageDays' })).toThrow(RangeError);
    expect(() => doseAt(flat, 0.5, { column: 'age' })).toThrow(/column must name columns of the fit/);
    expect(() => doseAt(flat, 0.5, { column: 'ageDays', at: { x: 1 } })).toThrow(/at must name columns/);
    expect(() => doseAt(flat, 0.5, { column: 'ageDays', at: { '(Intercept)': Number.NaN } })).toThrow(
      RangeError,
    );
    expect(() => doseAt(flat, 0.5, { column: 'ageDays', at: { '(Intercept)': 0 } })).toThrow(
      /at must leave a column/,
    );
    expect(() => doseAt(flat, 0.5, { column: 'ageDays', level: 2 })).toThrow(RangeError);
  });
});

describe('doseAt where the slope is hardly known', () => {
  it('has an open end instead of calling far doses collinear', () => {
    // At doses of 1e9 the recombined columns became one: "columns must not be linear combinations, got (Intercept)".
    const fit = logistic({ successes: [1, 0, 1, 0, 1, 0], columns: { age: [0, 1, 2, 3, 4, 5] } });
    const { estimate, lower, upper, fieller } = doseAt(fit, 0.5, { column: 'age' });
    expect(Number.isFinite(estimate)).toBe(true);
    expect([lower, upper]).toContain(null);
    // Fieller agrees that the range is unbounded: g is above 1.
    expect(fieller.g).toBeGreaterThan(1);
  });
});
