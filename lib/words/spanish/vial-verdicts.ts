/** What a vial's verdict rests on, in one sentence. */

import type { NextTest, TestValue } from '../../decisions/next-test.ts';
import type { VialAdvice, VialVerdict } from '../../decisions/vials.ts';
import { firstTest, isOlderThanTried, olderThanTried, standingOf, type VialStanding } from '../told/vials.ts';
import { daysIn, flowersIn } from './nouns.ts';
import { about, counts, inTen, joined, likely } from './numbers.ts';
import { reasonSentence } from './reasons.ts';
import { storageLabel } from './storage.ts';

type Reason = (then: string, yearLater: string) => string;

const WORTH = 'que merezca una flor el día de uso';

const REASONS: Readonly<Record<string, Reason>> = {
  'worth-now-and-a-year-later': (then, yearLater) =>
    `es ${then} ${WORTH}, ${/^i/.test(yearLater) ? 'e' : 'y'} ${yearLater} un año después.`,
  'worth-now-only': (then, yearLater) => `es ${then} ${WORTH}, pero ${yearLater} un año después.`,
  'could-be-either': (then) =>
    `es ${then} ${WORTH}: conviene polinizar unas pocas flores antes de contar con él.`,
  'hardly-worth': (then) => `es ${then} ${WORTH}.`,
};

export const VERDICT_LABELS: Readonly<Record<VialStanding, string>> = {
  keep: 'conservar',
  'use-first': 'usar primero',
  'test-first': 'probar antes',
  discard: 'desechar',
  empty: 'vacío',
};

const WITHOUT_NUMBER: Readonly<Record<string, string>> = {
  'no-estimate': 'no hay nada con que juzgarlo: conviene polinizar antes unas pocas flores con él.',
  'worth-not-given':
    'no se ha dicho qué cuajado merece una flor: conviene polinizar antes unas pocas flores con él.',
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
    `${MARK} ${counts(found.older, found.all)} viales ${found.older === 1 ? 'tendrá' : 'tendrán'} ese día más edad que cualquier ` +
    `polen así que se probó (${tried.join('; ')}): lo que se dice de ellos es una conjetura por la forma de la curva.`
  );
}

/** "cuajaron 2 de sus 9 flores". */
export function recordSaid({ fruits, flowers }: Pick<VialAdvice, 'fruits' | 'flowers'>): string {
  if (flowers === 0) return 'Aún sin flores propias';
  if (flowers === 1) return `Su única flor ${fruits === 1 ? 'cuajó' : 'no cuajó'}`;
  return `${fruits} de sus ${flowers} flores ${fruits === 1 ? 'cuajó' : 'cuajaron'}`;
}

function emptySaid(advice: VialAdvice): string {
  const { lastOfParent, pollenParent } = advice;
  const last = lastOfParent
    ? ` Ya no queda polen de ${pollenParent} en ningún vial: conviene recoger polen nuevo.`
    : '';
  return `${recordSaid(advice)}. Según la lista está vacío: no le queda ninguna dosis.${last}`;
}

export function vialReason(advice: VialAdvice): string {
  const { reasonCode, probabilityWorth, probabilityWorthYearLater, warnings, pollenParent } = advice;
  if (standingOf(advice) === 'empty') return emptySaid(advice);
  const reason = REASONS[reasonCode];
  const last = warnings.includes('last-vial')
    ? ` Es el último vial de ${pollenParent}: conviene recoger polen nuevo antes de desecharlo.`
    : '';
  const record = recordSaid(advice);
  if (reason !== undefined && probabilityWorth !== null && probabilityWorthYearLater !== null) {
    return `${record}; ${reason(likely(probabilityWorth), likely(probabilityWorthYearLater))}${last}`;
  }
  const why = WITHOUT_NUMBER[reasonCode];
  return `${record}${why === undefined ? `. ${reasonSentence(reasonCode)}` : `; ${why}`}${last}`;
}

/** "conservar si cuajan las dos, desechar si no cuaja ninguna". */
function outcomesSaid({ flowers, outcomes }: TestValue, now: VialVerdict): string {
  const other = outcomes.filter(({ verdict }) => verdict !== now);
  return joined(other.map(({ fruits, verdict }) => `${VERDICT_LABELS[verdict]} ${ifTake(fruits, flowers)}`));
}

function ifTake(fruits: number, flowers: number): string {
  if (fruits === 0) return flowers === 1 ? 'si no cuaja' : 'si no cuaja ninguna';
  if (flowers === 1) return 'si cuaja';
  return fruits === flowers ? 'si cuajan las dos' : 'si cuaja una';
}

/** What each later flower gains on average by what was learnt. */
function gainSaid({ gain }: TestValue): string {
  const inHundred = Math.round(100 * gain);
  if (inHundred === 0) return '; se ganaría menos de 1 fruto en 100 flores posteriores';
  return `; se ${inHundred === 1 ? 'ganaría' : 'ganarían'} ${about('unos', inHundred, 'fruto', 'frutos')} en 100 flores posteriores`;
}

export function testSaid({ vial, pollenParent, seedParent, verdict, tests }: NextTest): string {
  const test = tests.at(-1)!;
  return (
    `${flowersIn(test.flowers)} de ${seedParent} con ${vial} (${pollenParent}) ${test.flowers === 1 ? 'cambiaría' : 'cambiarían'} ` +
    `«${VERDICT_LABELS[verdict]}» ${inTen(test.changes)} veces (${outcomesSaid(test, verdict)})${gainSaid(test)}`
  );
}

export function nextTestSaid(tests: readonly NextTest[]): string {
  const first = firstTest(tests);
  return first === undefined ? '' : `Empezar por esta prueba: ${testSaid(first)}.`;
}
