/** On which morning each flower of a mix is planned: spread evenly, then drawn together where fresh pollen is needed. */

import { addDays, daysBetween } from '../season/dates.ts';
import type { ExpectedFlowers } from '../season/season.ts';
import { type MeetingDay, meetingDays, type OpeningFlower } from './meeting-mornings.ts';
import type { AllocationLine } from './mix.ts';

/** A flower of a mix and its morning. */
export interface PlannedFlower {
  readonly line: AllocationLine;
  /** Null where nothing is known of when. */
  readonly morning: string | null;
  /** False where fresh pollen is planned, and no morning was found on which its plant is expected to flower too. */
  readonly pollenThere: boolean;
}

/** Flowers of a plant with the same days; `line` is null for those that the mix leaves over. */
interface Opening {
  readonly seedParent: string;
  readonly line: AllocationLine | null;
  readonly flowers: number;
  readonly from: string | null;
  readonly to: string | null;
}

/** A flower on the morning on which it would open by itself. */
interface SpreadFlower extends Opening {
  readonly morning: string | null;
}

/**
 * The flowers of a mix, each on a morning of its days; fresh pollen is planned where a flower of its plant is expected.
 *
 * @param allocation of the mix
 * @param offers all flowers that are expected
 * @returns one entry a flower, plant by plant
 */
export function plannedFlowers(
  allocation: readonly AllocationLine[],
  offers: readonly ExpectedFlowers[],
): PlannedFlower[] {
  const openings = [
    ...allocation.map((line): Opening => ({ ...line, line })),
    ...spareFlowers(offers, allocation),
  ];
  const plants = [...new Set(openings.map(({ seedParent }) => seedParent))];
  const spread = plants.flatMap((plant) =>
    onMornings(openings.filter(({ seedParent }) => seedParent === plant)),
  );
  const met = meetings(spread);
  return spread.flatMap(({ line }, at) =>
    line === null ? [] : [{ line, morning: met[at]!.morning, pollenThere: met[at]!.meets }],
  );
}

/** Where the flowers meet the plants whose fresh pollen they need. */
function meetings(spread: readonly SpreadFlower[]): (MeetingDay & { readonly morning: string | null })[] {
  // ISO dates sort as text.
  const [origin] = spread
    .flatMap(({ from, to, morning }) => [from, to, morning].filter((day) => day !== null))
    .sort();
  if (origin === undefined) return spread.map(() => ({ day: null, morning: null, meets: true }));
  const dayOf = <None>(date: string | null, none: None) => (date === null ? none : daysBetween(origin, date));
  const flowers = spread.map(
    ({ seedParent, line, from, to, morning }): OpeningFlower => ({
      plant: seedParent,
      pollenOf: line?.source === 'fresh' ? line.pollenParent : null,
      from: dayOf(from, Number.NEGATIVE_INFINITY),
      to: dayOf(to, Number.POSITIVE_INFINITY),
      day: dayOf(morning, null),
    }),
  );
  return meetingDays(flowers).map((met) => ({
    ...met,
    morning: met.day === null ? null : addDays(origin, met.day),
  }));
}

/** Flowers that are expected and that the mix leaves over. */
function spareFlowers(offers: readonly ExpectedFlowers[], allocation: readonly AllocationLine[]): Opening[] {
  const left = allocation.map((line) => ({ line, flowers: line.flowers }));
  return offers.flatMap(({ seedParent, flowers, opensFrom, opensTo }) => {
    let spare = flowers;
    for (const used of left) {
      if (used.line.seedParent !== seedParent || !isWithin(used.line, opensFrom, opensTo)) continue;
      const taken = Math.min(spare, used.flowers);
      used.flowers -= taken;
      spare -= taken;
    }
    return spare === 0 ? [] : [{ seedParent, line: null, flowers: spare, from: opensFrom, to: opensTo }];
  });
}

/** Whether the days of a line are among those of a row of the flowers file. */
function isWithin({ from, to }: AllocationLine, opensFrom: string | null, opensTo: string | null): boolean {
  return (
    (opensFrom === null || (from !== null && from >= opensFrom)) &&
    (opensTo === null || (to !== null && to <= opensTo))
  );
}

/** The flowers of one plant on evenly spread mornings, each on one that its pollen allows where there is one. */
function onMornings(openings: readonly Opening[]): SpreadFlower[] {
  const flowers = openings.flatMap((opening) => Array.from({ length: opening.flowers }, () => opening));
  const dated = flowers.filter((one): one is DatedOpening => one.from !== null && one.to !== null);
  const left = dated.sort((a, b) => byDate(a.to, b.to) || byDate(a.from, b.from));
  const placed: SpreadFlower[] = [];
  for (const morning of spreadMornings(dated)) {
    const at = left.findIndex(({ from, to }) => from <= morning && morning <= to);
    if (at >= 0) placed.push({ ...left.splice(at, 1)[0]!, morning });
  }
  return [
    ...placed,
    ...left.map((one) => ({ ...one, morning: middle(one.from, one.to) })),
    ...flowers
      .filter(({ from, to }) => from === null || to === null)
      .map((one) => ({ ...one, morning: null })),
  ];
}

interface DatedOpening extends Opening {
  readonly from: string;
  readonly to: string;
}

function byDate(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/** As many mornings as flowers, from the first day of all to the last. */
function spreadMornings(openings: readonly DatedOpening[]): string[] {
  if (openings.length === 0) return [];
  // ISO dates sort as text.
  const first = openings.map(({ from }) => from).sort()[0]!;
  const last = openings
    .map(({ to }) => to)
    .sort()
    .at(-1)!;
  const days = daysBetween(first, last) + 1;
  return openings.map((_, at) => addDays(first, Math.floor(((at + 0.5) * days) / openings.length)));
}

function middle(from: string, to: string): string {
  return addDays(from, Math.floor(daysBetween(from, to) / 2));
}
