/** The same estimate told another way. */

import type { Estimate } from '../../proportions/interval.ts';

/** The estimate alone, for a place where its range would say a second thing. */
export function pointOf({ estimate }: Estimate): Estimate {
  return { estimate, lower: null, upper: null };
}

/** The same difference the other way round. */
export function turned({ estimate, lower, upper }: Estimate): Estimate {
  const minus = (value: number | null) => (value === null ? null : -value);
  return { estimate: minus(estimate), lower: minus(upper), upper: minus(lower) };
}

/** A rate below nothing is none, and one above all is all. */
export function withinOne({ estimate, lower, upper }: Estimate): Estimate {
  const within = (value: number | null) => (value === null ? null : Math.min(1, Math.max(0, value)));
  return { estimate: within(estimate), lower: within(lower), upper: within(upper) };
}
