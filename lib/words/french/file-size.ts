/** The size of a file to be fetched. */
import { decimal, wholeNumber } from './numbers.ts';

/** "12 ko", "1,5 Mo"; rounded up. */
export function fileSize(bytes: number): string {
  if (!Number.isInteger(bytes) || bytes < 0)
    throw new RangeError(`fileSize: bytes must be a whole number from 0 on, got ${bytes}`);
  const kilobytes = Math.ceil(bytes / 1000);
  return kilobytes < 1000
    ? `${wholeNumber(kilobytes)} ko`
    : `${decimal(Math.ceil(kilobytes / 100) / 10, 1)} Mo`;
}
