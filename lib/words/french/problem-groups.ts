/** Like faults told together. */
import type { Problem } from '../../season/season.ts';
import { moreAlike } from '../told/alike-problems.ts';
import { wholeNumber } from './numbers.ts';

export { problemGroups } from '../told/alike-problems.ts';

/** How many more have the same fault, and in which rows; empty where there are none. */
export function alsoInRows(group: readonly Problem[]): string {
  const alike = moreAlike(group);
  if (alike === null) return '';
  return `Et ${wholeNumber(alike.more)} de plus comme cela (${alike.oneRow ? 'ligne' : 'lignes'} ${alike.rows}).`;
}
