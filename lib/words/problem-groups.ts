/** Like faults told together: the first in full, the rows of the others by number. */

import type { Problem } from '../season/season.ts';
import { wholeNumber } from './numbers.ts';
import { moreAlike } from './told/alike-problems.ts';

export { problemGroups } from './told/alike-problems.ts';

/** How many more have the same fault, and where: "And 10 more like it (rows 14, 15, …)." Empty where there are none. */
export function alsoInRows(group: readonly Problem[]): string {
  const alike = moreAlike(group);
  if (alike === null) return '';
  return `And ${wholeNumber(alike.more)} more like it (${alike.oneRow ? 'row' : 'rows'} ${alike.rows}).`;
}
