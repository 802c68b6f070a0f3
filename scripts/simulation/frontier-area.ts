/** How much of the best frontier a plan reaches, its mixes valued at the true rates. */

/** What a mix truly gives. */
export interface Gives {
  readonly fruits: number;
  readonly varieties: number;
}

/** Flowers of one ordered pair with one pollen. */
export interface Line {
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly flowers: number;
}

/**
 * Expected fruits and expected varieties of a mix.
 *
 * @param rate the true fruit set of a line
 */
export function givenBy<L extends Line>(lines: readonly L[], rate: (line: L) => number): Gives {
  let fruits = 0;
  const none = new Map<string, number>();
  for (const line of lines) {
    const p = rate(line);
    fruits += line.flowers * p;
    const pair = JSON.stringify([line.seedParent, line.pollenParent]);
    none.set(pair, (none.get(pair) ?? 1) * (1 - p) ** line.flowers);
  }
  return { fruits, varieties: [...none.values()].reduce((sum, chance) => sum + 1 - chance, 0) };
}

/** Area of all that some mix gives at least: fruits across, varieties up, from none of either. */
export function areaUnder(mixes: readonly Gives[]): number {
  let area = 0;
  let reached = 0;
  for (const { fruits, varieties } of [...mixes].sort((a, b) => b.fruits - a.fruits)) {
    if (varieties <= reached) continue;
    area += fruits * (varieties - reached);
    reached = varieties;
  }
  return area;
}
