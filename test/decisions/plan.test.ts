import { describe, expect, it } from 'vitest';
import { plan } from '../../lib/decisions/plan.ts';
import { offer, questionOf, vialOf } from './planned.ts';

const question = questionOf({ pair: (_, father) => (father === 'Blue Hour' ? 0.6 : 0.4) });

describe('plan', () => {
  it('puts all flowers of a plant where they take most, or one on each cross', () => {
    // Exact arithmetic: both flowers with the better pollen 1.2 fruits and 1 − 0.4² varieties; one each 1 and 1.
    const { frontier } = plan(
      [offer('Ash Lantern', 2)],
      [vialOf('V1', 'Blue Hour'), vialOf('V2', 'Cold Ember')],
      question,
    );
    expect(frontier.map(({ expectedFruits }) => expectedFruits)).toEqual([
      expect.closeTo(1.2, 12),
      expect.closeTo(1, 12),
    ]);
    expect(frontier.map(({ expectedVarieties }) => expectedVarieties)).toEqual([
      expect.closeTo(0.84, 12),
      expect.closeTo(1, 12),
    ]);
    expect(frontier[0]!.allocation).toEqual([
      {
        seedParent: 'Ash Lantern',
        pollenParent: 'Blue Hour',
        source: 'vial',
        vial: 'V1',
        flowers: 2,
        from: null,
        to: null,
        noFruit: expect.closeTo(0.16, 12),
      },
    ]);
    expect(frontier.every(({ within }) => within === 0)).toBe(true);
  });

  it('takes chances over draws: two flowers of one uncertain pair are no two chances', () => {
    // Half of the draws 0.9, half 0.1: both flowers fail with 0.5 × 0.1² + 0.5 × 0.9² = 0.41, not with 0.5² = 0.25.
    const unsure = questionOf({ pair: () => [0.9, 0.1], draws: 2 });
    const [mix] = plan([offer('Ash Lantern', 2)], [vialOf('V1', 'Blue Hour')], unsure).frontier;
    expect(mix!.expectedVarieties).toBeCloseTo(0.59, 12);
    expect(mix!.expectedFruits).toBeCloseTo(1, 12);
  });

  it('counts fresh and stored pollen of one plant as one cross', () => {
    const offers = [offer('Ash Lantern', 2), offer('Blue Hour', 1)];
    const vials = [vialOf('V1', 'Blue Hour', { dosesLeft: 1 })];
    const asked = questionOf({ pair: () => 0.5, storage: () => Math.log(3) });
    // The vial has chance 0.75, the second flower gets fresh pollen: 1 − 0.25 × 0.5; and 0.5 the other way round.
    const { frontier } = plan(offers, vials, asked);
    expect(frontier).toHaveLength(1);
    expect(frontier[0]!.expectedVarieties).toBeCloseTo(0.875 + 0.5, 12);
    expect(frontier[0]!.allocation.map(({ source, flowers }) => [source, flowers])).toEqual([
      ['fresh', 1],
      ['vial', 1],
      ['fresh', 1],
    ]);
  });

  it('never uses more flowers or doses than there are', () => {
    const offers = [offer('Ash Lantern', 5), offer('Blue Hour', 4), offer('Cold Ember', 3)];
    const vials = [
      vialOf('V1', 'Dusk Anchor', { dosesLeft: 2 }),
      vialOf('V2', 'Elder Moth', { dosesLeft: null }),
    ];
    const asked = questionOf({ pair: (mother, father) => 0.3 + ((mother.length * father.length) % 5) / 10 });
    for (const { allocation } of plan(offers, vials, asked).frontier) {
      const total = (of: (line: (typeof allocation)[number]) => boolean) =>
        allocation.filter(of).reduce((sum, { flowers }) => sum + flowers, 0);
      for (const { seedParent, flowers } of offers) {
        expect(total((line) => line.seedParent === seedParent)).toBe(flowers);
      }
      expect(total(({ vial }) => vial === 'V1')).toBeLessThanOrEqual(2);
      expect(total(({ vial }) => vial === 'V2')).toBeLessThanOrEqual(1);
    }
  });

  it('says which vials it plans with one dose, and which it leaves out', () => {
    const vials = [
      vialOf('V1', 'Blue Hour', { dosesLeft: null }),
      vialOf('V2', 'Blue Hour', { dosesLeft: 0 }),
    ];
    const { blankDoses, leftOutVials, flowers } = plan([offer('Ash Lantern', 2)], vials, question);
    expect({ blankDoses, leftOutVials, flowers }).toEqual({
      blankDoses: ['V1'],
      leftOutVials: [{ vial: 'V2', because: 'no-doses-left' }],
      flowers: 2,
    });
  });

  it('tries what must be tried, keeps ceilings, and says what it cannot meet', () => {
    const offers = [offer('Ash Lantern', 3)];
    const vials = [vialOf('V1', 'Blue Hour'), vialOf('V2', 'Cold Ember'), vialOf('V3', 'Dusk Anchor')];
    const { frontier, unmet } = plan(offers, vials, question, {
      must: [
        { seedParent: 'Ash Lantern', pollenParent: 'Cold Ember', flowers: 1 },
        { seedParent: 'Ash Lantern', pollenParent: 'Elder Moth', flowers: 2 },
      ],
      ceilings: [
        { pollenParent: 'Blue Hour', flowers: 1 },
        { seedParent: 'Ash Lantern', pollenParent: 'Dusk Anchor', flowers: 0 },
      ],
    });
    for (const { allocation } of frontier) {
      const flowersOf = (father: string) =>
        allocation
          .filter(({ pollenParent }) => pollenParent === father)
          .reduce((sum, line) => sum + line.flowers, 0);
      expect(flowersOf('Cold Ember')).toBe(2);
      expect(flowersOf('Blue Hour')).toBe(1);
      expect(flowersOf('Dusk Anchor')).toBe(0);
    }
    expect(unmet).toEqual([
      {
        seedParent: 'Ash Lantern',
        pollenParent: 'Elder Moth',
        flowers: 2,
        planned: 0,
        expected: 3,
        possible: 0,
        because: 'no-pollen-of-father',
      },
    ]);
  });

  it('adds up seeds where they were counted', () => {
    const vials = [vialOf('V1', 'Blue Hour')];
    const seeds = (mother: string, father: string) =>
      mother === 'Ash Lantern' && father === 'Blue Hour' ? 50 : 0;
    const [mix] = plan([offer('Ash Lantern', 2)], vials, question, { seeds }).frontier;
    expect(mix!.expectedSeeds).toBeCloseTo(2 * 0.6 * 50, 9);
    expect(plan([offer('Ash Lantern', 2)], vials, question).frontier[0]!.expectedSeeds).toBeNull();
  });

  it('has no mix without an expected flower, or without any pollen, and says why', () => {
    expect(plan([offer('Ash Lantern', 0)], [vialOf('V1', 'Blue Hour')], question)).toMatchObject({
      frontier: [],
      because: 'no-expected-flowers',
    });
    // One plant alone has no pollen but its own.
    expect(plan([offer('Ash Lantern', 3)], [vialOf('V1', 'Ash Lantern')], question)).toMatchObject({
      frontier: [],
      because: 'no-pollen-for-flowers',
    });
  });

  it('gives one mix where one flower and one pollen are all there is', () => {
    const { frontier } = plan([offer('Ash Lantern', 1)], [vialOf('V1', 'Blue Hour')], question);
    expect(frontier.map(({ allocation }) => allocation.length)).toEqual([1]);
    expect(frontier[0]).toMatchObject({ expectedFruits: expect.closeTo(0.6, 12) });
  });

  it('keeps names apart that would be one as a joined text or as a property', () => {
    const offers = [offer('__proto__', 1), offer('constructor', 1)];
    const { frontier } = plan(offers, [vialOf('V1', '<script>')], question);
    expect(frontier[0]!.expectedFruits).toBeCloseTo(0.8, 12);
  });

  it('refuses limits that are no counts, and more mixes than it gives', () => {
    const must = [{ seedParent: 'A', pollenParent: 'B', flowers: 1.5 }];
    expect(() => plan([], [], question, { must })).toThrow(
      'plan: flowers of must and ceilings must be whole numbers from 0, got 1.5',
    );
    expect(() => plan([], [], question, { mixes: 13 })).toThrow(
      'plan: mixes must be a whole number from 2 to 12, got 13',
    );
  });
});
