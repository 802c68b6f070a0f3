/** The crossing sheet: a mix flower by flower, in the order in which to do it. */

import { byCodePoint } from '../analysis/flowers.ts';
import { addDays, daysBetween } from '../season/dates.ts';
import type { ExpectedFlowers, Season, Vial } from '../season/season.ts';
import type { AllocationLine, Mix } from './mix.ts';

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
}

/**
 * The flowers of a mix, one by one, morning by morning.
 *
 * Answers: which flower gets which pollen, and what do I take out of the freezer? The mornings are a guess: a plant's
 * flowers are spread evenly over the days on which it is expected to flower, fresh pollen on days on which the other
 * plant flowers too. Flowers open when they like, so a sheet says what to do with the next one of a plant, not when.
 *
 * @param mix one of the plan's
 * @param vials the register, for storage and day of collection
 * @param year what the tags start with, for instance the season to come
 * @returns one entry a flower, by morning; without one, last
 * @example
 * crossingSheet(plan.frontier[0], season.vials, '2026')[0].crossId; // '2026-001'
 */
export function crossingSheet(mix: Mix, vials: readonly Vial[], year: string): SheetFlower[] {
  const register = new Map(vials.map((vial) => [vial.vial, vial]));
  const mothers = [...new Set(mix.allocation.map(({ seedParent }) => seedParent))];
  const planned = mothers.flatMap((mother) =>
    onMornings(mix.allocation.filter(({ seedParent }) => seedParent === mother)),
  );
  planned.sort(
    (a, b) =>
      inOrder(a.morning, b.morning) ||
      byCodePoint(a.line.seedParent, b.line.seedParent) ||
      byCodePoint(a.line.pollenParent, b.line.pollenParent),
  );
  const digits = Math.max(3, String(planned.length).length);
  return planned.map(({ line, morning }, at) => {
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
  return crossingSheet(mix, vials, yearOf(flowers, useOn));
}

function yearOf(flowers: readonly ExpectedFlowers[], useOn: string | null): string {
  const days = flowers.flatMap(({ opensFrom, opensTo }) => opensFrom ?? opensTo ?? []).sort();
  return (days[0] ?? useOn ?? 'next').split('-')[0]!;
}

interface PlannedFlower {
  readonly line: AllocationLine;
  readonly morning: string | null;
}

function inOrder(a: string | null, b: string | null): number {
  if (a === b) return 0;
  if (a === null || b === null) return a === null ? 1 : -1;
  return a < b ? -1 : 1;
}

/** The flowers of one plant on evenly spread mornings, each on one that its pollen allows where there is one. */
function onMornings(lines: readonly AllocationLine[]): PlannedFlower[] {
  const flowers = lines.flatMap((line) => Array.from({ length: line.flowers }, () => line));
  const dated = flowers.filter((line): line is DatedLine => line.from !== null && line.to !== null);
  const left = dated.sort((a, b) => inOrder(a.to, b.to) || inOrder(a.from, b.from));
  const placed: PlannedFlower[] = [];
  for (const morning of spreadMornings(dated)) {
    const at = left.findIndex(({ from, to }) => from <= morning && morning <= to);
    if (at >= 0) placed.push({ line: left.splice(at, 1)[0]!, morning });
  }
  return [
    ...placed,
    ...left.map((line) => ({ line, morning: middle(line.from, line.to) })),
    ...flowers
      .filter(({ from, to }) => from === null || to === null)
      .map((line) => ({ line, morning: null })),
  ];
}

interface DatedLine extends AllocationLine {
  readonly from: string;
  readonly to: string;
}

/** As many mornings as flowers, from the first day of all to the last. */
function spreadMornings(lines: readonly DatedLine[]): string[] {
  if (lines.length === 0) return [];
  // ISO dates sort as text.
  const first = lines.map(({ from }) => from).sort()[0]!;
  const last = lines
    .map(({ to }) => to)
    .sort()
    .at(-1)!;
  const days = daysBetween(first, last) + 1;
  return lines.map((_, at) => addDays(first, Math.floor(((at + 0.5) * days) / lines.length)));
}

function middle(from: string, to: string): string {
  return addDays(from, Math.floor(daysBetween(from, to) / 2));
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
