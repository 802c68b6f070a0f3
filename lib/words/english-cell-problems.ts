/** What is wrong with one cell or the shape of its row, and what to do about it, in English. The row is named before each sentence. */

import type { RowProblemCode } from '../season/problems.ts';
import type { Problem } from '../season/season.ts';
import { cited, dateOrderName, type ProblemSentence } from './problem-sentence.ts';

const WORDS: Readonly<Record<string, string>> = {
  outcome: 'fruit, dropped, none, unknown or pending',
  control: 'unpollinated or selfed, or leave it blank for a cross',
  bagged: 'yes or no',
};

/** What the numbers of a column count, where that is not plain from its name. */
const UNITS: Readonly<Record<string, string>> = { fruit_weight_g: ' g', pollen_age_days: ' days' };

const POLLEN: ReadonlySet<string> = new Set(['pollen_parent', 'storage']);

/** Our name of a column as a grower would say it. */
const NAMES: Readonly<Record<string, string>> = {
  cross_id: 'tag (cross_id)',
  pollination_date: 'pollination date',
  pollen_collected: 'date of pollen collection',
  pollen_age_days: 'pollen age',
  checked_on: 'date of the check',
  harvested_on: 'harvest date',
  fruit_weight_g: 'fruit weight',
  collected: 'collection date',
  doses_left: 'number of doses left',
  doses_filled: 'number of doses filled',
  thaws: 'number of thaws',
  flowers: 'number of flowers',
  seeds: 'number of seeds',
  sown: 'number of seeds sown',
  germinated: 'number of seeds germinated',
  opens_from: 'first day of flowering',
  opens_to: 'last day of flowering',
};

/** What a problem's column is called in a sentence. */
export function named({ details, column }: Problem): string {
  const name = String(details.name ?? column ?? 'cell');
  return NAMES[name] ?? name.replaceAll('_', ' ');
}

/** The cell of a problem with what stands in it: the seeds "many". */
export const the = (problem: Problem): string => `the ${named(problem)} ${cited(problem.value)}`;
const unit = ({ details }: Problem): string => UNITS[String(details.name)] ?? '';
const times = (uses: string | number): string => (uses === 1 ? 'once' : `${uses} times`);
/** The option that joins two names of a plant, as it is typed. */
const sameOption = (kept: string | number, other: string | number): string => `--same "${kept}=${other}"`;
const ISO = 'Write it as YYYY-MM-DD, for example 2025-06-14.';
/** Faults of a cell or of the row's shape. */
export type CellCode = Extract<
  RowProblemCode,
  `${'row' | 'header' | 'quote' | 'control' | 'cell' | 'date' | 'number' | 'word' | 'storage' | 'name' | 'total'}-${string}`
>;

