import { describe, expect, it } from 'vitest';
import type { Controls } from '../../lib/analysis/controls.ts';
import type { FruitSet } from '../../lib/analysis/fruit-set.ts';
import type { Pending } from '../../lib/analysis/pending.ts';
import type { GrowersRecord } from '../../lib/analysis/plants-apart.ts';
import type { SeasonChange, Seasons } from '../../lib/analysis/seasons.ts';
import type { Wave } from '../../lib/analysis/waves.ts';
import { unknown } from '../../lib/proportions/interval.ts';
import * as said from '../../lib/words/season-facts.ts';
import { season as drawn, proportion } from '../charts/fixture.ts';

// The sentences are held to the rules of the report: counts first, no p-value, a range with every rate.
describe('what is said of pending flowers', () => {
  const none: Pending = {
    asOf: '2025-09-24',
    lookAfterDays: 14,
    flowers: 0,
    due: 0,
    looks: [],
    awaitingHarvest: 0,
  };
  const look = (lookOn: string, flowers: number, due = false) => ({ lookOn, flowers, due, crossIds: [] });

  it('is the day on which to look', () => {
    expect(said.pendingSaid({ ...none, flowers: 8, looks: [look('2025-09-28', 8)] })).toBe(
      '8 flowers are marked as too young to tell. Look on 2025-09-28.',
    );
  });

  it('tells those that are due from those to come, day by day', () => {
    const looks = [look('2025-09-20', 1, true), look('2025-09-28', 2), look('2025-09-30', 3)];
    expect(said.pendingSaid({ ...none, flowers: 6, due: 1, looks })).toBe(
      '6 flowers are marked as too young to tell. 1 could be looked at by 2025-09-24: look now. Look at 2 on 2025-09-28 and ' +
        'at 3 on 2025-09-30.',
    );
  });

  it('is a span where there are many days', () => {
    const looks = [1, 2, 3, 4].map((day) => look(`2025-10-0${day}`, 1));
    expect(said.pendingSaid({ ...none, flowers: 4, looks })).toContain('Look from 2025-10-01 to 2025-10-04');
  });

  it('names fruits that wait for harvest, and is nothing where nothing is pending', () => {
    expect(said.pendingSaid({ ...none, awaitingHarvest: 2 })).toBe('2 fruits still to be harvested.');
    expect(said.pendingSaid(none)).toBe('');
  });
});

describe('what is said of lost tags by pollen', () => {
  const method = (storage: string, lost: number, lowest: number, highest: number, flowers: number) => ({
    ...{
      storage,
      lost,
      lowest: proportion(lowest, flowers, 0, 1),
      highest: proportion(highest, flowers, 0, 1),
    },
  });
  const point = (estimate: number) => ({ estimate, lower: estimate - 0.1, upper: estimate + 0.1 });

  it('is both ends of each method that lost one, and the gap at its worst', () => {
    const lostTags = {
      ...drawn.raw.lostTags,
      byStorage: [
        method('fresh', 5, 73, 78, 118),
        method('room', 0, 1, 1, 3),
        method('frozen', 6, 46, 52, 126),
      ],
      difference: [{ storage: 'frozen', lowest: point(0.206), highest: point(0.296) }],
    };
    expect(said.lostTagsByMethodSaid({ lostTags })).toBe(
      'Fresh pollen lost 5 tags, so 73 to 78 of 118 took; frozen pollen lost 6 tags, so 46 to 52 of 126 took. Whatever became ' +
        'of those flowers, over all flowers frozen pollen gave between about 2 fewer in every 10 and about 3 fewer in every 10.',
    );
  });

  it('is nothing where none was lost', () => {
    const lostTags = { ...drawn.raw.lostTags, byStorage: [method('fresh', 0, 5, 5, 9)], difference: [] };
    expect(said.lostTagsByMethodSaid({ lostTags })).toBe('');
  });
});

describe('what is said of controls', () => {
  const effect = (storage: string, estimate: number, lower: number, upper: number) => ({
    ...{ control: 'unpollinated' as const, storage, raw: proportion(5, 10, 0.2, 0.8) },
    corrected: { estimate, lower, upper },
  });
  const controls: Controls = {
    unpollinated: proportion(0, 7, 0, 0.354),
    selfed: { fruits: 0, flowers: 0, ...unknown('no-flowers') },
    corrected: [effect('fresh', 0.646, 0.421, 0.728), effect('frozen', -0.1, -0.4, 0.2)],
  };

  it('is how far 0 could still be, and what it does to the rates; never a rate below none', () => {
    expect(said.controlsSaid(controls)).toBe(
      'Control flowers that took: without pollen 0 of 7 (could still be as high as 4 in 10). Less what sets without pollen: ' +
        'fresh pollen, 5 of 10 as counted (then about 6 in 10; could be 4 to 7 in 10); frozen pollen, 5 of 10 as counted (then ' +
        'under 1 in 100; could be under 1 to 20 in 100).',
    );
  });

  it('is nothing without controls', () => {
    expect(said.controlsSaid({ ...controls, unpollinated: controls.selfed, corrected: [] })).toBe('');
  });
});

