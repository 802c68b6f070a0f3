/** A zip archive → the parts of it that are wanted, within bounds; the only file that knows fflate. */

import { Unzip, UnzipInflate } from 'fflate';

/** What the parts of an archive may come to, in bytes: some 300,000 rows of a sheet. A small archive can hold far more. */
export const MOST_UNZIPPED_BYTES = 300_000_000;
/** Unpacked a little at a time, so that an archive past the bounds is noticed before it fills the memory. */
const SLICE = 16_384;

/** Why an archive could not be unpacked. */
export class ZipFault extends Error {
  readonly fault: 'too-large' | 'broken';

  constructor(fault: ZipFault['fault']) {
    super(fault);
    this.name = 'ZipFault';
    this.fault = fault;
  }
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** Every whole archive ends with this record and at most as long a comment (APPNOTE 4.3.16). */
const END = [0x50, 0x4b, 0x05, 0x06];
const LONGEST_END = 22 + 65_535;

function isWhole(bytes: Uint8Array): boolean {
  for (let at = bytes.length - END.length; at >= Math.max(0, bytes.length - LONGEST_END); at--)
    if (END.every((byte, i) => bytes[at + i] === byte)) return true;
  return false;
}

/**
 * Unpacks the parts of a zip archive whose names are wanted.
 *
 * @param most what the parts may come to together, in bytes
 * @throws ZipFault where the archive is broken or holds more
 */
export function unzipped(
  bytes: Uint8Array,
  wanted: (name: string) => boolean,
  most = MOST_UNZIPPED_BYTES,
): Map<string, Uint8Array> {
  if (!isWhole(bytes)) throw new ZipFault('broken');
  const parts = new Map<string, Uint8Array[]>();
  const whole = new Set<string>();
  let size = 0;
  let fault: ZipFault['fault'] | null = null;
  const archive = new Unzip((file) => {
    if (!wanted(file.name)) return;
    const chunks: Uint8Array[] = [];
    parts.set(file.name, chunks);
    file.ondata = (error, chunk, final) => {
      if (error !== null) fault ??= 'broken';
      else {
        chunks.push(chunk);
        size += chunk.length;
        if (size > most) fault = 'too-large';
        if (final) whole.add(file.name);
      }
    };
    file.start();
  });
  archive.register(UnzipInflate);
  for (let at = 0; at < bytes.length && fault === null; at += SLICE) {
    try {
      archive.push(bytes.subarray(at, at + SLICE), at + SLICE >= bytes.length);
    } catch {
      fault = 'broken';
    }
  }
  if (fault !== null || whole.size < parts.size) throw new ZipFault(fault ?? 'broken');
  return new Map([...parts].map(([name, chunks]) => [name, joined(chunks)]));
}
