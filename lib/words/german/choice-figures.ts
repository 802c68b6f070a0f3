/** Was die Bilder der Paare und Röhrchen sagen. */

import type { PooledPair } from '../../analysis/pairs.ts';
import type { Worth } from '../../analysis/worth.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { standingOf, type VialStanding } from '../told/vials.ts';
import { daysIn, vialsIn } from './nouns.ts';
import {
  CANNOT_TELL,
  capitalised,
  counted,
  counts,
  inTen,
  joined,
  likely,
  rate,
  wholeNumber,
} from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';
import { VERDICT_LABELS } from './vial-verdicts.ts';

export function pairName({
  seedParent,
  pollenParent,
}: Pick<PooledPair, 'seedParent' | 'pollenParent'>): string {
  return `${seedParent} × ${pollenParent}`;
}

export const pairsWords = {
  label: 'Fruchtansatz jedes Paares, die Mutterpflanze zuerst',
  columns: ['Paar (Mutter × Pollen)', 'angesetzt', 'Schätzung', 'für', 'unverträglich'],
  ranked: 'Die sichersten zuerst',
  incompatible: (named: number) => `Wohl unverträglich (${wholeNumber(named * 10)}+ von je 10)`,
  few: (fewest: number) => `Weniger als ${fewest} Blüten: kein Rang`,
  counted: 'gezählt',
  pooled: 'mit den Eltern geschätzt',
  shown: (drawn: number, all: number) =>
    `${wholeNumber(drawn)} von ${counted(all, 'Paar', 'Paaren')} gezeichnet; alle in der Tabelle`,
  finding: (safest: PooledPair | undefined): string =>
    safest === undefined
      ? `Welches Paar das sicherste ist, ist aus den Blüten ${CANNOT_TELL}.`
      : `Am sichersten: ${pairName(safest)}, ${counts(safest.fruits, safest.flowers)}; ` +
        `für ${basisSaid(safest.basis, 'accusative')} ${rate(safest)}.`,
  description:
    'Jedes Paar mit seiner gezählten Rate, gleich welcher Pollen, als kleiner Punkt, verbunden mit seiner Schätzung, einem großen ' +
    'Punkt mit Spanne. Die Paare sind nach dem vorsichtigen Ende der Spanne geordnet; Paare mit wenigen Blüten und vielleicht ' +
    'unverträgliche (Kreuze) stehen unten.',
  cells: (pair: PooledPair): readonly string[] => [
    pairName(pair),
    counts(pair.fruits, pair.flowers),
    rate(pair),
    basisSaid(pair.basis, 'accusative'),
    pair.incompatible === null ? CANNOT_TELL : likely(pair.incompatible),
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
  name: ({ vial, pollenParent }: VialAdvice) => `${vial} · ${pollenParent}`,
  expected: ({ estimate }: Estimate) => (estimate === null ? CANNOT_TELL : inTen(estimate)),
  shown: (drawn: number, all: number) =>
    `${wholeNumber(drawn)} von ${vialsIn(all)} gezeichnet; alle in der Tabelle`,
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
        : ` Die Linie: was eine Blüte wert ist, ${inTen(value)}.`;
    return `${capitalised(verdicts)}.${threshold}`;
  },
  description:
    'Der am Tag der Verwendung zu erwartende Fruchtansatz jedes Röhrchens als hohler Punkt mit Spanne, nach Urteil geordnet, gegen ' +
    'eine Linie bei dem, was eine Blüte wert ist.',
  cells: (vial: VialAdvice): readonly string[] => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}`,
    VERDICT_LABELS[standingOf(vial)],
    vial.flowers === 0 ? 'keine Blüten' : counts(vial.fruits, vial.flowers),
    rate(vial),
    vial.probabilityWorth === null ? CANNOT_TELL : likely(vial.probabilityWorth),
  ],
};
