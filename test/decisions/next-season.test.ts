import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import type { NextSeasonQuestion } from '../../lib/decisions/next-season.ts';
import { nextSeason, plantsOf, planWithoutVials } from '../../lib/decisions/next-season.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Season } from '../../lib/season/season.ts';
import { fakePredictor } from '../analysis/fake-predictor.ts';
import { flowersOf, seasonOf } from '../season-of.ts';
import { offer, vialOf } from './planned.ts';

const QUESTION: NextSeasonQuestion = {
  predict: fakePredictor({ pair: () => 0.5 }),
  because: 'no-model',
  useOn: '2026-07-01',
  incompatible: () => false,
};

function planOf(season: Season, more: Partial<NextSeasonQuestion> = {}) {
  return nextSeason(season, usedFlowers(season), { ...QUESTION, ...more });
}

const tried = [
  ...flowersOf(2, 4, { seedParent: 'Ash Lantern', pollenParent: 'Blue Hour' }),
  ...flowersOf(1, 3, { seedParent: 'Blue Hour', pollenParent: 'Ash Lantern' }),
];

describe('nextSeason', () => {
  it('is null without a flowers file', () => {
    expect(planOf(seasonOf(tried))).toBeNull();
  });

  it('names the plants it knows nothing of, as seed and as pollen parents', () => {
    const flowers = [offer('Ash Lantern', 2), offer('Cold Ember', 2), offer('Blue Hour', 0)];
    const season = seasonOf(tried, { flowers, vials: [vialOf('V1', 'Dusk Anchor')] });
    const plan = planOf(season)!;
    expect(plan.newSeedParents).toEqual(['Cold Ember']);
    expect(plan.newPollenParents).toEqual(['Cold Ember', 'Dusk Anchor']);
    expect(plan.flowers).toBe(4);
  });

  it('has an empty frontier and the reason, where there is no model', () => {
    const season = seasonOf(tried, { flowers: [offer('Ash Lantern', 2)] });
    expect(planOf(season, { predict: null })).toMatchObject({
      frontier: [],
      flowers: 2,
      because: 'no-model',
    });
  });

  it('plans for a day of use in the past, leaves out what was collected later, and says so', () => {
    const vials = [vialOf('V1', 'Blue Hour', { collected: '2025-07-01' })];
    const season = seasonOf(tried, { flowers: [offer('Ash Lantern', 2)], vials, asOf: '2025-09-30' });
    expect(planOf(season, { useOn: '2025-08-01' })).toMatchObject({
      usedInPast: true,
      leftOutVials: [],
      frontier: [{ allocation: [{ vial: 'V1', flowers: 2 }] }],
    });
    expect(planOf(season, { useOn: '2025-06-01' })).toMatchObject({
      usedInPast: true,
      leftOutVials: [{ vial: 'V1', because: 'used-before-collected' }],
      frontier: [],
      because: 'no-pollen-for-flowers',
    });
    expect(planOf(season)!.usedInPast).toBe(false);
  });

  it('refuses wishes that name a plant of none of the files', () => {
    const season = seasonOf(tried, { flowers: [offer('Ash Lantern', 2)] });
    const must = [{ seedParent: 'Ash Lantern', pollenParent: 'Blue Our', flowers: 1 }];
    expect(() => planOf(season, { must })).toThrow(
      'analyse: must and atMost must name plants of the files, got Blue Our',
    );
    expect(() => planOf(season, { ceilings: [{ pollenParent: '__proto__', flowers: 1 }] })).toThrow(
      RangeError,
    );
  });

  it('knows every plant that the files name', () => {
    const season = seasonOf([{ control: 'unpollinated', pollenParent: null, seedParent: '__proto__' }], {
      flowers: [offer('Cold Ember', 1)],
      vials: [vialOf('V1', 'Dusk Anchor')],
    });
    expect([...plantsOf(season)]).toEqual(['__proto__', 'Dusk Anchor', 'Cold Ember']);
  });
});

