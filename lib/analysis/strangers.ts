/** Effects of plants, pairs and vials that the data never had: the same name gets the same draws in every table. */

import type { RandomStream } from '../numerics/random.ts';
import { randomStream } from '../numerics/random.ts';

/** A stream that depends on the names alone, not on the order in which they are asked for. */
export function streamFor(kind: string, names: readonly string[]): RandomStream {
  return randomStream(hash(JSON.stringify([kind, ...names])));
}

/** FNV-1a over UTF-16 code units (Fowler, Noll & Vo; RFC 9923). */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    value ^= text.charCodeAt(i);
    value = Math.imul(value, 0x01000193);
  }
  return value | 0;
}
