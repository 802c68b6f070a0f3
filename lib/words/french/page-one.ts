/** The answers of page one, short: what a later section tells at length. */
import type { HalfAge } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../../analysis/pairs.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { safestPair } from '../told/review.ts';
import { olderThanTried, type VialStanding, vialsThat } from '../told/vials.ts';
import { pairName } from './choice-figures.ts';
import { days, daysWithRange } from './durations.ts';
import { capitalised, counts, difference, joined } from './numbers.ts';
import { storedAnswer } from './review.ts';
import { pollenOf } from './storage.ts';

/** Fresh against stored pollen like for like, without the counts. */
export function storedShort(entry: FreshVersusStored): string {
  const { storage, adjusted, pairsWithBoth, informativePairs } = entry;
  if (adjusted.estimate === null) return storedAnswer(entry);
  return (
    `Face au pollen frais sur les mêmes couples (${counts(informativePairs, pairsWithBoth)} peuvent le dire), le ` +
    `${pollenOf(storage)} donne ${difference(adjusted)}.`
  );
}

/** How long pollen keeps, without the counts. */
export function halfAgeShort(half: HalfAge): string {
  const { storage, estimate, lower, oldestAgeDays } = half;
  const pollen = capitalised(pollenOf(storage));
  if (oldestAgeDays === null) return `${pollen} : aucune fleur n’a un âge de pollen connu.`;
  if (estimate !== null) return `${pollen} : sa nouaison tombe de moitié après ${daysWithRange(half)}.`;
  if (lower === null || lower < oldestAgeDays)
    return `${pollen} : on ne peut pas encore dire à quelle vitesse il décline.`;
  return `${pollen} : sa nouaison n’était pas tombée de moitié à l’âge le plus vieux essayé, ${days(oldestAgeDays)}.`;
}

/** The safest pair by its counts. */
export function pairsShort(pairs: readonly PooledPair[]): string {
  const { safest } = safestPair(pairs);
  if (safest === undefined) return 'Les fleurs ne disent pas encore quel couple est le plus sûr.';
  return `Le couple le plus sûr est ${pairName(safest)} : ${counts(safest.fruits, safest.flowers)} ont noué.`;
}

/** Vials to do something about, by verdict. */
export function vialsToActOn(vials: readonly VialAdvice[]): readonly string[] {
  const of = (standing: VialStanding) =>
    vialsThat(standing, vials).map(({ vial, pollenParent }) => `${vial} (${pollenParent})`);
  const lines: [string, readonly string[]][] = [
    ['Utiliser d’abord', of('use-first')],
    ['Tester d’abord avec quelques fleurs', of('test-first')],
    ['Jeter', of('discard')],
  ];
  const named = lines.filter(([, names]) => names.length > 0);
  return [...named.map(([label, names]) => `${label} : ${joined(names)}.`), ...olderShort(vials)];
}

function olderShort(vials: readonly VialAdvice[]): string[] {
  const found = olderThanTried(vials);
  if (found === null) return [];
  const verb = found.older === 1 ? 'sera' : 'seront';
  return [
    `Le jour d’utilisation ${counts(found.older, found.all)} tubes ${verb} plus vieux que tout pollen de leur sorte essayé : ce qui en est dit est une conjecture.`,
  ];
}
