import { describe, expect, it } from 'vitest';
import {
  dateInOrder,
  fullYear,
  readDate,
  readNumber,
  readWord,
  threeNumbers,
  tidyName,
} from '../../lib/season/cell.ts';
import { OUTCOMES } from '../../lib/season/values.ts';

describe('readDate', () => {
  it.each([
    ['2025-06-14', null],
    ['2025-06-14 00:00:00', null],
    ['2025-06-14T23:59:00-11:00', null],
    ['2025/6/14', null],
    ['14 June 2025', null],
    ['14-Jun-25', null],
    ['June 14, 2025', null],
    ['14.6.2025', 'dmy'],
    ['14/06/25', 'dmy'],
    ['6/14/2025', 'mdy'],
    ['25-06-14', 'ymd'],
    ['14.06.2025 08:15', 'dmy'],
  ] as const)('reads %s (%s) as 14 June 2025', (text, order) => {
    expect(readDate(text, order)).toEqual({ value: '2025-06-14' });
  });

  it.each([
    ['2025-02-30', null, 'date-does-not-exist'],
    ['31 June 2025', null, 'date-does-not-exist'],
    ['14/06/2025', 'mdy', 'date-does-not-exist'],
    ['45822', null, 'date-serial'],
    ['June 2025', null, 'date-not-understood'],
    ['14 Brumaire 2025', null, 'date-not-understood'],
    ['2025-06', null, 'date-not-understood'],
    ['0205-06-14', null, 'date-implausible'],
    ['9999-12-31', null, 'date-implausible'],
  ] as const)('refuses %s (%s): %s', (text, order, fault) => {
    expect(readDate(text, order)).toEqual({ fault });
  });

  it('takes two digits for 1970 to 2069', () => {
    expect(['69', '70', '00', '1969'].map(fullYear)).toEqual([2069, 1970, 2000, 1969]);
  });

  it('never takes a number of four digits for a day or month', () => {
    expect(threeNumbers('03/04/2025')).toEqual(['03', '04', '2025']);
    expect(dateInOrder(['03', '04', '2025'], 'ymd')).toBeNull();
    expect(threeNumbers('2025-04-03')).toBeNull();
  });
});

describe('readNumber', () => {
  it('reads a decimal point and a decimal comma alike', () => {
    expect(readNumber('12.5', { highest: 100 })).toEqual({ value: 12.5 });
    expect(readNumber('12,5', { highest: 100 })).toEqual({ value: 12.5 });
    expect(readNumber('0', { highest: 100, whole: true })).toEqual({ value: 0 });
  });

  it.each([
    ['-1', 'number-negative'],
    ['101', 'number-absurd'],
    ['2.5', 'number-not-understood'],
    ['1,234', 'number-not-understood'],
    ['12 g', 'number-not-understood'],
    ['1e2', 'number-not-understood'],
    ['Infinity', 'number-not-understood'],
    ['0x10', 'number-not-understood'],
  ])('refuses %s as a whole number up to 100: %s', (text, fault) => {
    expect(readNumber(text, { highest: 100, whole: true })).toEqual({ fault });
  });
});

describe('readWord', () => {
  it('reads a word in any case, with spaces, dashes or underscores', () => {
    expect(readWord('Tag-Lost', OUTCOMES)).toEqual({ value: 'unknown' });
    expect(readWord('constructor', OUTCOMES)).toEqual({ fault: 'word-not-understood' });
  });
});

describe('tidyName', () => {
  it('composes letters, joins spaces, and leaves case and signs alone', () => {
    expect(tidyName(' Zoe\u0308  ×\u00a0Ivo ')).toBe('Zoë × Ivo');
  });
});
