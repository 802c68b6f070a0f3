/** What is wrong with one row, and what to do about it, in English. The row is named before each sentence. */

import type { RowProblemCode } from '../season/problems.ts';
import type { Problem } from '../season/season.ts';
import { cited, dateOrderName, type ProblemSentence } from './problem-sentence.ts';

const WORDS: Readonly<Record<string, string>> = {
  outcome: 'fruit, dropped, none, unknown or pending',
  control: 'unpollinated or selfed, or leave it blank for a cross',
  bagged: 'yes or no',
};

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

function named({ details, column }: Problem): string {
  const name = String(details.name ?? column ?? 'cell');
  return NAMES[name] ?? name.replaceAll('_', ' ');
}

const the = (problem: Problem): string => `the ${named(problem)} ${cited(problem.value)}`;
const times = (uses: string | number): string => (uses === 1 ? 'once' : `${uses} times`);
/** The option that joins two names of a plant, as it is typed. */
const sameOption = (kept: string | number, other: string | number): string => `--same "${kept}=${other}"`;
const ISO = 'Write it as YYYY-MM-DD, for example 2025-06-14.';
const other = ({ details, file }: Problem): string =>
  `row ${details.otherRow}${details.otherFile === file ? '' : ` of ${details.otherFile}`}`;

/** Faults of a cell or of the row's shape. */
type CellCode = Extract<
  RowProblemCode,
  `${'row' | 'header' | 'quote' | 'control' | 'cell' | 'date' | 'number' | 'word' | 'storage' | 'name'}-${string}`
>;

