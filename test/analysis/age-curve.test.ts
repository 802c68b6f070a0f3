import { describe, expect, it } from 'vitest';
import { ageCurve, ageRates, halfAge, oldestAge } from '../../lib/analysis/age-curve.ts';
import { fruitModel } from '../../lib/analysis/fruit-model.ts';
import { predictor } from '../../lib/analysis/predictor.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import { fakePredictor } from './fake-predictor.ts';
import { flowersOf, smallSeason } from './flowers-of.ts';

/** Rates that fall by a straight line from 0.8 at age 0, each draw by its own slope a day. */
const falling = (slopes: readonly number[]) => (ageDays: number) =>
  Float64Array.from(slopes, (slope) => Math.max(0, 0.8 - slope * ageDays));

const stored = (rows: readonly (readonly [ageDays: number, vial: string | null])[]) =>
  flowersOf(rows.map(([ageDays, vial]) => ({ storage: 'frozen', ageDays, vial })));
const twoVials = stored([
  [100, 'V1'],
  [200, 'V2'],
]);

describe('ageRates', () => {
  it('averages over all used crosses, each with its pair, as they are in number', () => {
    // Three flowers of a pair at 0.8 and one of a pair at 0.4: 0.7 fresh; odds of 4 and 2/3 fall by a factor of e.
    const predict = fakePredictor({
      pair: (mother) => (mother === 'A' ? 0.8 : 0.4),
      storage: (_, ageDays) => -ageDays / 100,
    });
    const pair = { code: 0, fruits: 0, between: new Map() };
    const pairs = [
      { ...pair, seedParent: 'A', pollenParent: 'B', flowers: 3 },
      { ...pair, seedParent: 'B', pollenParent: 'A', flowers: 1 },
    ];
    const rates = ageRates(predict, pairs, 'frozen')!;
    expect(rates(0)[0]).toBeCloseTo(0.7, 12);
    const fallen = (odds: number) => odds / Math.E / (1 + odds / Math.E);
    expect(rates(100)[9]).toBeCloseTo(0.75 * fallen(4) + 0.25 * fallen(2 / 3), 12);
  });

  it('counts an incompatible pair as 0 whatever the pollen', () => {
    const predict = fakePredictor({ pair: () => [0, 0.5], draws: 2 });
    const pairs = [
      { seedParent: 'A', pollenParent: 'B', code: 0, flowers: 1, fruits: 0, between: new Map() },
    ];
    expect([...ageRates(predict, pairs, 'frozen')!(30)]).toEqual([0, 0.5]);
  });

  it('is null for a method that the model does not have', () => {
    expect(ageRates(fakePredictor({ storage: () => null }), [], 'room')).toBeNull();
  });
});

describe('ageCurve', () => {
  const model = fruitModel(smallSeason(), {
    ageScale: 'log1p-days',
    priors: GROWER_PRIORS,
    seed: 1,
    draws: 500,
  });
  const rates = ageRates(predictor(model.fit.draws.map((draw) => ({ model, draw }))), model.pairs, 'frozen')!;
  const curve = ageCurve('frozen', rates, 330, 0.95);

  it('goes from age 0 to the oldest age tried, and no further', () => {
    expect(curve[0]!.ageDays).toBe(0);
    expect(curve.at(-1)!.ageDays).toBe(330);
    expect(curve.every(({ ageDays }, k) => k === 0 || ageDays > curve[k - 1]!.ageDays)).toBe(true);
    expect(ageCurve('frozen', rates, 0, 0.95).map(({ ageDays }) => ageDays)).toEqual([0]);
  });

  it('comes with fifteen curves out of its draws, each of which never rises', () => {
    for (const [k, { ageDays, plausible }] of curve.entries()) {
      expect(plausible).toHaveLength(15);
      const drawn = new Set(rates(ageDays));
      expect(plausible.every((rate) => drawn.has(rate))).toBe(true);
      if (k > 0) expect(plausible.every((rate, j) => rate <= curve[k - 1]!.plausible[j]!)).toBe(true);
    }
  });

  it('never rises with age: not its mean, not its range, not any draw of it', () => {
    for (let k = 1; k < curve.length; k += 1) {
      const [before, after] = [curve[k - 1]!, curve[k]!];
      expect(after.estimate).toBeLessThan(before.estimate);
      expect(after.lower).toBeLessThanOrEqual(before.lower);
      expect(after.upper).toBeLessThanOrEqual(before.upper);
      const earlier = rates(before.ageDays);
      expect(rates(after.ageDays).every((rate, draw) => rate <= earlier[draw]!)).toBe(true);
    }
  });
});

