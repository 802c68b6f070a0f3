import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { compoundFile, otherArchive } from '../../lib/season/other-program.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { problemWords } from '../../lib/words/english-problems.ts';
import { archive, compound, OPEN, OTHER_PROGRAMS } from './program-files.ts';

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
    const [{ problems, rows }] = readSeason([{ name: 'crosses.csv', bytes: OTHER_PROGRAMS[kind] }]).files;
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
