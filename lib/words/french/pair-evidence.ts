/** Incompatible pairs with their evidence, the plants' own pollen, crosses made both ways. */
import type { Compatibility, SelfCompatibility, SuspectedPair } from '../../analysis/compatibility.ts';
import type { Reciprocal } from '../../analysis/reciprocal.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { pairName } from './choice-figures.ts';
import { counted, counts, decimal, difference, likelyBeside, rateInText } from './numbers.ts';

const EVIDENCE: Readonly<Record<SuspectedPair['evidence'], (pair: SuspectedPair) => string>> = {
  'pollen-took-elsewhere': ({ pollenElsewhere }) =>
    `le même pollen a pris sur d’autres plantes, ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)} : ce n’est donc pas du mauvais pollen`,
  'pollen-failed-elsewhere': ({ pollenElsewhere }) =>
    `le même pollen sur d’autres plantes : ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)}, ce peut donc être du mauvais pollen`,
  'pollen-not-tried-elsewhere': () =>
    'ce pollen n’a été essayé sur aucune autre plante, ce peut donc être du mauvais pollen',
};

/** How many of them had fresh pollen; empty where none had. */
function freshSaid({ all, fresh }: SuspectedPair): string {
  if (fresh.flowers === 0) return '';
  if (fresh.flowers === all.flowers) return ', toutes avec du pollen frais';
  return `, ${counts(fresh.fruits, fresh.flowers)} avec du pollen frais`;
}

function suspectSaid(pair: SuspectedPair, line: number): string {
  const self = pair.kind === 'self' ? ', son propre pollen,' : '';
  return (
    `${pairName(pair)}${self} compte comme incompatible, ${likelyBeside(pair.incompatible, line)} : ` +
    `${counts(pair.all.fruits, pair.all.flowers)} ont noué${freshSaid(pair)} ; ${EVIDENCE[pair.evidence](pair)}.`
  );
}

/** Pairs that count as incompatible, each with why; empty where there are none. */
export function incompatibleSaid({ pairs, named }: Pick<Compatibility, 'pairs' | 'named'>): string {
  return pairs
    .filter((pair) => pair.named)
    .map((pair) => suspectSaid(pair, named))
    .join(' ');
}

function ofAllPlants({
  selfIncompatibility,
}: Pick<Compatibility, 'selfIncompatibility'>): SelfCompatibility | undefined {
  return selfIncompatibility.find(({ plant }) => plant === null);
}

/** What fresh pollen of the plant itself gave, against that of others. */
export function selfingSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined) return '';
  return (
    'Sur les plantes à la fois autofécondées et croisées avec du pollen frais : avec le leur, ' +
    `${rateInText(all.selfed)} ; avec celui d’autres, ${rateInText(all.crossed)}.`
  );
}

/** Both indexes of self-incompatibility in use. */
export function selfIndexesSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined || all.selfOverCross.estimate === null) return '';
  return (
    `Deux indices d’auto-incompatibilité sont en usage : 1 − autofécondé ÷ croisé = ${indexed(all.oneMinusSelfOverCross)} ; ` +
    `autofécondé ÷ croisé = ${indexed(all.selfOverCross)}.`
  );
}

function indexed({ estimate, lower, upper }: Estimate): string {
  const value = decimal(estimate ?? 0, 2);
  return lower === null || upper === null
    ? value
    : `${value} (peut-être ${decimal(lower, 2)} à ${decimal(upper, 2)})`;
}

/** Fewer flowers either way are not compared. */
const FEWEST_EACH_WAY = 3;

/** Crosses made both ways, and the one with most flowers compared. */
export function reciprocalSaid(crosses: readonly Reciprocal[]): string {
  if (crosses.length === 0) return '';
  const start = `${counted(crosses.length, 'couple')} de plantes ${crosses.length === 1 ? 'a été croisé' : 'ont été croisés'} dans les deux sens`;
  const [most] = crosses.filter(
    ({ first, second }) => Math.min(first.flowers, second.flowers) >= FEWEST_EACH_WAY,
  );
  if (most === undefined) return `${start}, aucun assez souvent pour comparer.`;
  const { first, second } = most;
  return (
    `${start}. Le plus souvent ${pairName(first)}, ${counts(first.fruits, first.flowers)}, face à ${pairName(second)}, ` +
    `${counts(second.fruits, second.flowers)} : le second donne ${difference(most.difference)}.`
  );
}
