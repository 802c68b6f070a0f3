/** What is told of vials: the oldest, those of another year, the last of a father, who has a record. */

import type { VialAdvice } from '../../decisions/vials.ts';

/** Days after which a vial counts as old: a year. */
const OLD = 365;

/** Counts for the first sentence on old vials; null where no vial has an age. */
export function vialAges(vials: readonly VialAdvice[]): {
  readonly oldest: VialAdvice;
  readonly old: number;
  readonly tried: number;
} | null {
  const known = vials.filter(({ ageDays }) => ageDays >= 0);
  if (known.length === 0) return null;
  return {
    oldest: known.reduce((a, b) => (b.ageDays > a.ageDays ? b : a)),
    old: known.filter(({ ageDays }) => ageDays > OLD).length,
    tried: vials.filter(({ flowers }) => flowers > 0).length,
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
