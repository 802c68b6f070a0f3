/** What the figures of rates say: the season, fresh against stored, pollen age. */

import type { AgePoint } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import type { Estimate, Proportion } from '../../proportions/interval.ts';
import type { Outcome } from '../../season/season.ts';
import { agesTold } from '../told/review.ts';
import { days } from './durations.ts';
import { daysIn, flowersIn, fruitsIn, pairsIn, tagsIn } from './nouns.ts';
import {
  CANNOT_TELL,
  counts,
  difference,
  inTen,
  joined,
  limit,
  rate,
  rateWithRange,
  wholeNumber,
} from './numbers.ts';
import { pollenOf, storageLabel, thePollenOf } from './storage.ts';

type StorageRate = Proportion & { readonly storage: string };

export const RATE_AXIS = 'frutos de cada 10 flores';

const OUTCOME_LABELS: Readonly<Record<Outcome, string>> = {
  fruit: 'fruto',
  dropped: 'cayó después',
  none: 'sin fruto',
  unknown: 'etiqueta perdida',
  pending: 'aún es pronto',
};

const OUTCOME_COUNTS: Readonly<Record<Outcome, (rows: number) => string>> = {
  fruit: fruitsIn,
  dropped: (rows) => `${wholeNumber(rows)} ${rows === 1 ? 'caído' : 'caídos'} después`,
  none: (rows) => `${wholeNumber(rows)} sin fruto`,
  unknown: (rows) => `${tagsIn(rows)} ${rows === 1 ? 'perdida' : 'perdidas'}`,
  pending: (rows) => `${wholeNumber(rows)} en las que aún es pronto`,
};

