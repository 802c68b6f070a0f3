import { describe, expect, it } from 'vitest';
import { cited, dateOrderName } from '../../lib/words/problem-sentence.ts';

describe('cited', () => {
  it('puts a cell in quotation marks as it stands', () => {
    expect([cited('Ivo  II'), cited(12), cited(null), cited('<script>')]).toEqual([
      '"Ivo  II"',
      '"12"',
      '""',
      '"<script>"',
    ]);
  });

  it('keeps it on one line, without marks that steer a terminal or turn the reading direction', () => {
    expect(cited('a\r\nb\u001b[1m\u202ec')).toBe('"a b [1m c"');
  });

  it('cuts it after 59 letters, never within one', () => {
    expect(cited('x'.repeat(60))).toBe(`"${'x'.repeat(60)}"`);
    expect(cited('🌵'.repeat(61))).toBe(`"${'🌵'.repeat(59)}…"`);
  });
});

describe('dateOrderName', () => {
  it('spells out an order', () => expect(dateOrderName('mdy')).toBe('month-day-year'));
});
