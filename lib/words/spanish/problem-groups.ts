/** Like faults told together: the first in full, the rows of the others by number. */

import type { Problem } from '../../season/season.ts';
import { moreAlike } from '../told/alike-problems.ts';
import { wholeNumber } from './numbers.ts';

export { problemGroups } from '../told/alike-problems.ts';

/** "Y 10 más del mismo tipo (filas 14, 15, …)." Empty where there are none. */
export function alsoInRows(group: readonly Problem[]): string {
  const alike = moreAlike(group);
  if (alike === null) return '';
  return `Y ${wholeNumber(alike.more)} más del mismo tipo (${alike.oneRow ? 'fila' : 'filas'} ${alike.rows}).`;
}