describe('oldestAge', () => {
  it('is the oldest of the method’s own flowers, null where there is none', () => {
    const flowers = flowersOf([
      { storage: 'frozen', ageDays: 30 },
      { storage: 'room', ageDays: 400 },
      { storage: 'frozen', ageDays: 12 },
    ]);
    expect(oldestAge(flowers, 'frozen')).toBe(30);
    expect(oldestAge(flowers, 'refrigerated')).toBeNull();
  });
});

describe('halfAge', () => {
  it('is where the curve is half of its value at age 0, by hand', () => {
    // 0.8 − a / 500 = 0.4 at 200 days, for every draw alike.
    const half = halfAge(twoVials, 'frozen', falling([1 / 500, 1 / 500]), 300, 0.95);
    expect(half.estimate).toBeCloseTo(200, 3);
    expect(half.lower).toBeCloseTo(200, 3);
    expect(half.upper).toBeCloseTo(200, 3);
    expect(half.because).toBeUndefined();
    expect(half.oldestAgeDays).toBe(300);
  });

  it('has the range of the half ages of the draws', () => {
    // 21 draws that reach 0.4 at 50, 60, … 250 days; the 90 % range cuts one at either end (type 7: position 1 and 19).
    const slopes = Array.from({ length: 21 }, (_, k) => 0.4 / (50 + 10 * k));
    const { lower, upper, estimate } = halfAge(twoVials, 'frozen', falling(slopes), 300, 0.9);
    expect(lower).toBeCloseTo(60, 6);
    expect(upper).toBeCloseTo(240, 6);
    expect(estimate! > 60 && estimate! < 240).toBe(true);
  });

  it('leaves the upper end open where too many draws never get there', () => {
    const slopes = [...Array(15).fill(0.4 / 100), ...Array(5).fill(0)];
    const { estimate, upper, lower } = halfAge(twoVials, 'frozen', falling(slopes), 300, 0.95);
    expect(estimate).not.toBeNull();
    expect(lower).toBeCloseTo(100, 6);
    expect(upper).toBeNull();
  });

  it('claims nothing past the oldest age tried: estimate and upper end null, lower end at most that age', () => {
    // At 120 days 0.8 has become 0.56 in two draws of three and less than half in one.
    const half = halfAge(twoVials, 'frozen', falling([0.002, 0.002, 0.004]), 120, 0.95);
    expect(half).toMatchObject({
      estimate: null,
      upper: null,
      because: 'past-oldest-age',
      oldestAgeDays: 120,
    });
    expect(half.lower! > 100 && half.lower! <= 120).toBe(true);
    expect(halfAge(twoVials, 'frozen', falling([0, 0]), 120, 0.95).lower).toBe(120);
  });

  it('answers exactly at the oldest age', () => {
    expect(halfAge(twoVials, 'frozen', falling([0.004]), 100, 0.95).estimate).toBeCloseTo(100, 3);
  });

  it('keeps its estimate within its range at any level', () => {
    // One draw in three falls fast: the mean curve is half at 280 days or so, the median draw at 400.
    for (const slopes of [
      [0.004, 0.001, 0.001],
      [0.004, 0.004, 0.0004],
    ]) {
      for (const level of [0.01, 0.5, 0.95]) {
        const { estimate, lower, upper } = halfAge(twoVials, 'frozen', falling(slopes), 1000, level);
        expect(lower!).toBeLessThanOrEqual(estimate!);
        if (upper !== null) expect(upper).toBeGreaterThanOrEqual(estimate!);
      }
    }
  });

  it.each([
    [
      'one age in two vials',
      stored([
        [100, 'V1'],
        [100, 'V2'],
      ]),
    ],
    [
      'two ages in one vial',
      stored([
        [100, 'V1'],
        [200, 'V1'],
      ]),
    ],
    ['no stored flower', flowersOf([{}, {}])],
  ])('cannot be told from %s', (_, flowers) => {
    expect(halfAge(flowers, 'frozen', falling([0.002]), 200, 0.95)).toEqual({
      storage: 'frozen',
      oldestAgeDays: 200,
      estimate: null,
      lower: null,
      upper: null,
      because: 'one-age-or-vial',
    });
  });

  it('takes pollen without a vial for one lot a father, morning and age', () => {
    const flowers = stored([
      [100, null],
      [200, null],
    ]);
    expect(halfAge(flowers, 'frozen', falling([0.004]), 200, 0.95).estimate).toBeCloseTo(100, 3);
  });
});
