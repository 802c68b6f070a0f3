/** Why the command could do nothing, and what to do about it, in English. */

import { joined } from './numbers.ts';

/** What fills a sentence: the option, file or word that is meant. */
export type FailureDetails = Readonly<Record<string, string | number | null>>;

export interface FailureWords {
  readonly message: string;
  readonly fix: string;
}

type Sentence = (details: FailureDetails) => FailureWords;

const SEE_HELP = 'See fruitodds --help.';

function meant(nearest: string | number | null | undefined): string {
  return nearest ? `Did you mean ${nearest}? ` : '';
}

/** What an option's value must be, by the code of the rule it broke. */
const RULES: Readonly<Record<string, (allowed: string | number | null | undefined) => string>> = {
  'one-of': (allowed) => `Give one of: ${allowed}.`,
  date: () => 'Give a day that exists as YYYY-MM-DD, such as 2026-09-30.',
  share: (allowed) => `Give a number between 0 and 1, such as ${allowed ?? 0.2}.`,
  'file-name': () => 'Give the name of a file, such as report.html.',
  'storage-word': () => 'Write it as "YOUR WORD=method", such as --storage "cool box=refrigerated".',
  'header-map': () => 'Write it as "YOUR HEADER=column", such as --map "Mutter=seed_parent".',
  'same-names': () => 'Write it as "A=B", such as --same "Nocturna=nocturna"; the first name is kept.',
  must: () =>
    'Write the cross, seed parent first, and the fewest flowers, such as --must "Salt Moon x Copper Tide=2".',
  'at-most': () =>
    'Write a plant or a cross and the most flowers, such as --at-most "Copper Tide=5" or --at-most "Salt Moon x Copper Tide=1".',
  column: (allowed) =>
    `${meant(allowed)}What stands after the = must be one of our columns, such as seed_parent; fruitodds template -o FOLDER explains them all.`,
};

/** What a setting must be, by its form. */
const FORMS: Readonly<Record<string, string>> = {
  list: 'a list of texts, such as ["Mutter=seed_parent"]',
  flag: 'true, or leave it out',
  text: 'a text in quotation marks or a number, as on the command line',
};

/** Why the system refused to read or write, by its own code. */
const CAUSES: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is a file, not a folder',
  EACCES: 'you are not allowed to',
  EPERM: 'you are not allowed to',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'its name is too long',
};

function causeOf(cause: string | number | null | undefined): string {
  return CAUSES[String(cause)] ?? `the system says ${cause}`;
}

/** Where JSON breaks off, as far as it is known. */
function notJson(
  cause: FailureDetails[string] | undefined,
  line: FailureDetails[string] | undefined,
): string {
  if (cause === 'no-object') return ' (it holds no { … })';
  return line ? ` (line ${line})` : '';
}

