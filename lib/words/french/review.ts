/** The first sentence of each section of the season review. */
import type { Analysis } from '../../analyse.ts';
import type { HalfAge } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../../analysis/pairs.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { FEWEST_RANKED, flowersRead, methodsInOrder, safestPair, verdictTally } from '../told/review.ts';
import type { VialStanding } from '../told/vials.ts';
import { pairName } from './choice-figures.ts';
import { daySaid } from './dates.ts';
import { days, daysWithRange } from './durations.ts';
import {
  capitalised,
  counted,
  countedOf,
  counts,
  decimal,
  difference,
  elided,
  inTen,
  joined,
  rate,
  wholeNumber,
} from './numbers.ts';
import { agesSaid } from './rate-figures.ts';
import { pollenOf, storageLabel } from './storage.ts';

export { FEWEST_RANKED } from '../told/review.ts';

const VERDICTS: Readonly<Record<VialStanding, string>> = {
  keep: 'garder',
  'use-first': 'utiliser d’abord',
  'test-first': 'tester',
  discard: 'jeter',
  empty: 'vide',
};

/** Size of the season, rates by method, verdicts: the whole answer in three sentences. */
export function seasonAnswer(
  { raw, vials, rows }: Pick<Analysis, 'raw' | 'vials' | 'rows'>,
  vialCount = vials.length,
): string {
  const size = [counted(flowersRead(rows), 'fleur'), counted(raw.byPair.length, 'couple')];
  if (vialCount > 0) size.push(counted(vialCount, 'tube'));
  const verdicts = vials.length > 0 ? [verdictCounts(vials)] : [];
  return [`${size.join(', ')}.`, methodCounts(raw.byStorage), ...verdicts].join(' ');
}

function methodCounts(byStorage: Analysis['raw']['byStorage']): string {
  const [first, ...rest] = methodsInOrder(byStorage);
  if (first === undefined) return 'Aucune fleur n’a encore un résultat connu.';
  return `${[
    `${capitalised(pollenOf(first.storage))} ${counts(first.fruits, first.flowers)}`,
    ...rest.map(({ storage, fruits, flowers }) => `${storageLabel(storage)} ${counts(fruits, flowers)}`),
  ].join(', ')}.`;
}

/** "Garder 12, utiliser d’abord 3, …". */
export function verdictCounts(vials: readonly VialAdvice[]): string {
  const tally = verdictTally(vials).map(([verdict, count]) => `${VERDICTS[verdict]} ${wholeNumber(count)}`);
  return tally.length === 0 ? '' : `${capitalised(tally.join(', '))}.`;
}

/** What counts as a fruit. */
export function tookMeans({ provenance }: Pick<Analysis, 'provenance'>): string {
  const when =
    provenance.options.endpoint === 'final' ? 'est arrivé à la récolte' : 's’était formé au premier contrôle';
  return `« A noué » veut dire qu’un fruit ${when} ; les fleurs témoins sont comptées à part.`;
}

/** How many rows were used. */
export function rowsAnswer({ rows }: Pick<Analysis, 'rows'>): string {
  const { read, used, leftOut, byReason } = rows;
  const start = `${countedOf(used, read, 'ligne')} ${used < 2 ? 'a servi' : 'ont servi'}`;
  if (leftOut === 0) return `${start} : aucune n’est laissée de côté.`;
  return `${start} ; ${wholeNumber(leftOut)} ${leftOut === 1 ? 'est laissée' : 'sont laissées'} de côté pour ${counted(byReason.length, 'raison')}.`;
}

/** Lost tags: had all failed, had all taken. */
export function lostTagsSaid({ raw }: Pick<Analysis, 'raw'>): string {
  const { lost, lowest, highest } = raw.lostTags.overall;
  const { fruits, flowers } = raw.overall;
  if (lost === 0) return 'Aucune étiquette n’a été perdue.';
  const one = lost === 1;
  const failed = one ? 'Si cette fleur avait échoué' : `Si ces ${wholeNumber(lost)} fleurs avaient échoué`;
  const taken = one ? 'si elle avait noué' : `si ces ${wholeNumber(lost)} fleurs avaient noué`;
  return (
    `${counted(lost, 'étiquette')} ${one ? 'a été perdue' : 'ont été perdues'}. Tel qu’observé, sans ${one ? 'elle' : 'elles'}, ` +
    `${counts(fruits, flowers)} ont noué. ${failed}, ` +
    `${counts(lowest.fruits, lowest.flowers)} auraient noué ; ${taken}, ` +
    `${counts(highest.fruits, highest.flowers)}. Les réponses sont entre les deux.`
  );
}

/** Stored against fresh pollen, over all flowers and like for like. */
export function storedAnswer(entry: FreshVersusStored, freshIsTold = false): string {
  const { storage, fresh, stored } = entry;
  const start = `${capitalised(pollenOf(storage))} : ${counts(stored.fruits, stored.flowers)} ${stored.fruits < 2 ? 'a' : 'ont'} noué`;
  if (fresh.flowers === 0) return `${start} ; il n’y a pas de pollen frais à quoi comparer.`;
  const both = freshIsTold ? start : `${start}, pollen frais : ${counts(fresh.fruits, fresh.flowers)}`;
  if (entry.adjusted.estimate === null) {
    return `${both}${whyNotLikeForLike(entry)}`;
  }
  return `${both} ; à couples égaux, le ${pollenOf(storage)} donne ${difference(entry.adjusted)}.`;
}

