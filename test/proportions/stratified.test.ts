import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fisherExact } from '../../lib/proportions/fisher-exact.ts';
import { breslowDay, mantelHaenszel, type Table } from '../../lib/proportions/stratified.ts';
import { pearsonChiSquare } from '../../lib/proportions/two-by-two.ts';
import {
  expectReference,
  type Json,
  type ReferenceCase,
  readCases,
  readTable,
  texts,
} from '../regression/reference-cases.ts';
import { expectPublished, stratifiedCases } from './two-proportion-cases.ts';

function tablesOf({ input }: ReferenceCase): Table[] {
  return (input.strata as unknown as { table: Table }[]).map(({ table }) => table);
}

const cell = fc.integer({ min: 0, max: 15 });
const tables: fc.Arbitrary<Table[]> = fc.array(fc.tuple(fc.tuple(cell, cell), fc.tuple(cell, cell)), {
  minLength: 1,
  maxLength: 12,
});

describe('mantelHaenszel', () => {
  it('has the reference values', () => {
    expect(stratifiedCases.length).toBe(2);
    for (const each of stratifiedCases) {
      const { oddsRatio, riskDifference, riskRatio, test, continuityTest } = mantelHaenszel(tablesOf(each));
      const actual = {
        mh_or: oddsRatio.estimate,
        mh_log_or_se_rbg: oddsRatio.logSe,
        mh_or_ci_rbg: [oddsRatio.lower, oddsRatio.upper],
        cmh: test,
        cmh_continuity: continuityTest,
        mh_risk_difference: riskDifference.estimate,
        mh_risk_ratio: riskRatio.estimate,
        mh_log_rr_se_greenland_robins: riskRatio.logSe,
      };
      for (const [key, value] of Object.entries(actual))
        expectReference(each, key, value, each.expected[key]);
      const printed = each.expected.published as { cmh_continuity_statistic: number; mh_or: number };
      expectPublished([continuityTest.statistic!], printed.cmh_continuity_statistic, each.source);
      expectPublished([oddsRatio.estimate!], printed.mh_or, each.source);
    }
  });

  it("has the risk difference's interval that Sato's formula gives by hand", () => {
    // One stratum, 12 of 20 against 5 of 25, by Sato (1989) in exact fractions:
    // weight 100/9; estimate 2/5; P = (400·5 − 625·12 + 500·5/2) / 2025 = −4250/2025; Q = (12·20 + 5·8) / 90 = 28/9;
    // variance (2/5 · −170/81 + 28/9) (9/100)² = 0.0184
    const { riskDifference } = mantelHaenszel([
      [
        [12, 8],
        [5, 20],
      ],
    ]);
    expect(riskDifference.estimate).toBeCloseTo(0.4, 14);
    const half = 1.959963984540054 * Math.sqrt(0.0184);
    expect(riskDifference.lower).toBeCloseTo(0.4 - half, 12);
    expect(riskDifference.upper).toBeCloseTo(0.4 + half, 12);
  });

  it('is within one stratum the sample odds ratio, and the test that of Pearson with n - 1', () => {
    // Cochran–Mantel–Haenszel over one table is Pearson's statistic × (n − 1) / n (Agresti 2013, 6.3.2)
    const { oddsRatio, test } = mantelHaenszel([
      [
        [12, 8],
        [5, 20],
      ],
    ]);
    expect(oddsRatio.estimate).toBeCloseTo((12 * 20) / (8 * 5), 12);
    expect(test.statistic).toBeCloseTo((pearsonChiSquare(12, 20, 5, 25).statistic! * 44) / 45, 12);
  });

  it('does not count what says nothing', () => {
    const informative: Table[] = [[[3, 3], [1, 6]], [[6, 1], [2, 4]]]; // biome-ignore format: tables
    const empty: Table[] = [[[0, 0], [0, 0]], [[0, 0], [3, 4]], [[1, 0], [0, 0]]]; // biome-ignore format: tables
    const [bare, padded] = [mantelHaenszel(informative), mantelHaenszel([...informative, ...empty])];
    expect(padded).toEqual(bare);
    expect(bare.strataUsed).toBe(2);
  });

  it('turns the odds ratio over and the difference round with the groups', () => {
    fc.assert(
      fc.property(tables, (list) => {
        const [here, there] = [
          mantelHaenszel(list),
          mantelHaenszel(list.map(([first, second]) => [second, first])),
        ];
        if (here.riskDifference.estimate !== null) {
          expect(here.riskDifference.estimate).toBeCloseTo(-there.riskDifference.estimate!, 12);
        }
        if (here.oddsRatio.estimate !== null && there.oddsRatio.estimate !== null) {
          expect(here.oddsRatio.estimate * there.oddsRatio.estimate).toBeCloseTo(1, 10);
        }
        if (here.test.p !== null) expect(here.test.p).toBeCloseTo(there.test.p!, 12);
      }),
    );
  });

  it('returns numbers or null, never anything else', () => {
    fc.assert(
      fc.property(tables, (list) => {
        const all = mantelHaenszel(list);
        for (const part of [all.oddsRatio, all.riskDifference, all.riskRatio, all.test, all.continuityTest]) {
          const values = Object.values(part).filter((value) => typeof value !== 'string');
          expect(values.every((value) => value === null || Number.isFinite(value))).toBe(true);
          if (values.includes(null)) expect('because' in part).toBe(true);
        }
      }),
    );
  });

  it('says what the data cannot tell', () => {
    const oneOutcome = mantelHaenszel([[[3, 0], [4, 0]]]); // biome-ignore format: a table
    expect(oneOutcome.oddsRatio.because).toBe('no-informative-strata');
    expect(oneOutcome.test.because).toBe('no-informative-strata');
    expect(oneOutcome.riskRatio).toMatchObject({ estimate: 1, lower: null, because: 'no-failure' });
    expect(oneOutcome.riskDifference).toMatchObject({ estimate: 0, lower: null, because: 'no-variation' });
    const oneGroup = mantelHaenszel([[[3, 1], [0, 0]]]); // biome-ignore format: a table
    expect(oneGroup.riskDifference.because).toBe('no-strata');
    expect(oneGroup.riskRatio.because).toBe('no-strata');
    const oneSided = mantelHaenszel([[[3, 1], [0, 4]]]); // biome-ignore format: a table
    expect(oneSided.oddsRatio).toMatchObject({
      estimate: null,
      lower: null,
      upper: null,
      because: 'zero-count',
    });
    expect(oneSided.test.p).toBeLessThan(0.1);
  });

  it('takes no correction past 0', () => {
    const { test, continuityTest } = mantelHaenszel([[[2, 2], [2, 3]]]); // biome-ignore format: a table
    expect(test.statistic).toBeGreaterThan(0);
    expect(continuityTest).toMatchObject({ statistic: 0, p: 1 });
  });

  it('refuses what is no list of 2 × 2 tables of counts', () => {
    expect(() => mantelHaenszel([])).toThrow('mantelHaenszel: tables must hold at least one 2 × 2 table');
    expect(() => mantelHaenszel([[[1, 2]]] as unknown as Table[])).toThrow(
      'tables[0] must be [[a, b], [c, d]]',
    );
    expect(() => mantelHaenszel([[[1, -2], [3, 4]]])).toThrow('mantelHaenszel: b of tables[0]'); // biome-ignore format: a table
    expect(() => mantelHaenszel([[[1, 2], [3, 4.5]]])).toThrow('mantelHaenszel: d of tables[0]'); // biome-ignore format: a table
    expect(() => mantelHaenszel([[[1, 2], [3, 4]]], { level: 1 })).toThrow('mantelHaenszel: level'); // biome-ignore format: a table
  });
});