const CELL_PROBLEMS: Readonly<Record<CellCode, ProblemSentence>> = {
  'row-ragged': ({ details }) => [
    `the row has ${details.cells} cells where the headers make ${details.expected}, so it is unclear which belongs where.`,
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
    'Write digits only, without a word or a mark between thousands.',
  ],
  'number-negative': (problem) => [`${the(problem)} is below zero.`, 'Correct it, or leave it blank.'],
  'number-absurd': (problem) => [
    `${the(problem)} is more than can be (at most ${problem.details.highest}).`,
    'Correct it, or leave it blank.',
  ],
  'number-converted': (problem) => [
    `${the(problem)} is read as ${problem.details.meant}, here and wherever it stands.`,
    'Nothing needs doing if that is right.',
  ],
  'word-not-understood': (problem) => [
    `${the(problem)} is not a word that is known here${problem.details.suggestion ? `; is ${problem.details.suggestion} meant?` : '.'}`,
    `Write ${WORDS[String(problem.details.name)] ?? 'one of the words that the column may hold'}.`,
  ],
  'word-guessed': (problem) => [
    `${the(problem)} is read as ${problem.details.meant}, here and wherever it stands.`,
    'Nothing needs doing if that is right.',
  ],
  'storage-slip': (problem) => [
    `${the(problem)} is kept as a method of its own; is ${problem.details.suggestion} meant?`,
    `Write ${problem.details.suggestion} if so.`,
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
  'name-slip': ({ details: { spelling, uses, usual, usualUses } }) => [
    `${cited(spelling)} (${times(uses)}) may be a slip for ${cited(usual)} (${times(usualUses)}); both are kept apart.`,
    `If they are one plant, correct it or say so: ${sameOption(usual, spelling)}.`,
  ],
  'name-tidied': (problem) => [
    `${the(problem)} is read as ${cited(problem.details.meant)}, with plain spaces and letters.`,
    'Nothing needs doing if that is right.',
  ],
};

/** Faults of what a row says taken together, or with other rows. */
const SENSE_PROBLEMS: Readonly<Record<Exclude<RowProblemCode, CellCode>, ProblemSentence>> = {
  'tag-repeated': (problem) => [
    `the tag ${cited(problem.value)} stands in ${other(problem)} already, with the same content.`,
    'Delete one of the two rows.',
  ],
  'tag-conflict': (problem) => [
    `the tag ${cited(problem.value)} also stands in ${other(problem)}, with another content; neither row is used.`,
    'Correct the tag of one of them, or delete the row that is wrong.',
  ],
  'vial-repeated': (problem) => [
    `the vial ${cited(problem.value)} stands in ${other(problem)} already, with the same content.`,
    'Delete one of the two rows.',
  ],
  'vial-conflict': (problem) => [
    `the vial ${cited(problem.value)} also stands in ${other(problem)}, with another content; neither row is used.`,
    'Give one of them a name of its own, or delete the row that is wrong.',
  ],
  'flowers-repeated': (problem) => [
    `the plant ${cited(problem.value)} stands in row ${problem.details.firstRow} already, for the same days; both count.`,
    'Delete one of the two rows if they mean the same flowers.',
  ],
  'future-date': (problem) => [
    `${the(problem)} lies after ${problem.details.asOf}, the day up to which this is read.`,
    'Correct the date, or give a later --as-of.',
  ],
  'outcome-after-as-of': (problem) => [
    `the outcome was seen on ${problem.value}, after ${problem.details.asOf}, so it counts as pending.`,
    'Correct the date, or give a later --as-of.',
  ],
  'collected-after-pollination': ({ details }) => [
    `the pollen was collected on ${details.collected}, after it was used on ${details.pollinationDate}; its date is not believed.`,
    'Correct one of the two dates.',
  ],
  'fresh-collected-earlier': ({ details }) => [
    `the pollen is called fresh but was ${details.days} days old; its age counts as 0.`,
    'Correct the date, or name how the pollen was stored.',
  ],
  'age-missing': ({ details }) => [
    details.vial === ''
      ? 'the pollen was stored, but nothing tells its age; the row counts in plain rates, not where age matters.'
      : `the age of the pollen rests on vial ${cited(details.vial)}, whose date is not known; the row counts in plain rates, not where age matters.`,
    details.vial === ''
      ? 'Fill in pollen_collected, pollen_age_days or vial.'
      : 'Add --vials and the name of your file of vials, or fill in pollen_collected.',
  ],
  'age-disagrees': ({ details, column }) => [
    `${cited(column)} makes the pollen ${details.otherDays} days old, ${details.usedColumn} ${details.days} days; ${details.days} is used.`,
    'Correct the one that is wrong.',
  ],
  'age-over-ten-years': ({ details }) => [
    `the pollen was ${details.days} days old, more than ten years.`,
    'Check the year of its collection.',
  ],
  'vial-unknown': ({ value }) => [
    `the vial ${cited(value)} is not in the file of vials.`,
    'Add it there, or correct its name here.',
  ],
  'vial-before-collected': ({ details, value }) => [
    `the vial ${cited(value)} was used on ${details.pollinationDate}, before its pollen was collected on ${details.collected}.`,
    'Correct the vial or one of the dates.',
  ],
  'vial-beyond-doses': ({ details }) => [
    `vial ${cited(details.vial)} was filled with ${details.doses} doses, but ${details.uses} flowers name it, the last of them from here on.`,
    'Correct the vial of some flowers, or doses_filled in the file of vials.',
  ],
  'vial-father-differs': ({ details }) => [
    `the pollen parent is ${cited(details.cross)}, but vial ${cited(details.vial)} holds pollen of ${cited(details.register)}; the row is believed.`,
    'Correct the one that is wrong.',
  ],
  'vial-storage-differs': ({ details }) => [
    `the storage is ${cited(details.cross)}, but vial ${cited(details.vial)} is ${cited(details.register)}; the row is believed.`,
    'Correct the one that is wrong.',
  ],
  'year-stands-alone': (problem) => [
    `${the(problem)} lies more than five years from every other; the nearest is ${problem.details.nearest}.`,
    'Correct the year, if it is a slip.',
  ],
  'own-pollen': ({ value }) => [
    `${cited(value)} was pollinated with its own pollen; the row counts as a cross.`,
    'Write selfed in the column control if it was a control.',
  ],
  'selfed-with-other-pollen': ({ details, value }) => [
    `the control is called selfed, but pollen of ${cited(value)} was put on ${cited(details.seedParent)}.`,
    'Leave control blank if it was a cross, else correct the pollen parent.',
  ],
  'unpollinated-with-pollen': (problem) => [
    `the flower is an unpollinated control, but has ${named(problem)} ${cited(problem.value)}, which is not believed.`,
    'Leave control blank if it was a cross, else empty the cell.',
  ],
  'checked-before-pollination': (problem) => [
    `${the(problem)} lies before the pollination on ${problem.details.pollinationDate}; it is not believed.`,
    'Correct one of the two dates.',
  ],
  'checked-too-early': ({ details }) => [
    `a fruit was noted ${details.days} days after the pollination on ${details.pollinationDate}, before it can be told from a fading flower.`,
    'Check the dates, or write pending.',
  ],
  'harvested-before-pollination': (problem) => [
    `${the(problem)} lies before the pollination on ${problem.details.pollinationDate}; it is not believed.`,
    'Correct one of the two dates.',
  ],
  'harvested-without-fruit': ({ details, value }) => [
    `a harvest on ${value} is noted, but the outcome is ${details.outcome}; the outcome is believed.`,
    'Write fruit as the outcome, or empty the harvest date.',
  ],
  'seeds-without-fruit': ({ details, value }) => [
    `${value} seeds are noted, but the outcome is ${details.outcome}; the outcome is believed.`,
    'Write fruit as the outcome, or empty the seeds.',
  ],
  'more-sown-than-seeds': ({ details, value }) => [
    `${value} seeds were sown of a fruit that had ${details.seeds}; the number sown is not believed.`,
    'Correct one of the two numbers.',
  ],
  'more-germinated-than-sown': ({ details, value }) => [
    `${value} seeds germinated of ${details.sown} sown; the number germinated is not believed.`,
    'Correct one of the two numbers.',
  ],
  'opens-backwards': ({ details }) => [
    `the flowering is to end on ${details.to}, before it starts on ${details.from}; neither date is believed.`,
    'Correct one of the two dates.',
  ],
};

/** Sentence and fix of each code that concerns one row. */
export const ROW_PROBLEMS: Readonly<Record<RowProblemCode, ProblemSentence>> = {
  ...CELL_PROBLEMS,
  ...SENSE_PROBLEMS,
};
