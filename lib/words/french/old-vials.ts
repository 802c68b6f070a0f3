/** What is said of old vials. */
import type { VialAdvice } from '../../decisions/vials.ts';
import { byRecord, lastVials, oldestFirst, standings, vialAges, vialsThat } from '../told/vials.ts';
import { daySaid } from './dates.ts';
import { days } from './durations.ts';
import { CANNOT_TELL, counted, countedOf, counts, joined, likely, rate, wholeNumber } from './numbers.ts';
import { storageLabel } from './storage.ts';
import { recordSaid, VERDICT_LABELS, verdictSaid } from './vial-verdicts.ts';

/** How many will be old on the day of use, and how many have a record. */
export function oldVialsAnswer(vials: readonly VialAdvice[], useOn: string | null): string {
  const ages = vialAges(vials);
  if (useOn === null || ages === null)
    return `Aucun tube n’a pu être jugé : il n’y a pas d’âge à dire.${emptySaid(vials)}`;
  const { oldest, old, tried, all } = ages;
  return (
    `${countedOf(old, all, 'tube')} ${old < 2 ? 'aura' : 'auront'} plus d’un an le ${daySaid(useOn)} ; le plus vieux est ${oldest.vial} (${oldest.pollenParent}), ` +
    `${days(oldest.ageDays)}. ${counts(tried, all)} ont des fleurs à eux pour en juger ; les autres sont jugés par ` +
    `leur père, leur âge et la façon dont ils ont été gardés.${emptySaid(vials)}`
  );
}

/** Vials without a dose. */
function emptySaid(vials: readonly VialAdvice[]): string {
  const empty = vialsThat('empty', vials).length;
  return empty === 0 ? '' : ` ${counted(empty, 'tube')} ${empty === 1 ? 'est vide' : 'sont vides'}.`;
}

export const STORY_COLUMNS = [
  'tube',
  'père, stockage, âge alors',
  'ses propres fleurs',
  'attendu alors',
  'vaut une fleur alors',
  'un an plus tard',
  'verdict',
] as const;

function chance(probability: number | null): string {
  return probability === null ? CANNOT_TELL : likely(probability);
}

/** Every vial, the oldest first. */
export function storyRows(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  return oldestFirst(vials).map((vial) => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}, ${vial.ageDays < 0 ? 'pas encore récolté' : days(vial.ageDays)}`,
    recordSaid(vial),
    rate(vial),
    chance(vial.probabilityWorth),
    chance(vial.probabilityWorthYearLater),
    verdictSaid(vial),
  ]);
}

/** Vials after which a father is gone. */
export function lastVialsSaid(vials: readonly VialAdvice[]): string {
  if (vials.every(({ dosesLeft }) => dosesLeft === 0)) return 'Il n’y a aucun tube avec du pollen.';
  const last = lastVials(vials);
  if (last.length === 0) return 'Chaque père a encore un autre tube.';
  const named = last.map(
    ({ vial, pollenParent, verdict }) => `${vial} (${pollenParent}, ${VERDICT_LABELS[verdict]})`,
  );
  return (
    `${counted(last.length, 'tube')} ${last.length === 1 ? 'est le dernier de son père' : 'sont chacun le dernier de leur père'} : ` +
    `${joined(named)}. Récolter du nouveau pollen d’un père avant que son dernier tube ne parte.`
  );
}

/** Verdicts of vials with a record and without. */
export function verdictsByRecord(vials: readonly VialAdvice[]): readonly (readonly string[])[] {
  const names = ['avec des fleurs à eux', 'sans'];
  return byRecord(vials).map((own, at) => [
    names[at]!,
    ...standings(vials).map((standing) => wholeNumber(vialsThat(standing, own).length)),
  ]);
}
