/** What is wrong with a whole file, and what to do about it, in English. */

import type { FileProblemCode } from '../season/problems.ts';
import type { Problem } from '../season/season.ts';
import { cited, dateOrderName, type ProblemSentence } from './problem-sentence.ts';

const column = ({ column: header }: Problem): string => `The column ${cited(header)}`;

/** "21 MB", in millions of bytes, rounded up so that what is too large never looks as if it fitted. */
const megabytes = (bytes: string | number | undefined): string => `${Math.ceil(Number(bytes) / 1e6)} MB`;
/** The option that reads a header as one of our columns, as it is typed. */
const mapOption = (header: string | number | null, name: string | number): string =>
  `--map "${header}=${name}"`;

/** "Zoë", "Königin" and 12 more */
const citedList = ({ cells, more }: Problem['details']): string => {
  const shown = String(cells).split('\n').map(cited).join(', ');
  return more ? `${shown} and ${more} more` : shown;
};

/** Files of our own that hold no flowers. */
const OWN_FILES: Readonly<Record<string, string>> = {
  findings: 'a list of findings (check or clean)',
  columns: 'the table that explains the columns (template)',
  description: 'the description of cleaned files (clean)',
  results: 'a result as JSON',
  key: 'the key of a coded copy: keep it to yourself',
};

/** What a file is that is no table. */
const FORMATS: Readonly<Record<string, string>> = {
  pdf: 'a PDF document',
  html: 'a web page',
  json: 'JSON',
  rtf: 'a text document (RTF)',
  picture: 'a picture',
  document: 'a document (.docx, .doc, .odt)',
  slides: 'slides (.pptx, .ppt, .odp)',
  archive: 'a packed folder (.zip)',
};

/** Sheets of other programs. */
const SHEETS: Readonly<Record<string, string>> = {
  xls: 'an older workbook (.xls)',
  xlsb: 'a binary workbook (.xlsb)',
  ods: 'an OpenDocument sheet (.ods)',
  numbers: 'a Numbers sheet (.numbers)',
};

/** Why the dates of a column have an order: what one of them cannot be, and which number is the year. */
const orderEvidence = ({ value, details: { order, row, rival, byYear } }: Problem): string =>
  [
    ...(rival ? [`${cited(value)} in row ${row} cannot be ${dateOrderName(rival)}`] : []),
    ...(byYear === 'yes'
      ? [`the ${order === 'ymd' ? 'first' : 'last'} number changes least, as a year does`]
      : []),
  ].join(' and ');

const KINDS: Readonly<Record<string, string>> = {
  crosses: 'crosses file',
  vials: 'vials file',
  flowers: 'flowers file',
};

