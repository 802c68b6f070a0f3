/** Die Seite der alten Röhrchen. */

import type { VialAdvice } from '../../decisions/vials.ts';
import { byRecord, lastVials, oldestFirst, standings, vialAges, vialsThat } from '../told/vials.ts';
import { daySaid } from './dates.ts';
import { days } from './durations.ts';
import { vialsIn } from './nouns.ts';
import { CANNOT_TELL, counts, joined, likely, rate, wholeNumber } from './numbers.ts';
import { storageLabel } from './storage.ts';
import { recordSaid, VERDICT_LABELS, verdictSaid } from './vial-verdicts.ts';

export function oldVialsAnswer(vials: readonly VialAdvice[], useOn: string | null): string {
  const ages = vialAges(vials);
  if (useOn === null || ages === null)
    return `Kein Röhrchen ließ sich beurteilen, darum ist kein Alter zu nennen.${emptySaid(vials)}`;
  const { oldest, old, tried, all } = ages;
  return (
    `${counts(old, all)} Röhrchen werden am ${daySaid(useOn)} älter als ein Jahr sein; das älteste ist ${oldest.vial} ` +
    `(${oldest.pollenParent}): ${days(oldest.ageDays)}. Eigene Blüten haben ${counts(tried, all)}; die anderen werden nach ` +
    `ihrem Pollenspender, ihrem Alter und ihrer Lagerung beurteilt.${emptySaid(vials)}`
  );
}

function emptySaid(vials: readonly VialAdvice[]): string {
  const empty = vialsThat('empty', vials).length;
  return empty === 0 ? '' : ` ${vialsIn(empty)} ${empty === 1 ? 'ist' : 'sind'} leer.`;
}

export const STORY_COLUMNS = [
  'Röhrchen',
  'Spender, Lagerung, Alter dann',
  'eigene Blüten',
  'dann zu erwarten',
  'dann eine Blüte wert',
  'ein Jahr später',
  'Urteil',
] as const;

function chance(probability: number | null): string {
  return probability === null ? CANNOT_TELL : likely(probability);
}

export function storyRows(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  return oldestFirst(vials).map((vial) => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}, ${vial.ageDays < 0 ? 'noch nicht gesammelt' : days(vial.ageDays)}`,
    recordSaid(vial),
    rate(vial),
    chance(vial.probabilityWorth),
    chance(vial.probabilityWorthYearLater),
    verdictSaid(vial),
  ]);
}

export function lastVialsSaid(vials: readonly VialAdvice[]): string {
  if (vials.every(({ dosesLeft }) => dosesLeft === 0)) return 'In keinem Röhrchen ist Pollen.';
  const last = lastVials(vials);
  if (last.length === 0) return 'Von jedem Pollenspender gibt es noch ein weiteres Röhrchen.';
  const named = last.map(
    ({ vial, pollenParent, verdict }) => `${vial} (${pollenParent}, ${VERDICT_LABELS[verdict]})`,
  );
  return (
    `${vialsIn(last.length)} ${last.length === 1 ? 'ist das letzte seines Spenders' : 'sind jeweils das letzte ihres Spenders'}: ` +
    `${joined(named)}. Von einem Spender neuen Pollen sammeln, bevor sein letztes Röhrchen weggeht.`
  );
}

export function verdictsByRecord(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  const names = ['mit eigenen Blüten', 'ohne'];
  return byRecord(vials).map((own, at) => [
    names[at]!,
    ...standings(vials).map((standing) => wholeNumber(vialsThat(standing, own).length)),
  ]);
}
