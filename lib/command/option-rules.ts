/** Every option of the command, as the command line and `--help` know it; what each is for stands in `words/help.ts`. */

import type { helpWords } from '../words/help.ts';

/** One option as the command line and `--help` know it. */
export interface OptionRule {
  readonly name: string;
  /** What stands for its value in the help; without it the option is a flag. */
  readonly value?: string;
  readonly repeatable?: true;
  /** What a flag may be given besides; bare it means the first. */
  readonly choices?: readonly string[];
  /** Planned, but refused by this version. */
  readonly later?: true;
}

/** An option of ours: one that `--help` has a line for. */
export interface KnownOption extends OptionRule {
  readonly name: keyof typeof helpWords.option;
}

export const OPTION_RULES: readonly KnownOption[] = [
  { name: 'vials', value: 'FILE', repeatable: true },
  { name: 'flowers', value: 'FILE', repeatable: true },
  { name: 'json' },
  { name: 'csv' },
  {
    name: 'output',
    value: 'OUT',
  },
  {
    name: 'use-on',
    value: 'DATE',
  },
  {
    name: 'as-of',
    value: 'DATE',
  },
  { name: 'date-order', value: 'ORDER' },
  {
    name: 'date-system',
    value: 'YEAR',
  },
  {
    name: 'map',
    value: '"HEADER=column"',
    repeatable: true,
  },
  {
    name: 'same',
    value: '"A=B"',
    repeatable: true,
  },
  {
    name: 'storage',
    value: '"WORD=method"',
    repeatable: true,
  },
  { name: 'level', value: 'LEVEL' },
  {
    name: 'endpoint',
    value: 'ENDPOINT',
  },
  { name: 'age-scale', value: 'SCALE' },
  {
    name: 'worth',
    value: 'P',
  },
  {
    name: 'same-plants',
  },
  {
    name: 'mix',
    value: 'MIX',
  },
  {
    name: 'must',
    value: '"A x B=2"',
    repeatable: true,
  },
  {
    name: 'at-most',
    value: '"A=5"',
    repeatable: true,
  },
  { name: 'settings', value: 'FILE' },
  { name: 'save-settings', value: 'FILE' },
  {
    name: 'language',
    value: 'LANGUAGE',
  },
  {
    name: 'anonymous',
    choices: ['codes', 'summary'],
  },
  {
    name: 'key',
    value: 'FILE',
  },
  { name: 'help' },
  { name: 'version' },
];
