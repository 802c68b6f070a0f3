/** Files of other kinds, told by how they begin, whatever they are called. */

/** What a file is that is no table. */
export type OtherFormat =
  | 'pdf'
  | 'html'
  | 'json'
  | 'rtf'
  | 'picture'
  /** Told by what is packed in them: `other-program.ts`. */
  | 'document'
  | 'slides'
  | 'archive';

/** How pictures begin: JPEG, PNG, GIF, TIFF in both byte orders, RIFF (WebP), and what telephones take (ISO base media). */
const PICTURES: readonly (readonly [at: number, bytes: readonly number[]])[] = [
  [0, [0xff, 0xd8, 0xff]],
  [0, [0x89, 0x50, 0x4e, 0x47]],
  [0, [0x47, 0x49, 0x46, 0x38]],
  [0, [0x49, 0x49, 0x2a, 0x00]],
  [0, [0x4d, 0x4d, 0x00, 0x2a]],
  [0, [0x52, 0x49, 0x46, 0x46]],
  [4, [0x66, 0x74, 0x79, 0x70]],
];

const TEXTS: readonly (readonly [format: OtherFormat, begins: RegExp])[] = [
  ['pdf', /^%PDF-\d/],
  ['rtf', /^\{\\rtf\d/],
  ['html', /^\s*(?:<!doctype html|<html[\s>]|<\?xml[^>]*\?>\s*<html[\s>])/i],
  ['json', /^\s*(?:\{\s*"[^"]*"\s*:|\[\s*[[{])/],
];

const LOOKED_AT = 512;

/** What the bytes of a file show it to be, where that is none of the kinds that can be read; null where they show nothing. */
export function otherFormat(bytes: Uint8Array): OtherFormat | null {
  const isPicture = PICTURES.some(([at, begins]) => begins.every((byte, i) => bytes[at + i] === byte));
  if (isPicture) return 'picture';
  let start = '';
  for (const byte of bytes.subarray(0, LOOKED_AT)) start += String.fromCharCode(byte);
  start = start.replace(/^\xef\xbb\xbf/, '');
  return TEXTS.find(([, begins]) => begins.test(start))?.[0] ?? null;
}
