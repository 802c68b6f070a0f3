/** What the figures of rates say: the season, fresh against stored, pollen age. Sentences, names, labels, cells. */
import type { AgePoint } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import type { Estimate, Proportion } from '../../proportions/interval.ts';
import type { Outcome } from '../../season/season.ts';
import { agesTold } from '../told/review.ts';
import { days } from './durations.ts';
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

/** The axis of every rate. */
export const RATE_AXIS = 'fruits pour 10 fleurs';

const OUTCOME_LABELS: Readonly<Record<Outcome, string>> = {
  fruit: 'fruit',
  dropped: 'tombé plus tard',
  none: 'pas de fruit',
  unknown: 'étiquette perdue',
  pending: 'trop tôt pour le dire',
};

const OUTCOME_COUNTS: Readonly<Record<Outcome, (rows: number) => string>> = {
  fruit: (rows) => counted(rows, 'fruit'),
  dropped: (rows) => counted(rows, 'tombé plus tard', 'tombés plus tard'),
  none: (rows) => `${wholeNumber(rows)} sans fruit`,
  unknown: (rows) => counted(rows, 'étiquette perdue', 'étiquettes perdues'),
  pending: (rows) => `${wholeNumber(rows)} trop tôt pour le dire`,
};

export const seasonWords = {
  label: 'Ce que chaque fleur est devenue',
  columns: ['résultat', 'fleurs'],
  outcome: (outcome: Outcome) => OUTCOME_LABELS[outcome],
  finding: (
    outcomes: readonly { readonly outcome: Outcome; readonly rows: number }[],
    perMark: number,
  ): string => {
    const flowers = outcomes.reduce((sum, { rows }) => sum + rows, 0);
    return `${counted(flowers, 'fleur')} : ${joined(outcomes.map(({ outcome, rows }) => OUTCOME_COUNTS[outcome](rows)))}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)}, groupée par ce qu’elle est devenue. Les étiquettes perdues et les fleurs trop jeunes ne sont pas des échecs.`,
  perMark: markIs,
};

/** A drawing whose marks stand for more than one flower says so in its caption. */
function markNote(perMark: number): string {
  return perMark === 1 ? '' : ` ${markIs(perMark)}.`;
}

function markIs(flowers: number): string {
  return flowers === 1 ? 'Une marque est une fleur' : `Une marque vaut ${counted(flowers, 'fleur')}`;
}

/** A method’s name, short enough to stand in a drawing. */
function shortLabel(storage: string): string {
  return storage === 'room' ? 'temp. ambiante' : storageLabel(storage);
}

export const storageWords = {
  label: 'Nouaison selon le stockage du pollen',
  columns: ['pollen', 'a noué', 'taux et fourchette'],
  method: shortLabel,
  took: (rate: Proportion) => `${counts(rate.fruits, rate.flowers)} ${rate.fruits < 2 ? 'a' : 'ont'} noué`,
  rateLabel: ({ storage, estimate }: StorageRate): string =>
    `${shortLabel(storage)} : ${estimate === null ? CANNOT_TELL : inTen(estimate)}`,
  /** None or all of them: no rate, only how far it could still be. */
  extremeLabel: ({ storage, fruits, lower, upper }: StorageRate): string =>
    `${shortLabel(storage)} : ${fruits === 0 ? `jusqu’à ${limit(upper ?? 1)}` : `${limit(lower ?? 0)} ou plus`}`,
  marks: (perMark: number): string =>
    perMark === 1
      ? 'Grande marque : a noué ; petit point : non.'
      : `${markIs(perMark)} ; petite, pas de fruit.`,
  finding: (rates: readonly StorageRate[], perMark: number): string => {
    const said = rates.map((one) => `${pollenOf(one.storage)} ${rateWithRange(one)}`).join(' ; ');
    return `${capitalised(said)}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)} ; les grandes marques ont noué, les petits points non. Le pollen frais est plein, le pollen stocké creux. ` +
    'Dessous, chaque taux en point avec sa fourchette.',
  cells: (one: StorageRate): readonly string[] => [
    storageLabel(one.storage),
    counts(one.fruits, one.flowers),
    rateWithRange(one),
  ],
};

/** That the flowers cannot tell, or that it is only not worked out yet. */
function cannotTell({ because }: Estimate): string {
  return because === 'being-worked-out' ? 'encore en cours de calcul' : CANNOT_TELL;
}

/** Why there is no like-for-like number: too few pairs that can tell pollen from pair, or only the codes know. */
function whyNotAdjusted({ adjusted, informativePairs }: FreshVersusStored): string {
  if (informativePairs >= 3) return cannotTell(adjusted);
  return `${CANNOT_TELL} : ${fewPairs(informativePairs)} les deux sortes et les deux résultats`;
}

function fewPairs(pairs: number): string {
  if (pairs === 0) return 'aucun couple n’a eu';
  return pairs === 1 ? `seul 1 couple a eu` : `seuls ${wholeNumber(pairs)} couples ont eu`;
}

function adjustedOr(entry: FreshVersusStored, said: (estimate: Estimate) => string): string {
  return entry.adjusted.estimate === null ? whyNotAdjusted(entry) : said(entry.adjusted);
}

/** « 19 couples avec les deux sortes, dont 16 avec les deux résultats ». */
export function pairsCompared(entry: Pick<FreshVersusStored, 'pairsWithBoth' | 'informativePairs'>): string {
  return `${counted(entry.pairsWithBoth, 'couple')} avec les deux sortes, dont ${wholeNumber(entry.informativePairs)} avec les deux résultats`;
}

export const differenceWords = {
  label: ({ storage }: FreshVersusStored) => `Pollen frais et ${pollenOf(storage)} : la différence`,
  columns: ['comparaison', 'compté sur', 'différence'],
  axis: 'fruits de moins pour 10 fleurs',
  storedBetter: '← stocké meilleur',
  freshBetter: 'frais meilleur →',
  rawLabel: 'toutes les fleurs',
  adjustedLabel: 'à couples égaux',
  /** Short, to stand in the drawing. */
  missing: ({ adjusted, informativePairs }: FreshVersusStored): string => {
    if (informativePairs >= 3) return cannotTell(adjusted);
    const pairs = informativePairs === 0 ? 'aucun couple' : counted(informativePairs, 'couple');
    return `pas encore : ${pairs} à comparer`;
  },
  finding: (entry: FreshVersusStored): string => {
    const { storage, fresh, stored, pairsWithBoth, informativePairs } = entry;
    if (entry.adjusted.estimate !== null) {
      return (
        `Sur toutes les fleurs ${difference(entry.difference)} ; à couples égaux, par ${counts(informativePairs, pairsWithBoth)} ` +
        `couples avec les deux sortes, ${difference(entry.adjusted)}.`
      );
    }
    return (
      `Pollen frais ${counts(fresh.fruits, fresh.flowers)}, ${pollenOf(storage)} ` +
      `${counts(stored.fruits, stored.flowers)} : ${difference(entry.difference)} ; ` +
      `à couples égaux, ${whyNotAdjusted(entry)}.`
    );
  },
  description: ({ storage }: FreshVersusStored): string =>
    'Deux différences sur un même axe, chacune en point avec sa fourchette : sur toutes les fleurs, et à couples égaux. ' +
    `À droite de la ligne du zéro le pollen frais a donné plus de fruits, à gauche le ${pollenOf(storage)}.`,
  rows: (entry: FreshVersusStored): readonly (readonly string[])[] => [
    [
      'toutes les fleurs',
      `frais ${counts(entry.fresh.fruits, entry.fresh.flowers)}, ${storageLabel(entry.storage)} ${counts(entry.stored.fruits, entry.stored.flowers)}`,
      difference(entry.difference),
    ],
    ['à couples égaux', pairsCompared(entry), adjustedOr(entry, difference)],
  ],
};

/** A band of ages: "8 à 14 jours", "366 jours ou plus". */
export function ageBandLabel({ from, to }: Pick<AgeBand, 'from' | 'to'>): string {
  if (to === null) return `${from} jours ou plus`;
  return from === to ? counted(from, 'jour') : `${from} à ${to} jours`;
}

/** "pollen congelé : 9 sur 27 ont noué à 31 à 90 jours et …": counts at the youngest and the oldest age told. */
export function agesSaid(storage: string, bands: readonly AgeBand[]): string {
  const seen = agesTold(bands).map(
    (band) => `${counts(band.fruits, band.flowers)} à l’âge de ${ageBandLabel(band)}`,
  );
  return seen.length === 0 ? pollenOf(storage) : `${pollenOf(storage)} : ${joined(seen)} ont noué`;
}

export const ageWords = {
  label: (storage: string) => `Nouaison selon l’âge du ${pollenOf(storage)}`,
  columns: ['pollen', 'âge', 'taux et fourchette'],
  axis: 'âge du pollen en jours',
  fresh: ({ fruits, flowers }: Proportion) => `frais ${counts(fruits, flowers)}`,
  counted: storageLabel,
  estimated: 'estimé ; fines : aussi probables',
  oldest: (oldestDays: number) => `rien de connu après ${counted(oldestDays, 'jour')}`,
  /** The ends of the curve: the section's own sentence counts flowers and says the half age. */
  finding: (storage: string, young: AgePoint, old: AgePoint): string =>
    `${capitalised(pollenOf(storage))}, nouaison estimée : ${inTen(young.estimate)} ${youngSaid(young.ageDays)} et ` +
    `${inTen(old.estimate)} à ${days(old.ageDays)}, le plus vieux essayé.`,
  description: (storage: string): string =>
    `Une courbe de la nouaison estimée du ${pollenOf(storage)} selon l’âge, avec une bande pour sa fourchette et des lignes fines pour ` +
    'd’autres courbes aussi probables, sur les taux comptés par âge, chacun en point avec sa fourchette. Elle s’arrête au plus grand âge essayé.',
  cells: (band: AgeBand): readonly string[] => [
    storageLabel(band.storage),
    ageBandLabel(band),
    rateWithRange(band),
  ],
  curveCells: (storage: string, ageDays: number, estimate: Estimate): readonly string[] => [
    `${storageLabel(storage)}, estimé`,
    counted(ageDays, 'jour'),
    rate(estimate),
  ],
};

function youngSaid(ageDays: number): string {
  return ageDays === 0 ? 'à peine rangé' : `à ${days(ageDays)}`;
}
