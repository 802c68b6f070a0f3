/** What is said of a vial: its verdict, why, and which test would tell most. */
import type { NextTest, TestValue } from '../../decisions/next-test.ts';
import type { VialAdvice, VialVerdict } from '../../decisions/vials.ts';
import { firstTest, isOlderThanTried, olderThanTried, standingOf, type VialStanding } from '../told/vials.ts';
import { counted, counts, inTen, joined, likely } from './numbers.ts';
import { reasonSentence } from './reasons.ts';
import { storageLabel } from './storage.ts';

type Reason = (then: string, yearLater: string) => string;

const REASONS: Readonly<Record<string, Reason>> = {
  'worth-now-and-a-year-later': (then, yearLater) =>
    `qu’il vaille une fleur est ${then} le jour d’utilisation, et ${yearLater} un an plus tard.`,
  'worth-now-only': (then, yearLater) =>
    `qu’il vaille une fleur est ${then} le jour d’utilisation, mais ${yearLater} un an plus tard.`,
  'could-be-either': (then) =>
    `qu’il vaille une fleur est ${then} le jour d’utilisation : polliniser quelques fleurs avant de compter dessus.`,
  'hardly-worth': (then) => `qu’il vaille une fleur est ${then} le jour d’utilisation.`,
};

/** The four verdicts as labels. */
export const VERDICT_LABELS: Readonly<Record<VialStanding, string>> = {
  keep: 'garder',
  'use-first': 'utiliser d’abord',
  'test-first': 'tester d’abord',
  discard: 'jeter',
  empty: 'vide',
};

const WITHOUT_NUMBER: Readonly<Record<string, string>> = {
  'no-estimate': 'rien ne permet de le juger : polliniser d’abord quelques fleurs avec lui.',
  'worth-not-given':
    'il n’a pas été dit quelle nouaison vaut une fleur : polliniser d’abord quelques fleurs avec lui.',
};

const MARK = '*';

/** The verdict, marked where the vial is older than any pollen tried. */
export function verdictSaid(vial: Pick<VialAdvice, 'verdict' | 'dosesLeft' | 'warnings'>): string {
  const label = VERDICT_LABELS[standingOf(vial)];
  return isOlderThanTried(vial) ? `${label} ${MARK}` : label;
}

/** What the mark means; empty where no vial has it. */
export function olderThanTriedSaid(vials: readonly VialAdvice[]): string {
  const found = olderThanTried(vials);
  if (found === null) return '';
  const tried = found.tried.map(
    ({ storage, days: oldest }) => `${storageLabel(storage)} : ${counted(oldest, 'jour')}`,
  );
  return (
    `${MARK} ${counts(found.older, found.all)} tubes ${found.older === 1 ? 'sera' : 'seront'} ce jour-là plus vieux que tout pollen de ` +
    `leur sorte essayé (${tried.join(' ; ')}) : ce qui en est dit est une conjecture d’après la forme de la courbe.`
  );
}

/** What its own flowers gave. */
export function recordSaid({ fruits, flowers }: Pick<VialAdvice, 'fruits' | 'flowers'>): string {
  if (flowers === 0) return 'Encore aucune fleur à lui';
  if (flowers === 1) return `Sa seule fleur ${fruits === 1 ? 'a noué' : 'n’a pas noué'}`;
  return `${fruits} de ses ${flowers} fleurs ${fruits < 2 ? 'a' : 'ont'} noué`;
}

/** Of an empty vial only its record counts, and whether its father has pollen elsewhere. */
function emptySaid(advice: VialAdvice): string {
  const { lastOfParent, pollenParent } = advice;
  const last = lastOfParent
    ? ` Aucun tube de ${pollenParent} ne contient plus de pollen : en récolter de nouveau.`
    : '';
  return `${recordSaid(advice)}. D’après la liste il est vide : il ne reste aucune dose.${last}`;
}

/** Why a vial has its verdict, with the counts. */
export function vialReason(advice: VialAdvice): string {
  const { reasonCode, probabilityWorth, probabilityWorthYearLater, warnings, pollenParent } = advice;
  if (standingOf(advice) === 'empty') return emptySaid(advice);
  const reason = REASONS[reasonCode];
  const last = warnings.includes('last-vial')
    ? ` C’est le dernier tube de ${pollenParent} : récolter du nouveau pollen avant de le jeter.`
    : '';
  const record = recordSaid(advice);
  if (reason !== undefined && probabilityWorth !== null && probabilityWorthYearLater !== null) {
    return `${record} ; ${reason(likely(probabilityWorth), likely(probabilityWorthYearLater))}${last}`;
  }
  const why = WITHOUT_NUMBER[reasonCode];
  return `${record}${why === undefined ? `. ${reasonSentence(reasonCode)}` : ` ; ${why}`}${last}`;
}

function outcomesSaid({ flowers, outcomes }: TestValue, now: VialVerdict): string {
  const other = outcomes.filter(({ verdict }) => verdict !== now);
  return joined(other.map(({ fruits, verdict }) => `${VERDICT_LABELS[verdict]} ${ifTake(fruits, flowers)}`));
}

function gainSaid({ gain }: TestValue): string {
  const inHundred = Math.round(100 * gain);
  if (inHundred === 0) return ' ; cela gagnerait moins de 1 fruit sur 100 fleurs à venir';
  return ` ; cela gagnerait environ ${counted(inHundred, 'fruit')} sur 100 fleurs à venir`;
}

function ifTake(fruits: number, flowers: number): string {
  if (fruits === 0) return flowers === 1 ? 'si elle échoue' : 'si aucune ne noue';
  if (flowers === 1) return 'si elle noue';
  return fruits === flowers ? 'si les deux nouent' : 'si une seule noue';
}

/** One test flower or two, what they could change and what that gains. */
export function testSaid({ vial, pollenParent, seedParent, verdict, tests }: NextTest): string {
  const test = tests.at(-1)!;
  return (
    `${counted(test.flowers, 'fleur')} de ${seedParent} avec ${vial} (${pollenParent}) : chance de changer ` +
    `« ${VERDICT_LABELS[verdict]} » : ${inTen(test.changes)} (${outcomesSaid(test, verdict)})${gainSaid(test)}`
  );
}

/** The test that tells most, if there is one. */
export function nextTestSaid(tests: readonly NextTest[]): string {
  const first = firstTest(tests);
  return first === undefined ? '' : `Commencer par cet essai : ${testSaid(first)}.`;
}
