/** Seeds a fruit, germination, and seed a flower. */

import type { Seeds } from '../../analysis/seeds.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { bestByCautiousEnd, knownYields } from '../told/seeds.ts';
import { pairName } from './choice-figures.ts';
import { fruitsIn, seedsIn } from './nouns.ts';
import { counts, decimal, joined, rate, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

/** "unas 94 (quizá de 76 a 113)"; below 10 with one decimal. */
export function amount({ estimate, lower, upper }: Estimate): string {
  if (estimate === null) return 'no se sabe';
  const number = (value: number) => (value < 10 ? decimal(value, 1) : wholeNumber(value));
  const range = lower === null || upper === null ? '' : ` (quizá de ${number(lower)} a ${number(upper)})`;
  return `unas ${number(estimate)}${range}`;
}

export function seedsSaid({ overall, byStorage, byPair }: Seeds): string {
  const { seedsPerFruit, germination } = overall;
  const { fruits, seeds } = seedsPerFruit;
  if (fruits === 0) return '';
  const held = `${fruitsIn(fruits)} ${fruits === 1 ? 'tenía' : 'tenían'} ${seedsIn(seeds)}, ${amount(seedsPerFruit)} por fruto`;
  if (germination.sown === 0) return `${held}; no se contó ninguna siembra.`;
  const verb = germination.germinated === 1 ? 'germinó' : 'germinaron';
  const germinated = `${verb} ${counts(germination.germinated, germination.sown)} sembradas (${rate(germination)})`;
  return `${held}; ${germinated}.${perFlowerSaid(byStorage)}${bestSaid(byPair)}`;
}

function perFlowerSaid(byStorage: Seeds['byStorage']): string {
  const known = knownYields(byStorage);
  if (known.length === 0) return '';
  const each = known.map(({ storage, seedAFlower }) => `${pollenOf(storage)} ${amount(seedAFlower)}`);
  return ` Semillas por flor (cuajado final × semillas × germinación), no en igualdad: ${joined(each)}.`;
}

function bestSaid(byPair: Seeds['byPair']): string {
  const best = bestByCautiousEnd(byPair);
  return best === undefined
    ? ''
    : ` Más, por su extremo prudente: ${pairName(best)}, ${amount(best.seedAFlower)}.`;
}