describe('breslowDay', () => {
  it('has the reference values, with and without the correction', () => {
    for (const each of stratifiedCases) {
      const plain = breslowDay(tablesOf(each), { tarone: false });
      const { strataUsed, ...test } = plain;
      expectReference(each, 'breslow_day', test, each.expected.breslow_day);
      expectReference(
        each,
        'breslow_day_tarone',
        breslowDay(tablesOf(each)),
        each.expected.breslow_day_tarone,
      );
      expectReference(
        each,
        'strata_used_in_breslow_day',
        strataUsed,
        each.expected.strata_used_in_breslow_day,
      );
    }
  });

  it('keeps its digits in strata of a million flowers where next to all or none took', () => {
    // mpmath 1.3.0, 50 digits: the expected counts by bisection of their definition.
    const rare: Table[] = [[[3, 999997], [5, 999995]], [[2, 999998], [9, 999991]]]; // biome-ignore format: tables
    const common: Table[] = [[[999999, 1], [999990, 10]], [[999998, 2], [999991, 9]]]; // biome-ignore format: tables
    const mixed: Table[] = [[[500000, 500000], [400000, 600000]], rare[0]!, common[0]!]; // biome-ignore format: tables
    const wanted = [0.891401787883462, 0.385965872889139, 6.06631948254377];
    [rare, common, mixed].forEach((list, i) => {
      expect(Math.abs(breslowDay(list).statistic! / wanted[i]! - 1)).toBeLessThan(1e-11);
    });
    expect(breslowDay(mixed, { tarone: false }).statistic).toBeCloseTo(6.06631949124912, 10);
    expect(mantelHaenszel(mixed).oddsRatio.estimate).toBeCloseTo(1.500019999462518, 13);
  });

  it('is 0 where all strata have the same odds ratio', () => {
    // Both odds ratios are 1, where the quadratic of the expected count has no square term, and then both 4.
    const same: Table[] = [[[2, 4], [3, 6]], [[10, 5], [8, 4]]]; // biome-ignore format: tables
    const four: Table[] = [[[4, 2], [2, 4]], [[8, 3], [6, 9]]]; // biome-ignore format: tables
    for (const list of [same, four]) {
      const { statistic, df, p } = breslowDay(list);
      expect(statistic).toBeCloseTo(0, 12);
      expect(df).toBe(1);
      expect(p).toBeCloseTo(1, 6);
    }
  });

  it('says what the data cannot tell', () => {
    const one: Table = [[3, 1], [2, 4]]; // biome-ignore format: a table
    const oneSided: Table = [[3, 1], [0, 4]]; // biome-ignore format: a table
    const nothing = { statistic: null, df: null, p: null };
    expect(breslowDay([one])).toEqual({ ...nothing, strataUsed: 1, because: 'too-few-strata' });
    expect(breslowDay([oneSided, oneSided])).toEqual({ ...nothing, strataUsed: 2, because: 'zero-count' });
  });

  it('refuses what is no list of 2 × 2 tables', () => {
    expect(() => breslowDay([])).toThrow('breslowDay: tables');
  });
});

