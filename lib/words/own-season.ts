/** The words of the page on which growers try a file of their own: what it asks, what it does, what went wrong. */

import type { FileKind, Problem } from '../season/season.ts';
import { capitalised, counted, wholeNumber } from './numbers.ts';
import { cited, dateOrderName } from './problem-sentence.ts';
import { dateAnswers, type PageFixes, pageFix } from './told/page-fixes.ts';
import { STAGES, type Stage } from './told/stages.ts';

const DOES: Readonly<Record<Stage, string>> = {
  reading: 'reading the files',
  counting: 'counting flowers and fruits',
  model: 'fitting the model of ages, plants and pairs',
  vials: 'judging the vials',
  'like-for-like': 'comparing like for like',
  rest: 'working out what would settle it',
  drawing: 'drawing the charts',
};

/** "Step 3 of 7: fitting the model of ages, plants and pairs." */
export function stageSaid(stage: Stage): string {
  return `Step ${STAGES.indexOf(stage) + 1} of ${STAGES.length}: ${DOES[stage]}.`;
}

const KINDS: Readonly<Record<FileKind, string>> = {
  crosses: 'crosses: one row a flower',
  vials: 'vials: one row a vial of pollen',
  flowers: 'flowers expected next season',
  unknown: 'none of the three kinds of file',
};

/** What kind of file it is. */
export function kindSaid(kind: FileKind): string {
  return KINDS[kind];
}

/** "crosses: one row a flower. 291 rows, 272 used, 19 left out." */
export function fileSaid(file: {
  readonly kind: FileKind;
  readonly rows: number;
  readonly used: number;
  readonly leftOut: number;
}): string {
  const { kind, rows, used, leftOut } = file;
  return `${capitalised(kindSaid(kind))}. ${counted(rows, 'row')}, ${wholeNumber(used)} used, ${wholeNumber(leftOut)} left out.`;
}

const EXPORT_SPREADSHEET =
  'Open it in your spreadsheet program, choose “Save as” or “Download”, take CSV (UTF-8), and choose that file here.';

const ANSWER_BELOW = 'Answer the question below.';

const FIXES: PageFixes = {
  byCode: {
    'spreadsheet-file': EXPORT_SPREADSHEET,
    'not-text': `Choose the sheet itself. ${EXPORT_SPREADSHEET}`,
    'kind-unknown': 'Say below what the file is, or check that its first row holds the headers.',
    'column-missing': 'Say below which of your columns it is, or add the column to the sheet.',
    'column-unknown': 'If it holds something that counts, say what under “More settings”.',
    'column-guessed': 'If that is wrong, rename the column in the sheet.',
    'vial-unknown': 'Choose your file of vials too, or fill in pollen_collected.',
    'future-date': 'Correct the date, or give a later day under “More settings”.',
    'outcome-after-as-of': 'Correct the date, or give a later day under “More settings”.',
    'name-slip': 'Say below whether they are one plant, or correct it in the sheet.',
    'date-serial-read':
      'If all are four years off, say under “More settings” from which year they are counted; else nothing needs doing.',
    'date-order-unclear': ANSWER_BELOW,
    'date-order-mixed':
      'Write all dates as YYYY-MM-DD, or answer the question below: rows written otherwise are then left out.',
    'date-order-decided': 'If that is wrong, write the dates as YYYY-MM-DD.',
    'date-order-from-neighbour': 'If that is wrong, write the dates as YYYY-MM-DD.',
  },
  rename: 'Rename the one that is not meant, and choose the file again.',
  answer: ANSWER_BELOW,
  mend: 'Mend it in the sheet, and choose the file again.',
};

/** The fix of a problem as the page puts it; `fix` is the command's. */
export function fixOnPage(problem: Problem, fix: string): string {
  return pageFix(problem, fix, FIXES);
}

/** What a refusal's fix would be on the page, by its code; the message is the command's. */
export const REFUSAL_FIXES: Readonly<Record<string, string>> = {
  'question-open': ANSWER_BELOW,
  'no-usable-row': 'Mend it in the sheet, save it, and choose the file again.',
  'no-crosses': 'Choose the file with one row a pollinated flower too. A file is known by its columns.',
  'no-usable-outcome':
    'Fill the column outcome with fruit, dropped or none once the flowers have been looked at.',
};

/** The question which of its numbers is the day: "What is 03/04/2025 in the column "date"?" and its two answers. */
export function dateOrderQuestion(problem: Problem): {
  readonly question: string;
  readonly answers: readonly (readonly [order: string, label: string])[];
} {
  return {
    question: `How are the dates in ${cited(problem.column)} written? One of them is ${cited(problem.value)}.`,
    answers: dateAnswers(problem, dateOrderName),
  };
}

/** "12 further kinds of problem are not listed." */
export function groupsLeft(groups: number): string {
  return `${counted(groups, 'further kind')} of problem ${groups === 1 ? 'is' : 'are'} not listed.`;
}

