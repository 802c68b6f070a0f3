/** Many seasons' tallies become a table: how often ranges held the truth, with its own standard error. */

import type { ScoreKey, Tally } from './season-score.ts';
import { KEYS } from './season-score.ts';

/** The score of one season of one world. */
export interface ScoredSeason {
  readonly world: string;
  readonly seed: number;
  readonly tallies: readonly (readonly [ScoreKey, Tally])[];
}

export interface Coverage {
  readonly key: ScoreKey;
  readonly covered: number;
  readonly given: number;
  readonly nulls: number;
  /** Covered ÷ given; null where none was given. */
  readonly share: number | null;
  /** Of `share`, seasons being independent and the ranges of one season not (ratio estimator). */
  readonly standardError: number | null;
}

export interface WorldCoverage {
  readonly world: string;
  readonly seasons: number;
  readonly ranges: readonly Coverage[];
}

const NONE: Tally = { covered: 0, given: 0, nulls: 0 };

function coverageOf(key: ScoreKey, seasons: readonly ScoredSeason[]): Coverage {
  const tallies = seasons.map((season) => season.tallies.find(([name]) => name === key)?.[1] ?? NONE);
  const total = (count: keyof Tally) => tallies.reduce((sum, each) => sum + each[count], 0);
  const [covered, given, nulls] = [total('covered'), total('given'), total('nulls')];
  if (given === 0) return { key, covered, given, nulls, share: null, standardError: null };
  const share = covered / given;
  const squares = tallies.reduce((sum, each) => sum + (each.covered - share * each.given) ** 2, 0);
  return { key, covered, given, nulls, share, standardError: Math.sqrt(squares) / given };
}

/** One entry a world, in the order of their first seasons. */
export function coverage(seasons: readonly ScoredSeason[]): WorldCoverage[] {
  return [...new Set(seasons.map(({ world }) => world))].map((world) => {
    const own = seasons.filter((season) => season.world === world);
    return { world, seasons: own.length, ranges: KEYS.map((key) => coverageOf(key, own)) };
  });
}

/** The table as a Markdown one: a row a kind of range, a column a world, percent with standard error. */
export function coverageTable(worlds: readonly WorldCoverage[]): string {
  const cell = ({ share, standardError, nulls }: Coverage): string => {
    if (share === null) return '–';
    const percent = `${(100 * share).toFixed(1)} ± ${(100 * standardError!).toFixed(1)}`;
    return nulls > 0 ? `${percent} (${nulls} null)` : percent;
  };
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(['held by 95 % ranges, %', ...worlds.map(({ world, seasons }) => `${world}, ${seasons} seasons`)]),
    line(['---', ...worlds.map(() => '---:')]),
    ...KEYS.map((key, k) => line([key, ...worlds.map(({ ranges }) => cell(ranges[k]!))])),
  ].join('\n');
}
