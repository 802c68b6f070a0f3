/** The catalogue of what can be wrong with one cell or the shape of its row, in English. */

import type { RowProblemCode } from '../season/problems.ts';
import { ALL_USED, type EntryParts, IF_NEEDED, LEFT_OUT, USED } from './catalogue-entry.ts';

const ISO = 'Write it as YYYY-MM-DD.';
const NUMBER = 'Correct it, or leave it blank.';

export const CELL_ENTRIES = {
  'row-ragged': [
    'error',
    'The row has more or fewer cells than there are headers.',
    LEFT_OUT,
    'Look for a missing or surplus separator; put a cell that holds one in quotation marks.',
    'Lantern Creek, pale',
  ],
  'header-repeated': [
    'error',
    'The row repeats the headers.',
    LEFT_OUT,
    'Delete it.',
    'two lists under each other',
  ],
  'quote-not-closed': [
    'error',
    'A quotation mark is opened and never closed.',
    `${LEFT_OUT} The rows below are read as if the mark had no meaning.`,
    'Remove it, or close it.',
    '"opened late',
  ],
  'control-character': [
    'error',
    'The row holds a character that no text has.',
    LEFT_OUT,
    'Type the row again.',
    'a byte 0',
  ],
  'cell-blank': [
    'error',
    'A cell that is needed is blank.',
    LEFT_OUT,
    'Fill it in. An outcome that is not known is written unknown or pending.',
    'no seed_parent',
  ],
  'cell-error': [
    'error or warning',
    'The cell holds a spreadsheet’s own error instead of a value.',
    IF_NEEDED,
    'Mend the formula in the spreadsheet, or type the value.',
    '#REF!',
  ],
  'date-does-not-exist': ['error or warning', 'The calendar has no such day.', IF_NEEDED, ISO, '2025-02-30'],
  'date-not-understood': ['error or warning', 'The cell is no date.', IF_NEEDED, ISO, 'last Tuesday'],
  'date-serial': [
    'error or warning',
    'The cell looks like a spreadsheet’s own number for a day, alone among dates.',
    IF_NEEDED,
    'Format the column as dates before you save it as CSV.',
    '45809',
  ],
  'date-implausible': [
    'error or warning',
    'The year is not from 1950 to 2100.',
    IF_NEEDED,
    'Check the year.',
    '0205-06-01',
  ],
  'date-partial': [
    'error or warning',
    'The cell names a month or a year, but no day.',
    IF_NEEDED,
    ISO,
    'June 2025',
  ],
  'number-not-understood': [
    'error or warning',
    'The cell is no number, or none of the column’s kind.',
    IF_NEEDED,
    'Write digits only, without a mark between thousands.',
    'many',
  ],
  'number-negative': ['error or warning', 'The number is below zero.', IF_NEEDED, NUMBER, '-3 seeds'],
  'number-absurd': [
    'error or warning',
    'The number is more than can be.',
    IF_NEEDED,
    NUMBER,
    '1200000 seeds',
  ],
  'number-converted': [
    'notice',
    'The number was written in another unit than the column’s.',
    USED,
    'Nothing, if it is right.',
    '0.2 kg read as 200 g',
  ],
  'word-not-understood': [
    'error or warning',
    'The word is none that can stand in the column.',
    IF_NEEDED,
    'Write one of its words, such as fruit or none for an outcome.',
    'perhaps',
  ],
  'word-guessed': [
    'notice',
    'A word of yours is read as one of ours.',
    USED,
    'Nothing, if it is right.',
    'fridge read as refrigerated',
  ],
  'storage-slip': [
    'warning',
    'A storage method of its own looks like a slip for a known one.',
    `${USED} The method is kept as written.`,
    'Write the known word if it is meant.',
    'frozne',
  ],
  'name-spellings': [
    'warning',
    'Two names differ only by case, spaces, dashes or signs.',
    `${ALL_USED} The names are kept apart.`,
    'Write both alike if they are one, or say so: --same "A=B".',
    'Nocturna and nocturna',
  ],
  'name-slip': [
    'notice',
    'A rare name may be a slip for a frequent one.',
    `${ALL_USED} The names are kept apart.`,
    'If they are one plant, correct it, or say so: --same "A=B".',
    'Lantern Creek and Lantern Crek',
  ],
  'name-tidied': [
    'notice',
    'A name held double or unusual spaces, or letters in another form.',
    USED,
    'Nothing, if it is right.',
    'Ivo  II read as Ivo II',
  ],
} satisfies Partial<Readonly<Record<RowProblemCode, EntryParts>>>;