/** Sentence and fix of each code that concerns a whole file. */
export const FILE_PROBLEMS: Readonly<Record<FileProblemCode, ProblemSentence>> = {
  'file-empty': () => [
    'The file is empty.',
    'Look whether it is the right file: its headers stand in the first row, and one flower, vial or plant in each row below.',
  ],
  'file-too-large': ({ details }) => [
    `The file has ${megabytes(details.bytes)}; files of up to ${megabytes(details.most)} can be read.`,
    'Give the crosses of fewer seasons, or the sheet without its other columns and other sheets.',
  ],
  'file-repeated': ({ details }) => [
    `The file holds the same as ${details.earlier}, which has been read already.`,
    'Give each file once.',
  ],
  'no-rows': () => [
    'The file has headers but no rows below them.',
    'Write one row for each flower, vial or plant.',
  ],
  'nothing-entered': () => [
    'No flower has been entered yet: in every row the day of pollination and the outcome are blank.',
    'Fill in pollination_date when the pollen is put on, and outcome when it is seen: fruit, dropped, none, unknown (tag lost) or pending (too early to say).',
  ],
  'not-text': () => ['The file is not a text.', 'Save the sheet as CSV (UTF-8) and give that file.'],
  'spreadsheet-file': ({ details }) => [
    `The file is ${SHEETS[details.format] ?? 'of another program'}, and cannot be read here.`,
    'Open it in its own program, choose "Save as" or "Export" and .xlsx or CSV (UTF-8), and give that file.',
  ],
  'other-format': ({ details }) => [
    `The file is ${FORMATS[details.format]}, not a table, whatever it is called.`,
    'Open the list itself in its spreadsheet program, save it as .xlsx or CSV (UTF-8), and give that file.',
  ],
  'own-file': ({ details }) => [
    `The file was written by fruitodds and holds no flowers; it is passed over. It is ${OWN_FILES[details.own]}.`,
    'Nothing needs doing.',
  ],
  'workbook-broken': () => [
    'The workbook is damaged: it cannot be unpacked, or its parts are not what they should be.',
    'Open it in its spreadsheet program and save it again, as .xlsx or CSV (UTF-8).',
  ],
  'workbook-locked': () => [
    'The workbook is locked with a password.',
    'Open it in its spreadsheet program and save it without a password, or as CSV (UTF-8).',
  ],
  'workbook-too-large': ({ details }) => [
    `The workbook is too large: unpacked, it holds more than ${megabytes(details.most)} or ${Number(details.cells) / 1e6} million cells.`,
    'Save the sheet with the flowers alone as CSV (UTF-8), and give that file.',
  ],
  'rows-hidden': ({ details }) => [
    details.rows === 1
      ? 'One row of the sheet is hidden or filtered out, and is read as the others are.'
      : `${details.rows} rows of the sheet are hidden or filtered out, and are read as the others are.`,
    'Delete those that are not meant.',
  ],
  'cells-merged': ({ value }) => [
    `Cells that are joined over several rows (${cited(value)}) count for each of these rows.`,
    'Nothing needs doing if that is right.',
  ],
  'sheet-read': ({ details }) => [
    `The sheet ${cited(details.sheet)} of the workbook is read${details.others ? `; passed over: ${cited(details.others)}` : ''}.`,
    details.others
      ? 'If one of those is needed, write our names of the columns as its headers.'
      : 'Nothing needs doing.',
  ],
  'kind-unknown': ({ details }) => [
    `The file's columns (${cited(details.headers)}) are those of neither crosses, vials nor expected flowers.`,
    'Check that the first row holds the headers; a crosses file has cross_id, pollination_date, seed_parent, ' +
      'pollen_parent, storage and outcome. For other headers use --map "YOUR HEADER=column".',
  ],
  'kind-differs': ({ details }) => [
    `The file was given as the ${KINDS[details.said]}, but its columns are those of a ${KINDS[details.kind]}.`,
    details.kind === 'crosses'
      ? `Name it without --${details.said}, and give the ${KINDS[details.said]} there.`
      : `Give it with --${details.kind}, or without any option: a file's kind is told by its columns.`,
  ],
  'column-missing': ({ details }) => [
    `The ${KINDS[details.kind] ?? 'file'} has no column for ${details.column}, so none of its rows can be used.`,
    `Add a column ${details.column}, or say which of yours it is: ${mapOption(details.suggestion || 'YOUR HEADER', details.column)}.`,
  ],
  'column-unclear': ({ details }) => [
    details.same === 'yes'
      ? `Two columns are called ${cited(details.first)}, and each could be ${details.column}.`
      : `Both ${cited(details.first)} and ${cited(details.second)} could be ${details.column}.`,
    details.same === 'yes'
      ? 'Rename the one that is not meant.'
      : `Say which one is meant: ${mapOption(details.first, details.column)} or ${mapOption(details.second, details.column)}.`,
  ],
  'column-unknown': (problem) => [
    `${column(problem)} is not used.`,
    problem.details.suggestion
      ? `If it holds the ${problem.details.suggestion}, say so: ${mapOption(problem.column, problem.details.suggestion)}.`
      : `If it holds something that is needed, say what, with the name of one of our columns: ${mapOption(problem.column, 'column')}.`,
  ],
  'columns-unknown': ({ details }) => [
    `${details.more} more columns are not used.`,
    'Look whether the right separator and the right file were taken.',
  ],
  'column-without-header': ({ details }) => [
    `Column ${details.position} has cells but no header, and is not used.`,
    'Write a header above it, or empty it.',
  ],
  'column-guessed': (problem) => [
    `${column(problem)} is read as ${problem.details.column}.`,
    `If that is wrong, rename the column, or say what it is: ${mapOption(problem.column, 'column')}.`,
  ],
  'date-order-unclear': (problem) => {
    const { details, value } = problem;
    return [
      `${column(problem)} does not tell which number is the day: ${cited(value)} in row ${details.row} is ` +
        `${details.first} read as ${dateOrderName(details.firstOrder)}, but ${details.second} as ${dateOrderName(details.secondOrder)}.`,
      `Say which it is: --date-order ${details.firstOrder} or --date-order ${details.secondOrder}.`,
    ];
  },
  'date-order-mixed': (problem) => {
    const { details } = problem;
    return [
      `${column(problem)} mixes two ways of writing dates: ${cited(details.firstAgainst)} in row ${details.firstRow} ` +
        `cannot be ${dateOrderName(details.firstOrder)}, and ${cited(details.secondAgainst)} in row ${details.secondRow} ` +
        `cannot be ${dateOrderName(details.secondOrder)}.`,
      'Write all dates as YYYY-MM-DD. Or say which order holds, with --date-order: rows written otherwise are then left out.',
    ];
  },
  'date-order-decided': (problem) => [
    `Dates in ${cited(problem.column)} are read as ${dateOrderName(problem.details.order)}, since ${orderEvidence(problem)}.`,
    `If that is wrong, give --date-order.`,
  ],
  'date-order-from-neighbour': (problem) => [
    `Dates in ${cited(problem.column)} are read as ${dateOrderName(problem.details.order)}, as the file's other dates are.`,
    'If that is wrong, give --date-order or write the dates as YYYY-MM-DD.',
  ],
  'date-serial-read': ({ column: header, details, value }) => [
    `The column ${cited(header)} holds a spreadsheet's own numbers for days: ${cited(value)} in row ${details.row} is read as ${details.date}.`,
    details.system === 1900
      ? 'If all are four years too early, give --date-system 1904; else nothing needs doing.'
      : 'If all are four years too late, give --date-system 1900; else nothing needs doing.',
  ],
  'two-digit-years': (problem) => [
    `Years in ${cited(problem.column)} have two digits (${cited(problem.value)} in row ${problem.details.row}): ` +
      '00 to 69 are read as 2000 to 2069, 70 to 99 as 1970 to 1999.',
    'Write years with four digits.',
  ],
  'encoding-guessed': ({ details, value }) => [
    value === null
      ? `The file does not say how its letters are encoded; it is read as ${details.encoding}.`
      : `The file is not UTF-8; it is read as ${details.encoding}. Please look whether these are right: ${citedList(details)}.`,
    'If one looks wrong, save the sheet as CSV (UTF-8) or .xlsx.',
  ],
  'title-lines': ({ details, row }) => [
    `The headers are in row ${row}; ${details.titles === 1 ? 'one row' : `${details.titles} rows`} above ` +
      `${details.titles === 1 ? 'is' : 'are'} passed over.`,
    'Nothing needs doing if there is only a title.',
  ],
  'lines-quoted': () => [
    'Every line of the file stands in quotation marks as a whole; the lines are read as if these were not there.',
    'Nothing needs doing if that is right.',
  ],
  'table-sideways': () => [
    'The headers of the file stand in its first column, not in a row.',
    'Turn the table in the spreadsheet program (copy it, then paste it transposed), and save it again.',
  ],
  'parents-in-one': (problem) => [
    `${column(problem)} holds both parents in one cell, as in ${cited(problem.value)}.`,
    'Split it into two columns, seed_parent (the mother) and pollen_parent (the father).',
  ],
  'map-header-missing': ({ details, value }) => [
    `No file has a column ${cited(value)}, which was to be read as ${details.column}.`,
    'Check how the header is spelled in the file.',
  ],
  'storage-word-missing': ({ value, details }) => [
    `No file has a storage called ${cited(value)}, which was to be read as ${details.method}.`,
    'Check how the word is spelled in the files.',
  ],
  'same-name-missing': ({ value }) => [
    `No file has a plant called ${cited(value)}, which was said to be the same as another.`,
    'Check how the name is spelled in the file, capital letters and spaces too.',
  ],
};
