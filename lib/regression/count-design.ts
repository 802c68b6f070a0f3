/** Counts with their columns: the input of regressions for seeds a fruit. */

import { withColumns } from './column-source.ts';
import { checkColumnCount, type Design, type DesignSpec, finiteNumbers, namedColumns } from './design.ts';

/** What a caller writes: plain arrays, all of the same length (one entry a row). */
export interface CountSpec extends Pick<DesignSpec, 'columns' | 'intercept'> {
  /** The count of each row, whole numbers of at least 0 (at least 1 for zero-truncated counts). */
  readonly counts: ArrayLike<number>;
  /** How much each row could be counted over (fruits, grams, area), above 0; expected counts are in proportion. */
  readonly exposure?: ArrayLike<number>;
}

/** A checked design of counts: n rows, p columns (the intercept among them). */
export interface CountDesign extends Pick<Design, 'n' | 'names' | 'columns'> {
  readonly counts: Float64Array;
  /** Logarithm of the exposure; 0 where there is none. */
  readonly offset: Float64Array;
}

function checkCounts(caller: string, counts: Float64Array, least: number): void {
  counts.forEach((count, i) => {
    if (!Number.isSafeInteger(count) || count < least) {
      throw new RangeError(
        `${caller}: counts must be whole numbers of at least ${least}, got ${count} in row ${i + 1}`,
      );
    }
  });
}

function logExposure(caller: string, exposure: ArrayLike<number>, n: number): Float64Array {
  return finiteNumbers(caller, 'exposure', exposure, n, 'counts').map((value, i) => {
    if (value > 0) return Math.log(value);
    throw new RangeError(`${caller}: exposure must hold numbers above 0, got ${value} in row ${i + 1}`);
  });
}

/**
 * Checks a specification of counts and brings it into the form that fits work on.
 *
 * @param spec n counts, p columns, an exposure
 * @param caller name of the public function, for the message
 * @param least smallest count allowed, 0 or 1
 * @throws RangeError naming the argument, the rule and the value when lengths differ, a value is not finite, counts are
 *   no counts, an exposure is not above 0, there is no column, or there are more columns than rows
 */
export function countDesignOf(spec: CountSpec, caller: string, least: number): CountDesign {
  const n = spec.counts.length;
  if (n === 0) throw new RangeError(`${caller}: counts must have at least one entry, got none`);
  const counts = finiteNumbers(caller, 'counts', spec.counts, n, 'counts');
  checkCounts(caller, counts, least);
  const offset = spec.exposure ? logExposure(caller, spec.exposure, n) : new Float64Array(n);
  const design = withColumns({ n, counts, offset, ...namedColumns(caller, spec, n, 'counts') });
  checkColumnCount(caller, design);
  return design;
}
