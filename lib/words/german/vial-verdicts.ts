/** Worauf das Urteil über ein Röhrchen beruht. */

import type { NextTest, TestValue } from '../../decisions/next-test.ts';
import type { VialAdvice, VialVerdict } from '../../decisions/vials.ts';
import { firstTest, isOlderThanTried, olderThanTried, standingOf, type VialStanding } from '../told/vials.ts';
import { daysIn, flowersIn, fruitsIn } from './nouns.ts';
import { counts, inTen, likely } from './numbers.ts';
import { reasonSentence } from './reasons.ts';
import { storageLabel } from './storage.ts';

type Reason = (then: string, yearLater: string) => string;

const WORTH = 'am Tag der Verwendung eine Blüte wert';

const REASONS: Readonly<Record<string, Reason>> = {
  'worth-now-and-a-year-later': (then, yearLater) =>
    `${then} ${WORTH}, und ${yearLater} noch ein Jahr später.`,
  'worth-now-only': (then, yearLater) => `${then} ${WORTH}, aber ${yearLater} noch ein Jahr später.`,
  'could-be-either': (then) =>
    `${then} ${WORTH}: erst einige Blüten damit bestäuben, bevor man sich darauf verlässt.`,
  'hardly-worth': (then) => `${then} ${WORTH}.`,
};

export const VERDICT_LABELS: Readonly<Record<VialStanding, string>> = {
  keep: 'behalten',
  'use-first': 'zuerst verwenden',
  'test-first': 'erst testen',
  discard: 'entsorgen',
  empty: 'leer',
};

const WITHOUT_NUMBER: Readonly<Record<string, string>> = {
  'no-estimate': 'es gibt nichts, wonach es zu beurteilen wäre: erst einige Blüten damit bestäuben.',
  'worth-not-given':
    'es ist nicht gesagt, welcher Fruchtansatz eine Blüte wert ist: erst einige Blüten damit bestäuben.',
};

const MARK = '*';

export function verdictSaid(vial: Pick<VialAdvice, 'verdict' | 'dosesLeft' | 'warnings'>): string {
  const label = VERDICT_LABELS[standingOf(vial)];
  return isOlderThanTried(vial) ? `${label} ${MARK}` : label;
}

export function olderThanTriedSaid(vials: readonly VialAdvice[]): string {
  const found = olderThanTried(vials);
  if (found === null) return '';
  const tried = found.tried.map(({ storage, days: oldest }) => `${storageLabel(storage)}: ${daysIn(oldest)}`);
  return (
    `${MARK} ${counts(found.older, found.all)} Röhrchen ${found.older === 1 ? 'ist' : 'sind'} dann älter als jeder erprobte Pollen ` +
    `ihrer Art (${tried.join('; ')}): ihr Urteil ist aus der Kurve geraten.`
  );
}

export function recordSaid({ fruits, flowers }: Pick<VialAdvice, 'fruits' | 'flowers'>): string {
  if (flowers === 0) return 'Bisher keine eigene Blüte';
  if (flowers === 1) return `Die eine eigene Blüte hat ${fruits === 1 ? '' : 'nicht '}angesetzt`;
  return `${fruits} von ${flowers} eigenen Blüten ${fruits === 1 ? 'hat' : 'haben'} angesetzt`;
}

function emptySaid(advice: VialAdvice): string {
  const { lastOfParent, pollenParent } = advice;
  const last = lastOfParent ? ` Von ${pollenParent} ist in keinem Röhrchen mehr Pollen: neuen sammeln.` : '';
  return `${recordSaid(advice)}. Nach der Liste ist es leer: keine Dosis ist übrig.${last}`;
}

export function vialReason(advice: VialAdvice): string {
  const { reasonCode, probabilityWorth, probabilityWorthYearLater, warnings, pollenParent } = advice;
  if (standingOf(advice) === 'empty') return emptySaid(advice);
  const reason = REASONS[reasonCode];
  const last = warnings.includes('last-vial')
    ? ` Es ist das letzte Röhrchen von ${pollenParent}: neuen Pollen sammeln, bevor es entsorgt wird.`
    : '';
  const record = recordSaid(advice);
  if (reason !== undefined && probabilityWorth !== null && probabilityWorthYearLater !== null) {
    return `${record}; ${reason(likely(probabilityWorth), likely(probabilityWorthYearLater))}${last}`;
  }
  const why = WITHOUT_NUMBER[reasonCode];
  return `${record}${why === undefined ? `. ${reasonSentence(reasonCode)}` : `; ${why}`}${last}`;
}

function outcomesSaid({ flowers, outcomes }: TestValue, now: VialVerdict): string {
  const other = outcomes.filter(({ verdict }) => verdict !== now);
  return other
    .map(({ fruits, verdict }) => `${VERDICT_LABELS[verdict]}, ${ifTake(fruits, flowers)}`)
    .join('; ');
}

function ifTake(fruits: number, flowers: number): string {
  if (fruits === 0) return flowers === 1 ? 'wenn sie nicht ansetzt' : 'wenn keine ansetzt';
  if (flowers === 1) return 'wenn sie ansetzt';
  return fruits === flowers ? 'wenn beide ansetzen' : 'wenn eine ansetzt';
}

/** Der Wert des Tests: was jede spätere Blüte im Mittel gewinnt. */
function gainSaid({ gain }: TestValue): string {
  const inHundred = Math.round(100 * gain);
  if (inHundred === 0) return '; das brächte weniger als 1 Frucht von 100 späteren Blüten';
  return `; das brächte etwa ${fruitsIn(inHundred)} von 100 späteren Blüten`;
}

export function testSaid({ vial, pollenParent, seedParent, verdict, tests }: NextTest): string {
  const test = tests.at(-1)!;
  return (
    `${flowersIn(test.flowers)} von ${seedParent} mit ${vial} (${pollenParent}) ${test.flowers === 1 ? 'würde' : 'würden'} das ` +
    `Urteil „${VERDICT_LABELS[verdict]}“ mit einer Chance von ${inTen(test.changes)} ändern (${outcomesSaid(test, verdict)})${gainSaid(test)}`
  );
}

export function nextTestSaid(tests: readonly NextTest[]): string {
  const first = firstTest(tests);
  return first === undefined ? '' : `Zuerst dieser Test: ${testSaid(first)}.`;
}
