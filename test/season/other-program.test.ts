import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { compoundFile, otherArchive } from '../../lib/season/other-program.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { problemWords } from '../../lib/words/english-problems.ts';

/*
 * Names of streams: [MS-CFB] 2.6.1, [MS-XLS] 2.1.2, [MS-DOC] 2.1.1, [MS-PPT] 2.1.1, [MS-OFFCRYPTO] 2.3.4.1 and 1.3.2. Names of parts:
 * ECMA-376, OpenDocument 1.3 part 2 (3.3: the media type comes first, unpacked); those of .numbers by observation, no source.
 */

/** A compound file's directory as far as it is looked at: names in UTF-16 between other bytes. */
function compound(...streams: readonly string[]): Uint8Array {
  const names = streams.flatMap((stream) => [
    5,
    ...[...`${stream}\0`].flatMap((sign) => [sign.charCodeAt(0), 0]),
  ]);
  return Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Uint8Array(24), ...names]);
}

/** An archive of parts without contents; the media type of an open document where it has one. */
function archive(parts: readonly string[], mediaType?: string): Uint8Array {
  const first = mediaType === undefined ? {} : { mimetype: new TextEncoder().encode(mediaType) };
  const rest = Object.fromEntries(parts.map((name) => [name, new TextEncoder().encode('<none/>')]));
  return zipSync({ ...first, ...rest }, { level: 0 });
}

const OPEN = 'application/vnd.oasis.opendocument';
const FILES = {
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

describe('files that begin as a workbook does', () => {
  it.each([
    ['xls', 'The file is an older workbook (.xls), and cannot be read here.'],
    ['xls of 1995', 'The file is an older workbook (.xls), and cannot be read here.'],
    ['doc', 'The file is a document (.docx, .doc, .odt), not a table, whatever it is called.'],
    ['ppt', 'The file is slides (.pptx, .ppt, .odp), not a table, whatever it is called.'],
    ['locked xlsx', 'The workbook is locked with a password.'],
    ['of an unknown program', 'The file is of another program, and cannot be read here.'],
    ['xlsb', 'The file is a binary workbook (.xlsb), and cannot be read here.'],
    ['docx', 'The file is a document (.docx, .doc, .odt), not a table, whatever it is called.'],
    ['pptx', 'The file is slides (.pptx, .ppt, .odp), not a table, whatever it is called.'],
    ['ods', 'The file is an OpenDocument sheet (.ods), and cannot be read here.'],
    ['odt', 'The file is a document (.docx, .doc, .odt), not a table, whatever it is called.'],
    ['odp', 'The file is slides (.pptx, .ppt, .odp), not a table, whatever it is called.'],
    ['numbers', 'The file is a Numbers sheet (.numbers), and cannot be read here.'],
    ['zip', 'The file is a packed folder (.zip), not a table, whatever it is called.'],
  ] as const)('are named for what they are, with how to export: %s', (kind, message) => {
    const [{ problems, rows }] = readSeason([{ name: 'crosses.csv', bytes: FILES[kind] }]).files;
    expect(rows).toBe(0);
    expect(problems).toHaveLength(1);
    const said = problemWords(problems[0]);
    expect(said.message).toBe(message);
    expect(said.fix).toContain('CSV (UTF-8)');
  });
});

describe('compoundFile', () => {
  it('takes the lock before what it hides', () =>
    expect(compoundFile(compound('Workbook', 'EncryptedPackage'))).toEqual({ fault: 'workbook-locked' }));
});

describe('otherArchive', () => {
  it('takes a media type only where it stands first', () => {
    const later = zipSync({
      a: new Uint8Array(200),
      mimetype: new TextEncoder().encode(`${OPEN}.spreadsheet`),
    });
    expect(otherArchive(later, ['a', 'mimetype'])).toEqual({ fault: 'other-format', format: 'archive' });
  });

  it('is not misled by a folder whose name only ends like one of theirs', () =>
    expect(otherArchive(archive([]), ['my-word/list.txt', 'Photos/Index/x.jpg'])).toEqual({
      fault: 'other-format',
      format: 'archive',
    }));
});
