import { describe, expect, it } from 'vitest';
import {
  dateReading,
  numberReading,
  storageReading,
  wordReading,
  yesNoReading,
} from '../../lib/season/cell-readings.ts';
import { OUTCOMES } from '../../lib/season/values.ts';

describe('readings of cells', () => {
  it('tell a value, a fault with its details, or nothing at all', () => {
    expect(dateReading('14.6.2025', 'dmy')).toEqual({ value: '2025-06-14' });
    expect(dateReading('31.6.2025', 'dmy')).toEqual({
      value: null,
      fault: 'date-does-not-exist',
      details: { order: 'dmy' },
    });
    expect(dateReading('soon', 'dmy')).toMatchObject({ fault: 'date-not-understood', details: {} });
    expect(dateReading('?', null)).toEqual({ value: null, blank: true });
    expect(numberReading('101', { highest: 100 })).toMatchObject({
      fault: 'number-absurd',
      details: { highest: 100 },
    });
    expect(numberReading('2 weeks', { highest: 100, column: 'pollen_age_days' })).toEqual({
      value: 14,
      guess: 'number-converted',
    });
    expect(numberReading('1.10.2025', { highest: 100 })).toMatchObject({ fault: 'number-is-date' });
    expect(numberReading('2025-10-01', { highest: 100 })).toMatchObject({ fault: 'number-is-date' });
  });

  it('tell a word as it is, as a guess, or with the slip it may be', () => {
    expect(wordReading('Fruit', OUTCOMES)).toEqual({ value: 'fruit' });
    expect(wordReading('ja', OUTCOMES)).toEqual({ value: 'fruit', guess: 'word-guessed' });
    expect(wordReading('fruti', OUTCOMES)).toMatchObject({ value: null, details: { suggestion: 'fruit' } });
    expect(yesNoReading('Non')).toMatchObject({ value: false });
    expect(yesNoReading('perhaps')).toEqual({ value: null, fault: 'word-not-understood' });
  });

  it("keep a grower's own storage method, with the slip it may be", () => {
    expect(storageReading('silica  gel', new Map())).toEqual({ value: 'silica gel', guess: 'storage-own' });
    expect(storageReading('the blue tin', new Map())).toEqual({
      value: 'the blue tin',
      guess: 'storage-own',
    });
    expect(storageReading('frozne', new Map())).toMatchObject({ value: 'frozne', fault: 'storage-slip' });
    expect(storageReading('silca gel', new Map())).toEqual({
      value: 'silca gel',
      fault: 'storage-slip',
      details: { suggestion: 'silica gel' },
    });
    expect(storageReading('?', new Map())).toEqual({ value: null, blank: true });
  });
});
