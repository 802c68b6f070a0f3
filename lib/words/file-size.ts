/** The size of a file as a reader of a link needs it. */

import { wholeNumber } from './numbers.ts';

/**
 * A file's size in kilobytes of 1,000 bytes, rounded up, or in megabytes with one digit from a thousand of them on.
 *
 * @param bytes whole number, 0 or more
 * @throws RangeError for anything else
 * @example fileSize(123_321); // '124 kB'
 */
export function fileSize(bytes: number): string {
  if (!Number.isInteger(bytes) || bytes < 0)
    throw new RangeError(`fileSize: bytes must be a whole number from 0 on, got ${bytes}`);
  const kilobytes = Math.ceil(bytes / 1000);
  return kilobytes < 1000
    ? `${wholeNumber(kilobytes)} kB`
    : `${(Math.ceil(kilobytes / 100) / 10).toFixed(1)} MB`;
}
