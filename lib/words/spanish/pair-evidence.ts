/** Incompatible pairs with their evidence, selfed against crossed flowers, and crosses both ways. */

import type { Compatibility, SelfCompatibility, SuspectedPair } from '../../analysis/compatibility.ts';
import type { Reciprocal } from '../../analysis/reciprocal.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { pairName } from './choice-figures.ts';
import { pairsIn, tookIn } from './nouns.ts';
import { counts, decimal, difference, likelyBeside, rateInText } from './numbers.ts';

/** Where the pollen stands, by what it did on other plants. */
const EVIDENCE: Readonly<Record<SuspectedPair['evidence'], (pair: SuspectedPair) => string>> = {
  'pollen-took-elsewhere': ({ pollenElsewhere }) =>
    `con el mismo polen ${tookIn(pollenElsewhere.fruits, pollenElsewhere.flowers)} en otras plantas, así que no es mal polen`,
  'pollen-failed-elsewhere': ({ pollenElsewhere }) =>
    `con el mismo polen ${tookIn(pollenElsewhere.fruits, pollenElsewhere.flowers)} en otras plantas, así que podría ser mal polen`,
  'pollen-not-tried-elsewhere': () =>
    'ese polen no se probó en ninguna otra planta, así que podría ser mal polen',
};

/** How many of them had fresh pollen; empty where none had. */
function freshSaid({ all, fresh }: SuspectedPair): string {
  if (fresh.flowers === 0) return '';
  if (fresh.flowers === all.flowers) return ', todas con polen fresco';
  return `, ${counts(fresh.fruits, fresh.flowers)} con polen fresco`;
}

function suspectSaid(pair: SuspectedPair, line: number): string {
  const self = pair.kind === 'self' ? ', su propio polen,' : '';
  return (
    `${pairName(pair)}${self} se considera incompatible, ${likelyBeside(pair.incompatible, line)}: ` +
    `${tookIn(pair.all.fruits, pair.all.flowers)}${freshSaid(pair)}; ${EVIDENCE[pair.evidence](pair)}.`
  );
}

export function incompatibleSaid({ pairs, named }: Pick<Compatibility, 'pairs' | 'named'>): string {
  return pairs
    .filter((pair) => pair.named)
    .map((pair) => suspectSaid(pair, named))
    .join(' ');
}

/** All plants together that have both selfed and crossed flowers. */
function ofAllPlants({
  selfIncompatibility,
}: Pick<Compatibility, 'selfIncompatibility'>): SelfCompatibility | undefined {
  return selfIncompatibility.find(({ plant }) => plant === null);
}

export function selfingSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined) return '';
  return (
    'En las plantas que se autopolinizaron y se cruzaron con polen fresco: con el propio, ' +
    `${rateInText(all.selfed)}; con el de otras, ${rateInText(all.crossed)}.`
  );
}

export function selfIndexesSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined || all.selfOverCross.estimate === null) return '';
  return (
    `Se usan dos índices de autoincompatibilidad: 1 − propio ÷ cruzado = ${indexed(all.oneMinusSelfOverCross)}; ` +
    `propio ÷ cruzado = ${indexed(all.selfOverCross)}.`
  );
}

function indexed({ estimate, lower, upper }: Estimate): string {
  const value = decimal(estimate ?? 0, 2);
  return lower === null || upper === null
    ? value
    : `${value} (quizá de ${decimal(lower, 2)} a ${decimal(upper, 2)})`;
}

/** Fewest flowers in each direction for a pair of crosses to be compared in a sentence. */
const FEWEST_EACH_WAY = 3;

export function reciprocalSaid(crosses: readonly Reciprocal[]): string {
  if (crosses.length === 0) return '';
  const start = `${pairsIn(crosses.length)} de plantas se ${crosses.length === 1 ? 'cruzó' : 'cruzaron'} en ambos sentidos`;
  const [most] = crosses.filter(
    ({ first, second }) => Math.min(first.flowers, second.flowers) >= FEWEST_EACH_WAY,
  );
  if (most === undefined) return `${start}, ninguna lo bastante a menudo para comparar.`;
  const { first, second } = most;
  return (
    `${start}. La que más, ${pairName(first)}, ${counts(first.fruits, first.flowers)}, frente a ${pairName(second)}, ` +
    `${counts(second.fruits, second.flowers)}: el segundo sentido da ${difference(most.difference)}.`
  );
}