function whyNotLikeForLike({ adjusted, difference: gap, informativePairs }: FreshVersusStored): string {
  if (adjusted.because === 'being-worked-out') {
    return ` : sur toutes les fleurs ${difference(gap)}. La comparaison à couples égaux est encore en cours de calcul.`;
  }
  if (informativePairs >= 3) return '. À couples égaux, les fleurs ne permettent pas encore de le dire.';
  const pairs =
    informativePairs === 0
      ? 'Aucun couple n’a eu'
      : `${informativePairs === 1 ? 'Seul 1 couple a' : `Seuls ${wholeNumber(informativePairs)} couples ont`} eu`;
  return `. ${pairs} les deux sortes de pollen et les deux résultats : on ne peut pas séparer le pollen du couple.`;
}

/** Why the plain difference and the like-for-like one part; empty where they agree. */
export function confoundingSaid({ storage, difference: raw, adjusted }: FreshVersusStored): string {
  if (raw.estimate === null || adjusted.estimate === null) return '';
  if (Math.abs(raw.estimate - adjusted.estimate) < 0.1) return '';
  const way = raw.estimate > adjusted.estimate ? 'difficiles' : 'faciles';
  return `Que les deux diffèrent s’accorde avec du ${pollenOf(storage)} allé à des couples plus ${way}.`;
}

/** How fast pollen kept in one way fades. */
export function halfAgeAnswer(half: HalfAge, byAge: readonly AgeBand[]): string {
  const { storage, oldestAgeDays } = half;
  const bands = byAge.filter((band) => band.storage === storage && band.estimate !== null);
  const pollen = capitalised(agesSaid(storage, bands));
  if (oldestAgeDays === null)
    return `${capitalised(pollenOf(storage))} : aucune fleur n’a un âge de pollen connu.`;
  return `${pollen} ; ${fadingSaid(half, days(oldestAgeDays))}`;
}

function fadingSaid(half: HalfAge, oldest: string): string {
  const { estimate, lower, oldestAgeDays } = half;
  if (estimate !== null) {
    return `sa nouaison tombe de moitié après ${daysWithRange(half)} ; le plus vieux essayé avait ${oldest}.`;
  }
  if (lower === null) {
    return `il n’a été essayé qu’à un âge ou d’un seul tube : on ne peut pas encore dire à quelle vitesse il décline ; le plus vieux essayé avait ${oldest}.`;
  }
  if (lower < oldestAgeDays!) {
    return `il faut plus ${elided('de', days(lower))} pour que sa nouaison tombe de moitié, combien de plus on ne peut pas encore le dire ; le plus vieux essayé avait ${oldest}.`;
  }
  return `sa nouaison n’était pas tombée de moitié au plus grand âge essayé, ${oldest}, et rien n’est connu au-delà.`;
}

/** The safest pair by its cautious end. */
export function pairsAnswer(pairs: readonly PooledPair[]): string {
  const { safest, few } = safestPair(pairs);
  const unranked =
    few === 0
      ? ''
      : ` ${countedOf(few, pairs.length, 'couple')} ${few === 1 ? 'a' : 'ont'} moins de ${FEWEST_RANKED} fleurs : trop peu pour un rang.`;
  if (safest === undefined) return `Les fleurs ne disent pas encore quel couple est le plus sûr.${unranked}`;
  return (
    `Le couple le plus sûr est ${pairName(safest)} : ${counts(safest.fruits, safest.flowers)} ont noué ` +
    `(${basisSaid(safest)} ${rate(safest)}).${unranked}`
  );
}

function basisSaid({ basis }: PooledPair): string {
  return basis.storage === 'fresh'
    ? 'avec du pollen frais'
    : `avec du ${pollenOf(basis.storage)} ${elided('de', days(basis.ageDays))}`;
}

/** Verdicts, the day they are for, and what is worth a flower. */
export function vialsAnswer({
  vials,
  worth,
  provenance,
}: Pick<Analysis, 'vials' | 'worth' | 'provenance'>): string {
  if (vials.length === 0) return 'Aucun fichier de tubes n’a été donné : il n’y en a aucun à juger.';
  const { useOn } = provenance.options;
  return `${verdictCounts(vials)} Jugés pour une utilisation ${useOn === null ? 'à un jour inconnu' : `le ${daySaid(useOn)}`} : ${worthSaid(worth)}`;
}

function worthSaid(worth: Analysis['worth']): string {
  if (worth.value === null) {
    return 'sans fleurs fraîches à quoi comparer, vous seul pouvez dire quelle nouaison vaut une fleur.';
  }
  const start = `un tube vaut une fleur si ${inTen(worth.value)} (${decimal(worth.value, 3)}) ou plus noueraient`;
  if (worth.source === 'option') return `${start}, comme vous l’avez fixé.`;
  return `${start}, la moitié de ce que donne le pollen frais sur ces plantes.`;
}

/** How both shapes of fading count. */
export function scalesSaid({ grower }: Analysis['models']): string {
  if (grower.ageScales.length < 2) return '';
  const parts = grower.ageScales.map(
    ({ ageScale, weight }) =>
      `${ageScale === 'days' ? 'un déclin régulier de jour en jour' : 'un déclin rapide au début'} pour ${wholeNumber(weight * 100)} sur 100`,
  );
  return `Une saison ou deux ne disent pas comment le pollen décline ; les deux formes comptent donc : ${joined(parts)}, selon que chacune s’accorde bien avec les fleurs.`;
}
