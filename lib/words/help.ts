/** What `fruitodds --help` says. */

/** Its lines, and what stands for a value that is to be given. */
export const helpWords = {
  title: 'fruitodds: fruit set of hand pollination, from a season’s spreadsheet to a report.',
  commands: {
    check: 'what is wrong in the files, line by line',
    analyse: 'the numbers: fruit set, fresh against stored, vials',
    report: 'the report, one page to read, print or mail',
    site: 'all pages about the season, with downloads',
    sheet: 'next season’s plan, flower by flower, to print; OUT.csv: to fill in',
    clean: 'the files as they were understood, clean, with a description',
    template: 'empty files to fill, the columns explained, an example',
  },
  files:
    'Files are CSV or .xlsx; what a file holds is told by its columns. - reads standard input. For instance:',
  options: 'Options (defaults in brackets):',
  option: {
    vials: 'the file of the vials of stored pollen',
    flowers: 'the file of flowers expected next season',
    json: 'print the result as JSON',
    csv: 'with `check`: print what was found as CSV, one row a finding',
    output: 'where to write: a page for `report` and `sheet`, else a folder (also -o)',
    'use-on': 'day on which stored pollen is to be used (one year after the last pollination)',
    'as-of': 'day up to which things have happened (the latest date in the files)',
    'date-order': 'how dates such as 03/04/2025 are meant: dmy, mdy or ymd',
    'date-system': 'from which year a spreadsheet counts its own numbers for days: 1900 or 1904 (1900)',
    map: 'read a header of yours as one of the columns',
    same: 'two names of one plant; the first is kept',
    storage: 'read a word of yours for storage as fresh, room, refrigerated or frozen',
    level: 'level of the ranges (0.95)',
    endpoint: 'initial: fruits at the check; final: fruits harvested (initial)',
    'age-scale': 'scale of pollen age: days or log1p-days',
    worth: 'lowest fruit set worth a flower, such as 0.2 (half that of fresh pollen)',
    'same-plants': 'plants of different growers that have the same name are one plant',
    mix: 'of `sheet`: most-fruit, balanced or most-varieties (balanced)',
    must: 'plan: the cross A × B gets at least 2 flowers',
    'at-most': 'plan: at most 5 flowers get pollen of A; "A x B=5": of B on A',
    settings: 'take options from a file that was saved; those given here win',
    'save-settings': 'save what was said about the files, for next year',
    language: 'language of pages, messages and the headers of `template`: en, de, es or fr (en)',
    anonymous: 'a coded copy for sharing; summary: nothing about single plants (codes)',
    key: 'where the key of coded copies is kept (fruitodds-key.json)',
    help: 'show this text (also -h)',
    version: 'show the version',
  },
  status: 'Exit status: 0 fine; 1 done, with errors or warnings in the files; 2 nothing could be done.',
};

/** What stands for a value of an option, such as FILE, in the language; as it is where no word of one stands in it. */
export function placeholder(typed: string): string {
  return typed;
}
