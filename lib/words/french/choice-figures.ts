/** What the figures of pairs and vials say: sentences, names, labels, cells. */
import type { PooledPair } from '../../analysis/pairs.ts';
import type { Worth } from '../../analysis/worth.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import type { Estimate } from '../../proportions/interval.ts';
import type { PairGroups } from '../told/review.ts';
import { isOlderThanTried, type VialStanding } from '../told/vials.ts';
import {
  CANNOT_TELL,
  capitalised,
  counted,
  countedOf,
  counts,
  inTen,
  joined,
  likely,
  likelyBeside,
  rate,
  wholeNumber,
} from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';
import { olderThanTriedSaid, VERDICT_LABELS, verdictSaid } from './vial-verdicts.ts';

/** Seed parent first: "A × B" is not "B × A". */
export function pairName({
  seedParent,
  pollenParent,
}: Pick<PooledPair, 'seedParent' | 'pollenParent'>): string {
  return `${seedParent} × ${pollenParent}`;
}

export const pairsWords = {
  label: 'Nouaison de chaque couple, la mère d’abord',
  /** All estimates are for the same pollen, so their heading names it. */
  columns: (basis: PooledPair['basis']) => [
    'couple (mère × père)',
    'a noué',
    `estimation partagée, ${basisSaid(basis)}`,
    'incompatible',
  ],
  ranked: 'Le plus sûr d’abord',
  selfed: 'Propre pollen : sans rang',
  incompatible: (named: number) => `Comptés incompatibles (${wholeNumber(named * 10)}+ pour 10)`,
  few: (fewest: number) => `Moins de ${fewest} fleurs : sans rang`,
  counted: 'compté',
  pooled: 'partagé avec ses parents',
  shown: (drawn: number, all: number) => `${countedOf(drawn, all, 'couple')} dessinés ; tous au tableau`,
  finding: ({ ranked, selfed, incompatible, few }: PairGroups): string => {
    const [first] = ranked;
    const others = [
      ...(selfed.length > 0 ? [`${wholeNumber(selfed.length)} avec leur propre pollen`] : []),
      ...(incompatible.length > 0 ? [`${wholeNumber(incompatible.length)} comptés incompatibles`] : []),
      ...(few.length > 0 ? [`${wholeNumber(few.length)} de peu de fleurs`] : []),
    ];
    const rest = others.length === 0 ? '' : ` ; sans rang : ${joined(others)}`;
    if (first === undefined) return `Aucun couple n’a assez de fleurs pour un rang${rest}.`;
    const start = `${counted(ranked.length, 'couple')} par la borne prudente de la fourchette, pour`;
    return `${start} ${basisSaid(first.basis)}${rest}.`;
  },
  description:
    'Chaque couple avec son taux compté, quel que soit le pollen, en petit point relié à son estimation partagée, un grand point ' +
    'avec sa fourchette. Les couples sont rangés par la borne prudente de la fourchette ; ceux qui ont peu de fleurs, et ceux qui ' +
    'comptent comme incompatibles (croix), se trouvent en bas.',
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
    : `${pollenOf(storage)}, ${counted(Math.round(ageDays), 'jour')}`;
}

export const vialsWords = {
  label: 'Chaque tube face à ce qui vaut une fleur',
  columns: ['tube', 'pollen de', 'verdict', 'ses propres fleurs', 'attendu', 'vaut une fleur'],
  heading: (standing: VialStanding, vials: number) =>
    `${capitalised(VERDICT_LABELS[standing])} : ${wholeNumber(vials)}`,
  name: (advice: VialAdvice) =>
    `${advice.vial}${isOlderThanTried(advice) ? ' *' : ''} · ${advice.pollenParent}`,
  mark: olderThanTriedSaid,
  expected: ({ estimate }: Estimate) => (estimate === null ? CANNOT_TELL : inTen(estimate)),
  shown: (drawn: number, all: number) => `${countedOf(drawn, all, 'tube')} dessinés ; tous au tableau`,
  worth: (value: number) => `vaut une fleur : ${inTen(value)}`,
  finding: (tally: readonly (readonly [VialStanding, number])[], { value }: Worth): string => {
    const verdicts = joined(
      tally
        .filter(([, vials]) => vials > 0)
        .map(([standing, vials]) => `${VERDICT_LABELS[standing]} ${wholeNumber(vials)}`),
    );
    const threshold =
      value === null
        ? ' Vous seul pouvez dire quelle nouaison vaut une fleur.'
        : ` La ligne : ce qui vaut une fleur, ${inTen(value)}.`;
    return `${capitalised(verdicts)}.${threshold}`;
  },
  description:
    'La nouaison attendue de chaque tube le jour d’utilisation, en point creux avec sa fourchette, groupée par verdict, face à une ' +
    'ligne à ce qui vaut une fleur.',
  cells: (vial: VialAdvice): readonly string[] => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}`,
    verdictSaid(vial),
    vial.flowers === 0 ? 'aucune fleur' : counts(vial.fruits, vial.flowers),
    rate(vial),
    vial.probabilityWorth === null ? CANNOT_TELL : likely(vial.probabilityWorth),
  ],
};
