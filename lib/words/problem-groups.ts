/** Like faults told together: the first in full, the rows of the others by number. */

import type { Problem } from '../season/season.ts';
import { wholeNumber } from './numbers.ts';

/** How many rows with the same fault are listed before the rest is only counted. */
const LISTED = 8;
const SEVERITIES: readonly Problem['severity'][] = ['error', 'warning', 'notice'];

/** Errors or warnings of one code and column together; each notice tells of another word or column, so stands alone. */
function alike(problems: readonly Problem[]): Problem[][] {
  const groups = new Map<string, Problem[]>();
  problems.forEach((problem, index) => {
    const { severity, code, column } = problem;
    const key = severity === 'notice' ? String(index) : JSON.stringify([code, column]);
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

/** Other rows with the same fault: "Also in rows 14, 15 and 3 more." Empty where there are none. */
export function alsoInRows(group: readonly Problem[]): string {
  const rows = [...new Set(group.slice(1).map(({ row }) => row))].filter((row) => row !== group[0]!.row);
  if (rows.length === 0) return '';
  const listed = rows.slice(0, LISTED).map(wholeNumber).join(', ');
  const rest = rows.length > LISTED ? ` and ${wholeNumber(rows.length - LISTED)} more` : '';
  return `Also in ${rows.length === 1 ? 'row' : 'rows'} ${listed}${rest}.`;
}
