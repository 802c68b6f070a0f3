/** What is told of vials: the oldest, those of another year, the last of a father, who has a record. */

import type { NextTest } from '../../decisions/next-test.ts';
import type { VialAdvice, VialVerdict } from '../../decisions/vials.ts';

/** What a vial counts as where it is told: its verdict, or that no dose is left in it. */
export type VialStanding = VialVerdict | 'empty';

const STANDINGS: readonly VialStanding[] = ['keep', 'use-first', 'test-first', 'discard', 'empty'];

/**
 * What a vial counts as: an empty one has nothing to keep, use or discard, whatever its pollen was like.
 *
 * @example standingOf({ verdict: 'use-first', dosesLeft: 0 }) // 'empty'
 */
export function standingOf({ verdict, dosesLeft }: Pick<VialAdvice, 'verdict' | 'dosesLeft'>): VialStanding {
  return dosesLeft === 0 ? 'empty' : verdict;
}

/** Vials of a standing. */
export function vialsThat<Vial extends Pick<VialAdvice, 'verdict' | 'dosesLeft'>>(
  standing: VialStanding,
  vials: readonly Vial[],
): readonly Vial[] {
  return vials.filter((vial) => standingOf(vial) === standing);
}

/**
 * The standings that a table needs columns for, in their fixed order: all verdicts, and empty where a vial is.
 *
 * @example standings([{ verdict: 'keep', dosesLeft: 3 }]) // ['keep', 'use-first', 'test-first', 'discard']
 */
export function standings(
  vials: readonly Pick<VialAdvice, 'verdict' | 'dosesLeft'>[],
): readonly VialStanding[] {
  return STANDINGS.filter((standing) => standing !== 'empty' || vialsThat(standing, vials).length > 0);
}

/** Days after which a vial counts as old: a year. */
const OLD = 365;

/** Counts for the first sentence on old vials, without the empty ones; null where none is left that has an age. */
export function vialAges(vials: readonly VialAdvice[]): {
  readonly oldest: VialAdvice;
  readonly old: number;
  readonly tried: number;
  readonly all: number;
} | null {
  const left = vials.filter(({ dosesLeft }) => dosesLeft !== 0);
  const known = left.filter(({ ageDays }) => ageDays >= 0);
  if (known.length === 0) return null;
  return {
    oldest: known.reduce((a, b) => (b.ageDays > a.ageDays ? b : a)),
    old: known.filter(({ ageDays }) => ageDays > OLD).length,
    tried: left.filter(({ flowers }) => flowers > 0).length,
    all: left.length,
  };
}

/** Vials with the oldest first. */
export function oldestFirst(vials: readonly VialAdvice[]): readonly VialAdvice[] {
  return [...vials].sort((a, b) => b.ageDays - a.ageDays);
}

/** The last vials of their fathers that still serve a flower. */
export function lastVials(vials: readonly VialAdvice[]): readonly VialAdvice[] {
  return vials.filter(({ lastOfParent, dosesLeft }) => lastOfParent && dosesLeft !== 0);
}

/** Vials with flowers of their own, and those without. */
export function byRecord(vials: readonly VialAdvice[]): readonly (readonly VialAdvice[])[] {
  return [vials.filter(({ flowers }) => flowers > 0), vials.filter(({ flowers }) => flowers === 0)];
}

/** Whether a verdict carries the curve on past the oldest pollen that was tried; of an empty vial there is none. */
export function isOlderThanTried(vial: Pick<VialAdvice, 'warnings' | 'dosesLeft'>): boolean {
  return vial.dosesLeft !== 0 && vial.warnings.includes('older-than-tried');
}

/** Vials older than any pollen of their kind that was tried, and how old that was; null where none is. */
export function olderThanTried(vials: readonly VialAdvice[]): {
  readonly older: number;
  readonly all: number;
  readonly tried: readonly { readonly storage: string; readonly days: number }[];
} | null {
  const older = vials.filter(isOlderThanTried);
  if (older.length === 0) return null;
  const oldest = new Map(older.map(({ storage, oldestTriedDays }) => [storage, oldestTriedDays!]));
  return {
    older: older.length,
    all: vials.filter(({ dosesLeft }) => dosesLeft !== 0).length,
    tried: [...oldest].map(([storage, days]) => ({ storage, days })),
  };
}

/**
 * The test to begin with: of the vials to be tested first the one that gains most fruit by what is learnt; where no such
 * vial has one, the test that would most likely change a verdict.
 */
export function firstTest(tests: readonly NextTest[]): NextTest | undefined {
  const gain = ({ tests: sizes }: NextTest) => sizes.at(-1)!.gain;
  const [most] = tests.filter(({ verdict }) => verdict === 'test-first').sort((a, b) => gain(b) - gain(a));
  return most ?? tests[0];
}
