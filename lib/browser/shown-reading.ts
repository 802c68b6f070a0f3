/** What was read, as markup: files, columns, problems, and the questions that only the grower can answer. */

import type { Html } from '../notebook/html.ts';
import { html } from '../notebook/html.ts';
import { dataTable } from '../notebook/table.ts';
import { joined } from '../words/numbers.ts';
import { dateOrderQuestion, fileSaid, groupsLeft, kindSaid, OWN_SEASON } from '../words/own-season.ts';
import { OWN_SETTINGS } from '../words/own-settings.ts';
import type { ChosenFile } from './chosen-files.ts';
import type { FileReading, ProblemGroup, Reading } from './reading.ts';
import { type Answers, alikeKey } from './settings.ts';

/** How many groups of problems of one file are listed before the rest is only counted. */
const LISTED = 40;

/** The files chosen, each with a button to take it out, and why one could not be read. */
export function chosenList(files: readonly ChosenFile[]): Html {
  if (files.length === 0) return html``;
  return html`<ul class="files">${files.map(
    ({ name, refused }) => html`<li><span class="name">${name}</span>
<button type="button" data-remove="${name}" aria-label="${OWN_SEASON.remove(name)}">×</button>${
      refused === null ? '' : html`<p class="error">${refused}</p>`
    }</li>`,
  )}</ul>`;
}

function problemItem({ problem, message, also, fix }: ProblemGroup): Html {
  return html`<li class="${problem.severity}">${message} ${also} ${fix}</li>`;
}

function problemList(groups: readonly ProblemGroup[]): Html {
  if (groups.length === 0) return html`<p>${OWN_SEASON.nothingToMend}</p>`;
  const rest = groups.length - LISTED;
  return html`<ul>${groups.slice(0, LISTED).map(problemItem)}</ul>${
    rest > 0 ? html`<p>${groupsLeft(rest)}</p>` : ''
  }`;
}

function columnTable({ file, columns }: FileReading): Html | string {
  if (columns.length === 0) return '';
  const [theirs, ours] = OWN_SEASON.columnsHeads;
  return html`<details><summary>${OWN_SEASON.columnsSummary}</summary>${dataTable({
    caption: OWN_SEASON.columnsCaption,
    columns: [{ title: theirs }, { title: ours }],
    rows: columns
      .slice(0, 100)
      .map(({ header, column }) => [header === '' ? '–' : header, column ?? OWN_SEASON.notUsed]),
    source: file,
  })}</details>`;
}

/** What was read of each file. */
export function readFiles({ files }: Reading): Html {
  return html`${files.map(
    (file) => html`<h3 class="name">${file.file}</h3>
<p>${fileSaid(file)}</p>
${problemList(file.groups)}${columnTable(file)}`,
  )}`;
}

/** Why nothing could be counted, in the command's words; empty where it can or where a question says it better. */
export function refusalSaid({ refusal }: Reading): Html | string {
  if (refusal === null || refusal.code === 'question-open') return '';
  return html`<p class="error">${refusal.message} ${refusal.fix}</p>`;
}

const FILE_KINDS = ['crosses', 'vials', 'flowers'] as const;

type Choice = readonly [value: string, label: string];

function radios(name: string, question: string, choices: readonly Choice[], chosen: string | null): Html {
  return html`<fieldset><legend>${question}</legend>${choices.map(([value, label]) => {
    const checked = value === chosen ? html` checked` : '';
    return html`<label class="choice"><input type="radio" name="${name}" value="${value}"${checked}> <span>${label}</span></label>`;
  })}</fieldset>`;
}

/** One select; `data-column` says which column it asks for. */
function columnSelect(column: string, file: FileReading): Html {
  const headers = file.columns.filter(({ header }) => header !== '').map(({ header }) => header);
  const options = headers.map((header) => html`<option value="${header}">${header}</option>`);
  return html`<label class="field">${OWN_SEASON.columnQuestion(column, file.file)}
<select data-column="${column}"><option value="">${OWN_SEASON.noColumn}</option>${options}</select></label>`;
}

function fileQuestions(file: FileReading, at: number): readonly Html[] {
  if (file.kind === 'unknown') {
    if (file.columns.length === 0) return [];
    const choices = FILE_KINDS.map((kind): Choice => [kind, kindSaid(kind)]);
    return [
      html`<div data-file="${file.file}">${radios(`kind-${at}`, OWN_SEASON.kindQuestion(file.file), choices, null)}</div>`,
    ];
  }
  return [
    ...file.missing.map((column) => columnSelect(column, file)),
    ...file.unclear.map(
      ({ column, headers }, i) =>
        html`<div data-column="${column}">${radios(
          `unclear-${at}-${i}`,
          OWN_SEASON.columnQuestion(column, file.file),
          [...new Set(headers)].map((header): Choice => [header, header]),
          null,
        )}</div>`,
    ),
  ];
}

/** Names that look alike are asked for a few at a time: each answer may make others needless. */
const ALIKE_ASKED = 5;

function alikeQuestions({ alike }: Reading, { apart }: Answers): readonly Html[] {
  const open = alike.filter(([kept, other]) => !apart.has(alikeKey(kept, other)));
  return open.slice(0, ALIKE_ASKED).map(([kept, other], i) => {
    const answers: readonly Choice[] = [
      ['yes', OWN_SETTINGS.alikeYes(kept)],
      ['no', OWN_SETTINGS.alikeNo],
    ];
    const question = radios(`alike-${i}`, OWN_SETTINGS.alike(kept, other), answers, null);
    return html`<div data-kept="${kept}" data-other="${other}">${question}</div>`;
  });
}

/** The questions that only the grower can answer; none where all is clear. */
export function questionsAsked(reading: Reading, answers: Answers): readonly Html[] {
  const { dateQuestion, sameNames, files } = reading;
  const order = dateQuestion && dateOrderQuestion(dateQuestion);
  const same: readonly Choice[] = [
    ['no', OWN_SEASON.sameNo],
    ['yes', OWN_SEASON.sameYes],
  ];
  const names = joined([...sameNames.slice(0, 5), ...(sameNames.length > 5 ? ['…'] : [])]);
  return [
    ...files.flatMap(fileQuestions),
    ...alikeQuestions(reading, answers),
    ...(order ? [radios('date-order', order.question, order.answers, null)] : []),
    ...(sameNames.length === 0
      ? []
      : [radios('same-plants', OWN_SEASON.sameNames(names), same, answers.samePlants ? 'yes' : 'no')]),
  ];
}