describe('what is said of initial and final fruit set', () => {
  const sets: FruitSet = {
    ...{ initial: proportion(132, 258, 0.4, 0.6), final: proportion(105, 248, 0.3, 0.5) },
    ...{ kept: proportion(105, 122, 0.7, 0.9), harvestsRecorded: true, byStorage: [] },
  };

  it('is both counts, and how many of the fruits were kept', () => {
    expect(said.fruitSetSaid(sets)).toBe(
      'At the check 132 of 258 flowers had set (initial fruit set), and 105 of 248 came to harvest (final fruit set); of the ' +
        'fruits whose end is known, 105 of 122 did.',
    );
  });

  it('does not speak of harvests that nobody recorded, nor of flowers that are not there', () => {
    expect(said.fruitSetSaid({ ...sets, harvestsRecorded: false })).toContain('had not dropped');
    expect(said.fruitSetSaid({ ...sets, initial: { fruits: 0, flowers: 0, ...unknown('no-flowers') } })).toBe(
      '',
    );
  });
});

describe('what is said of seasons and growers', () => {
  const change: SeasonChange = {
    ...{
      from: '2024',
      to: '2025',
      earlier: proportion(38, 87, 0.3, 0.5),
      later: proportion(48, 90, 0.4, 0.6),
    },
    difference: { estimate: 0.097, lower: -0.05, upper: 0.237 },
    likeForLike: { estimate: -0.3, lower: -0.5, upper: -0.1 },
    commonOddsRatio: { estimate: 0.3, lower: 0.1, upper: 0.9 },
    ...{ strataWithBoth: 9, informativeStrata: 5 },
  };
  const growers: GrowersRecord = { names: ['Ina'], samePlants: false, toldApart: [], unplaced: [] };
  const seasons: Seasons = { bySeason: [], byGrower: [], bySeasonAndGrower: [], changes: [change], growers };

  it('is the counts of both seasons, the change, and the change like for like', () => {
    expect(said.seasonChangeSaid(seasons)).toBe(
      'In 2024 38 of 87 took, in 2025 48 of 90: about 1 more in every 10 (could be 2 more to 1 fewer) than the season before; ' +
        'like for like (the same pairs with the same kind of pollen) about 3 fewer in every 10 (could be 1 to 5).',
    );
  });

  it('says that season and pairs can’t be told apart, and nothing of a single season', () => {
    const few = { ...change, likeForLike: unknown('too-few-pairs-in-both-seasons') };
    expect(said.seasonChangeSaid({ ...seasons, changes: [few] })).toContain('Too few pairs');
    expect(said.seasonChangeSaid({ ...seasons, changes: [] })).toBe('');
  });

  it('names the growers and how plants of one name count', () => {
    const apart = (grower: string) => ({ name: 'Salt Moon', grower, shownAs: `Salt Moon (${grower})` });
    const two: GrowersRecord = {
      ...{ names: ['Bo', 'Ina'], samePlants: false, toldApart: [apart('Bo'), apart('Ina')] },
      unplaced: [{ name: 'Salt Moon', kind: 'flowers' }],
    };
    expect(said.growersSaid({ ...seasons, growers: two })).toBe(
      '2 growers: Bo and Ina. 1 name of plants stands with more than one of them; they count as different plants and carry ' +
        'the grower’s name. Whose plant is meant is not clear for Salt Moon (flowers): write it with the grower’s name.',
    );
    const one = { ...two, samePlants: true };
    expect(said.growersSaid({ ...seasons, growers: one })).toContain('count as one plant, as you said');
    expect(said.growersSaid({ ...seasons, growers: { ...two, toldApart: [], unplaced: [] } })).toBe(
      '2 growers: Bo and Ina. No plant’s name stands with two of them.',
    );
    expect(said.growersSaid(seasons)).toBe('');
  });
});

describe('the table of waves', () => {
  const wave = (more: Partial<Wave>): Wave => ({
    ...{ season: '2025', grower: 'Ina', wave: '1', source: 'dates', from: '2025-06-20', to: '2025-06-23' },
    ...{ rows: 5, daysAfterPrevious: null, ...proportion(2, 5, 0.118, 0.769) },
    ...more,
  });

  it('has a row a wave with as many cells as columns; growers stand there only where there are several', () => {
    expect(said.waveRows([wave({}), wave({ wave: null, to: '2025-06-20' })])).toEqual([
      ['2025', '1', '2025-06-20 to 2025-06-23', '2 of 5 (about 4 in 10; could be 1 to 8 in 10)'],
      ['2025', 'not said', '2025-06-20', '2 of 5 (about 4 in 10; could be 1 to 8 in 10)'],
    ]);
    const several = said.waveRows([wave({}), wave({ grower: null })]);
    expect(several.map(([season]) => season)).toEqual(['2025, Ina', '2025, grower not named']);
    expect(several[0]).toHaveLength(said.WAVE_COLUMNS.length);
  });
});
