/** What the command tells people besides its results. */

import type { SeasonFile } from '../season/season.ts';
import { fileSize } from './file-size.ts';
import { counted, joined, wholeNumber } from './numbers.ts';

const LABELS: ReadonlyMap<string, string> = new Map([
  ['results.json', 'All results, for programs (JSON)'],
  ['crosses.csv', 'The crosses as they were understood (CSV)'],
  ['vials.csv', 'The vials as they were understood (CSV)'],
  ['flowers.csv', 'The expected flowers as they were understood (CSV)'],
  ['datapackage.json', 'What the columns of these files mean (JSON)'],
  ['coded-crosses.csv', 'The crosses under codes, to be read again (CSV)'],
  ['coded-vials.csv', 'The vials under codes (CSV)'],
  ['coded-flowers.csv', 'The expected flowers under codes (CSV)'],
]);

/** Lines on standard output and standard error, and the names of downloads. */
export const commandWords = {
  working: 'Working…',
  wrote: (file: string): string => `Wrote ${file}.`,
  standardInput: 'standard input',
  /** Files in a folder; of cleaned ones also how many rows they hold. */
  wroteTo: (folder: string, names: readonly string[]): string => `Wrote to ${folder}: ${joined(names)}.`,
  wroteRows: (rows: number, folder: string, names: readonly string[]): string =>
    `Wrote ${counted(rows, 'row')} to ${folder}: ${joined(names)}.`,
  /** Empty where nothing is missing from them. */
  notWritten: (rows: number, columns: number): string => {
    const parts = [
      ...(rows > 0 ? [`${counted(rows, 'row')} with errors`] : []),
      ...(columns > 0 ? [`${counted(columns, 'column')} of your own`] : []),
    ];
    return parts.length === 0 ? '' : `Not in them: ${joined(parts)}; problems.csv names each.`;
  },
  keyKept: (file: string): string =>
    `The names are kept in ${file}: do not share it. Use it again for the next copy, with --key.`,
  savedSettings: (file: string): string =>
    `fruitodds: saved the settings to ${file}; next time give --settings ${file}`,
  wroteSite: (files: number, bytes: number, folder: string): string =>
    `Wrote ${counted(files, 'file')} (${fileSize(bytes)}) to ${folder}: open index.html in it.`,
  pageLeftOut: (page: string, packageName: string): string =>
    `fruitodds: the page ${page} was left out, since the package ${packageName} is not installed.`,
  useOnPast: (useOn: string, last: string): string =>
    `fruitodds: --use-on ${useOn} lies before the last pollination, ${last}: vials are advised on for a day that is past. ` +
    'Give a later --use-on, or take it out of the settings.',
  /** Empty where there are neither. */
  problems: (errors: number, warnings: number): string => {
    const parts = [
      ...(errors > 0 ? [counted(errors, 'error')] : []),
      ...(warnings > 0 ? [counted(warnings, 'warning')] : []),
    ];
    return parts.length === 0
      ? ''
      : `fruitodds: ${joined(parts)} in the files; fruitodds check names each of them.`;
  },
  mendFirst: 'Mend what check has named, and run it again.',
  downloadLabel: (name: string): string => LABELS.get(name) ?? name,
  chartFileLabel: (chart: string): string => `The chart “${chart}”, for programs (Vega-Lite)`,
};

/** What kind of file it is, by its columns. */
export function fileKind(kind: string): string {
  return kind === 'unknown' ? 'not one of our files' : kind;
}

/** What `check` says around what it found. */
export const checkWords = {
  rows: ({ kind, rows, used, leftOut }: Pick<SeasonFile, 'kind' | 'rows' | 'used' | 'leftOut'>): string =>
    `${fileKind(kind)}, ${counted(rows, 'row')}, ${wholeNumber(used)} used, ${wholeNumber(leftOut)} left out`,
  toMend: (fix: string): string => `To mend: ${fix}`,
  nothing: 'Nothing to mend.',
  errors: 'Errors: what they name is left out',
  warnings: 'Warnings: the rows are used',
  noticed: 'Noticed: nothing to mend if it is right',
  leftOut: 'Left out, by reason',
  leftOutFor: (rows: number, reason: string, listed: string): string =>
    `${counted(rows, 'row')}: ${reason}${listed && ` (${listed.includes(',') ? 'rows' : 'row'} ${listed})`}`,
  leftOutRow: (row: number, reason: string): string => `Row ${row} is left out: ${reason}`,
  mendOutcome: 'Nothing needs doing; once the outcome is known, write it.',
};
