/** What the page that holds fresh against stored pollen pair by pair says. */

import type { Estimate } from '../proportions/interval.ts';
import { CANNOT_TELL, capitalised, counted, counts, decimal, wholeNumber } from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';

/** A count of flowers out of all of them. */
type Share = readonly [some: number, all: number];

/** Its sentences, captions and labels. */
export const freshAgainstFrozenPage = {
  work: (method: string, ofStored: Share, ofFresh: Share): string => {
    if (ofFresh[1] === 0) return 'No pair had fresh pollen, so none can be called hard or easy.';
    const fresh = `${counts(...ofFresh)} flowers with fresh pollen were on hard pairs`;
    if (ofStored[1] === 0)
      return `Looking at pairs that had fresh pollen: ${fresh}; none of them had ${pollenOf(method)} too.`;
    return (
      `Looking at pairs that had fresh pollen: ${counts(...ofStored)} flowers with ${pollenOf(method)} were on hard pairs, and ` +
      `${counts(...ofFresh)} flowers with fresh pollen.`
    );
  },
  workCaption: 'Flowers by kind of pair and of pollen',
  workColumns: (method: string) => ['Pairs', 'Fresh pollen', capitalised(pollenOf(method))],
  kindOfPair: (kind: 'hard' | 'easy' | 'never', pairs: number): string =>
    `${wholeNumber(pairs)} ${kind === 'never' ? 'never given fresh pollen' : kind}`,
  same: (method: string, pairs: number, fresh: number, stored: number): string =>
    pairs === 0
      ? `No pair had both fresh and ${pollenOf(method)}, so nothing can be compared like for like.`
      : `${counted(pairs, 'pair')} had both kinds: fresh pollen took more often on ${wholeNumber(fresh)}, ${pollenOf(method)} on ` +
        `${wholeNumber(stored)}, and on ${wholeNumber(pairs - fresh - stored)} both took alike.`,
  noPairToDraw: 'There is no pair to draw.',
  drawing: 'One circle a pair: fruits in every 10 flowers with fresh pollen against stored pollen',
  /** The two lines of an axis' title. */
  freshAxis: ['fresh pollen:', 'fruits in every 10'],
  storedAxis: (method: string) => [`${pollenOf(method)}:`, 'fruits in every 10'],
  label: (method: string): string => `Fresh against ${pollenOf(method)} on the pairs that had both`,
  finding: (fresh: number, stored: number): string =>
    `One circle a pair, larger with more flowers. Below the dashed line fresh pollen took more often (${counted(fresh, 'pair')}), above ` +
    `it stored pollen (${wholeNumber(stored)}).`,
  description:
    'A circle for each pair that had both kinds of pollen, and the line on which both would take alike.',
  sameCaption: 'Pairs that had both kinds of pollen',
  sameColumns: (method: string) => ['Pair (seed × pollen)', 'Fresh', capitalised(storageLabel(method))],
  specification: 'The chart of pairs that had both kinds of pollen, for programs (Vega-Lite)',
  nothingStored: 'No stored pollen was used, so there is nothing to compare.',
  lostDifference: (method: string, lowest: number | null, highest: number | null): string => {
    const inTen = (value: number | null) => (value === null ? 'unknown' : decimal(10 * value, 1));
    return (
      `Over all flowers, the gap between fresh and ${pollenOf(method)} would be ${inTen(lowest)} to ${inTen(highest)} fruits in ` +
      'every 10 flowers, whatever the lost tags hid.'
    );
  },
  none: 'none',
  seasonsCaption: 'Fruits of flowers by season',
  fathersCaption: 'Fruits of flowers by pollen parent',
  byColumns: (by: 'season' | 'pollenParent', method: string) => [
    by === 'season' ? 'Season' : 'Pollen parent',
    'Fresh',
    capitalised(storageLabel(method)),
  ],
  ratio: ({ estimate, lower, upper }: Estimate): string =>
    estimate === null
      ? CANNOT_TELL
      : `${decimal(estimate, 2)} (could be ${lower === null ? 'anything down to 0' : decimal(lower, 2)} to ${upper === null ? 'without end' : decimal(upper, 2)})`,
  oddsCaption: (method: string): string => `Odds of a fruit, fresh ÷ ${storageLabel(method)}, within pairs`,
  oddsColumns: ['Method', 'Ratio of odds'],
  commonOdds: 'Common odds ratio',
  conditionalOdds: 'Conditional odds ratio',
  noOdds: 'No stored pollen was used.',
};
