import { describe, expect, it } from 'vitest';
import { seedYields } from '../../lib/analysis/seeds.ts';
import type { Cross } from '../../lib/season/season.ts';
import { facts, threeSeasons } from '../season-facts-reference.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const yields = (crosses: readonly Partial<Cross>[]) => seedYields(seasonOf(crosses));
const fruit = (seeds: number | null, sown: number | null = null, germinated: number | null = null) => ({
  seeds,
  sown,
  germinated,
});

describe('the seeds of an invented grower’s three seasons, against R', () => {
  const { overdispersion, lotCorrelation, overall } = seedYields(threeSeasons());

  it('have the negative binomial’s spread and mean of glm.nb', () => {
    expect(overdispersion.estimate).toBeCloseTo(1 / facts.seeds.theta, 8);
    expect(overall.seedsPerFruit).toMatchObject({ fruits: facts.seeds.fruits, seeds: facts.seeds.seeds });
    expect(overall.seedsPerFruit.lower).toBeCloseTo(facts.seeds.lower, 7);
    expect(overall.seedsPerFruit.upper).toBeCloseTo(facts.seeds.upper, 7);
  });

  it('germinate as counted, with the range of a beta-binomial over lots', () => {
    const { lots, germinated, sown, correlation, lower, upper } = facts.germination;
    expect(lotCorrelation.estimate).toBeCloseTo(correlation, 7);
    expect(overall.germination).toMatchObject({ lots, germinated, sown });
    expect(overall.germination.lower).toBeCloseTo(lower, 7);
    expect(overall.germination.upper).toBeCloseTo(upper, 7);
  });

  it('come to R’s seed a flower, from the final fruit set', () => {
    expect(overall.fruitSet).toMatchObject({
      fruits: facts.fruitSet.final.fruits,
      flowers: facts.fruitSet.final.flowers,
    });
    expect(overall.seedAFlower.estimate).toBeCloseTo(facts.seedAFlower.estimate, 9);
    expect(overall.seedAFlower.lower).toBeCloseTo(facts.seedAFlower.lower, 5);
    expect(overall.seedAFlower.upper).toBeCloseTo(facts.seedAFlower.upper, 5);
  });
});

describe('seed a flower', () => {
  // Marks 2014, Table 2: an orchid's pollen fresh and after 6 years at −20 °C, seeds a capsule 1943 → 997,
  // germination 80.4 → 64.0 %.
  it('is the product of what an orchid’s stored pollen gave, as published', () => {
    const stored = { storage: 'frozen', ageDays: 2191 };
    const { byStorage } = yields([
      ...[fruit(1943, 1000, 804), fruit(1943, 1000, 804)],
      ...flowersOf(0, 2),
      ...[fruit(997, 1000, 640), fruit(997, 1000, 640)].map((lot) => ({ ...lot, ...stored })),
      ...flowersOf(0, 2, stored),
    ]);
    const [fresh, frozen] = byStorage;
    expect(fresh!.seedAFlower.estimate).toBeCloseTo(0.5 * 1943 * 0.804, 9);
    expect(frozen!.seedAFlower.estimate).toBeCloseTo(0.5 * 997 * 0.64, 9);
    expect(fresh!.seedsPerFlower.estimate).toBeCloseTo(0.5 * 1943, 9);
  });

  it('counts what dropped before harvest as a flower without seed', () => {
    const { overall } = yields([
      fruit(10, 10, 5),
      fruit(10, 10, 5),
      { outcome: 'dropped' },
      { outcome: 'none' },
    ]);
    expect(overall.fruitSet).toMatchObject({ fruits: 2, flowers: 4 });
    expect(overall.seedAFlower.estimate).toBeCloseTo(0.5 * 10 * 0.5, 12);
  });

  it('is known by pair, each with its own counts and the season’s spread', () => {
    const crosses = [
      ...[20, 30, 25].map((seeds) => ({ ...fruit(seeds, 10, 6), seedParent: 'A' })),
      ...[60, 90].map((seeds) => ({ ...fruit(seeds, 10, 9), seedParent: '__proto__' })),
    ];
    const { byPair } = yields(crosses);
    expect(byPair.map(({ seedParent, seedsPerFruit }) => [seedParent, seedsPerFruit.estimate])).toEqual([
      ['A', 25],
      ['__proto__', 75],
    ]);
    for (const { seedAFlower } of byPair) {
      expect(seedAFlower.lower!).toBeLessThan(seedAFlower.estimate!);
      expect(seedAFlower.upper!).toBeGreaterThan(seedAFlower.estimate!);
    }
  });
});

