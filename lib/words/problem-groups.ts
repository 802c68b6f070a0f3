/** Like faults told together: the first in full, the rows of the others by number. */

import type { Problem } from '../season/season.ts';
import { wholeNumber } from './numbers.ts';

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
]);

/** What makes two faults alike, as one text. */
function kindOf({ code, column, details, value }: Problem): string {
  const about = details.name ?? details.column ?? null;
  return JSON.stringify([code, column, about, TOLD_BY_VALUE.has(code) ? value : null]);
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

/** How many more have the same fault, and where: "And 10 more like it (rows 14, 15, …)." Empty where there are none. */
export function alsoInRows(group: readonly Problem[]): string {
  const [first, ...others] = group;
  const rows = [...new Set(others.map(({ row }) => row))].filter((row) => row !== first!.row);
  if (rows.length === 0) return '';
  const listed = rows.slice(0, LISTED).join(', ') + (rows.length > LISTED ? ', …' : '');
  return `And ${wholeNumber(others.length)} more like it (${rows.length === 1 ? 'row' : 'rows'} ${listed}).`;
}
