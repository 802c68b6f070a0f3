/** What the figures of rates say: the season, fresh against stored, pollen age. Sentences, names, labels, cells. */
import type { AgePoint } from '../analysis/age-curve.ts';
import type { FreshVersusStored } from '../analysis/fresh-versus-stored.ts';
import type { AgeBand } from '../analysis/raw.ts';
import type { Estimate, Proportion } from '../proportions/interval.ts';
import type { Outcome } from '../season/season.ts';
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
import { agesTold } from './told/review.ts';

type StorageRate = Proportion & { readonly storage: string };

/** The axis of every rate. */
export const RATE_AXIS = 'fruits in every 10 flowers';

const OUTCOME_LABELS: Readonly<Record<Outcome, string>> = {
  fruit: 'fruit',
  dropped: 'dropped later',
  none: 'no fruit',
  unknown: 'tag lost',
  pending: 'too early to say',
};

const OUTCOME_COUNTS: Readonly<Record<Outcome, (rows: number) => string>> = {
  fruit: (rows) => counted(rows, 'fruit'),
  dropped: (rows) => `${wholeNumber(rows)} dropped later`,
  none: (rows) => `${wholeNumber(rows)} without fruit`,
  unknown: (rows) => `${counted(rows, 'tag')} lost`,
  pending: (rows) => `${wholeNumber(rows)} too early to say`,
};

