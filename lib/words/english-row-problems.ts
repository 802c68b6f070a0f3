/** What is wrong with one row, and what to do about it, in English. The row is named before each sentence. */

import type { RowProblemCode } from '../season/problems.ts';
import type { Problem } from '../season/season.ts';
import { CELL_PROBLEMS, type CellCode, named, the } from './english-cell-problems.ts';
import { counted } from './numbers.ts';
import { cited, type ProblemSentence } from './problem-sentence.ts';
import { moreOfVial } from './told/alike-problems.ts';

const other = ({ details, file }: Problem): string =>
  `row ${details.otherRow}${details.otherFile === file ? '' : ` of ${details.otherFile}`}`;

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
  'vial-before-collected': (problem) => [
    `the vial ${cited(problem.value)} was used on ${problem.details.pollinationDate}, before its pollen was collected on ${problem.details.collected}${alsoOfVial(problem)}.`,
    `Correct the vial or one of the dates; ${REFILLED}`,
  ],
  'vial-beyond-doses': ({ details }) => [
    `vial ${cited(details.vial)} was filled with ${details.doses} doses, but ${details.uses} flowers name it, the last of them from here on.`,
    'Correct the vial of some flowers, or doses_filled in the file of vials.',
  ],
  'vial-father-differs': (problem) => [
    `the pollen parent is ${cited(problem.details.cross)}, but vial ${cited(problem.details.vial)} holds pollen of ${cited(problem.details.register)}; the row is believed${alsoOfVial(problem)}.`,
    `Correct the one that is wrong; ${REFILLED}`,
  ],
  'vial-storage-differs': (problem) => [
    `the storage is ${cited(problem.details.cross)}, but vial ${cited(problem.details.vial)} is ${cited(problem.details.register)}; the row is believed${alsoOfVial(problem)}.`,
    `Correct the one that is wrong; ${REFILLED}`,
  ],
  'year-stands-alone': (problem) => [
    `${the(problem)} lies more than five years from every other date; the nearest is ${problem.details.nearest}.`,
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
  'checked-too-late': (problem) => [
    `${the(problem)} lies ${problem.details.days} days after the pollination on ${problem.details.pollinationDate}; it is not believed.`,
    'Check the years of both dates.',
  ],
  'harvested-too-late': (problem) => [
    `${the(problem)} lies ${problem.details.days} days after the pollination on ${problem.details.pollinationDate}; it is not believed.`,
    'Check the years of both dates.',
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

const REFILLED = 'a vial that was filled again needs a name of its own for each filling.';

/** "; the same of 5 more flowers of this vial (rows 8, 9, …)"; empty where a warning is about one flower. */
const alsoOfVial = ({ details }: Problem): string => {
  const also = moreOfVial(details);
  if (also === null) return '';
  return `; the same of ${counted(also.more, 'more flower')} of this vial (${also.more === 1 ? 'row' : 'rows'} ${also.rows})`;
};

/** Sentence and fix of each code that concerns one row. */
export const ROW_PROBLEMS: Readonly<Record<RowProblemCode, ProblemSentence>> = {
  ...CELL_PROBLEMS,
  ...SENSE_PROBLEMS,
};
