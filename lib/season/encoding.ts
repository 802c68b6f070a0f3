/** Bytes of a file → its text, and the name of the encoding that read it. */

/** How bytes became text; `guessed` where nothing in the file says so. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  readonly guessed: boolean;
}

/** UTF-16 without a mark shows in Latin text as every other byte being 0; null where it does not. */
function unmarkedUtf16(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const looked = Math.min(bytes.length & ~1, 1024);
  if (looked < 4) return null;
  const zeros = [0, 0];
  for (let i = 0; i < looked; i++) if (bytes[i] === 0) zeros[i & 1] += 1;
  if (zeros[0] === 0 && zeros[1] > looked * 0.3) return 'utf-16le';
  return zeros[1] === 0 && zeros[0] > looked * 0.3 ? 'utf-16be' : null;
}

function markedEncoding(bytes: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 'utf-8';
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  return bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : null;
}

/** Characters of the bytes 0x80 to 0x9F (WHATWG Encoding Standard, index windows-1252). */
const HIGH_CONTROLS = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';
const CHUNK = 8192;

/** Windows-1252 by its table: Node 20's own decoder takes it for ISO 8859-1, where 0x80 is no euro sign. */
function decodeWindows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let start = 0; start < bytes.length; start += CHUNK) {
    const codes = Array.from(bytes.subarray(start, start + CHUNK), (byte) =>
      byte >= 0x80 && byte <= 0x9f ? HIGH_CONTROLS.charCodeAt(byte - 0x80) : byte,
    );
    parts.push(String.fromCharCode(...codes));
  }
  return parts.join('');
}

/**
 * The text of a file: its byte-order mark decides, then strict UTF-8, then Windows-1252, which reads any bytes.
 *
 * @returns the text without its byte-order mark
 * @example decodeText(new Uint8Array([0xef, 0xbb, 0xbf, 0x61])) // { text: 'a', encoding: 'utf-8', guessed: false }
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const marked = markedEncoding(bytes);
  const utf16 = marked === null ? unmarkedUtf16(bytes) : null;
  const encoding = marked ?? utf16 ?? 'utf-8';
  try {
    const text = new TextDecoder(encoding, { fatal: encoding === 'utf-8' }).decode(bytes);
    return { text, encoding, guessed: utf16 !== null };
  } catch {
    return { text: decodeWindows1252(bytes), encoding: 'windows-1252', guessed: true };
  }
}

/** Whether bytes are a spreadsheet's own file (a zip archive or the older compound file), not a text. */
export function isSpreadsheet(bytes: Uint8Array): boolean {
  const starts = (...magic: number[]) => magic.every((byte, i) => bytes[i] === byte);
  return starts(0x50, 0x4b, 0x03, 0x04) || starts(0xd0, 0xcf, 0x11, 0xe0);
}
