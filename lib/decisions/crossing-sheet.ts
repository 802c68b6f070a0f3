/** The crossing sheet: a mix flower by flower, in the order in which to do it. */

import { byCodePoint } from '../analysis/flowers.ts';
import type { ExpectedFlowers, Season, Vial } from '../season/season.ts';
import type { Mix } from './mix.ts';
import { plannedFlowers } from './planned-mornings.ts';

/** One flower to be pollinated. */
export interface SheetFlower {
  /** What stands on its tag: the year, and a number counted through the sheet. */
  readonly crossId: string;
  /** Morning on which it may open; null where nothing is known of when. */
  readonly morning: string | null;
  readonly seedParent: string;
  readonly pollenParent: string;
  /** `fresh`, or how the vial was kept. */
  readonly storage: string;
  /** The vial to thaw; null for fresh pollen. */
  readonly vial: string | null;
  readonly pollenCollected: string | null;
  /** False where fresh pollen is planned, and no morning was found on which its plant is expected to flower too. */
  readonly pollenThere: boolean;
}

/**
 * The flowers of a mix, one by one, morning by morning.
 *
 * Answers: which flower gets which pollen, and what do I take out of the freezer? The mornings are a guess: a plant's
 * flowers are spread evenly over the days on which it is expected to flower, then drawn together so that fresh pollen is
 * planned where a flower of its plant is expected too. Flowers open when they like, so a sheet says what to do with the
 * next one of a plant, not when.
 *
 * @param mix one of the plan's
 * @param vials the register, for storage and day of collection
 * @param year what the tags start with, for instance the season to come
 * @param offers all flowers that are expected: those that the mix leaves over have pollen too
 * @returns one entry a flower, by morning; without one, last
 * @example
 * crossingSheet(plan.frontier[0], season.vials, '2026')[0].crossId; // '2026-001'
 */
export function crossingSheet(
  mix: Mix,
  vials: readonly Vial[],
  year: string,
  offers: readonly ExpectedFlowers[] = [],
): SheetFlower[] {
  const register = new Map(vials.map((vial) => [vial.vial, vial]));
  const planned = plannedFlowers(mix.allocation, offers);
  planned.sort(
    (a, b) =>
      inOrder(a.morning, b.morning) ||
      byCodePoint(a.line.seedParent, b.line.seedParent) ||
      byCodePoint(a.line.pollenParent, b.line.pollenParent),
  );
  const digits = Math.max(3, String(planned.length).length);
  return planned.map(({ line, morning, pollenThere }, at) => {
    const { seedParent, pollenParent, vial } = line;
    const lot = vial === null ? undefined : register.get(vial);
    return {
      crossId: `${year}-${String(at + 1).padStart(digits, '0')}`,
      morning,
      seedParent,
      pollenParent,
      storage: lot?.storage ?? 'fresh',
      vial,
      pollenCollected: lot?.collected ?? null,
      pollenThere,
    };
  });
}

/**
 * The crossing sheet of a mix of a season's plan; its tags start with the year in which the flowers are expected.
 *
 * @param season as read
 * @param mix one of its plan's
 * @param useOn the day of use, whose year counts where the flowers file has no days
 * @example
 * sheetOf(season, analysis.plan.frontier[0], '2026-07-01')[0].crossId; // '2026-001'
 */
export function sheetOf({ vials, flowers }: Season, mix: Mix, useOn: string | null): SheetFlower[] {
  return crossingSheet(mix, vials, yearOf(flowers, useOn), flowers);
}

function yearOf(flowers: readonly ExpectedFlowers[], useOn: string | null): string {
  const days = flowers.flatMap(({ opensFrom, opensTo }) => opensFrom ?? opensTo ?? []).sort();
  return (days[0] ?? useOn ?? 'next').split('-')[0]!;
}

function inOrder(a: string | null, b: string | null): number {
  if (a === b) return 0;
  if (a === null || b === null) return a === null ? 1 : -1;
  return a < b ? -1 : 1;
}

/** Columns of the sheet's file: those of a crosses file that are known beforehand, and those to be filled in. */
const SHEET_COLUMNS = [
  'cross_id',
  'pollination_date',
  'seed_parent',
  'pollen_parent',
  'storage',
  'pollen_collected',
  'vial',
  'outcome',
  'checked_on',
  'harvested_on',
  'seeds',
  'note',
] as const;

/**
 * The sheet as a crosses file (CSV, RFC 4180) whose pollination dates and outcomes are still to be filled in: filled
 * in, it is next season's crosses file.
 *
 * @param flowers of `crossingSheet`
 * @param note what stands in the note of a flower, for instance the morning it was planned for
 * @example
 * const flowers = sheetOf(season, analysis.plan.frontier[0], '2026-07-01');
 * crossingSheetCsv(flowers, ({ morning }) => morning ?? ''); // 'cross_id,pollination_date,…'
 */
export function crossingSheetCsv(
  flowers: readonly SheetFlower[],
  note: (flower: SheetFlower) => string,
): string {
  const rows = flowers.map((flower) => {
    const { crossId, seedParent, pollenParent, storage, pollenCollected, vial } = flower;
    const known = [crossId, '', seedParent, pollenParent, storage, pollenCollected ?? '', vial ?? ''];
    return [...known, '', '', '', '', note(flower)];
  });
  return [SHEET_COLUMNS, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

function csvCell(text: string): string {
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
