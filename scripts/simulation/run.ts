/** Seasons by the thousand, in pieces: what is scored is on disk at once and is not scored again. */

import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import type { ScoredSeason } from './coverage.ts';
import { seasonScore } from './season-score.ts';
import { simulatedSeason } from './season-world.ts';
import { sizeOf, WORLDS } from './worlds.ts';

/** Of the worlds that do not match, one season for every four of the one that does. */
const OTHERS_EVERY = 4;

export interface RunOptions {
  /** Seasons of the matching world. */
  readonly seasons: number;
  /** Stop after this many minutes, to go on another time. */
  readonly minutes: number;
  /** One line of JSON a season. */
  readonly file: string;
}

/** The seasons scored so far; a line that was cut off is none. */
function scoredIn(file: string): ScoredSeason[] {
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line.endsWith(']}'))
    .map((line) => JSON.parse(line) as ScoredSeason);
}

/** Scores what is missing, as far as time goes; returns all that is scored. */
export function run({ seasons, minutes, file }: RunOptions): ScoredSeason[] {
  const scored = scoredIn(file);
  const known = new Set(scored.map(({ world, seed }) => `${world} ${seed}`));
  const until = performance.now() + 60_000 * minutes;
  for (let seed = 0; seed < seasons; seed += 1) {
    for (const [name, world] of WORLDS) {
      if (name !== 'matching' && seed % OTHERS_EVERY !== 0) continue;
      if (known.has(`${name} ${seed}`)) continue;
      if (performance.now() > until) return scored;
      const tallies = [...seasonScore(simulatedSeason(world, sizeOf(seed), seed))];
      const season: ScoredSeason = { world: name, seed, tallies };
      appendFileSync(file, `${JSON.stringify(season)}\n`);
      scored.push(season);
    }
  }
  return scored;
}
