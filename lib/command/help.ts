import { OPTION_RULES, type OptionRule } from './option-rules.ts';

const WIDTH = 24;

function optionLine({ name, value, choices, help }: OptionRule): string {
  const option = value ? `--${name} ${value}` : `--${name}${choices ? '[=LEVEL]' : ''}`;
  return option.length < WIDTH
    ? `  ${option.padEnd(WIDTH)}${help}`
    : `  ${option}\n  ${' '.repeat(WIDTH)}${help}`;
}

/** What `fruitodds --help` prints: the commands, an example of each, and the options of this version. */
export function helpText(): string {
  const options = OPTION_RULES.filter(({ later }) => !later).map(optionLine);
  return `fruitodds: fruit set of hand pollination, from a season's spreadsheet to a report.

  fruitodds check FILE…                 what is wrong in the files, line by line
  fruitodds analyse FILE…               the numbers: fruit set, fresh against stored, vials
  fruitodds report FILE… -o OUT.html    the report, one page to read, print or mail
  fruitodds site FILE… -o FOLDER        all pages about the season, with downloads
  fruitodds sheet FILE… -o OUT.html     next season's plan, flower by flower, to print; OUT.csv: to fill in
  fruitodds clean FILE… -o FOLDER       the files as they were understood, clean, with a description
  fruitodds template -o FOLDER          empty files to fill, the columns explained, an example

Files are CSV or .xlsx; what a file holds is told by its columns. - reads standard input. For instance:

  fruitodds check crosses.csv --vials vials.csv
  fruitodds report crosses.csv --vials vials.csv --flowers flowers.csv -o report.html

Options (defaults in brackets):
${options.join('\n')}

Exit status: 0 fine; 1 done, with errors or warnings in the files; 2 nothing could be done.
`;
}
