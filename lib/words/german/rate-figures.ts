/** Was die Bilder der Raten sagen: die Saison, frisch gegen gelagert, Alter des Pollens. */

import type { AgePoint } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import type { Estimate, Proportion } from '../../proportions/interval.ts';
import type { Outcome } from '../../season/season.ts';
import { agesTold } from '../told/review.ts';
import { days } from './durations.ts';
import { afterDays, daysIn, flowersIn, fruitsIn, pairsIn, tagsIn } from './nouns.ts';
import {
  CANNOT_TELL,
  capitalised,
  counted,
  counts,
  difference,
  inTen,
  joined,
  limit,
  rate,
  rateWithRange,
  wholeNumber,
} from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';

type StorageRate = Proportion & { readonly storage: string };

export const RATE_AXIS = 'Früchte von je 10 Blüten';

const OUTCOME_LABELS: Readonly<Record<Outcome, string>> = {
  fruit: 'Frucht',
  dropped: 'später abgefallen',
  none: 'keine Frucht',
  unknown: 'Etikett verloren',
  pending: 'zu früh zu sagen',
};

const OUTCOME_COUNTS: Readonly<Record<Outcome, (rows: number) => string>> = {
  fruit: fruitsIn,
  dropped: (rows) => `${wholeNumber(rows)} später abgefallen`,
  none: (rows) => `${wholeNumber(rows)} ohne Frucht`,
  unknown: (rows) => `${tagsIn(rows)} verloren`,
  pending: (rows) => `${wholeNumber(rows)} zu früh zu sagen`,
};

