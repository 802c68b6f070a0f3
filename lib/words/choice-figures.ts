/** What the figures of pairs and vials say: sentences, names, labels, cells. */
import type { PooledPair } from '../analysis/pairs.ts';
import type { Worth } from '../analysis/worth.ts';
import type { VialAdvice } from '../decisions/vials.ts';
import type { Estimate } from '../proportions/interval.ts';
import { olderThanTriedSaid, VERDICT_LABELS, verdictSaid } from './english-vials.ts';
import {
  CANNOT_TELL,
  capitalised,
  counted,
  counts,
  inTen,
  joined,
  likely,
  likelyBeside,
  rate,
  wholeNumber,
} from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';
import type { PairGroups } from './told/review.ts';
import { isOlderThanTried, type VialStanding } from './told/vials.ts';

/** Seed parent first: "A × B" is not "B × A". */
export function pairName({
  seedParent,
  pollenParent,
}: Pick<PooledPair, 'seedParent' | 'pollenParent'>): string {
  return `${seedParent} × ${pollenParent}`;
}

export const pairsWords = {
  label: 'Fruit set of every pair, seed parent first',
  /** All estimates are for the same pollen, so their heading names it. */
  columns: (basis: PooledPair['basis']) => [
    'pair (seed × pollen)',
    'took',
    `pooled estimate, ${basisSaid(basis)}`,
    'incompatible',
  ],
  ranked: 'Safest first',
  selfed: 'Own pollen: no rank',
  incompatible: (named: number) => `Counted as incompatible (${wholeNumber(named * 10)}+ in 10)`,
  few: (fewest: number) => `Fewer than ${fewest} flowers: no rank`,
  counted: 'counted',
  pooled: 'pooled with its parents',
  shown: (drawn: number, all: number) =>
    `${wholeNumber(drawn)} of ${counted(all, 'pair')} drawn; all are in the table`,
  finding: ({ ranked, selfed, incompatible, few }: PairGroups): string => {
    const [first] = ranked;
    const start = `${counted(ranked.length, 'pair')} ranked by the cautious end of the range`;
    const others = [
      ...(selfed.length > 0 ? [`${wholeNumber(selfed.length)} with own pollen`] : []),
      ...(incompatible.length > 0 ? [`${wholeNumber(incompatible.length)} counted as incompatible`] : []),
      ...(few.length > 0 ? [`${wholeNumber(few.length)} of few flowers`] : []),
    ];
    const rest = others.length === 0 ? '' : `; no rank: ${joined(others)}`;
    return first === undefined
      ? `No pair has flowers enough for a rank${rest}.`
      : `${start}, for ${basisSaid(first.basis)}${rest}.`;
  },
  description:
    'Each pair with its counted rate, whatever the pollen, as a small dot joined to its pooled estimate, a large dot with its range. Pairs are ' +
    'sorted by the cautious end of the range; pairs of few flowers, and such as count as incompatible (crosses), stand below.',
  cells: (pair: PooledPair, named: number): readonly string[] => [
    pairName(pair),
    counts(pair.fruits, pair.flowers),
    rate(pair),
    pair.incompatible === null ? CANNOT_TELL : likelyBeside(pair.incompatible, named),
  ],
};

function basisSaid({ storage, ageDays }: PooledPair['basis']): string {
  return storage === 'fresh'
    ? pollenOf(storage)
    : `${pollenOf(storage)}, ${counted(Math.round(ageDays), 'day')}`;
}

export const vialsWords = {
  label: 'Every vial against what is worth a flower',
  columns: ['vial', 'pollen of', 'verdict', 'its own record', 'expected', 'worth a flower'],
  heading: (standing: VialStanding, vials: number) =>
    `${capitalised(VERDICT_LABELS[standing])}: ${wholeNumber(vials)}`,
  name: (advice: VialAdvice) =>
    `${advice.vial}${isOlderThanTried(advice) ? ' *' : ''} · ${advice.pollenParent}`,
  mark: olderThanTriedSaid,
  expected: ({ estimate }: Estimate) => (estimate === null ? CANNOT_TELL : inTen(estimate)),
  shown: (drawn: number, all: number) =>
    `${wholeNumber(drawn)} of ${counted(all, 'vial')} drawn; all are in the table`,
  worth: (value: number) => `worth a flower: ${inTen(value)}`,
  finding: (tally: readonly (readonly [VialStanding, number])[], { value }: Worth): string => {
    const verdicts = joined(
      tally
        .filter(([, vials]) => vials > 0)
        .map(([standing, vials]) => `${VERDICT_LABELS[standing]} ${wholeNumber(vials)}`),
    );
    const threshold =
      value === null
        ? ' Only you can say what fruit set is worth a flower.'
        : ` The line: what is worth a flower, ${inTen(value)}.`;
    return `${capitalised(verdicts)}.${threshold}`;
  },
  description:
    'Each vial’s expected fruit set on the day of use as a hollow dot with its range, grouped by verdict, against a ' +
    'line at what is worth a flower.',
  cells: (vial: VialAdvice): readonly string[] => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}`,
    verdictSaid(vial),
    vial.flowers === 0 ? 'no flowers' : counts(vial.fruits, vial.flowers),
    rate(vial),
    vial.probabilityWorth === null ? CANNOT_TELL : likely(vial.probabilityWorth),
  ],
};
