import { describe, expect, it } from 'vitest';
import { readNumber, readWord, tidyName } from '../../lib/season/cell.ts';
import { OUTCOMES } from '../../lib/season/values.ts';

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
    ['12 seeds 3', 'number-not-understood'],
    ['about 12', 'number-not-understood'],
    ['1234567890123456789012', 'number-absurd'],
    ['1e2', 'number-not-understood'],
    ['Infinity', 'number-not-understood'],
    ['0x10', 'number-not-understood'],
  ])('refuses %s as a whole number up to 100: %s', (text, fault) => {
    expect(readNumber(text, { highest: 100, whole: true })).toEqual({ fault });
  });
});

describe('readNumber with thousands parted by spaces', () => {
  // SI brochure, 9th edition, 5.4.4: digits may be parted in groups of three by a thin space.
  it.each(['1 200', '1\u00a0200', '1\u202f200', '1\u2009200 seeds'])('reads %s, and says so', (text) => {
    const rule = { highest: 5000, whole: true, column: 'seeds' };
    expect(readNumber(text, rule)).toEqual({ value: 1200, converted: true });
  });

  it.each(['1 20', '12 2000', '1 200 3', '1234 567', '1  200'])('does not take %s for one number', (text) => {
    expect(readNumber(text, { highest: 1e9, whole: true })).toEqual({ fault: 'number-not-understood' });
  });
});

describe('readNumber with units', () => {
  it.each([
    ['3,5 g', 'fruit_weight_g', 3.5],
    ['350g', 'fruit_weight_g', 350],
    ['12 Gramm', 'fruit_weight_g', 12],
    ['12 seeds', 'seeds', 12],
    ['40 Samen', 'seeds', 40],
    ['5 d', 'pollen_age_days', 5],
    ['5 días', 'pollen_age_days', 5],
    ['5 T.', 'pollen_age_days', 5],
    ['3 Blüten', 'flowers', 3],
  ])("reads %s in %s as the column's own number", (text, column, value) => {
    expect(readNumber(text, { highest: 5000, column })).toEqual({ value });
  });

  it('says where a number was written in another unit', () => {
    // 1 kg is 1000 g, a week 7 days; an ounce 28.35 g (kitchen scale, rounded).
    const converted = (text: string, column: string) => readNumber(text, { highest: 5000, column });
    expect(converted('0,35 kg', 'fruit_weight_g')).toEqual({ value: 350, converted: true });
    expect(converted('2 weeks', 'pollen_age_days')).toEqual({ value: 14, converted: true });
    const ounces = converted('10 oz', 'fruit_weight_g');
    expect('value' in ounces && ounces.value).toBeCloseTo(283.5, 1);
  });

  it.each([
    ['3 months', 'pollen_age_days'],
    ['12 d', 'seeds'],
    ['12 seeds', 'fruit_weight_g'],
    ['12 constructor', 'seeds'],
  ])('refuses %s in %s', (text, column) => {
    expect(readNumber(text, { highest: 5000, column })).toEqual({ fault: 'number-not-understood' });
  });
});

describe('readWord', () => {
  it('reads a word in any case, with spaces, dashes or underscores', () => {
    expect(readWord('Tag-Lost', OUTCOMES)).toEqual({ value: 'unknown' });
    expect(readWord('none (rain)', OUTCOMES)).toEqual({ value: 'none' });
    expect(readWord('(none)', OUTCOMES)).toEqual({ fault: 'word-not-understood' });
    expect(readWord('constructor', OUTCOMES)).toEqual({ fault: 'word-not-understood' });
  });
});

describe('tidyName', () => {
  it('composes letters, joins spaces, and leaves case and signs alone', () => {
    expect(tidyName(' Zoe\u0308  ×\u00a0Ivo ')).toBe('Zoë × Ivo');
  });
});
