/** SHA-256 in plain JavaScript, so that a report names its files alike in Node and in a page. */

const ROUND_CONSTANTS = new Uint32Array(64);
const INITIAL_HASH = new Uint32Array(8);

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

/** The message with a 1 bit, zeros and its length in bits, a whole number of 64-byte blocks (section 5.1.1). */
function padded(bytes: Uint8Array): DataView {
  const view = new DataView(new ArrayBuffer(Math.ceil((bytes.length + 9) / 64) * 64));
  new Uint8Array(view.buffer).set(bytes);
  view.setUint8(bytes.length, 0x80);
  view.setUint32(view.byteLength - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(view.byteLength - 4, (bytes.length * 8) >>> 0);
  return view;
}

/** The message schedule of one block (section 6.2.2, step 1). */
function schedule(message: DataView, start: number, words: Uint32Array): void {
  for (let t = 0; t < 16; t++) words[t] = message.getUint32(start + 4 * t);
  for (let t = 16; t < 64; t++) {
    const [x, y] = [words[t - 15], words[t - 2]];
    const sigma0 = rotate(x, 7) ^ rotate(x, 18) ^ (x >>> 3);
    const sigma1 = rotate(y, 17) ^ rotate(y, 19) ^ (y >>> 10);
    words[t] = sigma1 + words[t - 7] + sigma0 + words[t - 16];
  }
}

/** The 64 rounds of one block, added to the hash (section 6.2.2, steps 2 to 4). */
function compress(hash: Uint32Array, words: Uint32Array): void {
  let [a, b, c, d, e, f, g, h] = hash;
  for (let t = 0; t < 64; t++) {
    const choose = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const t1 =
      (h + (rotate(e, 6) ^ rotate(e, 11) ^ rotate(e, 25)) + choose + ROUND_CONSTANTS[t] + words[t]) | 0;
    const t2 = ((rotate(a, 2) ^ rotate(a, 13) ^ rotate(a, 22)) + majority) | 0;
    [a, b, c, d, e, f, g, h] = [(t1 + t2) | 0, a, b, c, (d + t1) | 0, e, f, g];
  }
  const round = [a, b, c, d, e, f, g, h];
  for (let i = 0; i < 8; i++) hash[i] += round[i];
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
  const words = new Uint32Array(64);
  const message = padded(bytes);
  for (let start = 0; start < message.byteLength; start += 64) {
    schedule(message, start, words);
    compress(hash, words);
  }
  return [...hash].map((word) => word.toString(16).padStart(8, '0')).join('');
}
