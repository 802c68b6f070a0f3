/** Like faults of a file, put together before a language tells them. */

import type { FileColumn, Problem } from '../../season/season.ts';

/** How many rows with the same fault are listed before the rest is only counted. */
const LISTED = 8;
const SEVERITIES: readonly Problem['severity'][] = ['error', 'warning', 'notice'];

/** Faults whose value tells what to write: another value is another fault. */
const TOLD_BY_VALUE: ReadonlySet<string> = new Set([
  'word-not-understood',
  'storage-slip',
  'name-spellings',
  'vial-unknown',
  'map-header-missing',
  'same-name-missing',
  'storage-word-missing',
]);

/** The further rows that a warning about a vial stands for: it is told by itself; null for any other. */
function rowsOfVial({ more, rows }: Problem['details']): string | null {
  return more === undefined || rows === undefined ? null : String(rows);
}

/** Further flowers of a vial that a warning stands for: how many, and "8, 9, …"; null where there is none. */
export function moreOfVial(
  details: Problem['details'],
): { readonly more: number; readonly rows: string } | null {
  const rows = rowsOfVial(details);
  return rows === null
    ? null
    : { more: Number(details.more), rows: listedRows(rows.split('\n').map(Number)) };
}

/** What makes two faults alike, as one text. */
function kindOf({ code, column, details, value }: Problem): string {
  const about = details.name ?? details.column ?? null;
  return JSON.stringify([code, column, about, TOLD_BY_VALUE.has(code) ? value : null, rowsOfVial(details)]);
}

/** Errors or warnings of one code and column together; each notice tells of another word or column, so stands alone. */
function alike(problems: readonly Problem[]): Problem[][] {
  const groups = new Map<string, Problem[]>();
  problems.forEach((problem, index) => {
    const key = problem.severity === 'notice' ? String(index) : kindOf(problem);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [problem]);
    else group.push(problem);
  });
  return [...groups.values()];
}

/** The problems of a file, errors first, like faults together. */
export function problemGroups(problems: readonly Problem[]): Problem[][] {
  return SEVERITIES.flatMap((severity) => alike(problems.filter((problem) => problem.severity === severity)));
}

/** "14, 15, …": the first few rows; empty where there is none. */
export function listedRows(rows: readonly number[]): string {
  return rows.slice(0, LISTED).join(', ') + (rows.length > LISTED ? ', …' : '');
}

/** How many more have the same fault, and in which other rows: "14, 15, …"; null where there is none. */
export function moreAlike(
  group: readonly Problem[],
): { readonly more: number; readonly oneRow: boolean; readonly rows: string } | null {
  const [first, ...others] = group;
  const rows = [...new Set(others.map(({ row }) => row))].filter((row) => row !== first!.row);
  if (rows.length === 0) return null;
  return { more: others.length, oneRow: rows.length === 1, rows: listedRows(rows) };
}

/** What is said of some problems, by the header of their column, in the order in which each first appears. */
export function saidByColumn(
  problems: readonly Problem[],
  said: (problem: Problem) => string,
): ReadonlyMap<string, readonly string[]> {
  const columns = new Map<string, string[]>();
  for (const problem of problems) {
    const column = problem.column ?? '';
    columns.set(column, [...(columns.get(column) ?? []), said(problem)]);
  }
  return columns;
}

/** So many notices of a kind are told one by one, such as columns of dates; of more the first, and how many. */
const TOLD_ONE_BY_ONE = 4;

/** Notices of one kind that are told in full, and those that are only counted with the first. */
export function noticesTold(alike: readonly Problem[]): {
  readonly told: readonly Problem[];
  readonly counted: readonly Problem[];
} {
  return alike.length <= TOLD_ONE_BY_ONE
    ? { told: alike, counted: [] }
    : { told: alike.slice(0, 1), counted: alike };
}

/** One fault with the others like it, and what mends them. */
interface Said {
  readonly message: string;
  readonly fix: string;
  readonly more: string;
}

/** Faults of one severity that the same act mends, in the order in which each fix first appears. */
export function groupsByFix<Severity extends 'error' | 'warning'>(
  { problems, columns }: { readonly problems: readonly Problem[]; readonly columns: readonly FileColumn[] },
  severity: Severity,
  say: (alike: readonly Problem[], columns: readonly FileColumn[]) => Said,
) {
  const byFix = new Map<string, Omit<Said, 'fix'>[]>();
  for (const group of problemGroups(problems.filter((problem) => problem.severity === severity))) {
    const { fix, ...fault } = say(group, columns);
    byFix.set(fix, [...(byFix.get(fix) ?? []), fault]);
  }
  return [...byFix].map(([fix, faults]) => ({ severity, faults, fix }));
}
