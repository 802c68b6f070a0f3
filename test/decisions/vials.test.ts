import { describe, expect, it } from 'vitest';
import type { VialAdvice, VialQuestion } from '../../lib/decisions/vials.ts';
import { vialAdvice } from '../../lib/decisions/vials.ts';
import type { Vial } from '../../lib/season/season.ts';
import type { FakeRates } from '../analysis/fake-predictor.ts';
import { fakePredictor } from '../analysis/fake-predictor.ts';

const VIAL: Vial = {
  file: 'vials.csv',
  line: 2,
  row: 2,
  vial: 'V1',
  pollenParent: 'Salt Moon',
  collected: '2025-06-20',
  storage: 'frozen',
  dosesLeft: 3,
  thaws: null,
  note: null,
};
const SPARE: Vial = { ...VIAL, vial: 'V2', line: 3, row: 3 };
const QUESTION: VialQuestion = {
  useOn: '2026-06-20',
  worth: 0.4,
  level: 0.95,
  over: () => [{ seedParent: 'Lantern Creek', weight: 1 }],
  record: () => ({ fruits: 1, flowers: 2 }),
  because: 'model-not-settled',
};

function advice(rates: FakeRates, question: Partial<VialQuestion> = {}, vials = [VIAL, SPARE]): VialAdvice {
  return vialAdvice(vials, fakePredictor(rates), { ...QUESTION, ...question })[0]!;
}

/** A vial whose fruit set is 0.5 in some of ten draws on the day of use and in some a year later, else 0.3. */
function worthIn(then: number, yearLater: number): VialAdvice {
  const lost = Math.log(0.3 / 0.7);
  const added = (count: number) => Array.from({ length: 10 }, (_, k) => (k < count ? 0 : lost));
  return advice({
    pair: () => 0.5,
    storage: (_, ageDays) => added(ageDays > 400 ? yearLater : then),
  });
}

describe('vialAdvice', () => {
  it('averages fruit set over the seed parents by their weights, by hand', () => {
    const over = [
      { seedParent: 'A', weight: 0.25 },
      { seedParent: 'B', weight: 0.75 },
    ];
    const found = advice({ pair: (mother) => (mother === 'A' ? 0.8 : 0.4) }, { over: () => over });
    expect(found.estimate).toBeCloseTo(0.5, 12);
    expect(found.over).toBe(over);
    expect(found.ageDays).toBe(365);
    expect(found).toMatchObject({ fruits: 1, flowers: 2, dosesLeft: 3, pollenParent: 'Salt Moon' });
  });

  it('adds storage at the vial’s age and the vial’s own effect', () => {
    // Odds 1 × e^(−1) × e^(2) = e.
    const found = advice({
      storage: (_, ageDays) => -ageDays / 365,
      vial: (name) => (name === 'V1' ? 2 : -9),
    });
    expect(found.estimate).toBeCloseTo(Math.E / (1 + Math.E), 12);
  });

  it('takes a pair that never sets fruit in a draw for 0 in that draw', () => {
    const found = advice({ pair: () => [0, 0.6], draws: 2 });
    expect(found.estimate).toBeCloseTo(0.3, 12);
  });

  it('has one entry a vial in the register’s order', () => {
    const both = vialAdvice([SPARE, VIAL], fakePredictor({}), QUESTION);
    expect(both.map(({ vial }) => vial)).toEqual(['V2', 'V1']);
  });
});

describe('the verdict', () => {
  it.each([
    // Of ten draws worth a flower on the day of use and a year later: the contract's thresholds, at their borders.
    [10, 5, 'keep', 'worth-now-and-a-year-later'],
    [5, 5, 'keep', 'worth-now-and-a-year-later'],
    [5, 4, 'use-first', 'worth-now-only'],
    [10, 0, 'use-first', 'worth-now-only'],
    [4, 4, 'test-first', 'could-be-either'],
    [1, 0, 'test-first', 'could-be-either'],
    [0, 0, 'discard', 'hardly-worth'],
  ])('is, with %s and %s draws in ten worth it, %s', (then, yearLater, verdict, reasonCode) => {
    const found = worthIn(then, yearLater);
    expect(found).toMatchObject({ verdict, reasonCode });
    expect(found.probabilityWorth).toBeCloseTo(then / 10, 14);
    expect(found.probabilityWorthYearLater).toBeCloseTo(yearLater / 10, 14);
  });

  it('counts a fruit set of exactly the threshold as worth it', () => {
    expect(advice({ pair: () => 0.5 }, { worth: 0.5 }).probabilityWorth).toBe(1);
    expect(advice({ pair: () => 0.5 }, { worth: 0.5000001 }).probabilityWorth).toBe(0);
  });

  it('is test-first, with no probability, where the grower must say what is worth a flower', () => {
    const found = advice({ pair: () => 0.05 }, { worth: null });
    expect(found).toMatchObject({
      verdict: 'test-first',
      reasonCode: 'worth-not-given',
      probabilityWorth: null,
    });
    expect(found.probabilityWorthYearLater).toBeNull();
    expect(found.estimate).toBeCloseTo(0.05, 12);
    expect(found.flowersFor90).toBe(45);
  });
});