describe('planWithoutVials', () => {
  const season = seasonOf(tried, {
    flowers: [offer('Ash Lantern', 2)],
    vials: [vialOf('V1', 'Dusk Anchor')],
  });

  it('keeps a wish for a plant whose pollen is only in a vial, and says that it cannot be had', () => {
    // One plant flowers, and a plant is not its own pollen parent: without the vial there is no pollen for it.
    const must = [{ seedParent: 'Ash Lantern', pollenParent: 'Dusk Anchor', flowers: 1 }];
    const made = planOf(season, { must })!;
    expect(made.frontier[0]!.allocation).toMatchObject([{ vial: 'V1', flowers: 2 }]);
    expect(planWithoutVials(made)).toMatchObject({
      frontier: [],
      unmet: [{ seedParent: 'Ash Lantern', pollenParent: 'Dusk Anchor', planned: 0 }],
    });
  });

  it('is null where the plan with vials has no mix, and where there is no plan', () => {
    expect(planWithoutVials(planOf(season, { predict: null }))).toBeNull();
    expect(planWithoutVials(null)).toBeNull();
  });

  it('refuses a plan that analyse did not make', () => {
    expect(() => planWithoutVials({ ...planOf(season)! })).toThrow(
      'planWithoutVials: made must be a plan that analyse gave, itself and no copy',
    );
  });
});

describe('the plan of the demo season', () => {
  const read = (name: string) => ({
    name,
    bytes: readFileSync(new URL(`../../data-demo/${name}`, import.meta.url)),
  });
  const season = readSeason(['crosses.csv', 'vials.csv', 'flowers.csv'].map(read));
  const analysis = analyse(season);
  const { frontier, blankDoses } = analysis.plan!;

  // Read from data-demo by eye and by splitting its lines, apart from the library.
  it('uses all flowers of the file, no dose twice, and plans blank doses as one', () => {
    expect(analysis.plan!.flowers).toBe(96);
    const doses = new Map(season.vials.map(({ vial, dosesLeft }) => [vial, dosesLeft ?? 1]));
    expect(blankDoses).toEqual(
      season.vials.filter(({ dosesLeft }) => dosesLeft === null).map(({ vial }) => vial),
    );
    expect(blankDoses.length).toBeGreaterThan(0);
    for (const { allocation } of frontier) {
      const total = (keyOf: (line: (typeof allocation)[number]) => string | null, key: string) =>
        allocation.reduce((sum, line) => sum + (keyOf(line) === key ? line.flowers : 0), 0);
      for (const { seedParent, flowers } of season.flowers) {
        expect(total((line) => line.seedParent, seedParent)).toBeLessThanOrEqual(flowers);
      }
      for (const [vial, most] of doses) expect(total((line) => line.vial, vial)).toBeLessThanOrEqual(most);
    }
  });

  it('is without vials what a season without a vials file would give', () => {
    const { useOn } = analysis.provenance.options;
    const alone = analyse({ ...season, vials: [] }, { useOn: useOn! }).plan!;
    expect(alone.frontier.length).toBeGreaterThan(0);
    expect(planWithoutVials(analysis.plan)!.frontier).toEqual(alone.frontier);
  });

  it('runs from most fruits to most varieties, none beaten in both', () => {
    expect(frontier.length).toBeGreaterThan(2);
    expect(frontier.length).toBeLessThanOrEqual(12);
    frontier.slice(1).forEach((mix, at) => {
      expect(mix.expectedFruits).toBeLessThan(frontier[at]!.expectedFruits);
      expect(mix.expectedVarieties).toBeGreaterThan(frontier[at]!.expectedVarieties);
    });
  });

  it('plans fresh pollen only where the stretches of both plants overlap, and no plant with itself', () => {
    const rows = (plant: string) => season.flowers.filter(({ seedParent }) => seedParent === plant);
    const overlap = (a: (typeof season.flowers)[number], b: (typeof season.flowers)[number]) =>
      (a.opensFrom ?? '0') <= (b.opensTo ?? '9') && (b.opensFrom ?? '0') <= (a.opensTo ?? '9');
    for (const { seedParent, pollenParent, source } of frontier.flatMap(({ allocation }) => allocation)) {
      expect(seedParent).not.toBe(pollenParent);
      if (source === 'vial') continue;
      expect(rows(seedParent).some((a) => rows(pollenParent).some((b) => overlap(a, b)))).toBe(true);
    }
  });

  it('plans no pair that is named incompatible', () => {
    const named = analysis.pairs.filter(({ incompatible }) => incompatible! >= 0.8);
    expect(named.length).toBeGreaterThan(0);
    for (const { seedParent, pollenParent } of named) {
      const planned = frontier.flatMap(({ allocation }) =>
        allocation.filter((line) => line.seedParent === seedParent && line.pollenParent === pollenParent),
      );
      expect(planned).toEqual([]);
    }
  });
});
