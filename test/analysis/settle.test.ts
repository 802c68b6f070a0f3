import { describe, expect, it } from 'vitest';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { type SettleQuestion, settle } from '../../lib/analysis/settle.ts';
import { sampleSizePairedDesign } from '../../lib/proportions/paired-power.ts';
import type { Cross, Season } from '../../lib/season/season.ts';
import { facts } from '../season-facts-reference.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const QUESTION: SettleQuestion = { level: 0.95, worth: 0.3, model: null, vials: [], pairs: [] };

function settleOf(season: Season, question: Partial<SettleQuestion> = {}) {
  return settle(season, usedFlowers(season), { ...QUESTION, ...question });
}

const frozen = { storage: 'frozen', ageDays: 90 };
const expected = (seedParent: string, flowers: number) => ({
  ...{ file: 'f.csv', line: 2, row: 2, seedParent, flowers, opensFrom: null, opensTo: null },
});
const vial = (flowers: number, dosesLeft: number | null) => ({ vial: 'F-01', flowers, dosesLeft });

/** A season in which fresh and frozen pollen took equally or very unequally; `frozenFruits` of 10. */
function season(frozenFruits: number, more: Partial<Omit<Season, 'crosses'>> = {}): Season {
  return seasonOf([...flowersOf(10 - frozenFruits, 10), ...flowersOf(frozenFruits, 10, frozen)], more);
}

describe('fresh against stored pollen', () => {
  it('never takes the observed difference: a season without any and one with all of it need the same', () => {
    const [none] = settleOf(season(5)).freshVersusStored;
    const [all] = settleOf(season(0)).freshVersusStored;
    expect(all!.needed).toBe(none!.needed);
    expect(none!.assumed.fresh - none!.assumed.stored).toBeCloseTo(0.2, 12);
    expect((none!.assumed.fresh + none!.assumed.stored) / 2).toBeCloseTo(0.5, 12);
  });

  it('asks for the pairs of the paired design, two flowers of each kind, 80 % power', () => {
    const [found] = settleOf(season(5)).freshVersusStored;
    const { pairs } = sampleSizePairedDesign(
      { flowersPerKind: 2, freshRate: 0.6, storedRate: 0.4, pairSd: 1 },
      { power: 0.8, simulations: 1000 },
    );
    expect(found).toMatchObject({ storage: 'frozen', pairs, flowersPerKind: 2, needed: 4 * pairs });
    // Unpaired it takes 97 flowers of each kind (Fleiss 2003, equation 4.14, uncorrected); pairs that differ lose little.
    expect(found!.needed).toBeGreaterThan(120);
    expect(found!.needed).toBeLessThan(2 * 97 * 1.2);
  });

  it('takes flowers off that already stand in pairs with both kinds, as many of one as of the other', () => {
    const [found] = settleOf(
      seasonOf([
        ...flowersOf(2, 3, { seedParent: 'A' }),
        ...flowersOf(1, 5, { seedParent: 'A', ...frozen }),
        ...flowersOf(3, 9, { seedParent: 'B' }),
      ]),
    ).freshVersusStored;
    expect(found!.have).toBe(6);
    expect(found!.more).toBe(found!.needed! - 6);
  });

  it('stays askable where all or none took', () => {
    const all = seasonOf([...flowersOf(4, 4), ...flowersOf(4, 4, frozen)]);
    expect(settleOf(all).freshVersusStored[0]!.assumed).toMatchObject({ fresh: 0.95, stored: 0.75 });
    const none = seasonOf([...flowersOf(0, 4), ...flowersOf(0, 4, frozen)]);
    const { assumed } = settleOf(none).freshVersusStored[0]!;
    expect([assumed.fresh, assumed.stored].map((rate) => rate.toFixed(2))).toEqual(['0.25', '0.05']);
  });

  it('is not asked without stored pollen, and is asked without fresh', () => {
    expect(settleOf(seasonOf(flowersOf(2, 4))).freshVersusStored).toEqual([]);
    expect(settleOf(seasonOf(flowersOf(2, 4, frozen))).freshVersusStored[0]!.have).toBe(0);
  });

  it('is out of reach where it takes more than two seasons’ flowers', () => {
    const { freshVersusStored, seasonFlowers } = settleOf(season(5));
    expect(seasonFlowers).toBe(20);
    expect(freshVersusStored[0]).toMatchObject({ reach: 40, outOfReach: true });
    const many = settleOf(season(5, { flowers: [expected('A', 500)] }));
    expect(many.freshVersusStored[0]).toMatchObject({ reach: 1000, outOfReach: false });
  });
});

