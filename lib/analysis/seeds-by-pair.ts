/** Seeds that a set fruit of any pair is expected to give: each pair's own mean, pulled towards the mean of all. */

import type { Season } from '../season/season.ts';
import { crossesOf } from './flowers.ts';
import { fruitSet } from './fruit-set.ts';
import { mean } from './summary.ts';

/**
 * Expected seeds a fruit, pair by pair.
 *
 * Few fruits of a pair are counted, so a pair's own mean counts by its credibility, fruits ÷ (fruits + variance within
 * pairs ÷ variance between pairs), with variances by moments (Bühlmann & Straub 1970, Mitteilungen der Vereinigung
 * Schweizerischer Versicherungsmathematiker 70:111–133). Where fruit set is counted at the check, fruits that drop
 * before harvest give no seeds: the share that was kept is taken off.
 *
 * @returns a question by seed and pollen parent; null where no fruit's seeds were counted
 * @example
 * seedsByPair(season)?.('Salt Moon', 'Copper Tide'); // seeds a set fruit
 */
export function seedsByPair(season: Season): ((seedParent: string, pollenParent: string) => number) | null {
  const counted = new Map<string, Map<string, number[]>>();
  for (const { seedParent, pollenParent, outcome, seeds } of crossesOf(season)) {
    if (outcome !== 'fruit' || seeds === null) continue;
    const fathers = counted.get(seedParent) ?? new Map<string, number[]>();
    counted.set(seedParent, fathers.set(pollenParent, [...(fathers.get(pollenParent) ?? []), seeds]));
  }
  const groups = [...counted.values()].flatMap((fathers) => [...fathers.values()]);
  if (groups.length === 0) return null;
  const { centre, ratio } = shrinkage(groups);
  const kept = season.endpoint === 'final' ? 1 : (fruitSet(season).kept.estimate ?? 1);
  return (seedParent, pollenParent) => {
    const own = counted.get(seedParent)?.get(pollenParent) ?? [];
    const credibility = own.length === 0 ? 0 : own.length / (own.length + ratio);
    return kept * (credibility === 0 ? centre : credibility * mean(own) + (1 - credibility) * centre);
  };
}

/**
 * The mean towards which pairs are pulled, weighted by credibility, and the variance within pairs ÷ between pairs:
 * infinite where pairs differ no more than their fruits do, or where no pair has two fruits to tell.
 */
export function shrinkage(groups: readonly (readonly number[])[]): { centre: number; ratio: number } {
  const fruits = groups.reduce((sum, group) => sum + group.length, 0);
  const overall = mean(groups.flat());
  const within = sumOver(groups, (group) =>
    group.reduce((sum, seeds) => sum + (seeds - mean(group)) ** 2, 0),
  );
  const spare = fruits - groups.length;
  if (spare === 0 || groups.length === 1) return { centre: overall, ratio: Number.POSITIVE_INFINITY };
  const variance = within / spare;
  const between = sumOver(groups, (group) => group.length * (mean(group) - overall) ** 2);
  const size = fruits - sumOver(groups, (group) => group.length ** 2) / fruits;
  const spread = (between - (groups.length - 1) * variance) / size;
  if (spread <= 0) return { centre: overall, ratio: Number.POSITIVE_INFINITY };
  const ratio = variance / spread;
  const weights = groups.map((group) => group.length / (group.length + ratio));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const centre = groups.reduce((sum, group, g) => sum + weights[g]! * mean(group), 0) / total;
  return { centre, ratio };
}

function sumOver(groups: readonly (readonly number[])[], of: (group: readonly number[]) => number): number {
  return groups.reduce((sum, group) => sum + of(group), 0);
}
