/** Samen je Frucht, Keimung, Samen je Blüte. */

import type { Seeds } from '../../analysis/seeds.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { bestByCautiousEnd, knownYields } from '../told/seeds.ts';
import { pairName } from './choice-figures.ts';
import { fruitsIn, seedsIn } from './nouns.ts';
import { counts, decimal, joined, rate, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

export function amount({ estimate, lower, upper }: Estimate): string {
  if (estimate === null) return 'nicht bekannt';
  const number = (value: number) => (value < 10 ? decimal(value, 1) : wholeNumber(value));
  const range = lower === null || upper === null ? '' : ` (möglich: ${number(lower)} bis ${number(upper)})`;
  return `etwa ${number(estimate)}${range}`;
}

export function seedsSaid({ overall, byStorage, byPair }: Seeds): string {
  const { seedsPerFruit, germination } = overall;
  if (seedsPerFruit.fruits === 0) return '';
  const held = `${fruitsIn(seedsPerFruit.fruits)} ${seedsPerFruit.fruits === 1 ? 'enthielt' : 'enthielten'} ${seedsIn(seedsPerFruit.seeds)}, je Frucht ${amount(seedsPerFruit)}`;
  if (germination.sown === 0) return `${held}; keine Aussaat wurde gezählt.`;
  const germinated = `gekeimt sind ${counts(germination.germinated, germination.sown)} gesäten (${rate(germination)})`;
  return `${held}; ${germinated}.${perFlowerSaid(byStorage)}${bestSaid(byPair)}`;
}

function perFlowerSaid(byStorage: Seeds['byStorage']): string {
  const known = knownYields(byStorage);
  if (known.length === 0) return '';
  const each = known.map(({ storage, seedAFlower }) => `${pollenOf(storage)} ${amount(seedAFlower)}`);
  return ` Samen je Blüte (endgültiger Fruchtansatz × Samen × Keimung), nicht bei gleichen Paaren: ${joined(each)}.`;
}

function bestSaid(byPair: Seeds['byPair']): string {
  const best = bestByCautiousEnd(byPair);
  return best === undefined
    ? ''
    : ` Am meisten nach dem vorsichtigen Ende: ${pairName(best)}, ${amount(best.seedAFlower)}.`;
}