export const seasonWords = {
  label: 'Was aus jeder Blüte wurde',
  columns: ['Ergebnis', 'Blüten'] as const,
  outcome: (outcome: Outcome) => OUTCOME_LABELS[outcome],
  finding: (
    outcomes: readonly { readonly outcome: Outcome; readonly rows: number }[],
    perMark: number,
  ): string => {
    const flowers = outcomes.reduce((sum, { rows }) => sum + rows, 0);
    return `${flowersIn(flowers)}: ${joined(outcomes.map(({ outcome, rows }) => OUTCOME_COUNTS[outcome](rows)))}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)}, geordnet nach dem, was daraus wurde. Verlorene Etiketten und zu junge Blüten sind keine Fehlschläge.`,
  perMark: markIs,
};

function markNote(perMark: number): string {
  return perMark === 1 ? '' : ` ${markIs(perMark)}.`;
}

function markIs(flowers: number): string {
  return flowers === 1 ? 'Ein Zeichen ist eine Blüte' : `Ein Zeichen sind ${flowersIn(flowers)}`;
}

/** Der Name, kurz genug für die Zeichnung. */
function shortLabel(storage: string): string {
  return storage === 'room' ? 'Zimmertemp.' : storageLabel(storage);
}

export const storageWords = {
  label: 'Fruchtansatz nach Lagerung des Pollens',
  columns: ['Pollen', 'angesetzt', 'Rate und Spanne'],
  method: shortLabel,
  took: ({ fruits, flowers }: Proportion) => `${counts(fruits, flowers)} angesetzt`,
  rateLabel: ({ storage, estimate }: StorageRate): string =>
    `${storageLabel(storage)}: ${estimate === null ? CANNOT_TELL : inTen(estimate)}`,
  extremeLabel: ({ storage, fruits, lower, upper }: StorageRate): string =>
    `${storageLabel(storage)}: ${fruits === 0 ? `bis zu ${limit(upper ?? 1)}` : `${limit(lower ?? 0)} oder mehr`}`,
  marks: (perMark: number): string =>
    perMark === 1 ? 'Groß: angesetzt; klein: nicht.' : `${markIs(perMark)}; klein: keine Frucht.`,
  finding: (rates: readonly StorageRate[], perMark: number): string => {
    const said = rates.map((one) => `${pollenOf(one.storage)}: ${rateWithRange(one)}`).join('; ');
    return `${capitalised(said)}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)}; große haben angesetzt, kleine Punkte nicht. Frischer Pollen ist gefüllt, gelagerter hohl. Darunter jede ` +
    'Rate als Punkt mit ihrer Spanne.',
  cells: (one: StorageRate): readonly string[] => [
    storageLabel(one.storage),
    counts(one.fruits, one.flowers),
    rateWithRange(one),
  ],
};

/** That the flowers cannot tell, or that it is only not worked out yet. */
function cannotTell({ because }: Estimate): string {
  return because === 'being-worked-out' ? 'wird noch berechnet' : CANNOT_TELL;
}

function whyNotAdjusted({ adjusted, informativePairs }: FreshVersusStored): string {
  if (informativePairs >= 3) return cannotTell(adjusted);
  return `${CANNOT_TELL}: ${fewPairs(informativePairs)} hatte${informativePairs > 1 ? 'n' : ''} beide Arten und beide Ergebnisse`;
}

function fewPairs(pairs: number): string {
  return pairs === 0 ? 'kein Paar' : `nur ${pairsIn(pairs)}`;
}

function adjustedOr(entry: FreshVersusStored, said: (estimate: Estimate) => string): string {
  return entry.adjusted.estimate === null ? whyNotAdjusted(entry) : said(entry.adjusted);
}

/** „19 Paare mit beiden Arten, davon 16 mit beiden Ergebnissen“. */
export function pairsCompared(entry: Pick<FreshVersusStored, 'pairsWithBoth' | 'informativePairs'>): string {
  return `${pairsIn(entry.pairsWithBoth)} mit beiden Arten, davon ${wholeNumber(entry.informativePairs)} mit beiden Ergebnissen`;
}

export const differenceWords = {
  label: ({ storage }: FreshVersusStored) =>
    `Frischer gegen ${pollenOf(storage, 'accusative')}: der Unterschied`,
  columns: ['Vergleich', 'gezählt an', 'Unterschied'],
  axis: 'weniger Früchte von je 10 Blüten',
  storedBetter: '← gelagert besser',
  freshBetter: 'frisch besser →',
  rawLabel: 'alle Blüten',
  adjustedLabel: 'bei gleichen Paaren',
  missing: ({ adjusted, informativePairs }: FreshVersusStored): string =>
    informativePairs >= 3
      ? cannotTell(adjusted)
      : `${CANNOT_TELL}: ${fewPairs(informativePairs)} zum Vergleich`,
  finding: (entry: FreshVersusStored): string => {
    const { storage, fresh, stored, pairsWithBoth, informativePairs } = entry;
    if (entry.adjusted.estimate !== null) {
      return (
        `Über alle Blüten ${difference(entry.difference)}; bei gleichen Paaren, nach ${counts(informativePairs, pairsWithBoth)} mit ` +
        `beiden Arten, ${difference(entry.adjusted)}.`
      );
    }
    return (
      `Frischer Pollen ${counts(fresh.fruits, fresh.flowers)}, ${pollenOf(storage)} ` +
      `${counts(stored.fruits, stored.flowers)}: ${difference(entry.difference)}; ` +
      `bei gleichen Paaren: ${whyNotAdjusted(entry)}.`
    );
  },
  description: ({ storage }: FreshVersusStored): string =>
    'Zwei Unterschiede auf einer Achse, jeder als Punkt mit Spanne: über alle Blüten, und innerhalb der gleichen Paare. Rechts der ' +
    `Nulllinie gab frischer Pollen mehr Früchte, links davon ${pollenOf(storage)}.`,
  rows: (entry: FreshVersusStored): readonly (readonly string[])[] => [
    [
      'alle Blüten',
      `frisch ${counts(entry.fresh.fruits, entry.fresh.flowers)}, ${storageLabel(entry.storage)} ${counts(entry.stored.fruits, entry.stored.flowers)}`,
      difference(entry.difference),
    ],
    ['gleiche Paare', pairsCompared(entry), adjustedOr(entry, difference)],
  ],
};

export function ageBandLabel({ from, to }: Pick<AgeBand, 'from' | 'to'>): string {
  if (to === null) return `${from} Tage oder mehr`;
  return from === to ? daysIn(from) : `${from} bis ${to} Tage`;
}

/** „mit 31 bis 90 Tagen“. */
function atAge({ from, to }: Pick<AgeBand, 'from' | 'to'>): string {
  if (to === null) return `mit ${from} Tagen oder mehr`;
  return from === to ? `mit ${afterDays(from)}` : `mit ${from} bis ${to} Tagen`;
}

export function agesSaid(storage: string, bands: readonly AgeBand[]): string {
  const seen = agesTold(bands).map((band) => `${counts(band.fruits, band.flowers)} ${atAge(band)}`);
  return seen.length === 0 ? pollenOf(storage) : `${pollenOf(storage)} hat bei ${joined(seen)} angesetzt`;
}

export const ageWords = {
  label: (storage: string) => `Fruchtansatz nach Alter: ${pollenOf(storage)}`,
  columns: ['Pollen', 'Alter', 'Rate und Spanne'],
  axis: 'Alter des Pollens in Tagen',
  fresh: ({ fruits, flowers }: Proportion) => `frisch ${counts(fruits, flowers)}`,
  counted: storageLabel,
  estimated: 'geschätzt; dünn: ebenso möglich',
  oldest: (oldestDays: number) => `nichts bekannt nach ${afterDays(oldestDays)}`,
  finding: (storage: string, young: AgePoint, old: AgePoint): string =>
    `${capitalised(pollenOf(storage))} setzt nach der Schätzung ${youngSaid(young.ageDays)} bei ${inTen(young.estimate)} Blüten an und bei ` +
    `${inTen(old.estimate)} im höchsten erprobten Alter: ${days(old.ageDays)}.`,
  description: (storage: string): string =>
    `Eine Kurve des geschätzten Fruchtansatzes nach Alter (${pollenOf(storage)}), mit einem Band für die Spanne und dünnen Linien für ` +
    'andere, ebenso mögliche Kurven, über den gezählten Raten nach Alter, jede als Punkt mit Spanne. Sie bricht beim höchsten erprobten Alter ab.',
  cells: (band: AgeBand): readonly string[] => [
    storageLabel(band.storage),
    ageBandLabel(band),
    rateWithRange(band),
  ],
  curveCells: (storage: string, ageDays: number, estimate: Estimate): readonly string[] => [
    `${storageLabel(storage)}, geschätzt`,
    counted(ageDays, 'Tag', 'Tage'),
    rate(estimate),
  ],
};

function youngSaid(ageDays: number): string {
  return ageDays === 0 ? 'gleich nach dem Einlagern' : `im Alter von ${days(ageDays)}`;
}
