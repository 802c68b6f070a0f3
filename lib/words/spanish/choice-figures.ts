/** What the figures of pairs and vials say. */

import type { PooledPair } from '../../analysis/pairs.ts';
import type { Worth } from '../../analysis/worth.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { standingOf, type VialStanding } from '../told/vials.ts';
import { daysIn, pairsIn, vialsIn } from './nouns.ts';
import { CANNOT_TELL, capitalised, counts, inTen, joined, likely, rate, wholeNumber } from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';
import { VERDICT_LABELS } from './vial-verdicts.ts';

export function pairName({
  seedParent,
  pollenParent,
}: Pick<PooledPair, 'seedParent' | 'pollenParent'>): string {
  return `${seedParent} × ${pollenParent}`;
}

export const pairsWords = {
  label: 'Cuajado de cada pareja, la planta madre primero',
  columns: ['pareja (madre × polen)', 'cuajaron', 'estimación', 'para', 'incompatible'],
  ranked: 'Las más seguras primero',
  incompatible: (named: number) => `Parecen incompatibles (${wholeNumber(named * 10)}+ de cada 10)`,
  few: (fewest: number) => `Menos de ${fewest} flores: sin ordenar`,
  counted: 'contado',
  pooled: 'estimado con sus padres',
  shown: (drawn: number, all: number) => `${wholeNumber(drawn)} de ${pairsIn(all)}; todas, en la tabla`,
  finding: (safest: PooledPair | undefined): string =>
    safest === undefined
      ? `Con estas flores ${CANNOT_TELL} qué pareja es la más segura.`
      : `Lo más seguro: ${pairName(safest)}, ${counts(safest.fruits, safest.flowers)}; ` +
        `con ${basisSaid(safest.basis)}, ${rate(safest)}.`,
  description:
    'Cada pareja con su frecuencia contada, con cualquier polen, como un punto pequeño unido a su estimación conjunta, un punto grande con ' +
    'su margen. Las parejas van ordenadas por el extremo prudente del margen; las de pocas flores, y las que parecen incompatibles ' +
    '(aspas), están abajo.',
  cells: (pair: PooledPair): readonly string[] => [
    pairName(pair),
    counts(pair.fruits, pair.flowers),
    rate(pair),
    basisSaid(pair.basis),
    pair.incompatible === null ? CANNOT_TELL : likely(pair.incompatible),
  ],
};

function basisSaid({ storage, ageDays }: PooledPair['basis']): string {
  return storage === 'fresh' ? pollenOf(storage) : `${pollenOf(storage)}, ${daysIn(Math.round(ageDays))}`;
}

export const vialsWords = {
  label: 'Cada vial frente a lo que merece una flor',
  columns: ['vial', 'polen de', 'veredicto', 'sus propias flores', 'cabe esperar', 'merece una flor'],
  heading: (standing: VialStanding, vials: number) =>
    `${capitalised(VERDICT_LABELS[standing])}: ${wholeNumber(vials)}`,
  name: ({ vial, pollenParent }: VialAdvice) => `${vial} · ${pollenParent}`,
  expected: ({ estimate }: Estimate) => (estimate === null ? CANNOT_TELL : inTen(estimate)),
  shown: (drawn: number, all: number) => `${wholeNumber(drawn)} de ${vialsIn(all)}; todos, en la tabla`,
  worth: (value: number) => `merece una flor: ${inTen(value)}`,
  finding: (tally: readonly (readonly [VialStanding, number])[], { value }: Worth): string => {
    const verdicts = joined(
      tally
        .filter(([, vials]) => vials > 0)
        .map(([standing, vials]) => `${VERDICT_LABELS[standing]} ${wholeNumber(vials)}`),
    );
    const threshold =
      value === null
        ? ' Solo usted puede decir qué cuajado merece una flor.'
        : ` La línea: lo que merece una flor, ${inTen(value)}.`;
    return `${capitalised(verdicts)}.${threshold}`;
  },
  description:
    'El cuajado que cabe esperar de cada vial el día de uso, como un punto hueco con su margen, agrupado por veredicto, frente ' +
    'a una línea en lo que merece una flor.',
  cells: (vial: VialAdvice): readonly string[] => [
    vial.vial,
    `${vial.pollenParent}, ${storageLabel(vial.storage)}`,
    VERDICT_LABELS[standingOf(vial)],
    vial.flowers === 0 ? 'ninguna flor' : counts(vial.fruits, vial.flowers),
    rate(vial),
    vial.probabilityWorth === null ? CANNOT_TELL : likely(vial.probabilityWorth),
  ],
};
