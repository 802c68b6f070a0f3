/** Incompatible pairs with their evidence, selfed against crossed flowers, and crosses both ways. */

import type { Compatibility, SelfCompatibility, SuspectedPair } from '../analysis/compatibility.ts';
import type { Reciprocal } from '../analysis/reciprocal.ts';
import type { Estimate } from '../proportions/interval.ts';
import { pairName } from './choice-figures.ts';
import { counted, counts, decimal, difference, joined, likely, rateWithRange } from './numbers.ts';

/** Where the pollen stands, by what it did on other plants. */
const EVIDENCE: Readonly<Record<SuspectedPair['evidence'], (pair: SuspectedPair) => string>> = {
  'pollen-took-elsewhere': ({ pollenElsewhere }) =>
    `the same pollen took ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)} on other plants, so it is not bad pollen`,
  'pollen-failed-elsewhere': ({ pollenElsewhere }) =>
    `the same pollen took ${counts(pollenElsewhere.fruits, pollenElsewhere.flowers)} on other plants, so it could be bad pollen`,
  'pollen-not-tried-elsewhere': () => 'that pollen was tried on no other plant, so it could be bad pollen',
};

function suspectSaid(pair: SuspectedPair): string {
  const fresh =
    pair.fresh.flowers > 0 ? `, ${counts(pair.fresh.fruits, pair.fresh.flowers)} with fresh pollen` : '';
  const self = pair.kind === 'self' ? ', its own pollen' : '';
  return (
    `${pairName(pair)}${self} (${counts(pair.all.fruits, pair.all.flowers)}${fresh}; ${likely(pair.incompatible)}; ` +
    `${EVIDENCE[pair.evidence](pair)})`
  );
}

/** Pairs that probably never take, each with its evidence. Empty where none is named. */
export function incompatibleSaid({ pairs }: Pick<Compatibility, 'pairs'>): string {
  const named = pairs.filter((pair) => pair.named);
  if (named.length === 0) return '';
  return `Probably incompatible: ${joined(named.map(suspectSaid))}.`;
}

/** All plants together that have both selfed and crossed flowers. */
function ofAllPlants({
  selfIncompatibility,
}: Pick<Compatibility, 'selfIncompatibility'>): SelfCompatibility | undefined {
  return selfIncompatibility.find(({ plant }) => plant === null);
}

/** Selfed against crossed flowers of all plants that have both; empty where none has. */
export function selfingSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined) return '';
  return (
    `With fresh pollen of the plant itself ${rateWithRange(all.selfed)} took; with fresh pollen of others, on the same plants, ` +
    `${rateWithRange(all.crossed)}.`
  );
}

/** Both indexes of self-incompatibility under their formulas; empty where nothing can be divided. */
export function selfIndexesSaid(compatibility: Pick<Compatibility, 'selfIncompatibility'>): string {
  const all = ofAllPlants(compatibility);
  if (all === undefined || all.selfOverCross.estimate === null) return '';
  return (
    `Two indexes of self-incompatibility are in use: 1 − self ÷ cross = ${indexed(all.oneMinusSelfOverCross)}; ` +
    `self ÷ cross = ${indexed(all.selfOverCross)}.`
  );
}

function indexed({ estimate, lower, upper }: Estimate): string {
  const value = decimal(estimate ?? 0, 2);
  return lower === null || upper === null
    ? value
    : `${value} (could be ${decimal(lower, 2)} to ${decimal(upper, 2)})`;
}

/** Fewest flowers in each direction for a pair of crosses to be compared in a sentence. */
const FEWEST_EACH_WAY = 3;

/** The two plants crossed both ways most often, with the difference; empty where none were. */
export function reciprocalSaid(crosses: readonly Reciprocal[]): string {
  if (crosses.length === 0) return '';
  const start = `${counted(crosses.length, 'pair')} of plants ${crosses.length === 1 ? 'was' : 'were'} crossed both ways`;
  const [most] = crosses.filter(
    ({ first, second }) => Math.min(first.flowers, second.flowers) >= FEWEST_EACH_WAY,
  );
  if (most === undefined) return `${start}, none often enough to compare.`;
  const { first, second } = most;
  return (
    `${start}. Most often ${pairName(first)}, ${counts(first.fruits, first.flowers)}, against ${pairName(second)}, ` +
    `${counts(second.fruits, second.flowers)}: the second gives ${difference(most.difference)}.`
  );
}
