/** What must not matter: order of rows, names of levels, grouping of rows, which outcome is called success. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mantelHaenszel, type Table } from '../../lib/proportions/stratified.ts';
import { betaBinomial } from '../../lib/regression/beta-binomial.ts';
import { conditionalLogistic } from '../../lib/regression/conditional-logistic.ts';
import type { DesignSpec } from '../../lib/regression/design.ts';
import { designColumns } from '../../lib/regression/design-columns.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { mixedLogistic } from '../../lib/regression/mixed-logistic.ts';
import { profileIntervals } from '../../lib/regression/profile.ts';
import { standardise } from '../../lib/regression/standardise.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';

/** Rows of counts with a method, an age and a plant; every method has some of both outcomes, so that fits exist. */
interface Row {
  readonly successes: number;
  readonly trials: number;
  readonly storage: 'fresh' | 'room' | 'frozen';
  readonly age: number;
  readonly plant: string;
}

const anyRow: fc.Arbitrary<Row> = fc
  .record({
    trials: fc.integer({ min: 1, max: 5 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    storage: fc.constantFrom('fresh' as const, 'room' as const, 'frozen' as const),
    age: fc.integer({ min: 0, max: 6 }),
    plant: fc.constantFrom('P', 'Q', 'R', '__proto__'),
  })
  .map(({ share, ...row }) => ({ ...row, successes: Math.round(share * row.trials) }));

const overlapping: readonly Row[] = (['fresh', 'room', 'frozen'] as const).flatMap((storage) =>
  [0, 6].flatMap((age) => ['P', 'Q'].map((plant) => ({ successes: 1, trials: 2, storage, age, plant }))),
);
const seasons = fc.array(anyRow, { minLength: 1, maxLength: 25 }).map((rows) => [...overlapping, ...rows]);

function specOf(
  rows: readonly Row[],
  names = ['room', 'frozen'],
  relabel = (plant: string) => plant,
): DesignSpec {
  return {
    successes: rows.map((row) => row.successes),
    trials: rows.map((row) => row.trials),
    columns: {
      ...Object.fromEntries(
        names.map((name) => [name, rows.map(({ storage }) => (storage === name ? 1 : 0))]),
      ),
      age: rows.map(({ age }) => age),
    },
    groups: { plant: rows.map(({ plant }) => relabel(plant)) },
  };
}

/** Numbers that a method says about a season; NaN stands for what it does not know, in the same places. */
type Summary = (spec: DesignSpec) => readonly (number | null)[];

const ends = (all: readonly { estimate: number | null; lower: number | null; upper: number | null }[]) =>
  all.flatMap(({ estimate, lower, upper }) => [estimate, lower, upper]);
const scenarios = {
  set: [
    { room: 0, frozen: 0 },
    { room: 0, frozen: 1 },
  ],
};

const methods: ReadonlyMap<string, Summary> = new Map<string, Summary>([
  ['maximum likelihood, Wald', (spec) => ends(waldIntervals(logistic(spec)))],
  ['maximum likelihood, profile', (spec) => ends(profileIntervals(logistic(spec)))],
  ["Firth's method, profile", (spec) => ends(profileIntervals(logistic(spec, { method: 'firth' })))],
  ['a mixed fit', (spec) => ends(waldIntervals(mixedLogistic(spec)))],
  [
    'conditional logistic regression',
    (spec) => ends(waldIntervals(conditionalLogistic({ ...spec, intercept: false }))),
  ],
  ['standardise', (spec) => ends(standardise(logistic(spec), scenarios).probabilities)],
  ['standardise of a mixed fit', (spec) => ends(standardise(mixedLogistic(spec), scenarios).probabilities)],
]);

function expectSame(
  actual: readonly (number | null)[],
  wanted: readonly (number | null)[],
  digits: number,
): void {
  expect(actual.length).toBe(wanted.length);
  actual.forEach((value, i) => {
    const other = wanted[i]!;
    if (value === null || other === null) expect(value).toBe(other);
    else expect(Math.abs(value - other)).toBeLessThanOrEqual(10 ** -digits * Math.max(1, Math.abs(other)));
  });
}

// A fixed seed: a rare season at the edge of a tolerance must not fail someone else's change.
const runs = { numRuns: 15, seed: 1 };

describe.each([...methods])('%s', (name, summary) => {
  // A variance found near its boundary is known to fewer digits.
  const digits = name.includes('mixed') ? 4 : 6;

  it('does not depend on the order of rows', () => {
    const shuffled = seasons.chain((rows) =>
      fc.tuple(fc.constant(rows), fc.shuffledSubarray([...rows], { minLength: rows.length })),
    );
    fc.assert(
      fc.property(shuffled, ([rows, other]) => {
        expectSame(summary(specOf(other)), summary(specOf(rows)), digits);
      }),
      runs,
    );
  });

  it('does not depend on the names of levels', () => {
    fc.assert(
      fc.property(seasons, (rows) => {
        const renamed = specOf(rows, ['room', 'frozen'], (plant) => `plant ${plant}`);
        expectSame(summary(renamed), summary(specOf(rows)), digits);
      }),
      runs,
    );
  });

  it('does not depend on splitting grouped rows into single flowers', () => {
    fc.assert(
      fc.property(seasons, (rows) => {
        const single = rows.flatMap((row) =>
          Array.from({ length: row.trials }, (_, k) => ({
            ...row,
            trials: 1,
            successes: k < row.successes ? 1 : 0,
          })),
        );
        expectSame(summary(specOf(single)), summary(specOf(rows)), digits);
      }),
      runs,
    );
  });

  it('is mirrored when fruit and no fruit change places', () => {
    fc.assert(
      fc.property(seasons, (rows) => {
        const mirrored = rows.map((row) => ({ ...row, successes: row.trials - row.successes }));
        const probability = name.startsWith('standardise');
        const turned = summary(specOf(mirrored));
        const back = Array.from({ length: turned.length / 3 }, (_, k) => {
          const [estimate, lower, upper] = turned.slice(3 * k, 3 * k + 3);
          return [estimate!, upper!, lower!].map((value) =>
            value === null ? null : probability ? 1 - value : -value,
          );
        }).flat();
        expectSame(back, summary(specOf(rows)), digits);
      }),
      runs,
    );
  });
});

describe('recoding of levels', () => {
  it('leaves probabilities and likelihood as they are whichever level is the reference', () => {
    fc.assert(
      fc.property(
        seasons,
        fc.constantFrom('maximum-likelihood' as const, 'firth' as const),
        (rows, method) => {
          const fitWith = (levels: readonly string[]) =>
            logistic(
              designColumns({
                successes: rows.map((row) => row.successes),
                trials: rows.map((row) => row.trials),
                variables: { storage: rows.map((row) => row.storage), age: rows.map((row) => row.age) },
                terms: [
                  { kind: 'factor', variable: 'storage' },
                  { kind: 'log1p', variable: 'age' },
                ],
                levels: { storage: levels },
              }).design,
              { method },
            );
          const [first, other] = [fitWith(['fresh', 'room', 'frozen']), fitWith(['frozen', 'fresh', 'room'])];
          expectSame([...other.fitted, other.logLik], [...first.fitted, first.logLik], 6);
          expectSame([other.penalisedLogLik], [first.penalisedLogLik], 6);
        },
      ),
      runs,
    );
  });
});

describe('ranges', () => {
  const nested: ReadonlyMap<string, (spec: DesignSpec, level: number) => readonly (number | null)[]> =
    new Map([
      ['Wald', (spec: DesignSpec, level: number) => ends(waldIntervals(logistic(spec), { level }))],
      ['profile', (spec: DesignSpec, level: number) => ends(profileIntervals(logistic(spec), { level }))],
      [
        "Firth's profile",
        (spec: DesignSpec, level: number) =>
          ends(profileIntervals(logistic(spec, { method: 'firth' }), { level })),
      ],
      [
        'standardised',
        (spec: DesignSpec, level: number) =>
          ends(standardise(logistic(spec), { ...scenarios, level }).probabilities),
      ],
    ]);
  it.each([...nested])('by %s are nested in their level and hold their estimate', (name, rangesOf) => {
    fc.assert(
      fc.property(seasons, fc.constantFrom([0.5, 0.8], [0.8, 0.95], [0.95, 0.999]), (rows, [low, high]) => {
        const [narrow, wide] = [rangesOf(specOf(rows), low!), rangesOf(specOf(rows), high!)];
        for (let k = 0; k < narrow.length; k += 3) {
          expect(wide[k + 1]!).toBeLessThan(narrow[k + 1]!);
          expect(narrow[k + 1]!).toBeLessThan(narrow[k]!);
          expect(narrow[k]!).toBeLessThan(narrow[k + 2]!);
          expect(narrow[k + 2]!).toBeLessThan(wide[k + 2]!);
          if (name !== 'standardised') continue;
          expect(wide[k + 1]!).toBeGreaterThanOrEqual(0);
          expect(wide[k + 2]!).toBeLessThanOrEqual(1);
        }
      }),
      runs,
    );
  });
});

describe('Mantel–Haenszel and the beta-binomial', () => {
  const cell = fc.integer({ min: 0, max: 9 });
  const anyTable: fc.Arbitrary<Table> = fc.tuple(fc.tuple(cell, cell), fc.tuple(cell, cell));

  it('do not depend on the order of strata or rows, and mirror', () => {
    fc.assert(
      fc.property(fc.array(anyTable, { minLength: 1, maxLength: 8 }), (tables) => {
        const all = (list: readonly Table[]) => {
          const { oddsRatio, riskDifference, test } = mantelHaenszel(list);
          return { odds: oddsRatio.estimate, riskDifference, test };
        };
        const [straight, reversed] = [all(tables), all([...tables].reverse())];
        expectSame([reversed.odds, reversed.test.p], [straight.odds, straight.test.p], 10);
        const mirrored = all(tables.map(([[a, b], [c, d]]) => [[b, a] as const, [d, c] as const] as const));
        if (straight.odds !== null && straight.odds > 0) {
          expect(mirrored.odds).toBeCloseTo(1 / straight.odds, 10);
        }
        expectSame([mirrored.test.p], [straight.test.p], 10);
        const { estimate } = straight.riskDifference;
        if (estimate !== null) expect(mirrored.riskDifference.estimate).toBeCloseTo(-estimate, 10);
      }),
    );
  });

  it('keeps its fit for other orders of rows and mirrors', () => {
    fc.assert(
      fc.property(seasons, (rows) => {
        const { logLik } = betaBinomial(specOf(rows));
        const reversed = betaBinomial(specOf([...rows].reverse()));
        const mirrored = betaBinomial(
          specOf(rows.map((row) => ({ ...row, successes: row.trials - row.successes }))),
        );
        expectSame([reversed.logLik, mirrored.logLik], [logLik, logLik], 7);
      }),
      runs,
    );
  });
});
