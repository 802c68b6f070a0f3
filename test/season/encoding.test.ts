import { describe, expect, it } from 'vitest';
import { decodeText, isSpreadsheet } from '../../lib/season/encoding.ts';

const bytes = (...values: number[]) => new Uint8Array(values);

describe('decodeText', () => {
  // Byte sequences of € and Ü from the Unicode Standard (UTF-8, UTF-16) and from Windows code page 1252.
  it.each([
    ['utf-8', bytes(0xe2, 0x82, 0xac, 0xc3, 0x9c), false],
    ['utf-8', bytes(0xef, 0xbb, 0xbf, 0xe2, 0x82, 0xac, 0xc3, 0x9c), false],
    ['utf-16le', bytes(0xff, 0xfe, 0xac, 0x20, 0xdc, 0x00), false],
    ['utf-16be', bytes(0xfe, 0xff, 0x20, 0xac, 0x00, 0xdc), false],
    ['windows-1252', bytes(0x80, 0xdc), true],
  ])('reads €Ü in %s', (encoding, given, guessed) => {
    expect(decodeText(given)).toEqual({ text: '€Ü', encoding, guessed });
  });

  it('tells UTF-16 without a mark by its zeros', () => {
    expect(decodeText(bytes(0x61, 0, 0x2c, 0, 0x62, 0))).toEqual({
      text: 'a,b',
      encoding: 'utf-16le',
      guessed: true,
    });
    expect(decodeText(bytes(0, 0x61, 0, 0x2c, 0, 0x62))).toEqual({
      text: 'a,b',
      encoding: 'utf-16be',
      guessed: true,
    });
  });

  it('reads nothing of no bytes', () => expect(decodeText(bytes()).text).toBe(''));
});

describe('isSpreadsheet', () => {
  it('knows a zip archive and a compound file by their first bytes', () => {
    expect(isSpreadsheet(bytes(0x50, 0x4b, 0x03, 0x04, 0))).toBe(true);
    expect(isSpreadsheet(bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1))).toBe(true);
    expect(isSpreadsheet(bytes(0x50, 0x4b))).toBe(false);
  });
});
