/** Every option of the command, as the command line and `--help` know it. */

/** One option as the command line and `--help` know it. */
export interface OptionRule {
  readonly name: string;
  /** What stands for its value in the help; without it the option is a flag. */
  readonly value?: string;
  readonly help: string;
  readonly repeatable?: true;
  /** What a flag may be given besides; bare it means the first. */
  readonly choices?: readonly string[];
  /** Planned, but refused by this version. */
  readonly later?: true;
}

export const OPTION_RULES: readonly OptionRule[] = [
  { name: 'vials', value: 'FILE', repeatable: true, help: 'the file of the vials of stored pollen' },
  { name: 'flowers', value: 'FILE', repeatable: true, help: 'the file of flowers expected next season' },
  { name: 'json', help: 'print the result as JSON' },
  { name: 'csv', help: 'with `check`: print what was found as CSV, one row a finding' },
  {
    name: 'output',
    value: 'OUT',
    help: 'where to write: a page for `report` and `sheet`, else a folder (also -o)',
  },
  {
    name: 'use-on',
    value: 'DATE',
    help: 'day on which stored pollen is to be used (one year after the last pollination)',
  },
  {
    name: 'as-of',
    value: 'DATE',
    help: 'day up to which things have happened (the latest date in the files)',
  },
  { name: 'date-order', value: 'ORDER', help: 'how dates such as 03/04/2025 are meant: dmy, mdy or ymd' },
  {
    name: 'date-system',
    value: 'YEAR',
    help: 'from which year a spreadsheet counts its own numbers for days: 1900 or 1904 (1900)',
  },
  {
    name: 'map',
    value: '"HEADER=column"',
    repeatable: true,
    help: 'read a header of yours as one of the columns',
  },
  {
    name: 'same',
    value: '"A=B"',
    repeatable: true,
    help: 'two names of one plant; the first is kept',
  },
  { name: 'level', value: 'LEVEL', help: 'level of the ranges (0.95)' },
  {
    name: 'endpoint',
    value: 'ENDPOINT',
    help: 'initial: fruits at the check; final: fruits harvested (initial)',
  },
  { name: 'age-scale', value: 'SCALE', help: 'scale of pollen age: days or log1p-days' },
  {
    name: 'worth',
    value: 'P',
    help: 'lowest fruit set worth a flower, such as 0.2 (half that of fresh pollen)',
  },
  {
    name: 'same-plants',
    help: 'plants of different growers that have the same name are one plant',
  },
  {
    name: 'mix',
    value: 'MIX',
    help: 'of `sheet`: most-fruit, balanced or most-varieties (balanced)',
  },
  {
    name: 'must',
    value: '"A x B=2"',
    repeatable: true,
    help: 'plan: the cross A × B gets at least 2 flowers',
  },
  {
    name: 'at-most',
    value: '"A=5"',
    repeatable: true,
    help: 'plan: at most 5 flowers get pollen of A; "A x B=5": of B on A',
  },
  { name: 'settings', value: 'FILE', help: 'take options from a file that was saved; those given here win' },
  { name: 'save-settings', value: 'FILE', help: 'save what was said about the files, for next year' },
  {
    name: 'language',
    value: 'LANGUAGE',
    help: 'language of pages, messages and the headers of `template`: en, de, es or fr (en)',
  },
  {
    name: 'anonymous',
    choices: ['codes', 'summary'],
    help: 'a coded copy for sharing; summary: nothing about single plants (codes)',
  },
  {
    name: 'key',
    value: 'FILE',
    help: 'where the key of coded copies is kept (fruitodds-key.json)',
  },
  { name: 'help', help: 'show this text (also -h)' },
  { name: 'version', help: 'show the version' },
];
