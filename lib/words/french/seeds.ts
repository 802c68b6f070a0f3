/** Seeds a fruit, germination, and seed a flower. */
import type { Seeds } from '../../analysis/seeds.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { bestByCautiousEnd, knownYields } from '../told/seeds.ts';
import { pairName } from './choice-figures.ts';
import { counted, counts, decimal, joined, rate, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

/** A number of seeds with its range; below 10 with one decimal. */
export function amount({ estimate, lower, upper }: Estimate): string {
  if (estimate === null) return 'inconnu';
  const number = (value: number) => (value < 10 ? decimal(value, 1) : wholeNumber(value));
  const range = lower === null || upper === null ? '' : ` (peut-être ${number(lower)} à ${number(upper)})`;
  return `environ ${number(estimate)}${range}`;
}

/** Seeds, germination and what a flower comes to; empty where no seed was counted. */
export function seedsSaid({ overall, byStorage, byPair }: Seeds): string {
  const { seedsPerFruit, germination } = overall;
  if (seedsPerFruit.fruits === 0) return '';
  const held = seedsPerFruit.fruits === 1 ? 'contenait' : 'contenaient';
  const start = `${counted(seedsPerFruit.fruits, 'fruit')} ${held} ${counted(seedsPerFruit.seeds, 'graine')}, ${amount(seedsPerFruit)} par fruit`;
  if (germination.sown === 0) return `${start} ; aucun semis n’a été compté.`;
  const germinated = `${counts(germination.germinated, germination.sown)} graines semées ont germé (${rate(germination)})`;
  return `${start} ; ${germinated}.${perFlowerSaid(byStorage)}${bestSaid(byPair)}`;
}

function perFlowerSaid(byStorage: Seeds['byStorage']): string {
  const known = knownYields(byStorage);
  if (known.length === 0) return '';
  const each = known.map(({ storage, seedAFlower }) => `${pollenOf(storage)} ${amount(seedAFlower)}`);
  return ` Graines levées par fleur (nouaison finale × graines × germination), sans égaliser les couples : ${joined(each)}.`;
}

function bestSaid(byPair: Seeds['byPair']): string {
  const best = bestByCautiousEnd(byPair);
  return best === undefined
    ? ''
    : ` Le plus par sa borne prudente : ${pairName(best)}, ${amount(best.seedAFlower)}.`;
}