/** What the page says at its places; markup stands with the page. */
export const OWN_SEASON = {
  title: 'Your own season',
  description: 'Choose the list of your crosses; this page counts, compares and writes your report.',
  needsScript:
    'This page works out your report by a script of its own, and scripts are switched off here. The command fruitodds does the same without a browser.',
  noWorker:
    'This browser does not let a page work in the background, so nothing can be worked out here. A newer browser, or the command fruitodds, can.',
  chooseHeading: 'Choose your files',
  choose:
    'One row for each flower you pollinated, saved as CSV or as a workbook (.xlsx). A list of your pollen vials, and one of the flowers you expect next season, can be added. Each file is known by its columns.',
  filesLabel: (bytes: number): string =>
    `Files to read (CSV or .xlsx, up to ${wholeNumber(bytes / 1e6)} MB each; saved settings too)`,
  drop: 'Or drop them anywhere on this page.',
  pasteSummary: 'Paste rows instead',
  pasteLabel: 'Rows copied from the sheet, with the row of headers',
  pasteButton: 'Read the pasted rows',
  nothingPasted: 'Nothing was pasted yet: copy the rows with their headers, and put them into the field.',
  remove: (name: string): string => `Take out ${name}`,
  sameFile: (name: string): string => `${name} had been chosen before and is the same: it is read once.`,
  replaced: (name: string): string =>
    `${name} took the place of the file of that name chosen before. To read both, give one another name.`,
  typedGaveWay: 'The flowers typed in gave way to your file of them.',
  removed: (name: string): string => `${name} was taken out.`,
  unreadable: (name: string): string =>
    `${name} can’t be read: the browser says that it is locked, moved or not yours to read. Close it in other programs, or save a copy, and choose it again.`,
  restarted: 'The files changed while they were being worked on, so that work was stopped and begins anew.',
  readHeading: 'What was read',
  readSummary: 'Files, columns and problems',
  readRight: 'Is that right? Then let it be worked out.',
  workButton: 'Work it out',
  nothingToMend: 'Nothing to mend.',
  columnsSummary: 'How the columns were understood',
  columnsCaption: 'Your columns',
  columnsHeads: ['your header', 'read as'] as const,
  notUsed: 'not used',
  answerButton: 'Read again with these answers',
  kindQuestion: (name: string): string => `What is ${name}?`,
  columnQuestion: (column: string, name: string): string => `Which column of ${name} is ${column}?`,
  noColumn: 'none of them',
  sameNames: (names: string): string =>
    `Several growers use the same plant names (${names}). Are they the same plants?`,
  sameNo: 'No: each grower’s plant is a plant of its own',
  sameYes: 'Yes: the same plant, whoever grows it',
  workHeading: 'At work',
  progressLabel: 'How far it is',
  cancelButton: 'Stop',
  cancelled: 'Stopped. Your files are still read; nothing else was kept.',
  cancelledBefore: 'Stopped. Your files are still read, and the report of before is kept.',
  cancelledReading: 'Stopped. Your files are listed above; they were not read.',
  readAgainButton: 'Read them after all',
  countsHeading: 'First answer, from the counts alone',
  countsMore:
    'These are the first three parts of your report, as far as counting tells. Like for like, ages, pairs and vials take longer: the whole report takes their place.',
  answerHeading: 'Your season',
  done: 'Done. Your report stands below.',
  settingsSummary: 'Settings: what the answer rests on',
  worthLabel: 'Of 100 flowers, how many must take to be worth it?',
  worthHint: 'Left blank: half of what fresh pollen gives.',
  useOnLabel: 'Day on which the stored pollen is to be used',
  useOnHint: 'Left blank: one year after the last pollination.',
  endpointLegend: 'What counts as a fruit?',
  endpointInitial: 'Fruit that had set at the check',
  endpointFinal: 'Fruit that was harvested',
  flowersLegend: 'Flowers you expect next season, plant by plant',
  flowersHint: 'Left blank: in proportion to the flowers so far.',
  flowersFromFile: 'Flowers next season are taken from your file.',
  againButton: 'Work it out with these settings',
  wrongWorth: 'How many must take needs a number above 0 and below 100.',
  wrongUseOn: 'The day of use needs a day that exists, as YYYY-MM-DD.',
  wrongFlowers: (plant: string): string => `The flowers of ${plant} need a whole number from 0 up.`,
  changed: 'The settings or files were changed since this report was made.',
  saveHeading: 'Save it',
  saveReport: 'Save the report',
  saveSettings: 'Save the settings',
  saveFlowers: 'Save the flowers as a file',
  saveCrosses: 'Save the crosses, cleaned',
  saveVials: 'Save the vials, cleaned',
  saved: (name: string): string => `${name} was handed to your browser to save.`,
  fault: (cause: string): string =>
    `Something went wrong inside fruitodds: ${cause}. This is a fault of the program, not of your files.`,
  promiseHeading: 'Where your file goes',
  promise: [
    'Your file is read and worked out in this browser. The page’s program sends nothing and opens no other page, and a rule in the page has the browser refuse the usual ways to load or send. It keeps nothing: after a reload, or when you leave the page, you choose your files anew.',
    'That rule binds this page and no more, and it does not close every way: a changed program could still open another address. It cannot bind your browser’s extensions, its makers, or other programs on this computer, and it does not hold in a copy that somebody changed: take the page from a source you trust. What you save lies where your browser puts it.',
  ],
} as const;
