/** The page of old vials: how old they are, each one's story, and which is the last of its father. */

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
  if (useOn === null || ages === null) {
    return `No se pudo juzgar ningún vial, así que no hay ninguna edad que contar.${emptySaid(vials)}`;
  }
  const { oldest, old, tried, all } = ages;
  return (
    `El ${daySaid(useOn)}, ${counts(old, all)} viales tendrán más de un año; el más viejo es ${oldest.vial} (${oldest.pollenParent}), ` +
    `${days(oldest.ageDays)}. ${counts(tried, all)} ${tried === 1 ? 'tiene' : 'tienen'} flores propias por las que guiarse; los demás se juzgan por ` +
    `su padre, su edad y cómo se guardaron.${emptySaid(vials)}`
  );
}

function emptySaid(vials: readonly VialAdvice[]): string {
  const empty = vialsThat('empty', vials).length;
  return empty === 0 ? '' : ` ${vialsIn(empty)} ${empty === 1 ? 'está vacío' : 'están vacíos'}.`;
}

export const STORY_COLUMNS = [
  'vial',
  'padre, almacenamiento, edad entonces',
  'sus propias flores',
  'cabe esperar entonces',
  'merece una flor entonces',
  'un año después',
  'veredicto',
] as const;

function chance(probability: number | null): string {
  return probability === null ? CANNOT_TELL : likely(probability);
}

export function storyRows(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  return oldestFirst(vials).map((vial) => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}, ${vial.ageDays < 0 ? 'aún sin recoger' : days(vial.ageDays)}`,
    recordSaid(vial),
    rate(vial),
    chance(vial.probabilityWorth),
    chance(vial.probabilityWorthYearLater),
    verdictSaid(vial),
  ]);
}

export function lastVialsSaid(vials: readonly VialAdvice[]): string {
  if (vials.every(({ dosesLeft }) => dosesLeft === 0)) return 'No hay ningún vial con polen.';
  const last = lastVials(vials);
  if (last.length === 0) return 'De cada padre hay además otro vial.';
  const named = last.map(
    ({ vial, pollenParent, verdict }) => `${vial} (${pollenParent}, ${VERDICT_LABELS[verdict]})`,
  );
  return (
    `${vialsIn(last.length)} ${last.length === 1 ? 'es el último de su padre' : 'son, cada uno, el último de su padre'}: ` +
    `${joined(named)}. Conviene recoger polen nuevo de un padre antes de que se acabe su último vial.`
  );
}

export function verdictsByRecord(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  const names = ['con flores propias', 'sin ellas'];
  return byRecord(vials).map((own, at) => [
    names[at]!,
    ...standings(vials).map((standing) => wholeNumber(vialsThat(standing, own).length)),
  ]);
}
