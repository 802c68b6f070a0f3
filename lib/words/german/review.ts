/** Die Sätze des Saisonberichts: was jeder Abschnitt antwortet, Anzahlen zuerst. */

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
import { flowersIn, pairsIn, rowsIn, tagsIn, vialsIn } from './nouns.ts';
import {
  CANNOT_TELL,
  capitalised,
  counted,
  counts,
  decimal,
  difference,
  inTen,
  joined,
  rate,
  wholeNumber,
} from './numbers.ts';
import { agesSaid } from './rate-figures.ts';
import { pollenOf, storageLabel, withPollen } from './storage.ts';

const VERDICTS: Readonly<Record<VialStanding, string>> = {
  keep: 'behalten',
  'use-first': 'zuerst verwenden',
  'test-first': 'testen',
  discard: 'entsorgen',
  empty: 'leer',
};

export function seasonAnswer(
  { raw, vials, rows }: Pick<Analysis, 'raw' | 'vials' | 'rows'>,
  vialCount = vials.length,
): string {
  const size = [flowersIn(flowersRead(rows)), pairsIn(raw.byPair.length)];
  if (vialCount > 0) size.push(vialsIn(vialCount));
  const verdicts = vials.length > 0 ? [verdictCounts(vials)] : [];
  return [`${size.join(', ')}.`, methodCounts(raw.byStorage), ...verdicts].join(' ');
}

function methodCounts(byStorage: Analysis['raw']['byStorage']): string {
  const [first, ...rest] = methodsInOrder(byStorage);
  if (first === undefined) return 'Noch ist von keiner Blüte das Ergebnis bekannt.';
  return `${[
    `${capitalised(pollenOf(first.storage))}: ${counts(first.fruits, first.flowers)}`,
    ...rest.map(({ storage, fruits, flowers }) => `${storageLabel(storage)}: ${counts(fruits, flowers)}`),
  ].join(', ')}.`;
}

export function verdictCounts(vials: readonly VialAdvice[]): string {
  const tally = verdictTally(vials).map(([verdict, count]) => `${VERDICTS[verdict]}: ${wholeNumber(count)}`);
  return tally.length === 0 ? '' : `${capitalised(tally.join(', '))}.`;
}

export function tookMeans({ provenance }: Pick<Analysis, 'provenance'>): string {
  const when = provenance.options.endpoint === 'final' ? 'geerntet wurde' : 'bei der ersten Kontrolle da war';
  return `„Angesetzt“ heißt, dass eine Frucht ${when}; Kontrollblüten werden getrennt gezählt.`;
}

export function rowsAnswer({ rows }: Pick<Analysis, 'rows'>): string {
  const { read, used, leftOut, byReason } = rows;
  const start = `Verwendet: ${wholeNumber(used)} von ${rowsIn(read)}`;
  if (leftOut === 0) return `${start}; keine ist ausgelassen.`;
  return `${start}; ausgelassen: ${wholeNumber(leftOut)}, aus ${counted(byReason.length, 'Grund', 'Gründen')}.`;
}

export function lostTagsSaid({ raw }: Pick<Analysis, 'raw'>): string {
  const { lost, lowest, highest } = raw.lostTags.overall;
  const { fruits, flowers } = raw.overall;
  if (lost === 0) return 'Kein Etikett ging verloren.';
  const [hidden, verb] =
    lost === 1 ? ['diese Blüte', 'hätte'] : [`diese ${wholeNumber(lost)} Blüten`, 'hätten'];
  return (
    `${tagsIn(lost)} ${lost === 1 ? 'ging' : 'gingen'} verloren. Wie beobachtet, ohne ${lost === 1 ? 'es' : 'sie'}, haben ` +
    `${counts(fruits, flowers)} angesetzt. ${lost === 1 ? 'Wäre' : 'Wären'} ${hidden} fehlgeschlagen, hätten ` +
    `${counts(lowest.fruits, lowest.flowers)} angesetzt; ${verb} ${hidden} angesetzt, wären es ` +
    `${counts(highest.fruits, highest.flowers)}. Die Antworten liegen dazwischen.`
  );
}

export function storedAnswer(entry: FreshVersusStored, freshIsTold = false): string {
  const { storage, fresh, stored } = entry;
  const start = `${capitalised(pollenOf(storage))} hat bei ${counts(stored.fruits, stored.flowers)} angesetzt`;
  if (fresh.flowers === 0) return `${start}; zum Vergleich gibt es keinen frischen Pollen.`;
  const both = freshIsTold ? start : `${start}, frischer Pollen bei ${counts(fresh.fruits, fresh.flowers)}`;
  if (entry.adjusted.estimate === null) return `${both}${whyNotLikeForLike(entry)}`;
  return `${both}; bei gleichen Paaren gibt ${pollenOf(storage)}: ${difference(entry.adjusted)}.`;
}