export const seasonWords = {
  label: 'What became of every flower',
  columns: ['outcome', 'flowers'],
  outcome: (outcome: Outcome) => OUTCOME_LABELS[outcome],
  finding: (
    outcomes: readonly { readonly outcome: Outcome; readonly rows: number }[],
    perMark: number,
  ): string => {
    const flowers = outcomes.reduce((sum, { rows }) => sum + rows, 0);
    return `${counted(flowers, 'flower')}: ${joined(outcomes.map(({ outcome, rows }) => OUTCOME_COUNTS[outcome](rows)))}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)}, grouped by what became of it. Lost tags and flowers too young to tell are not failures.`,
  perMark: markIs,
};

/** A drawing whose marks stand for more than one flower says so in its caption. */
function markNote(perMark: number): string {
  return perMark === 1 ? '' : ` ${markIs(perMark)}.`;
}

function markIs(flowers: number): string {
  return flowers === 1 ? 'One mark is one flower' : `One mark is ${counted(flowers, 'flower')}`;
}

export const storageWords = {
  label: 'Fruit set by storage of the pollen',
  columns: ['pollen', 'took', 'rate and range'],
  method: storageLabel,
  took: (rate: Proportion) => `${counts(rate.fruits, rate.flowers)} took`,
  rateLabel: ({ storage, estimate }: StorageRate): string =>
    `${storageLabel(storage)}: ${estimate === null ? CANNOT_TELL : inTen(estimate)}`,
  /** None or all of them: no rate, only how far it could still be. */
  extremeLabel: ({ storage, fruits, lower, upper }: StorageRate): string =>
    `${storageLabel(storage)}: ${fruits === 0 ? `up to ${limit(upper ?? 1)}` : `${limit(lower ?? 0)} or more`}`,
  marks: (perMark: number): string =>
    perMark === 1 ? 'Large marks took, small dots did not.' : `${markIs(perMark)}; small, no fruit.`,
  finding: (rates: readonly StorageRate[], perMark: number): string => {
    const said = rates.map((one) => `${pollenOf(one.storage)} ${rateWithRange(one)}`).join('; ');
    return `${capitalised(said)}.${markNote(perMark)}`;
  },
  description: (perMark: number): string =>
    `${markIs(perMark)}; large marks took, small dots did not. Fresh pollen is filled, stored pollen is hollow. ` +
    'Below, each rate as a dot with its range.',
  cells: (one: StorageRate): readonly string[] => [
    storageLabel(one.storage),
    counts(one.fruits, one.flowers),
    rateWithRange(one),
  ],
};

/** That the flowers cannot tell, or that it is only not worked out yet. */
function cannotTell({ because }: Estimate): string {
  return because === 'being-worked-out' ? 'still being worked out' : CANNOT_TELL;
}

/** Why there is no like-for-like number: too few pairs that can tell pollen from pair, or only the codes know. */
function whyNotAdjusted({ adjusted, informativePairs }: FreshVersusStored): string {
  if (informativePairs >= 3) return cannotTell(adjusted);
  return `${CANNOT_TELL}: ${fewPairs(informativePairs)} had both kinds and both outcomes`;
}

function fewPairs(pairs: number): string {
  return pairs === 0 ? 'no pair' : `only ${counted(pairs, 'pair')}`;
}

function adjustedOr(entry: FreshVersusStored, said: (estimate: Estimate) => string): string {
  return entry.adjusted.estimate === null ? whyNotAdjusted(entry) : said(entry.adjusted);
}

/** What a like-for-like difference is counted on: "19 pairs with both kinds, 16 of them with both outcomes". */
export function pairsCompared(entry: Pick<FreshVersusStored, 'pairsWithBoth' | 'informativePairs'>): string {
  return `${counted(entry.pairsWithBoth, 'pair')} with both kinds, ${wholeNumber(entry.informativePairs)} of them with both outcomes`;
}

export const differenceWords = {
  label: ({ storage }: FreshVersusStored) => `Fresh pollen against ${pollenOf(storage)}: the difference`,
  columns: ['comparison', 'counted on', 'difference'],
  axis: 'fewer fruits in every 10 flowers',
  storedBetter: '← stored better',
  freshBetter: 'fresh better →',
  rawLabel: 'all flowers',
  adjustedLabel: 'like for like, within pairs',
  /** Short, to stand in the drawing. */
  missing: ({ adjusted, informativePairs }: FreshVersusStored): string =>
    informativePairs >= 3 ? cannotTell(adjusted) : `${CANNOT_TELL}: ${fewPairs(informativePairs)} to compare`,
  finding: (entry: FreshVersusStored): string => {
    const { storage, fresh, stored, pairsWithBoth, informativePairs } = entry;
    if (entry.adjusted.estimate !== null) {
      return (
        `Over all flowers ${difference(entry.difference)}; like for like, by ${counts(informativePairs, pairsWithBoth)} pairs with ` +
        `both kinds, ${difference(entry.adjusted)}.`
      );
    }
    return (
      `Fresh pollen ${counts(fresh.fruits, fresh.flowers)}, ${pollenOf(storage)} ` +
      `${counts(stored.fruits, stored.flowers)}: ${difference(entry.difference)}; ` +
      `like for like, ${whyNotAdjusted(entry)}.`
    );
  },
  description: ({ storage }: FreshVersusStored): string =>
    `Two differences on one axis, each a dot with its range: over all flowers, and like for like within pairs. ` +
    `Right of the zero line fresh pollen gave more fruit, left of it ${pollenOf(storage)} did.`,
  rows: (entry: FreshVersusStored): readonly (readonly string[])[] => [
    [
      'all flowers',
      `fresh ${counts(entry.fresh.fruits, entry.fresh.flowers)}, ${storageLabel(entry.storage)} ${counts(entry.stored.fruits, entry.stored.flowers)}`,
      difference(entry.difference),
    ],
    ['like for like', pairsCompared(entry), adjustedOr(entry, difference)],
  ],
};

/** A band of ages: "8 to 14 days", "366 days or more". */
export function ageBandLabel({ from, to }: Pick<AgeBand, 'from' | 'to'>): string {
  if (to === null) return `${from} days or more`;
  return from === to ? counted(from, 'day') : `${from} to ${to} days`;
}

/** "frozen pollen took 9 of 27 at 31 to 90 days and 16 of 50 at 366 days or more": the youngest and the oldest age. */
export function agesSaid(storage: string, bands: readonly AgeBand[]): string {
  const seen = agesTold(bands).map((band) => `${counts(band.fruits, band.flowers)} at ${ageBandLabel(band)}`);
  return seen.length === 0 ? pollenOf(storage) : `${pollenOf(storage)} took ${joined(seen)}`;
}

export const ageWords = {
  label: (storage: string) => `Fruit set by age of ${pollenOf(storage)}`,
  columns: ['pollen', 'age', 'rate and range'],
  axis: 'age of the pollen in days',
  fresh: ({ fruits, flowers }: Proportion) => `fresh ${counts(fruits, flowers)}`,
  counted: storageLabel,
  estimated: 'estimated; thin: others as likely',
  oldest: (oldestDays: number) => `nothing known past ${counted(oldestDays, 'day')}`,
  /** The ends of the curve: the section's own sentence counts flowers and says the half age. */
  finding: (storage: string, young: AgePoint, old: AgePoint): string =>
    `${capitalised(pollenOf(storage))} is estimated to take ${inTen(young.estimate)} when ${youngSaid(young.ageDays)} and ` +
    `${inTen(old.estimate)} at ${days(old.ageDays)}, the oldest tried.`,
  description: (storage: string): string =>
    `A curve of the estimated fruit set of ${pollenOf(storage)} by age, with a band for its range and thin lines for other curves ` +
    'that fit as well, over the counted rates by age, each a dot with its range. It breaks off at the oldest age tried.',
  cells: (band: AgeBand): readonly string[] => [
    storageLabel(band.storage),
    ageBandLabel(band),
    rateWithRange(band),
  ],
  curveCells: (storage: string, ageDays: number, estimate: Estimate): readonly string[] => [
    `${storageLabel(storage)}, estimated`,
    counted(ageDays, 'day'),
    rate(estimate),
  ],
};

function youngSaid(ageDays: number): string {
  return ageDays === 0 ? 'just put away' : `${days(ageDays)} old`;
}