describe('flowersFor90', () => {
  it.each([
    // Smallest n with (1 − p)^n ≤ 0.1, exact: ceil(log 0.1 / log(1 − p)), checked with whole powers.
    [0.95, 1],
    [0.9001, 1],
    [0.8999, 2],
    [0.7, 2],
    [0.5, 4],
    [0.3, 7],
    [0.1, 22],
    [0.05, 45],
    [0.0228, 100],
    [0.0227, null],
    [0.001, null],
  ])('for a fruit set known to be %s is %s', (p, n) => {
    expect(advice({ pair: () => p }).flowersFor90).toBe(n);
  });

  it('averages over what is not known, so that it asks for more than the mean rate would', () => {
    // p is 0.9 or 0.1: (0.1^n + 0.9^n) / 2 is 0.10942 at n = 14 + … first at or below 0.1 at n = 16; at p = 0.5, 4.
    const halves = (n: number) => (0.1 ** n + 0.9 ** n) / 2;
    expect(halves(15) > 0.1 && halves(16) <= 0.1).toBe(true);
    expect(advice({ pair: () => [0.9, 0.1], draws: 2 }).flowersFor90).toBe(16);
  });

  it('is null where one draw in five never sets fruit', () => {
    expect(advice({ pair: () => [0, 0.9, 0.9, 0.9, 0.9], draws: 5 }).flowersFor90).toBeNull();
  });
});

describe('the last vial of a father', () => {
  const poor: FakeRates = { pair: () => 0.05 };
  const doses = (dosesLeft: number | null): Vial => ({ ...SPARE, dosesLeft });

  it('is never discarded without a warning', () => {
    for (const register of [[VIAL], [VIAL, doses(0)], [VIAL, { ...SPARE, pollenParent: 'Other' }]]) {
      expect(advice(poor, {}, register)).toMatchObject({
        verdict: 'discard',
        lastOfParent: true,
        warnings: ['last-vial'],
      });
    }
  });

  it('says of an empty vial that it is empty, whatever it would be worth', () => {
    expect(advice(poor, {}, [{ ...VIAL, dosesLeft: 0 }])).toMatchObject({
      warnings: ['last-vial', 'no-doses-left'],
    });
    const good: FakeRates = { pair: () => 0.8 };
    expect(advice(good, {}, [{ ...VIAL, dosesLeft: 0 }])).toMatchObject({
      verdict: 'keep',
      warnings: ['no-doses-left'],
    });
  });

  it('needs no warning while another vial has doses left, or may have', () => {
    for (const dosesLeft of [1, null]) {
      expect(advice(poor, {}, [VIAL, doses(dosesLeft)])).toMatchObject({ lastOfParent: false, warnings: [] });
    }
  });

  it('needs no warning where it is not discarded', () => {
    expect(advice({ pair: () => 0.8 }, {}, [VIAL])).toMatchObject({ lastOfParent: true, warnings: [] });
  });
});

describe('a vial older than any pollen that was tried', () => {
  // 365 days on the day of use.
  const warnings = (oldest: number | null, rates: FakeRates = { pair: () => 0.8 }) =>
    advice(rates, { oldestTried: (storage) => (storage === 'frozen' ? oldest : 9) }).warnings;

  it('is told apart, by its way of storage; at the oldest age itself it is not', () => {
    expect(warnings(364)).toEqual(['older-than-tried']);
    expect(warnings(365)).toEqual([]);
    expect(advice({}, { oldestTried: () => 776 }).oldestTriedDays).toBe(776);
  });

  it('is not where nothing is known of ages, or nothing is estimated', () => {
    expect(warnings(null)).toEqual([]);
    expect(warnings(100, { storage: () => null })).toEqual([]);
  });
});

describe('a vial without an estimate', () => {
  const nothing = {
    estimate: null,
    lower: null,
    upper: null,
    probabilityWorth: null,
    probabilityWorthYearLater: null,
    flowersFor90: null,
    verdict: 'test-first',
    reasonCode: 'no-estimate',
  };

  it('was collected after the day of use', () => {
    const found = advice({}, { useOn: '2025-06-19' });
    expect(found).toMatchObject({ ...nothing, ageDays: -1, because: 'used-before-collected' });
    expect(advice({}, { useOn: '2025-06-20' }).estimate).toBeCloseTo(0.5, 12);
  });

  it('has no seed parent that it is for', () => {
    expect(advice({}, { over: () => [] })).toMatchObject({ ...nothing, because: 'no-seed-parent' });
  });

  it('has a method that the model does not have', () => {
    expect(advice({ storage: () => null })).toMatchObject({ ...nothing, because: 'model-not-settled' });
  });

  it('stands without a model', () => {
    const [found] = vialAdvice([VIAL], null, QUESTION);
    expect(found).toMatchObject({ ...nothing, because: 'model-not-settled', fruits: 1, flowers: 2 });
  });
});
