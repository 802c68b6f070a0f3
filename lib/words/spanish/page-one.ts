/** The answers of page one, short: what a later section tells at length. */

import type { HalfAge } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../../analysis/pairs.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { safestPair } from '../told/review.ts';
import { olderThanTried, type VialStanding, vialsThat } from '../told/vials.ts';
import { pairName } from './choice-figures.ts';
import { days, daysWithRange } from './durations.ts';
import { tookIn } from './nouns.ts';
import { CANNOT_TELL, capitalised, counts, difference, joined } from './numbers.ts';
import { storedAnswer } from './review.ts';
import { pollenOf, thePollenOf } from './storage.ts';

export function storedShort(entry: FreshVersusStored): string {
  const { storage, adjusted, pairsWithBoth, informativePairs } = entry;
  if (adjusted.estimate === null) return storedAnswer(entry);
  return (
    `Frente al polen fresco en las mismas parejas (${counts(informativePairs, pairsWithBoth)} sirven para decirlo), ` +
    `${thePollenOf(storage)} da ${difference(adjusted)}.`
  );
}

export function halfAgeShort(half: HalfAge): string {
  const { storage, estimate, lower, oldestAgeDays } = half;
  if (oldestAgeDays === null)
    return `${capitalised(pollenOf(storage))}: no se conoce la edad del polen de ninguna flor.`;
  const pollen = thePollenOf(storage);
  if (estimate !== null) return `Con ${pollen} el cuajado baja a la mitad al cabo de ${daysWithRange(half)}.`;
  if (lower === null || lower < oldestAgeDays) return `Con qué rapidez se pierde ${pollen} ${CANNOT_TELL}.`;
  return `Con ${pollen} el cuajado no había bajado a la mitad a la mayor edad que se probó, ${days(oldestAgeDays)}.`;
}

export function pairsShort(pairs: readonly PooledPair[]): string {
  const { safest } = safestPair(pairs);
  if (safest === undefined) return `Con estas flores ${CANNOT_TELL} qué pareja es la apuesta más segura.`;
  return `La apuesta más segura es ${pairName(safest)}: ${tookIn(safest.fruits, safest.flowers)}.`;
}

export function vialsToActOn(vials: readonly VialAdvice[]): readonly string[] {
  const of = (standing: VialStanding) =>
    vialsThat(standing, vials).map(({ vial, pollenParent }) => `${vial} (${pollenParent})`);
  const lines: [string, readonly string[]][] = [
    ['Usar primero', of('use-first')],
    ['Probar antes con unas pocas flores', of('test-first')],
    ['Desechar', of('discard')],
  ];
  const named = lines.filter(([, names]) => names.length > 0);
  return [...named.map(([label, names]) => `${label}: ${joined(names)}.`), ...olderShort(vials)];
}

function olderShort(vials: readonly VialAdvice[]): string[] {
  const found = olderThanTried(vials);
  if (found === null) return [];
  const verb = found.older === 1 ? 'tendrá' : 'tendrán';
  return [
    `El día de uso ${counts(found.older, found.all)} viales ${verb} más edad que cualquier polen así que se probó: lo que se dice de ellos es una conjetura.`,
  ];
}
