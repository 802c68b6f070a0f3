/** Die Antworten der ersten Seite, kurz: ausführlich sagt es ein späterer Abschnitt. */

import type { HalfAge } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../../analysis/pairs.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { safestPair } from '../told/review.ts';
import { olderThanTried, type VialStanding, vialsThat } from '../told/vials.ts';
import { pairName } from './choice-figures.ts';
import { days, daysWithRange } from './durations.ts';
import { CANNOT_TELL, capitalised, counts, difference, joined } from './numbers.ts';
import { storedAnswer } from './review.ts';
import { pollenOf } from './storage.ts';

export function storedShort(entry: FreshVersusStored): string {
  const { storage, adjusted, pairsWithBoth, informativePairs } = entry;
  if (adjusted.estimate === null) return storedAnswer(entry);
  return (
    `Bei gleichen Paaren (${counts(informativePairs, pairsWithBoth)} sagen etwas) gibt ${pollenOf(storage)} gegen frischen: ` +
    `${difference(adjusted)}.`
  );
}

export function halfAgeShort(half: HalfAge): string {
  const { storage, estimate, lower, oldestAgeDays } = half;
  const pollen = capitalised(pollenOf(storage));
  if (oldestAgeDays === null) return `${pollen}: von keiner Blüte ist das Alter des Pollens bekannt.`;
  if (estimate !== null)
    return `${pollen}: auf die Hälfte fällt sein Fruchtansatz nach ${daysWithRange(half)}.`;
  if (lower === null || lower < oldestAgeDays)
    return `Wie schnell ${pollenOf(storage)} nachlässt, ist ${CANNOT_TELL}.`;
  return `${pollen}: im höchsten erprobten Alter, ${days(oldestAgeDays)}, war sein Fruchtansatz noch nicht auf die Hälfte gefallen.`;
}

export function pairsShort(pairs: readonly PooledPair[]): string {
  const { safest } = safestPair(pairs);
  if (safest === undefined) return `Welches Paar das sicherste ist, ist aus den Blüten ${CANNOT_TELL}.`;
  return `Am sichersten ist ${pairName(safest)}: ${counts(safest.fruits, safest.flowers)} haben angesetzt.`;
}

export function vialsToActOn(vials: readonly VialAdvice[]): readonly string[] {
  const of = (standing: VialStanding) =>
    vialsThat(standing, vials).map(({ vial, pollenParent }) => `${vial} (${pollenParent})`);
  const lines: [string, readonly string[]][] = [
    ['Zuerst verwenden', of('use-first')],
    ['Erst mit einigen Blüten testen', of('test-first')],
    ['Entsorgen', of('discard')],
  ];
  const named = lines.filter(([, names]) => names.length > 0);
  return [...named.map(([label, names]) => `${label}: ${joined(names)}.`), ...olderShort(vials)];
}

function olderShort(vials: readonly VialAdvice[]): string[] {
  const found = olderThanTried(vials);
  if (found === null) return [];
  const verb = found.older === 1 ? 'wird' : 'werden';
  return [
    `Am Tag der Verwendung ${verb} ${counts(found.older, found.all)} Röhrchen älter sein als jeder erprobte Pollen dieser Art: was von ihnen gesagt wird, ist geraten.`,
  ];
}