describe('mantelHaenszel over the parents of whole seasons', () => {
  // test/reference/k_seasons.json: freezer against fresh, all rows with a known outcome; R 4.2.2.
  const cases = readCases('k_seasons.json').filter(({ id }) => id.endsWith('-crude-vs-stratified'));
  it.each(cases.map((reference) => [reference.id, reference] as const))(
    'agrees with R on %s',
    (_, reference) => {
      const { expected } = reference;
      const table = readTable(`${reference.id.replace('-crude-vs-stratified', '')}.csv`);
      const [outcome, storage, mother, father] = ['outcome', 'storage', 'mother', 'father'].map((name) =>
        texts(table, name),
      );
      const rows = [...outcome!.keys()].filter(
        (i) => ['fruit', 'failed'].includes(outcome![i]!) && ['fresh', 'freezer'].includes(storage![i]!),
      );
      const tablesBy = (stratum: (i: number) => string): Table[] => {
        const strata = new Map<string, [[number, number], [number, number]]>();
        for (const i of rows) {
          const counts = strata.get(stratum(i)) ?? [
            [0, 0],
            [0, 0],
          ];
          counts[storage![i] === 'freezer' ? 0 : 1][outcome![i] === 'fruit' ? 0 : 1] += 1;
          strata.set(stratum(i), counts);
        }
        return [...strata.values()];
      };
      const crude = tablesBy(() => 'all')[0]!;
      const [frozen, fresh] = crude.map(([fruits, failed]) => [fruits, fruits + failed]);
      expect([frozen, fresh]).toEqual([expected.freezer, expected.fresh]);
      const { p } = fisherExact(frozen![0]!, frozen![1]!, fresh![0]!, fresh![1]!);
      expectReference(reference, 'fisher_p', p, expected.fisher_p);
      for (const [key, stratum] of [
        ['by_pair', (i: number) => `${mother![i]} × ${father![i]}`],
        ['by_mother', (i: number) => mother![i]!],
      ] as const) {
        const { oddsRatio, riskDifference, test, strataUsed } = mantelHaenszel(tablesBy(stratum));
        const wanted = expected[key] as Record<string, Json>;
        const actual = {
          mh_odds_ratio: oddsRatio.estimate,
          mh_log_or_se: oddsRatio.logSe,
          mh_or_ci: [oddsRatio.lower, oddsRatio.upper],
          mh_risk_difference: riskDifference.estimate,
          cmh_statistic: test.statistic,
          cmh_p: test.p,
        };
        const { strata_with_both, ...numbers } = wanted;
        expectReference(reference, key, actual, numbers);
        expect(strataUsed).toBeLessThanOrEqual(strata_with_both as number);
      }
    },
  );
});
