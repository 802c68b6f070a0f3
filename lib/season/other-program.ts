/** Files of other programs that begin as a workbook does: told by the names of what is packed in them. */

import type { OtherFormat } from './other-format.ts';

/** Sheets that only their own program can open. */
export type OtherSheet = 'xls' | 'xlsb' | 'ods' | 'numbers';

/** Why no cell can be read, and what the file is where that shows. */
export type OtherProgram =
  | { readonly fault: 'workbook-locked' }
  | { readonly fault: 'spreadsheet-file'; readonly format?: OtherSheet }
  | { readonly fault: 'other-format'; readonly format: OtherFormat };

/** A compound file names its streams in UTF-16 ([MS-CFB] 2.6.1): [MS-OFFCRYPTO], [MS-XLS], [MS-DOC] and [MS-PPT] say which. */
const STREAMS: readonly (readonly [stream: string, program: OtherProgram])[] = [
  ['EncryptedPackage', { fault: 'workbook-locked' }],
  ['Workbook', { fault: 'spreadsheet-file', format: 'xls' }],
  ['WordDocument', { fault: 'other-format', format: 'document' }],
  ['PowerPoint Document', { fault: 'other-format', format: 'slides' }],
  ['Book', { fault: 'spreadsheet-file', format: 'xls' }],
];

/** Parts that tell the program (ECMA-376); those of the last are by observation. */
const PARTS: readonly (readonly [part: RegExp, program: OtherProgram])[] = [
  [/^xl\/workbook\.bin$/, { fault: 'spreadsheet-file', format: 'xlsb' }],
  [/^word\//, { fault: 'other-format', format: 'document' }],
  [/^ppt\//, { fault: 'other-format', format: 'slides' }],
  [/^Index(?:\.zip$|\/.*\.iwa$)/, { fault: 'spreadsheet-file', format: 'numbers' }],
];

/** The media type that an open document names first, unpacked (OpenDocument 1.3 part 2, 3.3), and the program by its last word. */
const OPEN_DOCUMENT = /mimetypeapplication\/vnd\.oasis\.opendocument\.(spreadsheet|text|presentation)/;
const OPEN_PROGRAMS: ReadonlyMap<string | undefined, OtherProgram> = new Map([
  ['spreadsheet', { fault: 'spreadsheet-file', format: 'ods' }],
  ['text', { fault: 'other-format', format: 'document' }],
  ['presentation', { fault: 'other-format', format: 'slides' }],
]);
const LOOKED_AT = 128;

function holds(bytes: Uint8Array, wanted: string): boolean {
  const signs = [...wanted].flatMap((letter) => [letter.charCodeAt(0), 0]);
  for (let at = bytes.indexOf(signs[0]!); at >= 0; at = bytes.indexOf(signs[0]!, at + 1))
    if (signs.every((byte, i) => bytes[at + i] === byte)) return true;
  return false;
}

/** What a compound file is: an older workbook or document, or a newer one under a password. */
export function compoundFile(bytes: Uint8Array): OtherProgram {
  const known = STREAMS.find(([stream]) => holds(bytes, stream));
  return known?.[1] ?? { fault: 'spreadsheet-file' };
}

/**
 * What a zip archive without a workbook in it is.
 *
 * @param names of its parts
 */
export function otherArchive(bytes: Uint8Array, names: Iterable<string>): OtherProgram {
  const start = String.fromCharCode(...bytes.subarray(0, LOOKED_AT));
  const open = OPEN_PROGRAMS.get(OPEN_DOCUMENT.exec(start)?.[1]);
  if (open !== undefined) return open;
  const parts = [...names];
  const known = PARTS.find(([pattern]) => parts.some((name) => pattern.test(name)));
  return known?.[1] ?? { fault: 'other-format', format: 'archive' };
}