describe('a season’s flowers', () => {
  const crosses: Partial<Cross>[] = [
    ...flowersOf(1, 4, { season: '2024' }),
    ...flowersOf(1, 2, { season: '2025' }),
    { season: '2025', outcome: 'unknown' },
    { season: '2025', control: 'selfed', pollenParent: 'Lantern Creek' },
  ];

  it('are those expected, else the mean of past seasons, lost tags with them and controls without', () => {
    // (4 + 3) ÷ 2, halves upwards
    expect(settleOf(seasonOf(crosses)).seasonFlowers).toBe(4);
    expect(settleOf(seasonOf(crosses, { flowers: [expected('A', 9), expected('B', 6)] })).seasonFlowers).toBe(
      15,
    );
  });

  it('are not those of a flowers file that expects none', () => {
    expect(settleOf(seasonOf(crosses, { flowers: [expected('A', 0)] })).seasonFlowers).toBe(4);
  });

  it('are none without a flower', () => {
    expect(settleOf(seasonOf([]))).toMatchObject({
      seasonFlowers: 0,
      freshVersusStored: [],
      vials: [],
      pairs: [],
    });
  });
});

describe('a vial against what is worth a flower', () => {
  // scripts/reference/season-facts.R: 45 flowers tell 0.5 from 0.3, 35 tell 0.1 from it: the more of the two.
  const above = facts.sizes.find(
    ({ probability, line, level }) => probability === 0.5 && line === 0.3 && level === 0.95,
  )!;

  it('takes as many flowers as R finds in the harder direction, less its own', () => {
    const [found] = settleOf(season(5, { flowers: [expected('A', 40)] }), { vials: [vial(3, 50)] }).vials;
    expect(found).toMatchObject({
      needed: above.trials,
      have: 3,
      more: above.trials - 3,
      outOfReach: false,
      tooFewDoses: false,
    });
  });

  it('says when the vial itself holds too few doses, and not where its doses are not known', () => {
    const doses = (left: number | null) =>
      settleOf(season(5), { vials: [vial(3, left)] }).vials[0]!.tooFewDoses;
    expect([doses(0), doses(41), doses(42), doses(null)]).toEqual([true, true, false, null]);
  });

  it('can’t be told before it is known what is worth a flower', () => {
    expect(settleOf(season(5), { worth: null, vials: [vial(3, 5)] }).vials[0]).toMatchObject({
      ...{ needed: null, more: null, outOfReach: null, tooFewDoses: null, because: 'no-worth' },
    });
  });

  it('is asked upwards only where there is no room below', () => {
    const [found] = settleOf(season(5), { worth: 0.2, vials: [vial(0, 50)] }).vials;
    expect(found!.needed).toBe(facts.sizes.find(({ line }) => line === 0.2)!.trials);
  });
});

describe('a pair against the average pair', () => {
  const pair = (seedParent: string, flowers: number, estimate: number | null) => ({
    ...{ seedParent, pollenParent: 'P', flowers, estimate },
  });

  // scripts/reference/season-facts.R: 49 flowers tell 0.65 from 0.45.
  it('takes as many flowers as R finds, and only those of its own seed parent are within reach', () => {
    const flowers = [expected('A', 100), expected('B', 3)];
    const { pairs } = settleOf(season(5, { flowers }), { pairs: [pair('A', 9, 0.3), pair('B', 9, 0.6)] });
    const [a, b] = pairs;
    expect(a).toMatchObject({ needed: 49, have: 9, more: 40, reach: 200, outOfReach: false });
    expect(b).toMatchObject({ more: 40, reach: 6, outOfReach: true });
  });

  it('can’t be told without two pairs that have an estimate', () => {
    const { pairs } = settleOf(season(5), { pairs: [pair('A', 9, 0.3), pair('B', 9, null)] });
    expect(pairs[0]).toMatchObject({ needed: null, because: 'no-average-pair' });
  });
});
