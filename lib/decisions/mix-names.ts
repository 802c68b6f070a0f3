/** Names of three mixes among many: both ends of the frontier, and the one between them that gives up least. */

import type { Mix, MixName } from './mix.ts';

/**
 * The mixes with their names. In between stands the one farthest above the straight line from end to end, where a
 * variety more costs fewer fruits than before it and more than after it ("knee"; Das 1999, Structural Optimization 18:107).
 *
 * @param mixes from most fruits to most varieties
 */
export function namedMixes(mixes: readonly Mix[]): Mix[] {
  const last = mixes.length - 1;
  const knee = kneeOf(mixes);
  return mixes.map((mix, at) => {
    const name: MixName | null =
      at === 0 ? 'most-fruit' : at === last ? 'most-varieties' : at === knee ? 'balanced' : null;
    return { ...mix, name };
  });
}

function kneeOf(mixes: readonly Mix[]): number {
  const [first, last] = [mixes[0], mixes.at(-1)];
  if (first === undefined || last === undefined) return -1;
  const across = first.expectedFruits - last.expectedFruits;
  const up = last.expectedVarieties - first.expectedVarieties;
  const above = ({ expectedFruits, expectedVarieties }: Mix) =>
    (expectedFruits - last.expectedFruits) / across + (expectedVarieties - first.expectedVarieties) / up;
  return mixes.reduce(
    (best, mix, at) =>
      at > 0 && at < mixes.length - 1 && (best < 0 || above(mix) > above(mixes[best]!)) ? at : best,
    -1,
  );
}

/**
 * The mix of a name; where there are too few mixes to have it, the nearest: the last for most varieties, the first
 * otherwise.
 *
 * @returns undefined where there is no mix
 * @example
 * mixOf(analysis.plan.frontier, 'balanced').expectedFruits; // 27.6
 */
export function mixOf(frontier: readonly Mix[], name: MixName): Mix | undefined {
  return (
    frontier.find((mix) => mix.name === name) ?? (name === 'most-varieties' ? frontier.at(-1) : frontier[0])
  );
}
