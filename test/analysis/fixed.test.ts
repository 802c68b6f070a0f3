import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { onScale } from '../../lib/analysis/age-scale.ts';
import { fixedModel } from '../../lib/analysis/fixed.ts';
import type { AgeScale } from '../../lib/analysis/models.ts';
import type { Season } from '../../lib/season/season.ts';
import { referenceSeason } from '../reference-season.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

interface FixedCase {
  readonly id: string;
  readonly data: string;
  readonly ageScale: AgeScale;
  readonly method: string;
  readonly flowers: number;
  readonly terms: readonly string[];
  readonly estimate: readonly number[];
  readonly se: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly p: readonly number[];
  readonly logLik: number;
  readonly auc: number;
  readonly brier: number;
}

const { cases, tolerance } = JSON.parse(
  readFileSync(new URL('../reference/fixed-model.json', import.meta.url), 'utf8'),
) as { cases: FixedCase[]; tolerance: { estimate: number; ends: number; p: number } };

function near(actual: number | null, expected: number, allowed: number): void {
  expect(actual).not.toBeNull();
  expect(Math.abs(actual! - expected)).toBeLessThanOrEqual(allowed * (1 + Math.abs(expected)));
}

/** Without the frozen flowers that took: frozen pollen then separates, as in the reference. */
function withoutFrozenFruit(season: Season): Season {
  return {
    ...season,
    crosses: season.crosses.filter(
      ({ storage, outcome }) => storage !== 'frozen' || !(outcome === 'fruit' || outcome === 'dropped'),
    ),
  };
}

// R 4.2.2 glm.fit and brglm2 with root-found profiles: scripts/reference/fixed-model.R.
describe.each(cases)('fixedModel of $id', (expected) => {
  const season = referenceSeason(expected.data);
  const { ageScale } = expected;
  const model = fixedModel(expected.method === 'firth' ? withoutFrozenFruit(season) : season, { ageScale });

  it('has the terms, the estimates and the standard errors of R', () => {
    expect(model.method).toBe(expected.method);
    expect(model.flowers).toBe(expected.flowers);
    const terms = new Map(model.terms.map((term) => [term.term, term]));
    expect([...terms.keys()].sort()).toEqual([...expected.terms].sort());
    expected.terms.forEach((name, j) => {
      near(terms.get(name)!.estimate, expected.estimate[j]!, tolerance.estimate);
      near(terms.get(name)!.se, expected.se[j]!, tolerance.estimate);
    });
  });

  it('has the profile ranges and likelihood-ratio p-values of R', () => {
    const terms = new Map(model.terms.map((term) => [term.term, term]));
    expected.terms.forEach((name, j) => {
      near(terms.get(name)!.lower, expected.lower[j]!, tolerance.ends);
      near(terms.get(name)!.upper, expected.upper[j]!, tolerance.ends);
      near(terms.get(name)!.p, expected.p[j]!, tolerance.p);
    });
  });

  it('has the log-likelihood and the checks of fit of R', () => {
    near(model.logLik, expected.logLik, tolerance.estimate);
    near(model.auc, expected.auc, tolerance.estimate);
    near(model.brier, expected.brier, tolerance.estimate);
  });
});

describe('fixedModel', () => {
  it('takes the logarithm of one day more than the age, so that fresh pollen stands at 0', () => {
    expect([onScale(0, 'log1p-days'), onScale(0, 'days'), onScale(90, 'days')]).toEqual([0, 0, 90]);
    expect(onScale(Math.E - 1, 'log1p-days')).toBeCloseTo(1, 15);
  });

  it('names the columns that separate', () => {
    const season = seasonOf([
      ...flowersOf(3, 6),
      ...flowersOf(0, 4, { storage: 'frozen', ageDays: 90 }),
      ...flowersOf(1, 3, { storage: 'room', ageDays: 1 }),
    ]);
    const model = fixedModel(season);
    expect(model.separated).toBe(true);
    expect(model.separatedBy).toEqual(['storage: frozen']);
    expect(model.method).toBe('firth');
  });

  it('leaves out the age of a method tried at one age, and names it', () => {
    const season = seasonOf([
      ...flowersOf(3, 6),
      ...flowersOf(1, 4, { storage: 'frozen', ageDays: 90 }),
      ...flowersOf(2, 3, { storage: 'room', ageDays: 1 }),
      ...flowersOf(1, 3, { storage: 'room', ageDays: 3 }),
    ]);
    const model = fixedModel(season);
    expect(model.withoutAgeTerm).toEqual(['frozen']);
    expect(model.terms.map(({ term }) => term)).toEqual([
      '(Intercept)',
      'storage: room',
      'age: room',
      'storage: frozen',
    ]);
  });

  // Each group's own odds: 2 of 5 and 2 of 4 taken, so ln(2/3), and ln(1) less that. With an age the columns would depend on
  // one another; of two flowers there would be more columns than rows.
  it('leaves out the age of a reference that was stored and tried at one age', () => {
    const frozen = { storage: 'frozen', ageDays: 90 };
    const room = { storage: 'room', ageDays: 1 };
    const model = fixedModel(seasonOf([...flowersOf(2, 5, frozen), ...flowersOf(2, 4, room)]));
    expect(model.withoutAgeTerm).toEqual(['frozen', 'room']);
    expect(model.terms.map(({ term }) => term)).toEqual(['(Intercept)', 'storage: room']);
    expect(model.terms[0]!.estimate).toBeCloseTo(Math.log(2 / 3), 10);
    expect(model.terms[1]!.estimate).toBeCloseTo(-Math.log(2 / 3), 10);
    const two = fixedModel(seasonOf([...flowersOf(0, 1, frozen), ...flowersOf(1, 1, room)]));
    expect(two.terms.map(({ term }) => term)).toEqual(['(Intercept)', 'storage: room']);
  });

  // Intercept only: logit of 3 of 8 is ln(3/5); Firth's of 5 of 5 is ln(5.5/0.5) (half a success and failure added).
  it('is an intercept alone for one method of one age', () => {
    const { terms, method } = fixedModel(seasonOf(flowersOf(3, 8)));
    expect(method).toBe('maximum-likelihood');
    expect(terms).toHaveLength(1);
    expect(terms[0]!.estimate).toBeCloseTo(Math.log(3 / 5), 10);
  });

  it('stays finite where all flowers took', () => {
    const { terms, method, separated } = fixedModel(seasonOf(flowersOf(5, 5)));
    expect([method, separated]).toEqual(['firth', true]);
    expect(terms[0]!.estimate).toBeCloseTo(Math.log(11), 8);
  });

  it('takes the commonest method as the reference where no pollen was fresh', () => {
    const season = seasonOf([
      ...flowersOf(2, 5, { storage: 'frozen', ageDays: 90 }),
      ...flowersOf(1, 3, { storage: 'frozen', ageDays: 200 }),
      ...flowersOf(2, 4, { storage: 'room', ageDays: 1 }),
    ]);
    expect(fixedModel(season).terms.map(({ term }) => term)).toEqual([
      '(Intercept)',
      'age: frozen',
      'storage: room',
    ]);
  });

  it('says why there is no fit', () => {
    const ageless = seasonOf(flowersOf(1, 3, { storage: 'frozen', ageDays: null }));
    expect(fixedModel(ageless)).toMatchObject({
      because: 'no-aged-flowers',
      method: null,
      terms: [],
      logLik: null,
    });
    expect(fixedModel(seasonOf([{ outcome: 'unknown' }]))).toMatchObject({ because: 'no-flowers' });
  });
});
