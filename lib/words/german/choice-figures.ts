/** Was die Bilder der Paare und Röhrchen sagen. */

import type { PooledPair } from '../../analysis/pairs.ts';
import type { Worth } from '../../analysis/worth.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import type { Estimate } from '../../proportions/interval.ts';
import type { PairGroups } from '../told/review.ts';
import { isOlderThanTried, type VialStanding } from '../told/vials.ts';
import { daysIn, pairsIn, vialsIn } from './nouns.ts';
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
import { olderThanTriedSaid, VERDICT_LABELS, verdictSaid } from './vial-verdicts.ts';

export function pairName({
  seedParent,
  pollenParent,
}: Pick<PooledPair, 'seedParent' | 'pollenParent'>): string {
  return `${seedParent} × ${pollenParent}`;
}

export const pairsWords = {
  label: 'Fruchtansatz jedes Paares, die Mutterpflanze zuerst',
  /** All estimates are for the same pollen, so their heading names it. */
  columns: (basis: PooledPair['basis']) => [
    'Paar (Mutter × Pollen)',
    'angesetzt',
    `Schätzung, ${basisSaid(basis, 'nominative')}`,
    'unverträglich',
  ],
  ranked: 'Die sichersten zuerst',
  selfed: 'Eigener Pollen: kein Rang',
  incompatible: (named: number) => `Gilt als unverträglich (${wholeNumber(named * 10)}+ von je 10)`,
  few: (fewest: number) => `Weniger als ${fewest} Blüten: kein Rang`,
  counted: 'gezählt',
  pooled: 'mit den Eltern geschätzt',
  shown: (drawn: number, all: number) =>
    `${wholeNumber(drawn)} von ${counted(all, 'Paar', 'Paaren')} hier; alle in der Tabelle`,
  finding: ({ ranked, selfed, incompatible, few }: PairGroups): string => {
    const [first] = ranked;
    const others = [
      ...(selfed.length > 0 ? [`${wholeNumber(selfed.length)} mit eigenem Pollen`] : []),
      ...(incompatible.length > 0 ? [`${wholeNumber(incompatible.length)} als unverträglich`] : []),
      ...(few.length > 0 ? [`${wholeNumber(few.length)} mit wenigen Blüten`] : []),
    ];
    const rest = others.length === 0 ? '' : `; ohne Rang: ${joined(others)}`;
    if (first === undefined) return `Kein Paar hat genug Blüten für einen Rang${rest}.`;
    const start = `${pairsIn(ranked.length)}, nach dem vorsichtigen Ende der Spanne geordnet, für`;
    return `${start} ${basisSaid(first.basis, 'accusative')}${rest}.`;
  },
  description:
    'Jedes Paar mit seiner gezählten Rate, gleich welcher Pollen, als kleiner Punkt, verbunden mit seiner Schätzung, einem großen ' +
    'Punkt mit Spanne. Die Paare sind nach dem vorsichtigen Ende der Spanne geordnet; Paare mit wenigen Blüten und solche, die ' +
    'als unverträglich gelten (Kreuze), stehen unten.',
  cells: (pair: PooledPair, named: number): readonly string[] => [
    pairName(pair),
    counts(pair.fruits, pair.flowers),
    rate(pair),
    pair.incompatible === null ? CANNOT_TELL : likelyBeside(pair.incompatible, named),
  ],
};

function basisSaid(
  { storage, ageDays }: PooledPair['basis'],
  grammaticalCase: 'nominative' | 'accusative',
): string {
  const pollen = pollenOf(storage, grammaticalCase);
  return storage === 'fresh' ? pollen : `${pollen}, ${daysIn(Math.round(ageDays))}`;
}

export const vialsWords = {
  label: 'Jedes Röhrchen gegen das, was eine Blüte wert ist',
  columns: ['Röhrchen', 'Pollen von', 'Urteil', 'eigene Blüten', 'zu erwarten', 'eine Blüte wert'],
  heading: (standing: VialStanding, vials: number) =>
    `${capitalised(VERDICT_LABELS[standing])}: ${wholeNumber(vials)}`,
  name: (advice: VialAdvice) =>
    `${advice.vial}${isOlderThanTried(advice) ? ' *' : ''} · ${advice.pollenParent}`,
  mark: olderThanTriedSaid,
  expected: ({ estimate }: Estimate) => (estimate === null ? CANNOT_TELL : inTen(estimate)),
  shown: (drawn: number, all: number) =>
    `${wholeNumber(drawn)} von ${vialsIn(all)} hier; alle in der Tabelle`,
  worth: (value: number) => `eine Blüte wert: ${inTen(value)}`,
  finding: (tally: readonly (readonly [VialStanding, number])[], { value }: Worth): string => {
    const verdicts = joined(
      tally
        .filter(([, vials]) => vials > 0)
        .map(([standing, vials]) => `${VERDICT_LABELS[standing]}: ${wholeNumber(vials)}`),
    );
    const threshold =
      value === null
        ? ' Welcher Fruchtansatz eine Blüte wert ist, kann nur sagen, wer bestäubt.'
        : ` Linie: eine Blüte wert, ${inTen(value)}.`;
    return `${capitalised(verdicts)}.${threshold}`;
  },
  description:
    'Der am Tag der Verwendung zu erwartende Fruchtansatz jedes Röhrchens als hohler Punkt mit Spanne, nach Urteil geordnet, gegen ' +
    'eine Linie bei dem, was eine Blüte wert ist.',
  cells: (vial: VialAdvice): readonly string[] => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}`,
    verdictSaid(vial),
    vial.flowers === 0 ? 'keine Blüten' : counts(vial.fruits, vial.flowers),
    rate(vial),
    vial.probabilityWorth === null ? CANNOT_TELL : likely(vial.probabilityWorth),
  ],
};
