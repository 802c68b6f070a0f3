/** The text of a cell → its value together with what is to be told about it. */

import { type NumberRule, readNumber, readWord, tidyName } from './cell.ts';
import { type DateForm, readDate, threeNumbers } from './date-cell.ts';
import type { RowProblemCode } from './problems.ts';
import { foldWord, isBlank, likelySlip, OWN_METHODS, STORAGES, type WordList, YES_NO } from './values.ts';

/**
 * What the text of a cell was read as: its value, and its fault or that it is a guess; `blank` where it says nothing,
 * though it is not empty.
 */
export interface CellReading {
  readonly value: string | number | boolean | null;
  readonly fault?: RowProblemCode;
  readonly details?: Readonly<Record<string, string | number>>;
  readonly guess?: RowProblemCode;
  readonly blank?: true;
}

const BLANK: CellReading = { value: null, blank: true };

/** A cell of a date column, whose dates are written in this form. */
export function dateReading(raw: string, form: DateForm): CellReading {
  if (isBlank(raw)) return BLANK;
  const reading = readDate(raw, form);
  if ('value' in reading) return reading;
  const ordered = typeof form === 'string' && threeNumbers(raw) !== null;
  return { value: null, fault: reading.fault, details: ordered ? { order: form } : {} };
}

function isDate(raw: string): boolean {
  return 'value' in readDate(raw, null);
}

/** A cell of a column of numbers. */
export function numberReading(raw: string, rule: NumberRule): CellReading {
  if (isBlank(raw)) return BLANK;
  const reading = readNumber(raw, rule);
  if ('fault' in reading) {
    const isDay = reading.fault === 'number-not-understood' && (threeNumbers(raw) ?? isDate(raw));
    return {
      value: null,
      fault: isDay ? 'number-is-date' : reading.fault,
      details: { highest: rule.highest },
    };
  }
  return reading.converted ? { value: reading.value, guess: 'number-converted' } : reading;
}

/** A cell that must hold a word of a list; a likely slip is suggested, never taken. */
export function wordReading<T extends string | boolean>(raw: string, list: WordList<T>): CellReading {
  const reading = readWord(raw, list);
  if ('value' in reading)
    return foldWord(raw) === String(reading.value) ? reading : { ...reading, guess: 'word-guessed' };
  const slip = likelySlip(raw, list);
  return { value: null, fault: reading.fault, details: slip === null ? {} : { suggestion: String(slip) } };
}

/** What the grower says that words of storage mean: from their folded word to the method. */
export type StorageMap = ReadonlyMap<string, string>;

/** The words that the grower mapped, folded; a method is one of the four known ones, by any word for it, or one of their own. */
export function storageMap(said: ReadonlyMap<string, string>): StorageMap {
  const methodOf = (text: string): string => {
    const known = readWord(text, STORAGES);
    return 'value' in known ? known.value : tidyName(text);
  };
  return new Map([...said].map(([word, method]) => [foldWord(word), methodOf(method)]));
}

/** A storage method: what the grower says it is, one of the four known words, or the grower's own as it stands. */
export function storageReading(raw: string, said: StorageMap): CellReading {
  if (raw === '?') return BLANK;
  const folded = foldWord(raw);
  const meant = said.get(folded);
  if (meant !== undefined) return { value: meant };
  const known = readWord(raw, STORAGES);
  if ('value' in known) return folded === known.value ? known : { ...known, guess: 'word-guessed' };
  const value = tidyName(raw);
  if (OWN_METHODS.has(folded)) return { value, guess: 'storage-own' };
  const slip = likelySlip(raw, STORAGES) ?? likelySlip(raw, OWN_METHODS);
  return slip === null
    ? { value, guess: 'storage-own' }
    : { value, fault: 'storage-slip', details: { suggestion: slip } };
}

/** A cell of yes or no. */
export function yesNoReading(raw: string): CellReading {
  if (isBlank(raw)) return BLANK;
  const reading = readWord(raw, YES_NO);
  return 'value' in reading ? reading : { value: null, fault: 'word-not-understood' };
}
