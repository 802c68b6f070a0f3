/** Must-have crosses that cannot have all their flowers, and what stands in the way. */

import type { ExpectedFlowers } from '../season/season.ts';
import type { AllocationProblem } from './allocation.ts';
import type { Must, PairCode } from './plan-problem.ts';
import type { PlannedPollen, PlannedSource, PlanQuestion } from './plan-sources.ts';

/** A must-have cross that cannot have all its flowers, with those it gets. */
export interface Unmet extends Must {
  readonly planned: number;
  /** Flowers that are expected on its seed parent. */
  readonly expected: number;
  /** Flowers it could have if nothing else was wished: those that its pollen reaches, as far as doses go. */
  readonly possible: number;
  readonly because: string;
}

/** What can be planned with. */
export interface Planned {
  /** Rows of the flowers file with a flower. */
  readonly open: readonly ExpectedFlowers[];
  readonly stored: readonly PlannedPollen[];
  readonly sources: readonly PlannedSource[];
  readonly incompatible: PlanQuestion['incompatible'];
}

/**
 * The must-have crosses that a mix gives fewer flowers than were wished, and why.
 *
 * @param counts flowers of the mix, one entry a source of the problem
 */
export function unmetWishes(
  must: readonly Must[],
  counts: Int32Array,
  { sources }: AllocationProblem,
  pairs: PairCode,
  means: Planned,
): Unmet[] {
  return must.flatMap((wanted) => {
    const code = pairs(wanted.seedParent, wanted.pollenParent);
    const planned = counts.reduce((sum, count, s) => sum + (sources[s]!.pair === code ? count : 0), 0);
    if (planned >= wanted.flowers) return [];
    const expected = total(means.open.filter(({ seedParent }) => seedParent === wanted.seedParent));
    const possible = possibleFlowers(wanted, means.sources);
    const because = whyUnmet(wanted, { expected, possible }, means);
    return [{ ...wanted, planned, expected, possible, because }];
  });
}

function total(offers: Iterable<ExpectedFlowers>): number {
  return [...offers].reduce((sum, { flowers }) => sum + flowers, 0);
}

/** Fresh pollen serves every flower that it meets; the doses of vials go to the others. */
function possibleFlowers({ seedParent, pollenParent }: Must, sources: readonly PlannedSource[]): number {
  const own = sources.filter(
    ({ offer, pollen }) => offer.seedParent === seedParent && pollen.pollenParent === pollenParent,
  );
  const fresh = new Set(own.filter(({ pollen }) => pollen.vial === null).map(({ offer }) => offer));
  const others = new Set(own.map(({ offer }) => offer).filter((offer) => !fresh.has(offer)));
  const vials = new Set(own.filter(({ pollen }) => pollen.vial !== null).map(({ pollen }) => pollen));
  const doses = [...vials].reduce((sum, pollen) => sum + pollen.doses, 0);
  return total(fresh) + Math.min(total(others), doses);
}

/** What stands in the way of a must-have cross, the plainest first. */
function whyUnmet(
  { seedParent, pollenParent, flowers }: Must,
  { expected, possible }: Pick<Unmet, 'expected' | 'possible'>,
  { open, stored, incompatible }: Planned,
): string {
  if (expected === 0) return 'mother-not-in-flower';
  if (seedParent === pollenParent) return 'own-pollen';
  if (incompatible(seedParent, pollenParent)) return 'named-incompatible';
  if (possible === 0) {
    const flowersToo = open.some((offer) => offer.seedParent === pollenParent);
    const hasVial = stored.some((pollen) => pollen.pollenParent === pollenParent);
    return flowersToo && !hasVial ? 'no-common-morning' : 'no-pollen-of-father';
  }
  if (flowers > expected) return 'fewer-flowers-expected';
  return flowers > possible ? 'too-little-pollen' : 'other-wish-in-the-way';
}