describe('seeds that were not counted', () => {
  it('are null because of that, never 0', () => {
    const { overall } = yields([fruit(null), { outcome: 'none' }]);
    expect(overall.seedsPerFruit).toMatchObject({ fruits: 0, estimate: null, because: 'no-seed-counts' });
    expect(overall.germination).toMatchObject({ sown: 0, estimate: null, because: 'no-germination-counts' });
    expect(overall.seedAFlower).toMatchObject({ estimate: null, because: 'no-seed-counts' });
  });

  it('leave seeds a flower known where only sowing was not counted', () => {
    const { overall } = yields([fruit(40), fruit(60), { outcome: 'none' }, { outcome: 'none' }]);
    expect(overall.seedsPerFlower.estimate).toBeCloseTo(25, 12);
    expect(overall.seedAFlower).toMatchObject({ estimate: null, because: 'no-germination-counts' });
  });

  it('have no range from one fruit or one sowing, which cannot tell how much these differ', () => {
    const { overall, overdispersion, lotCorrelation } = yields([fruit(40, 10, 4)]);
    expect(overdispersion).toEqual({ estimate: null, because: 'too-few-fruits' });
    expect(lotCorrelation).toEqual({ estimate: null, because: 'too-few-lots' });
    expect(overall.seedsPerFruit).toMatchObject({ estimate: 40, lower: null, upper: null });
    expect(overall.germination).toMatchObject({ estimate: 0.4, lower: null, because: 'too-few-lots' });
    expect(overall.seedAFlower).toMatchObject({ estimate: 16, lower: null });
  });

  it('are none in empty fruits, and then there is no range', () => {
    const { overall } = yields([fruit(0), fruit(0)]);
    expect(overall.seedsPerFruit).toMatchObject({ estimate: 0, lower: null, because: 'no-seeds' });
    expect(overall.seedsPerFlower).toMatchObject({ estimate: 0, because: 'zero-part' });
  });

  it('germinate all or not at all without a range', () => {
    const { overall } = yields([fruit(5, 5, 5), fruit(6, 6, 6)]);
    expect(overall.germination).toMatchObject({ estimate: 1, lower: null, because: 'lots-all-alike' });
  });

  it('count a sowing of one seed each as binomial, and one that is all or none as a single trial', () => {
    const single = yields([fruit(5, 1, 1), fruit(6, 1, 0), fruit(4, 1, 1)]);
    expect(single.lotCorrelation).toEqual({ estimate: 0 });
    const whole = yields([fruit(9, 5, 5), fruit(9, 5, 0), fruit(9, 5, 5), fruit(9, 5, 0)]);
    expect(whole.lotCorrelation).toEqual({ estimate: 1 });
    // Four lots, two of which germinated: the logit range of 2 of 4, odds exp(± z) by exact arithmetic (se 1).
    const odds = Math.exp(1.959963984540054);
    expect(whole.overall.germination.upper).toBeCloseTo(odds / (1 + odds), 12);
  });

  it('vary no more than chance: then the range is Poisson’s', () => {
    const { overdispersion, overall } = yields([fruit(100), fruit(100), fruit(100), fruit(100)]);
    expect(overdispersion).toEqual({ estimate: 0 });
    // exp(z / √400)
    expect(overall.seedsPerFruit.upper).toBeCloseTo(100 * Math.exp(1.959963984540054 / 20), 9);
  });
});
