/**
 * Files of other programs as far as they are looked at.
 *
 * Names of streams: [MS-CFB] 2.6.1, [MS-XLS] 2.1.2, [MS-DOC] 2.1.1, [MS-PPT] 2.1.1, [MS-OFFCRYPTO] 2.3.4.1 and 1.3.2. Names of parts:
 * ECMA-376, OpenDocument 1.3 part 2 (3.3: the media type comes first, unpacked); those of .numbers by observation, no source.
 */

import { zipSync } from 'fflate';

/** A compound file's directory as far as it is looked at: names in UTF-16 between other bytes. */
export function compound(...streams: readonly string[]): Uint8Array {
  const names = streams.flatMap((stream) => [
    5,
    ...[...`${stream}\0`].flatMap((sign) => [sign.charCodeAt(0), 0]),
  ]);
  return Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Uint8Array(24), ...names]);
}

/** An archive of parts without contents; the media type of an open document where it has one. */
export function archive(parts: readonly string[], mediaType?: string): Uint8Array {
  const first = mediaType === undefined ? {} : { mimetype: new TextEncoder().encode(mediaType) };
  const rest = Object.fromEntries(parts.map((name) => [name, new TextEncoder().encode('<none/>')]));
  return zipSync({ ...first, ...rest }, { level: 0 });
}

export const OPEN = 'application/vnd.oasis.opendocument';
export const OTHER_PROGRAMS = {
  xls: compound('Root Entry', 'Workbook'),
  'xls of 1995': compound('Root Entry', 'Book'),
  doc: compound('Root Entry', '1Table', 'WordDocument'),
  ppt: compound('Root Entry', 'PowerPoint Document'),
  'locked xlsx': compound('Root Entry', 'EncryptionInfo', 'EncryptedPackage'),
  'of an unknown program': compound('Root Entry', 'Contents'),
  xlsb: archive(['[Content_Types].xml', '_rels/.rels', 'xl/workbook.bin']),
  docx: archive(['[Content_Types].xml', '_rels/.rels', 'word/document.xml']),
  pptx: archive(['[Content_Types].xml', 'ppt/presentation.xml']),
  ods: archive(['content.xml', 'META-INF/manifest.xml'], `${OPEN}.spreadsheet`),
  odt: archive(['content.xml'], `${OPEN}.text`),
  odp: archive(['content.xml'], `${OPEN}.presentation`),
  numbers: archive(['Index/Document.iwa', 'Index/Tables/DataList.iwa', 'preview.jpg']),
  zip: archive(['crosses.csv', 'photo.jpg']),
} as const;