const FAILURES = {
  'command-missing': () => ({
    message: 'Nothing was asked for.',
    fix: 'Name one of check, analyse, report, site, sheet, clean and template, for instance: fruitodds check crosses.csv',
  }),
  'command-unknown': ({ command, nearest }) => ({
    message: `There is no command "${command}".`,
    fix: `${meant(nearest)}The commands are check, analyse, report, site, sheet, clean and template.`,
  }),
  'file-not-expected': ({ file }) => ({
    message: `A template is made from nothing, but ${file} was named.`,
    fix: `To say where to write it, use -o: fruitodds template -o ${file}`,
  }),
  'file-missing': ({ command }) => ({
    message: `No file was named for ${command}.`,
    fix: `Name the crosses file, for instance: fruitodds ${command} crosses.csv (or - for standard input)`,
  }),
  'file-unreadable': ({ file, cause }) => ({
    message: `${file} can’t be read: ${causeOf(cause)}.`,
    fix: 'Check the name, the folder and whether you may read the file.',
  }),
  'standard-input-twice': () => ({
    message: 'Standard input (-) was named twice.',
    fix: 'Name - for one file only, and the other files by their names.',
  }),
  'option-unknown': ({ option, nearest }) => ({
    message: `There is no option ${option}.`,
    fix: meant(nearest) + SEE_HELP,
  }),
  'option-not-available': ({ option }) => ({
    message: `${option} is not available in this version.`,
    fix: `Leave it out. ${SEE_HELP}`,
  }),
  'option-not-for-command': ({ option, command, use }) => ({
    message: `The command ${command} takes no ${option}.`,
    fix: `Leave ${option} out, or use ${joined(String(use).split(', '), 'or')}.`,
  }),
  'options-exclude': ({ option, other }) => ({
    message: `${option} and ${other} can’t be had at once.`,
    fix: 'Leave one of them out.',
  }),
  'option-needs-value': ({ option, placeholder }) => ({
    message: `The option ${option} needs a value.`,
    fix: `Write ${option} ${placeholder}. ${SEE_HELP}`,
  }),
  'option-takes-no-value': ({ option, value }) => ({
    message: `The option ${option} takes no value, got "${value}".`,
    fix: `Write ${option} alone.`,
  }),
  'option-value': ({ option, value, rule, allowed, file }) => ({
    message: `The option ${option} can’t be "${value}"${file ? `, as ${file} has it` : ''}.`,
    fix: RULES[String(rule)]!(allowed),
  }),
  'option-twice': ({ option }) => ({
    message: `The option ${option} was given twice.`,
    fix: 'Give it once.',
  }),
  'plant-unknown': ({ option, plant, nearest }) => ({
    message: `${option} names ${plant}, which is a plant in none of the files.`,
    fix: `${meant(nearest)}Write the name as it stands in the files.`,
  }),
  'wish-unclear': ({ option, value }) => ({
    message: `${option} "${value}" can be read as two crosses, for there are plants of both pairs of names.`,
    fix: 'Give one of the plants another name in the files.',
  }),
  'wish-without-flowers': ({ option }) => ({
    message: `${option} is about the plan, and there is no plan without a flowers file.`,
    fix: 'Add --flowers and a file with the columns seed_parent and flowers, or leave the option out.',
  }),
  'question-open': ({ cause, remedy, questions }) => ({
    message: `${Number(questions ?? 1) > 1 ? `${questions} questions` : 'A question'} that only you can answer: ${cause}`,
    fix: String(remedy),
  }),
  'no-usable-row': ({ files, cause, remedy }) => ({
    message: `No row of ${files} can be used.${cause ? ` ${cause}` : ''}`,
    fix: remedy ? String(remedy) : 'Run fruitodds check on the files: it names what is wrong with every row.',
  }),
  'nothing-entered': ({ files, remedy }) => ({
    message: `No flower has been entered yet in ${files}.`,
    fix: String(remedy),
  }),
  'no-crosses': ({ files }) => ({
    message: `There is no crosses file among ${files}.`,
    fix: 'Name the file with one row a pollinated flower first. A file is known by its columns.',
  }),
  'no-usable-outcome': ({ rows }) => ({
    message: `None of the ${rows} rows has an outcome yet: all tags are lost, pending or controls.`,
    fix: 'Fill the column outcome with fruit, dropped or none once the flowers have been looked at.',
  }),
  'output-missing': ({ command }) => ({
    message: `It was not said where to write ${command === 'clean' ? 'the clean files' : `the ${command}`}.`,
    fix: `Add -o and a name, for instance: -o ${command === 'report' ? 'report.html' : command === 'sheet' ? 'sheet.html' : 'my-season'}`,
  }),
  'output-is-input': ({ file }) => ({
    message: `${file} is one of the files to be read, and would be overwritten.`,
    fix: 'Give another name to write to.',
  }),
  'input-in-site': ({ file, folder }) => ({
    message: `${file} is to be read and stands in ${folder}, which the site would replace.`,
    fix: 'Give the site a folder of its own, for instance: -o my-season',
  }),
  'site-not-ours': ({ folder, foreign }) => ({
    message: foreign
      ? `${folder} also holds ${foreign}, which no site made before has written there; it would be lost.`
      : `${folder} is a file, and a site needs a folder.`,
    fix: 'Move it out of the way, or give a new folder after -o, for instance: -o my-season',
  }),
  'output-other-kind': ({ file, command }) => ({
    message: `${file} has the name of another kind of file than ${command} writes.`,
    fix: `Give a name that ends in .html${command === 'sheet' ? ' (a page) or .csv (to fill in)' : ''}. For a PDF, print the page from the browser.`,
  }),
  'output-not-ours': ({ file }) => ({
    message: `${file} is there already and is no report, so it is not overwritten.`,
    fix: 'Give another name after -o, or move that file away.',
  }),
  'sheet-is-there': ({ file }) => ({
    message: `${file} is there already, and may be filled in, so it is not overwritten.`,
    fix: 'Give another name after -o, or move that file away.',
  }),
  'no-plan': ({ cause }) => ({
    message: `There is no plan to make a sheet of. ${cause}`,
    fix: 'Look at the flowers file and the vials file: a plan needs flowers, and pollen that can reach them.',
  }),
  'settings-not-json': ({ file, cause, line }) => ({
    message: `${file} holds no settings: it is not JSON${notJson(cause, line)}.`,
    fix: 'Save settings with --save-settings, and give that file.',
  }),
  'settings-version': ({ file, version }) => ({
    message: `${file} is not of the form of settings that this version reads: its "version" is ${version}, not 1.`,
    fix: 'Save settings again with --save-settings, or write "version": 1 into the file.',
  }),
  'settings-key-unknown': ({ file, key, nearest }) => ({
    message: `${file} sets "${key}", which is no setting.`,
    fix: `${meant(nearest)}Take it out, or correct it.`,
  }),
  'settings-value': ({ file, key, form }) => ({
    message: `${file} sets "${key}" to something that it can’t be.`,
    fix: `Write ${FORMS[String(form)]}.`,
  }),
  'settings-not-ours': ({ file }) => ({
    message: `${file} is there already and holds no settings, so it is not overwritten.`,
    fix: 'Give another name after --save-settings, or move that file away.',
  }),
  'output-exists': ({ file }) => ({
    message: `${file} is there already, and nothing is overwritten.`,
    fix: 'Give another name after -o.',
  }),
  'folder-not-empty': ({ folder }) => ({
    message: `${folder} holds something already, and nothing is overwritten.`,
    fix: 'Give a new folder after -o, for instance: -o new-season',
  }),
  'key-without-anonymous': () => ({
    message: 'The option --key names the key of a coded copy, and none is asked for.',
    fix: 'Add --anonymous, or leave --key out.',
  }),
  'summary-has-no-rows': () => ({
    message: 'A summary shows nothing about single plants, so there are no rows of it to write.',
    fix: 'Write --anonymous=codes, or use report, site or analyse.',
  }),
  'key-not-ours': ({ file }) => ({
    message: `${file} does not hold the key of a coded copy, so it is neither read nor replaced.`,
    fix: 'Give the file of your key after --key, or a new name, for instance: --key my-key.json',
  }),
  'key-shared': ({ file, folder }) => ({
    message: `${file} is the key that turns codes into names again, and would be shared with ${folder}.`,
    fix: 'Keep it elsewhere: give another place after --key.',
  }),
  'dates-too-far': ({ file }) => ({
    message: 'The dates can’t be moved together: they lie too far apart, or too far from those of the key.',
    fix: `Correct the dates, or begin a new key: --key with another name than ${file}.`,
  }),
  'leak-found': ({ file, place, what, value, more }) => ({
    message: `Nothing was written: ${file}, ${place}, would show ${what} “${value}”${more ? ` (and ${more} more)` : ''}.`,
    fix: 'This is a fault of the program, not of your files. Please report it, without the name that it shows.',
  }),
  'output-not-writable': ({ file, cause }) => ({
    message: `${file} can’t be written: ${causeOf(cause)}.`,
    fix: 'Check that the folder exists and that you may write there.',
  }),
  'answer-too-long': () => ({
    message:
      'The answer is longer than one text can be: too much was found in the files to write all of it at once.',
    fix: 'Mend what fruitodds check names first, or give fewer files at once; without --json the answer is shorter.',
  }),
  'internal-fault': ({ cause }) => ({
    message: `Something went wrong inside fruitodds: ${cause}.`,
    fix: 'This is a fault of the program, not of your files. Please report it with this message.',
  }),
} satisfies Readonly<Record<string, Sentence>>;

export type FailureCode = keyof typeof FAILURES;

/**
 * The sentences for a failure.
 *
 * @example
 * failureWords('option-unknown', { option: '--levle', nearest: '--level' }).fix; // 'Did you mean --level? …'
 */
export function failureWords(code: FailureCode, details: FailureDetails): FailureWords {
  const sentence: Sentence = FAILURES[code];
  return sentence(details);
}
