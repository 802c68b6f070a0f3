/** What the figures of pairs and vials say. */

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
  label: 'Cuajado de cada pareja, la planta madre primero',
  /** All estimates are for the same pollen, so their heading names it. */
  columns: (basis: PooledPair['basis']) => [
    'pareja (madre × polen)',
    'cuajaron',
    `estimación, ${basisSaid(basis)}`,
    'incompatible',
  ],
  ranked: 'Las más seguras primero',
  selfed: 'Polen propio: sin ordenar',
  incompatible: (named: number) => `Dadas por incompatibles (${wholeNumber(named * 10)}+ de cada 10)`,
  few: (fewest: number) => `Menos de ${fewest} flores: sin ordenar`,
  counted: 'contado',
  pooled: 'estimado con sus padres',
  shown: (drawn: number, all: number) => `${wholeNumber(drawn)} de ${pairsIn(all)}; todas, en la tabla`,
  finding: ({ ranked, selfed, incompatible, few }: PairGroups): string => {
    const [first] = ranked;
    const others = [
      ...(selfed.length > 0 ? [`${wholeNumber(selfed.length)} con polen propio`] : []),
      ...(incompatible.length > 0 ? [`${wholeNumber(incompatible.length)} dadas por incompatibles`] : []),
      ...(few.length > 0 ? [`${wholeNumber(few.length)} de pocas flores`] : []),
    ];
    const rest = others.length === 0 ? '' : `; sin ordenar: ${joined(others)}`;
    if (first === undefined) return `Ninguna pareja tiene flores suficientes para ordenarla${rest}.`;
    const start = `${pairsIn(ranked.length)} por el extremo prudente del margen, con`;
    return `${start} ${basisSaid(first.basis)}${rest}.`;
  },
  description:
    'Cada pareja con su frecuencia contada, con cualquier polen, como un punto pequeño unido a su estimación conjunta, un punto grande con ' +
    'su margen. Las parejas van ordenadas por el extremo prudente del margen; las de pocas flores, y las dadas por incompatibles ' +
    '(aspas), están abajo.',
  cells: (pair: PooledPair, named: number): readonly string[] => [
    pairName(pair),
    counts(pair.fruits, pair.flowers),
    rate(pair),
    pair.incompatible === null ? CANNOT_TELL : likelyBeside(pair.incompatible, named),
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
  name: (advice: VialAdvice) =>
    `${advice.vial}${isOlderThanTried(advice) ? ' *' : ''} · ${advice.pollenParent}`,
  mark: olderThanTriedSaid,
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
    verdictSaid(vial),
    vial.flowers === 0 ? 'ninguna flor' : counts(vial.fruits, vial.flowers),
    rate(vial),
    vial.probabilityWorth === null ? CANNOT_TELL : likely(vial.probabilityWorth),
  ],
};