/** Sentence and fix of each. */
export const CELL_PROBLEMS: Readonly<Record<CellCode, ProblemSentence>> = {
  'total-row': ({ value }) => [
    `the row is a total (${cited(value)}), not a record.`,
    'Delete the row, or keep totals on a sheet of their own; nothing else is missing.',
  ],
  'row-short': ({ details }) => [
    `the row ends before the column ${cited(details.meant)}; what is missing at its end counts as blank, in other rows too.`,
    'Nothing needs doing, unless a separator is missing within the row.',
  ],
  'row-nearly-blank': ({ value }) => [
    `the row holds ${cited(value)}, but nothing that is needed.`,
    'Fill in the row, or delete it.',
  ],
  'row-ragged': ({ details }) => [
    `the row has ${details.cells} ${details.cells === 1 ? 'cell' : 'cells'} where the headers make ${details.expected}, so it is unclear which belongs where.`,
    'Look for a missing or surplus separator; put a cell that holds one in quotation marks.',
  ],
  'header-repeated': () => ['the row repeats the headers.', 'Delete it.'],
  'quote-not-closed': () => [
    'a quotation mark is opened and never closed.',
    'Remove it or close it; the rows below are read as if it had no meaning.',
  ],
  'control-character': () => ['the row holds a character that no text has.', 'Type the row again.'],
  'cell-blank': (problem) => [
    `the ${named(problem)} is blank.`,
    problem.details.name === 'outcome'
      ? 'Write fruit, dropped, none, unknown (tag lost) or pending (too early to say).'
      : problem.details.kind === 'crosses' && POLLEN.has(String(problem.details.name))
        ? 'Fill it in; for a flower that got no pollen write unpollinated in the column control.'
        : 'Fill it in.',
  ],
  'cell-error': (problem) => [
    `the ${named(problem)} holds a spreadsheet's own error, ${cited(problem.value)}.`,
    'Mend the formula in the spreadsheet, or type the value.',
  ],
  'date-does-not-exist': (problem) => [
    `${the(problem)} does not exist${problem.details.order ? ` when read as ${dateOrderName(problem.details.order)}` : ''}.`,
    ISO,
  ],
  'date-not-understood': (problem) => [`${the(problem)} is not a date.`, ISO],
  'date-serial': (problem) => [
    `${the(problem)} looks like a spreadsheet's own number for a day.`,
    'Format the column as a date (YYYY-MM-DD) before saving as CSV.',
  ],
  'date-partial': (problem) => [
    `${the(problem)} names no full day.`,
    'Write the day, the month and the year: YYYY-MM-DD, for example 2025-06-14.',
  ],
  'date-implausible': (problem) => [`${the(problem)} is not in 1950 to 2100.`, 'Check the year.'],
  'number-not-understood': (problem) => [
    `${the(problem)} is not ${named(problem) === 'fruit weight' ? 'a number' : 'a whole number'}.`,
    `Write ${named(problem) === 'fruit weight' ? 'a number' : 'a whole number'} in digits, without words or marks between thousands, or leave it blank.`,
  ],
  'number-negative': (problem) => [`${the(problem)} is below zero.`, 'Correct it, or leave it blank.'],
  'number-absurd': (problem) => [
    `${the(problem)} is more than can be (at most ${problem.details.highest}${unit(problem)}).`,
    'Correct it, or leave it blank.',
  ],
  'number-converted': (problem) => [
    `${the(problem)} is read as ${problem.details.meant}${unit(problem)}, here and wherever it stands.`,
    'Nothing needs doing if that is right.',
  ],
  'number-is-date': (problem) => [
    `${the(problem)} is a date, where a number is expected; it is not used.`,
    `If the whole column holds dates, give it another header; else write the number, or leave the cell blank.`,
  ],
  'word-not-understood': (problem) => [
    `${the(problem)} is not a word that is known here${problem.details.suggestion ? `; is ${problem.details.suggestion} meant?` : '.'}`,
    `Write ${WORDS[String(problem.details.name)] ?? 'one of the words that the column may hold'}.`,
  ],
  'word-guessed': (problem) => [
    `${the(problem)} is read as ${problem.details.meant}, here and wherever it stands.`,
    'Nothing needs doing if that is right.',
  ],
  'storage-own': (problem) => [
    `${the(problem)} is kept as a method of its own, here and wherever it stands.`,
    `Nothing needs doing if that is right; else write fresh, room, refrigerated or frozen, or say so: --storage "${problem.value}=frozen".`,
  ],
  'storage-slip': (problem) => [
    `${the(problem)} is kept as a method of its own; is ${problem.details.suggestion} meant?`,
    `If so, write ${problem.details.suggestion}, or say so: --storage "${problem.value}=${problem.details.suggestion}".`,
  ],
  'name-spellings': (problem) => {
    const { spelling, uses, usual, usualUses } = problem.details;
    const plant = String(problem.details.name).endsWith('parent');
    return [
      `${cited(spelling)} (${times(uses)}) and ${cited(usual)} (${times(usualUses)}) look like one ` +
        `${plant ? 'plant' : 'word'}, but are kept apart.`,
      plant
        ? `Write both alike, or say so: ${sameOption(usual, spelling)}.`
        : 'Write both alike if they are one.',
    ];
  },
  'name-slip': ({ details: { name, spelling, uses, usual, usualUses } }) => [
    `${cited(spelling)} (${times(uses)}) may be a slip for ${cited(usual)} (${times(usualUses)}); both are kept apart.`,
    String(name).endsWith('parent')
      ? `If they are one plant, correct it or say so: ${sameOption(usual, spelling)}.`
      : 'If they are one, correct it.',
  ],
  'name-garbled': (problem) => [
    `${the(problem)} holds letters that were lost or garbled when the file was saved.`,
    'Open the original sheet, and save it as CSV (UTF-8) or .xlsx; or type the name again, everywhere.',
  ],
  'name-tidied': (problem) => [
    `${the(problem)} is read as ${cited(problem.details.meant)}, with plain spaces and letters.`,
    'Nothing needs doing if that is right.',
  ],
};