export const seasonWords = {
  label: 'Qué fue de cada flor',
  columns: ['resultado', 'flores'],
  outcome: (outcome: Outcome) => OUTCOME_LABELS[outcome],
  finding: (
    outcomes: readonly { readonly outcome: Outcome; readonly rows: number }[],
    perMark: number,
  ): string => {
    const flowers = outcomes.reduce((sum, { rows }) => sum + rows, 0);
    return `${flowersIn(flowers)}: ${joined(outcomes.map(({ outcome, rows }) => OUTCOME_COUNTS[outcome](rows)))}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)}, agrupadas por lo que fue de ellas. Las etiquetas perdidas y las flores en las que aún es pronto no son fracasos.`,
  perMark: markIs,
};

/** A drawing whose marks stand for more than one flower says so in its caption. */
function markNote(perMark: number): string {
  return perMark === 1 ? '' : ` ${markIs(perMark)}.`;
}

function markIs(flowers: number): string {
  return flowers === 1 ? 'Cada marca es una flor' : `Cada marca son ${flowersIn(flowers)}`;
}

export const storageWords = {
  label: 'Cuajado según cómo se guardó el polen',
  columns: ['polen', 'cuajaron', 'frecuencia y margen'],
  method: storageLabel,
  took: ({ fruits, flowers }: Proportion) =>
    `${counts(fruits, flowers)} ${fruits === 1 ? 'cuajó' : 'cuajaron'}`,
  rateLabel: ({ storage, estimate }: StorageRate): string =>
    `${shortLabel(storage)}: ${estimate === null ? CANNOT_TELL : inTen(estimate)}`,
  /** None or all of them: no rate, only how far it could still be. */
  extremeLabel: ({ storage, fruits, lower, upper }: StorageRate): string =>
    `${shortLabel(storage)}: ${fruits === 0 ? `hasta ${limit(upper ?? 1)}` : `${limit(lower ?? 0)} o más`}`,
  marks: (perMark: number): string =>
    perMark === 1 ? 'Marcas grandes: cuajó; puntos: no cuajó.' : `${markIs(perMark)}; pequeña, no.`,
  finding: (rates: readonly StorageRate[], perMark: number): string => {
    const said = rates.map((one) => `${storageLabel(one.storage)} ${rateWithRange(one)}`).join('; ');
    return `Polen ${said}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)}; las marcas grandes cuajaron, los puntos pequeños no. El polen fresco va relleno; el guardado, hueco. ` +
    'Debajo, cada frecuencia como un punto con su margen.',
  cells: (one: StorageRate): readonly string[] => [
    storageLabel(one.storage),
    counts(one.fruits, one.flowers),
    rateWithRange(one),
  ],
};

/** A method's name, short enough to stand in a drawing with its rate. */
function shortLabel(storage: string): string {
  return storage === 'room' ? 'temp. ambiente' : storageLabel(storage);
}

/** That the flowers cannot tell, or that it is only not worked out yet. */
function cannotTell({ because }: Estimate): string {
  return because === 'being-worked-out' ? 'aún se está calculando' : CANNOT_TELL;
}

/** Why there is no like-for-like number. */
function whyNotAdjusted({ adjusted, informativePairs }: FreshVersusStored): string {
  if (informativePairs >= 3) return cannotTell(adjusted);
  const had = informativePairs > 1 ? 'tuvieron' : 'tuvo';
  return `${CANNOT_TELL}: ${fewPairs(informativePairs)} ${had} ambos tipos y ambos resultados`;
}

function fewPairs(pairs: number): string {
  return pairs === 0 ? 'ninguna pareja' : `solo ${pairsIn(pairs)}`;
}

function adjustedOr(entry: FreshVersusStored, said: (estimate: Estimate) => string): string {
  return entry.adjusted.estimate === null ? whyNotAdjusted(entry) : said(entry.adjusted);
}

/** «19 parejas con ambos tipos, 16 de ellas con ambos resultados». */
export function pairsCompared(entry: Pick<FreshVersusStored, 'pairsWithBoth' | 'informativePairs'>): string {
  return `${pairsIn(entry.pairsWithBoth)} con ambos tipos, ${wholeNumber(entry.informativePairs)} de ellas con ambos resultados`;
}

export const differenceWords = {
  label: ({ storage }: FreshVersusStored) => `Polen fresco frente a ${pollenOf(storage)}: la diferencia`,
  columns: ['comparación', 'contado en', 'diferencia'],
  axis: 'menos frutos de cada 10 flores',
  storedBetter: '← mejor guardado',
  freshBetter: 'mejor fresco →',
  rawLabel: 'todas las flores',
  adjustedLabel: 'en igualdad, dentro de cada pareja',
  /** Short, to stand in the drawing. */
  missing: ({ adjusted, informativePairs }: FreshVersusStored): string =>
    informativePairs >= 3
      ? cannotTell(adjusted)
      : `${CANNOT_TELL}: ${fewPairs(informativePairs)} ${informativePairs > 1 ? 'útiles' : 'útil'}`,
  finding: (entry: FreshVersusStored): string => {
    const { storage, fresh, stored, pairsWithBoth, informativePairs } = entry;
    if (entry.adjusted.estimate !== null) {
      return (
        `Con todas las flores, ${difference(entry.difference)}; en igualdad de condiciones, por ${counts(informativePairs, pairsWithBoth)} ` +
        `parejas con ambos tipos, ${difference(entry.adjusted)}.`
      );
    }
    return (
      `Polen fresco ${counts(fresh.fruits, fresh.flowers)}, ${pollenOf(storage)} ` +
      `${counts(stored.fruits, stored.flowers)}: ${difference(entry.difference)}; ` +
      `en igualdad de condiciones, ${whyNotAdjusted(entry)}.`
    );
  },
  description: ({ storage }: FreshVersusStored): string =>
    'Dos diferencias en un mismo eje, cada una como un punto con su margen: con todas las flores, y en igualdad de condiciones ' +
    `dentro de cada pareja. A la derecha de la línea del cero dio más frutos el polen fresco; a la izquierda, ${thePollenOf(storage)}.`,
  rows: (entry: FreshVersusStored): readonly (readonly string[])[] => [
    [
      'todas las flores',
      `fresco ${counts(entry.fresh.fruits, entry.fresh.flowers)}, ${storageLabel(entry.storage)} ${counts(entry.stored.fruits, entry.stored.flowers)}`,
      difference(entry.difference),
    ],
    ['en igualdad de condiciones', pairsCompared(entry), adjustedOr(entry, difference)],
  ],
};

/** A band of ages: "8 a 14 días", "366 días o más". */
export function ageBandLabel({ from, to }: Pick<AgeBand, 'from' | 'to'>): string {
  if (to === null) return `${from} días o más`;
  return from === to ? daysIn(from) : `${from} a ${to} días`;
}

/** "con polen congelado cuajaron 9 de 27 (31 a 90 días) y 16 de 50 (366 días o más)". */
export function agesSaid(storage: string, bands: readonly AgeBand[]): string {
  const told = agesTold(bands);
  const [first] = told;
  if (first === undefined) return pollenOf(storage);
  const seen = told.map((band) => `${counts(band.fruits, band.flowers)} (${ageBandLabel(band)})`);
  return `con ${pollenOf(storage)} ${first.fruits === 1 ? 'cuajó' : 'cuajaron'} ${joined(seen)}`;
}

export const ageWords = {
  label: (storage: string) => `Cuajado según la edad: ${pollenOf(storage)}`,
  columns: ['polen', 'edad', 'frecuencia y margen'],
  axis: 'edad del polen en días',
  fresh: ({ fruits, flowers }: Proportion) => `fresco ${counts(fruits, flowers)}`,
  counted: storageLabel,
  estimated: 'estimado; finas: igual de probables',
  oldest: (oldestDays: number) => `pasados ${daysIn(oldestDays)} no se sabe`,
  finding: (storage: string, young: AgePoint, old: AgePoint): string =>
    `Estimado con ${pollenOf(storage)}: ${inTen(young.estimate)} ${youngSaid(young.ageDays)} y ` +
    `${inTen(old.estimate)} con ${days(old.ageDays)}, lo más viejo probado.`,
  description: (storage: string): string =>
    `Una curva del cuajado estimado con ${pollenOf(storage)} según la edad, con una franja para su margen y líneas finas para otras ` +
    'curvas igual de probables, sobre las frecuencias contadas por edad, cada una como un punto con su margen. Se corta en la mayor edad que se probó.',
  cells: (band: AgeBand): readonly string[] => [
    storageLabel(band.storage),
    ageBandLabel(band),
    rateWithRange(band),
  ],
  curveCells: (storage: string, ageDays: number, estimate: Estimate): readonly string[] => [
    `${storageLabel(storage)}, estimado`,
    daysIn(ageDays),
    rate(estimate),
  ],
};

function youngSaid(ageDays: number): string {
  return ageDays === 0 ? 'recién guardado' : `con ${days(ageDays)}`;
}
