import {
  type Cross,
  fruitAt,
  type Outcome,
  recordsHarvests,
  type Season,
  type SeasonFile,
} from '../season/season.ts';
import { byCodePoint } from './flowers.ts';

/** Key `rows` of the analysis: rows of the crosses files, what was read, used and left out, and why. */
export interface RowCounts {
  readonly read: number;
  readonly used: number;
  readonly leftOut: number;
  /** Rows that could be read, by their outcome; outcomes that do not occur stand with 0. */
  readonly byOutcome: readonly { readonly outcome: Outcome; readonly rows: number }[];
  /** Left-out rows by reason, most first: codes of problems, and `outcome-unknown`, `outcome-pending`. */
  readonly byReason: readonly LeftOutRows[];
}

const OUTCOMES: readonly Outcome[] = ['fruit', 'dropped', 'none', 'unknown', 'pending'];

function sumOf(files: readonly SeasonFile[], count: (file: SeasonFile) => number): number {
  return files.reduce((sum, file) => sum + count(file), 0);
}

/** The first error of each line that has one, top line first. */
function errorsByLine(file: SeasonFile): string[] {
  const byLine = new Map<number, string>();
  for (const { severity, line, code } of file.problems) {
    if (severity === 'error' && !byLine.has(line)) byLine.set(line, code);
  }
  return [...byLine].sort(([a], [b]) => a - b).map(([, code]) => code);
}

/**
 * The error of each of a file's left-out rows. A fault of the header stands above all rows: it answers for rows
 * without an error of their own, and is not a row itself where every one of them is accounted for.
 */
function errorsOfRows(file: SeasonFile, undecided: number): string[] {
  const errors = errorsByLine(file);
  const rows = file.leftOut - undecided;
  if (errors.length > rows) return errors.slice(errors.length - rows);
  const whole = errors[0] ?? 'unreadable';
  return [...errors, ...Array.from({ length: rows - errors.length }, () => whole)];
}

/** Why a row that could be read does not count, or null where it does. */
function reasonOf(cross: Cross, season: Season, harvestsRecorded: boolean): string | null {
  if (cross.outcome === 'unknown') return 'outcome-unknown';
  if (fruitAt(cross, season.endpoint, harvestsRecorded) === null) return 'outcome-pending';
  return null;
}

/** Rows of a file that are left out for one reason. */
export interface LeftOutRows {
  /** Code of a problem, or `outcome-unknown`, `outcome-pending`. */
  readonly reason: string;
  readonly rows: number;
}

/** A flower that could be read and does not count, and why. */
export interface Undecided {
  readonly cross: Cross;
  readonly reason: string;
}

/** The flowers that could be read and do not count: no error names them. */
export function undecidedFlowers(season: Season): Undecided[] {
  const harvestsRecorded = recordsHarvests(season.crosses);
  return season.crosses.flatMap((cross) => {
    const reason = reasonOf(cross, season, harvestsRecorded);
    return reason === null ? [] : [{ cross, reason }];
  });
}

/**
 * Why rows of a file are left out, most first; the rows add up to its `leftOut`.
 *
 * @param undecided the season's flowers that could be read and do not count
 */
export function leftOutRows(file: SeasonFile, undecided: readonly Undecided[]): LeftOutRows[] {
  const own = undecided.filter(({ cross }) => cross.file === file.file);
  const reasons = [...own.map(({ reason }) => reason), ...errorsOfRows(file, own.length)];
  return addedUp(reasons.map((reason) => ({ reason, rows: 1 })));
}

/** The rows of each reason together, most first. */
function addedUp(parts: readonly LeftOutRows[]): LeftOutRows[] {
  const counts = new Map<string, number>();
  for (const { reason, rows } of parts) counts.set(reason, (counts.get(reason) ?? 0) + rows);
  return [...counts]
    .map(([reason, rows]) => ({ reason, rows }))
    .sort((a, b) => b.rows - a.rows || byCodePoint(a.reason, b.reason));
}

/**
 * Row counts: how many rows of the crosses files were read, used and left out, and for which reasons.
 *
 * Answers: is all of my data in the answer? Controls count as used where their outcome is known; a lost tag and a
 * flower that is too young are left out but are no failures.
 *
 * @param season the season as read
 * @returns `read = used + leftOut`; the reasons add up to `leftOut`, each row counted once by its first error
 * @example
 * const { read, used, leftOut } = rowCounts(season); // read === used + leftOut
 */
export function rowCounts(season: Season): RowCounts {
  const files = season.files.filter(({ kind }) => kind === 'crosses');
  const undecided = undecidedFlowers(season);
  return {
    read: sumOf(files, ({ rows }) => rows),
    used: sumOf(files, ({ used }) => used),
    leftOut: sumOf(files, ({ leftOut }) => leftOut),
    byOutcome: OUTCOMES.map((outcome) => ({
      outcome,
      rows: season.crosses.filter((cross) => cross.outcome === outcome).length,
    })),
    byReason: addedUp(files.flatMap((file) => leftOutRows(file, undecided))),
  };
}
