/** What a plan's mixes hold, before a language says it. */

import type { AllocationLine, Mix } from '../../decisions/mix.ts';
import type { NextSeason } from '../../decisions/next-season.ts';

/** Named mixes, from most fruits to most varieties. */
export function namedOf({ frontier }: Pick<NextSeason, 'frontier'>): readonly Mix[] {
  return frontier.filter(({ name }) => name !== null);
}

/** The lines of each ordered pair together, in the order of the flowers file. */
export function linesByCross(allocation: readonly AllocationLine[]): AllocationLine[][] {
  const mothers = new Map<string, Map<string, AllocationLine[]>>();
  for (const line of allocation) {
    const fathers = mothers.get(line.seedParent) ?? new Map<string, AllocationLine[]>();
    mothers.set(line.seedParent, fathers);
    fathers.set(line.pollenParent, [...(fathers.get(line.pollenParent) ?? []), line]);
  }
  return [...mothers.values()].flatMap((fathers) => [...fathers.values()]);
}

/** Ordered pairs that get a flower. */
export function crossesTried({ allocation }: Pick<Mix, 'allocation'>): number {
  return linesByCross(allocation).length;
}

/** Seeds are known to two digits at best. */
export function roundSeeds(seeds: number): number {
  const unit = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, seeds))) - 1);
  return Math.round(seeds / unit) * unit;
}

/** Flowers for which there is no pollen; all mixes leave as many. */
export function idleFlowers({ frontier, flowers }: Pick<NextSeason, 'frontier' | 'flowers'>): number {
  const [first] = frontier;
  return first === undefined ? 0 : flowers - first.allocation.reduce((sum, line) => sum + line.flowers, 0);
}

/** Vials that are not planned with, by why. */
export function leftOutByReason({
  leftOutVials,
}: Pick<NextSeason, 'leftOutVials'>): readonly (readonly [because: string, vials: readonly string[]])[] {
  const codes = [...new Set(leftOutVials.map(({ because }) => because))];
  return codes.map((code) => [
    code,
    leftOutVials.filter(({ because }) => because === code).map(({ vial }) => vial),
  ]);
}
