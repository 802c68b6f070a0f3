/** Seeds a fruit, germination, and seed a flower. */

import type { Seeds } from '../analysis/seeds.ts';
import type { Estimate } from '../proportions/interval.ts';
import { pairName } from './choice-figures.ts';
import { counted, counts, decimal, joined, rate, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';
import { bestByCautiousEnd, knownYields } from './told/seeds.ts';

/**
 * A number of seeds with its range; below 10 with one decimal.
 *
 * @example amount({ estimate: 94, lower: 76, upper: 113 }) // 'about 94 (could be 76 to 113)'
 */
export function amount({ estimate, lower, upper }: Estimate): string {
  if (estimate === null) return 'not known';
  const number = (value: number) => (value < 10 ? decimal(value, 1) : wholeNumber(value));
  const range = lower === null || upper === null ? '' : ` (could be ${number(lower)} to ${number(upper)})`;
  return `about ${number(estimate)}${range}`;
}

/**
 * Seeds, germination and what a flower comes to; empty where no seed was counted.
 *
 * @example
 * const seedsPerFruit = { fruits: 12, seeds: 1400, estimate: 1400 / 12, lower: 95, upper: 140 };
 * const germination = { lots: 2, germinated: 31, sown: 40, estimate: 0.775, lower: 0.6, upper: 0.88 };
 * seedsSaid({ overall: { seedsPerFruit, germination }, byStorage: [], byPair: [] }); // '12 fruits held 1400 seeds, about 117 (could be 95 to 140) a fruit; 31 of 40 sown…'
 */
export function seedsSaid({ overall, byStorage, byPair }: Seeds): string {
  const { seedsPerFruit, germination } = overall;
  if (seedsPerFruit.fruits === 0) return '';
  const counted_ = `${counted(seedsPerFruit.fruits, 'fruit')} held ${counted(seedsPerFruit.seeds, 'seed')}, ${amount(seedsPerFruit)} a fruit`;
  if (germination.sown === 0) return `${counted_}; no sowing was counted.`;
  const germinated = `${counts(germination.germinated, germination.sown)} sown germinated (${rate(germination)})`;
  return `${counted_}; ${germinated}.${perFlowerSaid(byStorage)}${bestSaid(byPair)}`;
}

function perFlowerSaid(byStorage: Seeds['byStorage']): string {
  const known = knownYields(byStorage);
  if (known.length === 0) return '';
  const each = known.map(({ storage, seedAFlower }) => `${pollenOf(storage)} ${amount(seedAFlower)}`);
  return ` Seed a flower (final fruit set × seeds × germination), not like for like: ${joined(each)}.`;
}

function bestSaid(byPair: Seeds['byPair']): string {
  const best = bestByCautiousEnd(byPair);
  return best === undefined
    ? ''
    : ` Most by its cautious end: ${pairName(best)}, ${amount(best.seedAFlower)}.`;
}
