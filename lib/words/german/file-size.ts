/** Die Größe einer Datei. */

import { decimal, wholeNumber } from './numbers.ts';

export function fileSize(bytes: number): string {
  if (!Number.isInteger(bytes) || bytes < 0)
    throw new RangeError(`fileSize: bytes must be a whole number from 0 on, got ${bytes}`);
  const kilobytes = Math.ceil(bytes / 1000);
  return kilobytes < 1000
    ? `${wholeNumber(kilobytes)} kB`
    : `${decimal(Math.ceil(kilobytes / 100) / 10, 1)} MB`;
}
