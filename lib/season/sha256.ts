/** SHA-256 in plain JavaScript, so that a report names its files alike in Node and in a page. */

const ROUND_CONSTANTS = new Int32Array(64);
const INITIAL_HASH = new Int32Array(8);

/** First 32 bits of the fractional part of a root (FIPS 180-4, sections 4.2.2 and 5.3.3). */
function fractionBits(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32);
}

function fillConstants(): void {
  for (let candidate = 2, found = 0; found < 64; candidate++) {
    let prime = true;
    for (let divisor = 2; divisor * divisor <= candidate; divisor++) prime &&= candidate % divisor !== 0;
    if (!prime) continue;
    if (found < 8) INITIAL_HASH[found] = fractionBits(Math.sqrt(candidate));
    ROUND_CONSTANTS[found++] = fractionBits(Math.cbrt(candidate));
  }
}
fillConstants();

const rotate = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

/** What follows the last whole block: the rest of the message, a 1 bit, zeros and its length in bits (section 5.1.1). */
function tailOf(bytes: Uint8Array): Uint8Array {
  const rest = bytes.length % 64;
  const tail = new Uint8Array(rest < 56 ? 64 : 128);
  tail.set(bytes.subarray(bytes.length - rest));
  tail[rest] = 0x80;
  const view = new DataView(tail.buffer);
  view.setUint32(tail.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(tail.length - 4, (bytes.length * 8) >>> 0);
  return tail;
}

/** The message schedule of one block (section 6.2.2, step 1). */
function schedule(bytes: Uint8Array, start: number, words: Int32Array): void {
  for (let t = 0, at = start; t < 16; t++, at += 4)
    words[t] = (bytes[at] << 24) | (bytes[at + 1] << 16) | (bytes[at + 2] << 8) | bytes[at + 3];
  for (let t = 16; t < 64; t++) {
    const x = words[t - 15];
    const y = words[t - 2];
    const sigma0 = rotate(x, 7) ^ rotate(x, 18) ^ (x >>> 3);
    const sigma1 = rotate(y, 17) ^ rotate(y, 19) ^ (y >>> 10);
    words[t] = (sigma1 + words[t - 7] + sigma0 + words[t - 16]) | 0;
  }
}

/** The 64 rounds of one block, added to the hash (section 6.2.2, steps 2 to 4). */
function compress(hash: Int32Array, words: Int32Array): void {
  let a = hash[0];
  let b = hash[1];
  let c = hash[2];
  let d = hash[3];
  let e = hash[4];
  let f = hash[5];
  let g = hash[6];
  let h = hash[7];
  for (let t = 0; t < 64; t++) {
    const choose = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const t1 =
      (h + (rotate(e, 6) ^ rotate(e, 11) ^ rotate(e, 25)) + choose + ROUND_CONSTANTS[t] + words[t]) | 0;
    const t2 = ((rotate(a, 2) ^ rotate(a, 13) ^ rotate(a, 22)) + majority) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  hash[0] += a;
  hash[1] += b;
  hash[2] += c;
  hash[3] += d;
  hash[4] += e;
  hash[5] += f;
  hash[6] += g;
  hash[7] += h;
}

function compressAll(bytes: Uint8Array, end: number, hash: Int32Array): void {
  const words = new Int32Array(64);
  for (let start = 0; start < end; start += 64) {
    schedule(bytes, start, words);
    compress(hash, words);
  }
}

/**
 * The SHA-256 digest of some bytes, as 64 hexadecimal digits (NIST FIPS 180-4, section 6.2).
 *
 * It names a file in the provenance of a report; it keeps no secret and signs nothing.
 *
 * @example sha256(new TextEncoder().encode('abc')) // 'ba7816bf…15ad'
 */
export function sha256(bytes: Uint8Array): string {
  const hash = INITIAL_HASH.slice();
  compressAll(bytes, bytes.length - (bytes.length % 64), hash);
  const tail = tailOf(bytes);
  compressAll(tail, tail.length, hash);
  return [...hash].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}
