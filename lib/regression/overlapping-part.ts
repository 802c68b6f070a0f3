/** What is left of a separated fit once the rows that its limit explains perfectly are gone. */

import { designOf } from './design.ts';
import type { Fit } from './fit.ts';
import { joinRows } from './joined-rows.ts';
import { collinearColumns, fitDesign } from './logistic.ts';
import { separation } from './separation.ts';

/**
 * The fit of the rows that overlap. Coefficients that stay finite have here the profile that they have in the whole
 * design, and no column runs away, so that their ends are found as usual.
 *
 * @param fit a separated fit by maximum likelihood
 * @returns a fit of the same terms but those that no overlapping row can tell; null where no row is left
 * @source Albert & Anderson (1984) Biometrika 71, 1–10, section 3; Correia, Guimarães & Zylkin (2019) arXiv:1903.01633
 */
export function overlappingPart({ design, link }: Fit): Fit | null {
  const joined = joinRows(design);
  const { columns, rows } = separation(joined.columns, joined);
  const left = Array.from({ length: joined.m }, (_, i) => i).filter((i) => !rows.has(i));
  if (left.length === 0) return null;
  const pick = (values: Float64Array): Float64Array => Float64Array.from(left, (i) => values[i]!);
  // Columns that run away come last: where the rest depends on them, it is they that go.
  const order = [...design.names.keys()].filter((j) => !columns.includes(j)).concat(columns);
  const made = new Map(order.map((j) => [design.names[j]!, pick(joined.columns[j]!)]));
  const { successes, trials, offset } = joined;
  const spec = { successes: pick(successes), trials: pick(trials), offset: pick(offset), intercept: false };
  for (const name of collinearColumns({ ...spec, columns: made })) made.delete(name);
  if (made.size === 0) return null;
  return fitDesign(designOf({ ...spec, columns: made }, 'profileIntervals'), 'maximum-likelihood', link);
}
