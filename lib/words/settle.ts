/** How many more flowers would settle it: a number, or out of reach. */

import type { PairSettling, Settle, StorageSettling } from '../analysis/settle.ts';
import { pairName } from './choice-figures.ts';
import { CANNOT_TELL, counted, inTen, joined, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';
import { MOST_ROWS, methodsByReach, nearest, type Reach, within } from './told/settling.ts';

/**
 * Section 8: fresh against each method, then vials and pairs.
 *
 * @example
 * const frozen = { storage: 'frozen', needed: 220, have: 156, more: 64, reach: 324, outOfReach: false };
 * settleAnswer({ freshVersusStored: [frozen], vials: [], pairs: [] }); // 'About 64 more flowers would settle fresh against frozen pollen, half with each kind on the…'
 */
export function settleAnswer(settle: Settle): string {
  return [storagesSaid(settle), vialsSaid(settle), pairsSaid(settle)].filter((said) => said !== '').join(' ');
}

function storagesSaid({ freshVersusStored }: Settle): string {
  if (freshVersusStored.length === 0)
    return 'No stored pollen was used, so there is nothing to settle about it.';
  const { reachable, beyond, settled } = methodsByReach({ freshVersusStored });
  return [reachableSaid(reachable), beyondSaid(beyond), settledSaid(settled)]
    .filter((said) => said !== '')
    .join(' ');
}

function reachableSaid(settlings: readonly StorageSettling[]): string {
  const [first, ...others] = settlings;
  if (first === undefined) return '';
  const rest = others.map(({ storage, more }) => `; for ${pollenOf(storage)} ${wholeNumber(more ?? 0)}`);
  return (
    `About ${counted(first.more ?? 0, 'more flower')} would settle fresh against ${pollenOf(first.storage)}, half with each ` +
    `kind on the same pairs${rest.join('')}.`
  );
}

function beyondSaid(settlings: readonly StorageSettling[]): string {
  const [first] = settlings;
  if (first === undefined) return '';
  const each = settlings.map(
    ({ storage, more }) => `${pollenOf(storage)} (${wholeNumber(more ?? 0)} more flowers)`,
  );
  return `Fresh against ${joined(each)} ${each.length === 1 ? 'is' : 'are'} out of reach: two seasons offer ${counted(first.reach, 'flower')}.`;
}

function settledSaid(settlings: readonly StorageSettling[]): string {
  if (settlings.length === 0) return '';
  const each = settlings.map(({ storage }) => pollenOf(storage));
  return `For fresh against ${joined(each)} there are flowers enough already.`;
}

function vialsSaid({ vials }: Settle): string {
  const [first] = vials;
  if (first === undefined) return '';
  if (first.needed === null)
    return 'For a vial it can’t be said before it is known what fruit set is worth a flower.';
  const reachable = vials.filter(within).length;
  const start = `To know from its own flowers alone whether a vial is worth keeping takes ${wholeNumber(first.needed)} of them`;
  return reachable === 0
    ? `${start}: out of reach for every vial, by its doses or by two seasons’ flowers.`
    : `${start}: within reach for ${wholeNumber(reachable)} of ${counted(vials.length, 'vial')}.`;
}

function pairsSaid({ pairs }: Settle): string {
  const known = pairs.find(({ needed }) => needed !== null);
  if (known === undefined) return '';
  const reachable = pairs.filter(within);
  const start = `To know whether a pair is better or worse than the average pair takes ${counted(known.needed!, 'flower')} on it`;
  if (reachable.length === 0) return `${start}: more than two seasons offer on any seed parent.`;
  const named = nearest(reachable).map(pairName);
  const names = reachable.length > MOST_ROWS ? `, nearest ${joined(named)}` : `: ${joined(named)}`;
  return `${start}, within reach for ${wholeNumber(reachable.length)} of ${pairs.length} pairs${names}.`;
}

/**
 * What "settled" means, with its numbers.
 *
 * @example settledMeans({ power: 0.8, trueDifference: 0.2, seasonFlowers: 162 }) // '“Settled” means: if the true difference is 2 in every 10 flowers, so many flowers show…'
 */
export function settledMeans({ power, trueDifference, seasonFlowers }: Settle): string {
  return (
    `“Settled” means: if the true difference is ${wholeNumber(trueDifference * 10)} in every 10 flowers, so many flowers show that ` +
    `there is one with a chance of ${inTen(power)}. The number does not hang on what this season happened to show. “Out of reach” ` +
    `means more than two seasons’ flowers (a season offers ${wholeNumber(seasonFlowers)}).`
  );
}

/** Headings of the table of section 8. */
export const SETTLE_COLUMNS = ['question', 'flowers so far', 'needed', 'more', 'within reach'] as const;

function cells(question: string, settling: Reach): readonly string[] {
  const { have, needed, more } = settling;
  const number = (value: number | null) => (value === null ? CANNOT_TELL : wholeNumber(value));
  const reach =
    settling.tooFewDoses === true ? 'no: too few doses' : within(settling) ? 'yes' : 'out of reach';
  return [question, wholeNumber(have), number(needed), number(more), more === null ? CANNOT_TELL : reach];
}

/**
 * Rows of the table of section 8: every method, and the vials and pairs that are nearest to settled.
 *
 * @example
 * const frozen = { storage: 'frozen', needed: 220, have: 156, more: 64, reach: 324, outOfReach: false };
 * settleRows({ freshVersusStored: [frozen], vials: [], pairs: [] })[0]; // ['fresh against frozen pollen, same pairs', '156', '220', '64', 'yes']
 */
export function settleRows({ freshVersusStored, vials, pairs }: Settle): readonly (readonly string[])[] {
  return [
    ...freshVersusStored.map((each) => cells(`fresh against ${pollenOf(each.storage)}, same pairs`, each)),
    ...nearest(vials).map((each) => cells(`vial ${each.vial} against what is worth a flower`, each)),
    ...nearest<PairSettling>(pairs).map((each) => cells(`${pairName(each)} against the average pair`, each)),
  ];
}
