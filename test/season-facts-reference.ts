import { readFileSync } from 'node:fs';
import { readSeason } from '../lib/season/read-season.ts';
import type { Season } from '../lib/season/season.ts';

interface Rate {
  readonly fruits: number;
  readonly flowers: number;
  readonly lower: number;
  readonly upper: number;
}

interface Ends {
  readonly lower: number;
  readonly upper: number;
}

/** What R says of test/reference/three-seasons.csv: scripts/reference/season-facts.R, with its tolerances. */
export interface SeasonFacts {
  readonly changes: readonly (Ends & {
    readonly from: string;
    readonly to: string;
    readonly earlier: Rate;
    readonly later: Rate;
    readonly likeForLike: Ends & {
      readonly difference: number;
      readonly oddsRatio: number;
      readonly oddsLower: number;
      readonly oddsUpper: number;
      readonly strata: number;
      readonly informative: number;
    };
  })[];
  readonly fruitSet: { readonly initial: Rate; readonly final: Rate; readonly kept: Rate };
  readonly corrected: readonly (Ends & { readonly storage: string; readonly estimate: number })[];
  readonly seeds: Ends & { readonly theta: number; readonly fruits: number; readonly seeds: number };
  readonly germination: Ends & {
    readonly lots: number;
    readonly germinated: number;
    readonly sown: number;
    readonly correlation: number;
  };
  readonly seedAFlower: Ends & { readonly estimate: number };
  readonly sizes: readonly {
    readonly probability: number;
    readonly line: number;
    readonly level: number;
    readonly trials: number;
  }[];
}

function bytesOf(name: string): Buffer {
  return readFileSync(new URL(`./reference/${name}`, import.meta.url));
}

export const facts = JSON.parse(bytesOf('season-facts.json').toString()) as SeasonFacts;

/** An invented grower's three seasons, 291 flowers. */
export function threeSeasons(): Season {
  return readSeason([{ name: 'three-seasons.csv', bytes: bytesOf('three-seasons.csv') }]);
}
