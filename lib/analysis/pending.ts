import { addDays } from '../season/dates.ts';
import { type Cross, fruitAt, recordsHarvests, type Season } from '../season/season.ts';
import { byCodePoint } from './flowers.ts';

/** The outcome can be seen about two weeks after pollination (common practice, no source). */
export const LOOK_AFTER_DAYS = 14;

/** Flowers to look at on one day. */
export interface Look {
  readonly lookOn: string;
  readonly flowers: number;
  /** Whether that day has come by `asOf`. */
  readonly due: boolean;
  /** Their tags, in the order of the file. */
  readonly crossIds: readonly string[];
}

/** Key `pending` of the analysis: flowers that are too young to tell, and when to look. */
export interface Pending {
  readonly asOf: string | null;
  readonly lookAfterDays: number;
  /** Flowers whose outcome is `pending`, controls among them. */
  readonly flowers: number;
  /** Those among them that can be looked at by now. */
  readonly due: number;
  readonly looks: readonly Look[];
  /** Fruits that set and wait for their harvest, where the endpoint is the final one and harvests are recorded. */
  readonly awaitingHarvest: number;
}

function looksAt(crosses: readonly Cross[], asOf: string | null): Look[] {
  const byDay = new Map<string, string[]>();
  for (const { pollinationDate, crossId } of crosses) {
    const lookOn = addDays(pollinationDate, LOOK_AFTER_DAYS);
    const own = byDay.get(lookOn);
    if (own === undefined) byDay.set(lookOn, [crossId]);
    else own.push(crossId);
  }
  return [...byDay]
    .sort(([a], [b]) => byCodePoint(a, b))
    .map(([lookOn, crossIds]) => ({
      lookOn,
      flowers: crossIds.length,
      due: asOf !== null && lookOn <= asOf,
      crossIds,
    }));
}

/**
 * Pending flowers: which are too young to tell, and on which day to look at them.
 *
 * Answers: what is still to come, and when do I go round again? A pending flower is never a failure; it is in no rate.
 *
 * @param season the season as read
 * @returns `flowers` and `awaitingHarvest` add up to the rows left out as `outcome-pending`
 * @example
 * pending(season).looks[0]; // { lookOn: '2025-09-28', flowers: 8, due: false, crossIds: [...] }
 */
export function pending(season: Season): Pending {
  const { crosses, asOf, endpoint } = season;
  const harvestsRecorded = recordsHarvests(crosses);
  const young = crosses.filter(({ outcome }) => outcome === 'pending');
  const looks = looksAt(young, asOf);
  return {
    asOf,
    lookAfterDays: LOOK_AFTER_DAYS,
    flowers: young.length,
    due: looks.reduce((sum, { due, flowers }) => sum + (due ? flowers : 0), 0),
    looks,
    awaitingHarvest: crosses.filter(
      (cross) => cross.outcome === 'fruit' && fruitAt(cross, endpoint, harvestsRecorded) === null,
    ).length,
  };
}