function whyNotLikeForLike({ adjusted, difference: gap, informativePairs }: FreshVersusStored): string {
  if (adjusted.because === 'being-worked-out') {
    return `: über alle Blüten ${difference(gap)}. Für gleiche Paare wird noch gerechnet.`;
  }
  if (informativePairs >= 3) return '. Für gleiche Paare ist es aus den Blüten noch nicht zu sagen.';
  const pairs =
    informativePairs === 0
      ? 'Kein Paar hatte'
      : `Nur ${pairsIn(informativePairs)} ${informativePairs === 1 ? 'hatte' : 'hatten'}`;
  return `. ${pairs} beide Arten von Pollen und beide Ergebnisse; Pollen und Paar lassen sich nicht auseinanderhalten.`;
}

export function confoundingSaid({ storage, difference: raw, adjusted }: FreshVersusStored): string {
  if (raw.estimate === null || adjusted.estimate === null) return '';
  if (Math.abs(raw.estimate - adjusted.estimate) < 0.1) return '';
  const way = raw.estimate > adjusted.estimate ? 'schwierigere' : 'leichtere';
  return `Dass die beiden sich unterscheiden, passt dazu, dass ${pollenOf(storage)} auf ${way} Paare kam.`;
}

export function halfAgeAnswer(half: HalfAge, byAge: readonly AgeBand[]): string {
  const { storage, oldestAgeDays } = half;
  const bands = byAge.filter((band) => band.storage === storage && band.estimate !== null);
  const pollen = capitalised(agesSaid(storage, bands));
  if (oldestAgeDays === null)
    return `${capitalised(pollenOf(storage))}: von keiner Blüte ist das Alter des Pollens bekannt.`;
  return `${pollen}; ${fadingSaid(half, days(oldestAgeDays))}`;
}

function fadingSaid(half: HalfAge, oldest: string): string {
  const { estimate, lower, oldestAgeDays } = half;
  if (estimate !== null) {
    return `auf die Hälfte fällt sein Fruchtansatz nach dieser Zeit: ${daysWithRange(half)}; höchstes erprobtes Alter: ${oldest}.`;
  }
  if (lower === null) {
    return `er wurde nur in einem Alter oder nur aus einem Röhrchen erprobt, darum ist ${CANNOT_TELL}, wie schnell er nachlässt; höchstes erprobtes Alter: ${oldest}.`;
  }
  if (lower < oldestAgeDays!) {
    return `bis sein Fruchtansatz auf die Hälfte fällt, dauert es länger als ${days(lower)}; wie viel länger, ist ${CANNOT_TELL}; höchstes erprobtes Alter: ${oldest}.`;
  }
  return `im höchsten erprobten Alter, ${oldest}, war sein Fruchtansatz noch nicht auf die Hälfte gefallen, und darüber hinaus ist nichts bekannt.`;
}

export function pairsAnswer(pairs: readonly PooledPair[]): string {
  const { safest, few } = safestPair(pairs);
  const unranked =
    few === 0
      ? ''
      : ` ${wholeNumber(few)} von ${counted(pairs.length, 'Paar', 'Paaren')} ${few === 1 ? 'hat' : 'haben'} weniger als ${FEWEST_RANKED} Blüten: zu wenige für einen Rang.`;
  if (safest === undefined)
    return `Welches Paar das sicherste ist, ist aus den Blüten ${CANNOT_TELL}.${unranked}`;
  return (
    `Am sichersten ist ${pairName(safest)}: ${counts(safest.fruits, safest.flowers)} haben angesetzt ` +
    `(${basisSaid(safest)} ${rate(safest)}).${unranked}`
  );
}

function basisSaid({ basis }: PooledPair): string {
  return basis.storage === 'fresh'
    ? withPollen('fresh')
    : `${withPollen(basis.storage)}, Alter ${days(basis.ageDays)},`;
}

export function vialsAnswer({
  vials,
  worth,
  provenance,
}: Pick<Analysis, 'vials' | 'worth' | 'provenance'>): string {
  if (vials.length === 0) return 'Es wurde keine Datei mit Röhrchen angegeben; es ist keines zu beurteilen.';
  const { useOn } = provenance.options;
  const day = useOn === null ? 'unbekannten Tag' : daySaid(useOn);
  return `${verdictCounts(vials)} Beurteilt für den ${day}: ${worthSaid(worth)}`;
}

function worthSaid(worth: Analysis['worth']): string {
  if (worth.value === null) {
    return 'ohne frische Blüten zum Vergleich kann nur sagen, wer bestäubt, welcher Fruchtansatz eine Blüte wert ist.';
  }
  const start = `ein Röhrchen ist eine Blüte wert, wenn ${inTen(worth.value)} (${decimal(worth.value, 3)}) oder mehr ansetzen würden`;
  if (worth.source === 'option') return `${start}, wie angegeben.`;
  return `${start}, halb so viele wie mit frischem Pollen auf diesen Pflanzen.`;
}

export function scalesSaid({ grower }: Analysis['models']): string {
  if (grower.ageScales.length < 2) return '';
  const parts = grower.ageScales.map(
    ({ ageScale, weight }) =>
      `${ageScale === 'days' ? 'ein Nachlassen gleichmäßig mit den Tagen' : 'ein anfangs schnelles Nachlassen'} zu ${wholeNumber(weight * 100)} von je 100`,
  );
  return `Wie Pollen nachlässt, verraten ein oder zwei Saisons nicht, darum zählen beide Formen: ${joined(parts)}, danach, wie gut jede zu den Blüten passt.`;
}
