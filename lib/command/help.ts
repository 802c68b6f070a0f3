import type { Words } from '../words/languages.ts';
import { type KnownOption, OPTION_RULES } from './option-rules.ts';

/** Where what is said of an option, or of a command, begins. */
const WIDTH = { option: 24, command: 38 };

/** Names of options fit as they are; what stands for a value is longer in some languages. */
function line(typed: string, said: string, width: number): string {
  return typed.length < width
    ? `  ${typed.padEnd(width)}${said}`
    : `  ${typed}\n  ${' '.repeat(width)}${said}`;
}

function optionLine({ name, value, choices }: KnownOption, { helpWords, placeholder }: Words): string {
  const level = choices ? `[=${placeholder('LEVEL')}]` : '';
  const option = value ? `--${name} ${placeholder(value)}` : `--${name}${level}`;
  return line(option, helpWords.option[name], WIDTH.option);
}

function commandLines({ helpWords: { commands }, placeholder }: Words): string[] {
  const [files, out, folder] = [`${placeholder('FILE')}…`, placeholder('OUT'), placeholder('FOLDER')];
  const typed = [
    [`check ${files}`, commands.check],
    [`analyse ${files}`, commands.analyse],
    [`report ${files} -o ${out}.html`, commands.report],
    [`site ${files} -o ${folder}`, commands.site],
    [`sheet ${files} -o ${out}.html`, commands.sheet],
    [`clean ${files} -o ${folder}`, commands.clean],
    [`template -o ${folder}`, commands.template],
  ] as const;
  return typed.map(([words, said]) => line(`fruitodds ${words}`, said, WIDTH.command));
}

/** What `fruitodds --help` prints: the commands, an example of each, and the options of this version. */
export function helpText(words: Words): string {
  const { title, files, options, status } = words.helpWords;
  const rules = OPTION_RULES.filter(({ later }) => !later).map((rule) => optionLine(rule, words));
  return `${title}

${commandLines(words).join('\n')}

${files}

  fruitodds check crosses.csv --vials vials.csv
  fruitodds report crosses.csv --vials vials.csv --flowers flowers.csv -o report.html

${options}
${rules.join('\n')}

${status}
`;
}
