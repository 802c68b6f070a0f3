/** Unverträgliche Paare mit ihren Belegen, Selbstung, Kreuzungen in beide Richtungen. */

import type { Compatibility, SelfCompatibility, SuspectedPair } from '../../analysis/compatibility.ts';
import type { Reciprocal } from '../../analysis/reciprocal.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { pairName } from './choice-figures.ts';
import { counted, counts, decimal, difference, likelyBeside, rateInText } from './numbers.ts';

const EVIDENCE: Readonly<Record<SuspectedPair['evidence'], (pair: SuspectedPair) => string>> = {
  'pollen-took-elsewhere': ({ pollenElsewhere }) =>
    `anderswo hat derselbe Pollen bei ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)} angesetzt, ist also nicht schlecht`,
  'pollen-failed-elsewhere': ({ pollenElsewhere }) =>
    `derselbe Pollen hat auf anderen Pflanzen bei ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)} angesetzt, es könnte also schlechter Pollen sein`,
  'pollen-not-tried-elsewhere': () =>
    'dieser Pollen wurde auf keiner anderen Pflanze erprobt, es könnte also schlechter Pollen sein',
};

/** How many of them had fresh pollen; empty where none had. */
function freshSaid({ all, fresh }: SuspectedPair): string {
  if (fresh.flowers === 0) return '';
  if (fresh.flowers === all.flowers) return ', alle mit frischem Pollen';
  return `, mit frischem Pollen ${counts(fresh.fruits, fresh.flowers)}`;
}

function suspectSaid(pair: SuspectedPair, line: number): string {
  const self = pair.kind === 'self' ? ', eigener Pollen,' : '';
  return (
    `${pairName(pair)}${self} gilt als unverträglich, ${likelyBeside(pair.incompatible, line)}: ` +
    `${counts(pair.all.fruits, pair.all.flowers)} haben angesetzt${freshSaid(pair)}; ${EVIDENCE[pair.evidence](pair)}.`
  );
}

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

export function selfingSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined) return '';
  return (
    'Frischer Pollen auf denselben Pflanzen: eigener ' +
    `${rateInText(all.selfed)}, fremder ${rateInText(all.crossed)}.`
  );
}

export function selfIndexesSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined || all.selfOverCross.estimate === null) return '';
  return (
    'Zwei Kennzahlen der Selbstunverträglichkeit sind üblich: 1 − selbst ÷ gekreuzt = ' +
    `${indexed(all.oneMinusSelfOverCross)}; selbst ÷ gekreuzt = ${indexed(all.selfOverCross)}.`
  );
}

function indexed({ estimate, lower, upper }: Estimate): string {
  const value = decimal(estimate ?? 0, 2);
  return lower === null || upper === null
    ? value
    : `${value} (möglich: ${decimal(lower, 2)} bis ${decimal(upper, 2)})`;
}

/** Fewest flowers in each direction for a pair of crosses to be compared in a sentence. */
const FEWEST_EACH_WAY = 3;

export function reciprocalSaid(crosses: readonly Reciprocal[]): string {
  if (crosses.length === 0) return '';
  const start = `${counted(crosses.length, 'Pflanzenpaar wurde', 'Pflanzenpaare wurden')} in beide Richtungen gekreuzt`;
  const [most] = crosses.filter(
    ({ first, second }) => Math.min(first.flowers, second.flowers) >= FEWEST_EACH_WAY,
  );
  if (most === undefined) return `${start}, keines oft genug für einen Vergleich.`;
  const { first, second } = most;
  return (
    `${start}. Am häufigsten ${pairName(first)}, ${counts(first.fruits, first.flowers)}, gegen ${pairName(second)}, ` +
    `${counts(second.fruits, second.flowers)}: die zweite Richtung gibt ${difference(most.difference)}.`
  );
}
