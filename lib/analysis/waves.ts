import type { Proportion } from '../proportions/interval.ts';
import { daysBetween } from '../season/dates.ts';
import { type Cross, fruitAt, recordsHarvests, type Season } from '../season/season.ts';
import { byCodePoint } from './flowers.ts';
import { growerNamer } from './growers.ts';
import { proportionOf } from './proportion.ts';

/**
 * From this many days without a pollination on, a new wave begins: half of the four weeks after which a second wave comes
 * at the earliest (four to six weeks after the first: common practice, no source).
 */
export const WAVE_GAP_DAYS = 14;

/** Key `waves` of the analysis: one wave of flowers of one season and grower. */
export interface Wave extends Proportion {
  readonly season: string;
  readonly grower: string | null;
  /** The file's own word, or 1, 2, … by date; null for rows that leave the column blank where others fill it. */
  readonly wave: string | null;
  readonly source: 'column' | 'dates';
  /** First and last morning. */
  readonly from: string;
  readonly to: string;
  /** All rows of the wave, controls, lost tags and pending flowers among them. */
  readonly rows: number;
  /** Days from the first morning of the wave before; null for the first of a season. */
  readonly daysAfterPrevious: number | null;
}

/** The number of the wave of each morning, from gaps between mornings. */
function numbersByDate(crosses: readonly Cross[]): Map<string, number> {
  const mornings = [...new Set(crosses.map(({ pollinationDate }) => pollinationDate))].sort();
  const numbers = new Map<string, number>();
  let wave = 1;
  mornings.forEach((morning, i) => {
    if (i > 0 && daysBetween(mornings[i - 1]!, morning) >= WAVE_GAP_DAYS) wave += 1;
    numbers.set(morning, wave);
  });
  return numbers;
}

interface Members {
  readonly wave: string | null;
  readonly source: Wave['source'];
  readonly crosses: readonly Cross[];
}

/** The waves of one grower's season: the file's own where it has any, else by date. */
function membersOf(crosses: readonly Cross[]): Members[] {
  const source = crosses.some(({ wave }) => wave !== null) ? 'column' : 'dates';
  const numbers = numbersByDate(crosses);
  const waveOf = ({ wave, pollinationDate }: Cross) =>
    source === 'column' ? wave : String(numbers.get(pollinationDate)!);
  const members = new Map<string | null, Cross[]>();
  for (const cross of crosses) {
    const wave = waveOf(cross);
    const own = members.get(wave);
    if (own === undefined) members.set(wave, [cross]);
    else own.push(cross);
  }
  return [...members].map(([wave, own]) => ({ wave, source, crosses: own }));
}

function firstMorning({ crosses }: Members): string {
  return crosses.map(({ pollinationDate }) => pollinationDate).sort()[0]!;
}

/** Crosses of one season and one grower, in the order of their first rows. */
function bySeasonAndGrower(season: Season): { grower: string | null; crosses: Cross[] }[] {
  const growerOf = growerNamer(season.crosses);
  const groups = new Map<string, { grower: string | null; crosses: Cross[] }>();
  for (const cross of season.crosses) {
    const grower = growerOf(cross);
    const key = JSON.stringify([cross.season, grower]);
    const group = groups.get(key) ?? { grower, crosses: [] };
    group.crosses.push(cross);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/**
 * Waves of flowers, by the file's own column or found from the dates, with the fruit set of each.
 *
 * Answers: when did my plants flower, and did a later wave take worse? A grower's season whose rows fill the `wave`
 * column keeps those words; else a new wave begins after `WAVE_GAP_DAYS` without a pollination. Not for comparing
 * waves like for like: they offer other plants and older pollen.
 *
 * @param season the season as read, plants told apart
 * @param options `level` of the ranges, a proportion in (0, 1), 0.95 by default
 * @returns waves in the order of their first mornings; rates over crosses with a known outcome, controls apart
 * @example
 * waves(season).map(({ season, wave, from }) => [season, wave, from]); // [['2025', '1', '2025-06-20'], …]
 */
export function waves(season: Season, { level = 0.95 }: { readonly level?: number } = {}): Wave[] {
  const harvestsRecorded = recordsHarvests(season.crosses);
  const rateOf = (crosses: readonly Cross[]) => {
    const fruits = crosses
      .filter(({ control }) => control === null)
      .map((cross) => fruitAt(cross, season.endpoint, harvestsRecorded))
      .filter((fruit) => fruit !== null);
    return proportionOf(
      fruits.map((fruit) => ({ fruit })),
      level,
    );
  };
  const found = bySeasonAndGrower(season).flatMap(({ grower, crosses }) => {
    const members = membersOf(crosses).sort((a, b) => byCodePoint(firstMorning(a), firstMorning(b)));
    return members.map((member, i): Wave => {
      const dates = member.crosses.map(({ pollinationDate }) => pollinationDate).sort();
      const before = members[i - 1];
      return {
        season: crosses[0]!.season,
        grower,
        wave: member.wave,
        source: member.source,
        from: dates[0]!,
        to: dates.at(-1)!,
        rows: member.crosses.length,
        daysAfterPrevious: before === undefined ? null : daysBetween(firstMorning(before), dates[0]!),
        ...rateOf(member.crosses),
      };
    });
  });
  return found.sort((a, b) => byCodePoint(a.from, b.from) || byCodePoint(a.grower ?? '', b.grower ?? ''));
}
