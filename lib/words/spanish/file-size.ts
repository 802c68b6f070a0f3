/** The size of a file as a reader of a link needs it. */

import { decimal, wholeNumber } from './numbers.ts';

/**
 * Kilobytes of 1,000 bytes, rounded up, or megabytes with one digit: "124 kB", "1,3 MB".
 *
 * @throws RangeError if `bytes` is no whole number from 0 on
 */
export function fileSize(bytes: number): string {
  if (!Number.isInteger(bytes) || bytes < 0)
    throw new RangeError(`fileSize: bytes must be a whole number from 0 on, got ${bytes}`);
  const kilobytes = Math.ceil(bytes / 1000);
  return kilobytes < 1000
    ? `${wholeNumber(kilobytes)} kB`
    : `${decimal(Math.ceil(kilobytes / 100) / 10, 1)} MB`;
}
