/** Simulations by the thousand, in pieces: what is scored is on disk at once and is not scored again. */

import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import type { ScoredSeason } from './coverage.ts';
import type { ScoredGrower } from './decisions.ts';
import { growerScore } from './grower-score.ts';
import { simulatedGrower } from './grower-season.ts';
import { NATURES } from './nature.ts';
import { seasonScore } from './season-score.ts';
import { simulatedSeason } from './season-world.ts';
import { sizeOf, WORLDS } from './worlds.ts';

/** Of the kinds after the first, one for every so many of the first: seasons and growers. */
const OTHER_SEASONS_EVERY = 4;
const OTHER_GROWERS_EVERY = 10;

export interface RunOptions {
  /** Seasons, or growers, of the first kind. */
  readonly count: number;
  /** Stop after this many minutes, to go on another time. */
  readonly minutes: number;
  /** One line of JSON each. */
  readonly file: string;
}

interface Scored {
  readonly world: string;
  readonly seed: number;
}

/** What is scored so far; a line that was cut off is none. */
function scoredIn<S extends Scored>(file: string): S[] {
  if (!existsSync(file)) return [];
  const whole = readFileSync(file, 'utf8').split('\n').slice(0, -1);
  return whole.map((line) => JSON.parse(line) as S);
}

/** Scores what is missing, as far as time goes; returns all that is scored. */
function resumed<S extends Scored>(
  worlds: readonly string[],
  othersEvery: number,
  { count, minutes, file }: RunOptions,
  score: (world: string, seed: number) => S,
): S[] {
  const scored = scoredIn<S>(file);
  const known = new Set(scored.map(({ world, seed }) => `${world} ${seed}`));
  const until = performance.now() + 60_000 * minutes;
  for (let seed = 0; seed < count; seed += 1) {
    for (const [at, world] of worlds.entries()) {
      if ((at > 0 && seed % othersEvery !== 0) || known.has(`${world} ${seed}`)) continue;
      if (performance.now() > until) return scored;
      const next = score(world, seed);
      appendFileSync(file, `${JSON.stringify(next)}\n`);
      scored.push(next);
    }
  }
  return scored;
}

/** Seasons of every world, and whether their ranges held. */
export function runSeasons(options: RunOptions): ScoredSeason[] {
  return resumed([...WORLDS.keys()], OTHER_SEASONS_EVERY, options, (world, seed) => ({
    world,
    seed,
    tallies: [...seasonScore(simulatedSeason(WORLDS.get(world)!, sizeOf(seed), seed))],
  }));
}

/** Growers of every kind, and what they were advised was worth. */
export function runGrowers(options: RunOptions): ScoredGrower[] {
  return resumed([...NATURES.keys()], OTHER_GROWERS_EVERY, options, (world, seed) => ({
    world,
    seed,
    score: growerScore(simulatedGrower(NATURES.get(world)!, seed)),
  }));
}
