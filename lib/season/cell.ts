/** Text of one cell → a number, a word or a name; or the code of what is wrong with it. */

import type { DecimalMark } from './decimal-marks.ts';
import type { RowProblemCode } from './problems.ts';
import { unitFactor } from './units.ts';
import { foldWord, type WordList } from './values.ts';

/** What a cell says, or the code of its fault. */
export type Reading<T> = { readonly value: T } | { readonly fault: RowProblemCode };

/** Which numbers a column may hold. */
export interface NumberRule {
  readonly highest: number;
  readonly whole?: boolean;
  /** Our name of the column, which tells the units that may stand behind the number. */
  readonly column?: string;
  /** What parts decimals in the column, where its numbers tell it. */
  readonly mark?: DecimalMark;
}

const NUMBER = /^([+-]?\d+(?:[.,]\d+)?)\s*([^\d\s].*)?$/su;
/** Thousands parted by spaces, as the International System of Units writes them (SI brochure, 9th edition, 5.4.4). */
const PARTED = /^([+-]?\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+)(?!\d)/u;

/** Digits in threes with a mark between them: one such group alone may be decimals just as well. */
const ONE_GROUP = /^[+-]?[1-9]\d{0,2}([.,])\d{3}(?![\d.,])/;
const GROUPS =
  /^[+-]?\d{1,3}(?:(?:\.\d{3})+(?=,\d)|(?:,\d{3})+(?=\.\d)|(?:\.\d{3}){2,}|(?:,\d{3}){2,})(?!\d)/;

/** The number without marks between its thousands; null where the mark in it may part thousands or decimals. */
function withoutThousands(text: string, whole: boolean, mark: DecimalMark | undefined): string | null {
  const parted = PARTED.exec(text)?.[1] ?? GROUPS.exec(text)?.[0];
  if (parted !== undefined) return parted.replace(/[^\d+-]/gu, '') + text.slice(parted.length);
  const group = ONE_GROUP.exec(text);
  if (group === null) return text;
  if (whole || (mark === undefined && group[1] === ',')) return null;
  if (mark === undefined || group[1] === mark) return text;
  return text.replace(group[1], '');
}

/** A number read from a cell; `converted` where it was written in another unit than its column's or with spaces. */
export type NumberReading =
  | { readonly value: number; readonly converted?: true }
  | { readonly fault: RowProblemCode };

/** Past the digits that anybody weighs to: what a conversion leaves behind the twelfth is no measurement. */
function rounded(value: number): number {
  return Number(value.toPrecision(12));
}

/**
 * A number from 0 up to a highest one that still makes sense; a decimal comma is read as a decimal point, and a unit of
 * the column may follow.
 *
 * @example readNumber('12,5 g', { highest: 5000, column: 'fruit_weight_g' }) // { value: 12.5 }
 */
export function readNumber(
  text: string,
  { highest, whole = false, column = '', mark }: NumberRule,
): NumberReading {
  const joined = withoutThousands(text, whole, mark);
  const parts = joined === null ? null : NUMBER.exec(joined);
  if (parts === null) return { fault: 'number-not-understood' };
  const factor = parts[2] === undefined ? 1 : unitFactor(column, parts[2]);
  if (factor === null) return { fault: 'number-not-understood' };
  const value = rounded(Number(parts[1].replace(',', '.')) * factor);
  if (whole && !Number.isInteger(value)) return { fault: 'number-not-understood' };
  if (value < 0) return { fault: 'number-negative' };
  if (value > highest) return { fault: 'number-absurd' };
  return factor === 1 && joined === text ? { value } : { value, converted: true };
}

/** "frozen (freezer)" without what stands in brackets behind it. */
function withoutBrackets(text: string): string {
  return text.endsWith(')') ? text.replace(/\s*\([^()]*\)$/u, '') : text;
}

/** The word of a list that a cell means, with or without a remark in brackets behind it. */
export function readWord<T>(text: string, list: WordList<T>): Reading<T> {
  const value = list.get(foldWord(text)) ?? list.get(foldWord(withoutBrackets(text)));
  return value === undefined ? { fault: 'word-not-understood' } : { value };
}

const TIDY = /^[!-~]+(?: [!-~]+)*$/;

/** A name as it is kept: composed Unicode (NFC), no space around it, single spaces within. */
export function tidyName(text: string): string {
  // Most names are tidy, and this tells it at a fraction of the cost.
  if (TIDY.test(text)) return text;
  return text.normalize('NFC').replace(/\s+/gu, ' ').trim();
}
