import { describe, expect, it } from 'vitest';
import type { Seeds, SeedYield } from '../../lib/analysis/seeds.ts';
import { unknown } from '../../lib/proportions/interval.ts';
import { amount, seedsSaid } from '../../lib/words/seeds.ts';
import { proportion } from '../charts/fixture.ts';

const yieldOf = (fruits: number, estimate: number, lower: number, upper: number): SeedYield => ({
  fruitSet: proportion(4, 10, 0.2, 0.7),
  seedsPerFruit: { fruits, seeds: fruits * 20, estimate: 20, lower: 15, upper: 27 },
  germination: { lots: 3, germinated: 24, sown: 30, estimate: 0.8, lower: 0.6, upper: 0.9 },
  seedsPerFlower: { estimate: 8, lower: 5, upper: 12 },
  seedAFlower: { estimate, lower, upper },
});
const none: SeedYield = {
  ...yieldOf(0, 1, 1, 1),
  seedsPerFruit: { fruits: 0, seeds: 0, ...unknown('no-seed-counts') },
  seedAFlower: unknown('no-seed-counts'),
};
const seeds: Seeds = {
  ...{
    overdispersion: { estimate: 0.2 },
    lotCorrelation: { estimate: 0.01 },
    overall: yieldOf(9, 6.4, 3.2, 11.8),
  },
  byStorage: [
    { storage: 'fresh', ...yieldOf(6, 9.5, 4, 14) },
    { storage: 'room', ...none },
  ],
  byPair: [
    { seedParent: 'A', pollenParent: 'B', ...yieldOf(3, 12, 5, 30) },
    { seedParent: 'C', pollenParent: 'B', ...yieldOf(4, 10, 6, 15) },
    { seedParent: 'D', pollenParent: 'B', ...yieldOf(2, 90, 60, 99) },
  ],
};

describe('what is said of seeds', () => {
  it('is counted first, then a fruit’s and a flower’s, and the pair that gives most by its cautious end', () => {
    expect(seedsSaid(seeds)).toBe(
      '9 fruits held 180 seeds, about 20 (could be 15 to 27) a fruit; 24 of 30 sown germinated (about 8 in 10; could be 6 to 9 ' +
        'in 10). Seed a flower (final fruit set × seeds × germination), not like for like: fresh pollen about 9.5 (could be 4.0 ' +
        'to 14). Most by its cautious end: C × B, about 10 (could be 6.0 to 15).',
    );
  });

  it('stops where no sowing was counted, and is nothing where no seed was', () => {
    const unsown = {
      ...seeds.overall,
      germination: { lots: 0, germinated: 0, sown: 0, ...unknown('no-germination-counts') },
    };
    expect(seedsSaid({ ...seeds, overall: unsown })).toBe(
      '9 fruits held 180 seeds, about 20 (could be 15 to 27) a fruit; no sowing was counted.',
    );
    expect(seedsSaid({ ...seeds, overall: none })).toBe('');
  });
});

describe('amount', () => {
  it('says a number with its range, small ones with a decimal', () => {
    expect(amount({ estimate: 0.42, lower: 0.1, upper: 12.4 })).toBe('about 0.4 (could be 0.1 to 12)');
    expect(amount({ estimate: 12345, lower: null, upper: null })).toBe('about 12\u202F345');
    expect(amount(unknown('no-seed-counts'))).toBe('not known');
  });
});
