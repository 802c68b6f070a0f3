/** fruitodds: the grower's door. Reads the command line, runs one command, answers with an exit status. */

import { Failure } from './command/failure.ts';
import { helpText } from './command/help.ts';
import { orFail, refuseOverwriting } from './command/open-season.ts';
import { type CommandLine, readCommandLine } from './command/options.ts';
import { openSettings, refuseOverSettings } from './command/settings-file.ts';
import type { World } from './command/world.ts';
import { VERSION } from './version.ts';
import type { Language } from './words/language.ts';
import { LANGUAGES, type Words, wordsIn } from './words/languages.ts';

/** 0: fine; 1: done, with errors or warnings in the files; 2: nothing could be done. */
export type ExitStatus = 0 | 1 | 2;

/** Each command is loaded when it is asked for, so that `--help` and `check` start fast. */
async function runCommand(line: CommandLine, world: World, words: Words): Promise<ExitStatus> {
  switch (line.command) {
    case 'check':
      return (await import('./command/check.ts')).check(line, world, words);
    case 'analyse':
      return (await import('./command/analyse.ts')).analyseFiles(line, world, words);
    case 'report':
      return (await import('./command/report.ts')).report(line, world, words);
    case 'site':
      return (await import('./command/site.ts')).site(line, world, words);
    case 'sheet':
      return (await import('./command/sheet.ts')).sheet(line, world, words);
    case 'clean':
      return (await import('./command/clean.ts')).clean(line, world, words);
    case 'template':
      return (await import('./command/template.ts')).template(line, world, words);
  }
}

/** Settings are saved once the command is done: what it refused is not worth keeping. */
async function runAndSave(line: CommandLine, world: World, words: Words): Promise<ExitStatus> {
  const { saveSettings } = line;
  if (saveSettings === undefined) return runCommand(line, world, words);
  const { name, text } = saveSettings;
  refuseOverwriting(line, name, world);
  refuseOverSettings(name, world);
  const status = await runCommand(line, world, words);
  orFail('output-not-writable', name, () => world.write(name, text));
  world.warn(`${words.commandWords.savedSettings(name)}\n`);
  return status;
}

/** What V8 says where a text would be longer than any can be, some 500 million letters. */
const TOO_LONG = 'Invalid string length';

function failureOf(error: unknown): Failure {
  if (error instanceof Failure) return error;
  if (error instanceof RangeError && error.message === TOO_LONG) return new Failure('answer-too-long');
  return new Failure('internal-fault', { cause: error instanceof Error ? error.message : String(error) });
}

function tell(
  { code, details, files }: Failure,
  json: boolean,
  world: World,
  { failureWords, headed }: Words,
): ExitStatus {
  const words = failureWords(code, details);
  if (json) {
    const error = { code, ...words };
    world.print(`${JSON.stringify(files === null ? { error } : { error, files }, null, 2)}\n`);
  }
  world.warn(`${headed('fruitodds', words.message)}\n${words.fix}\n`);
  return 2;
}

const known = (said: string | undefined): Language | undefined =>
  LANGUAGES.find((language) => language === said);

/** The language that a command line asks for, as far as it can be told before the line is understood. */
function languageAsked(argv: readonly string[]): Language | undefined {
  const at = argv.findIndex((word) => word === '--language' || word.startsWith('--language='));
  return at < 0 ? undefined : known(argv[at]!.split('=')[1] ?? argv[at + 1]);
}

/**
 * Runs the command.
 *
 * @param argv the words after `fruitodds`
 * @param world what it may read and where it may write; nothing else is touched
 * @returns the exit status; whatever happens is told on standard error and, with `--json`, as JSON
 */
export async function runFruitodds(argv: readonly string[], world: World): Promise<ExitStatus> {
  let language = languageAsked(argv);
  try {
    const line = readCommandLine(argv, (file) => {
      const settings = openSettings(file, world);
      language ??= known(settings.values.get('language')?.[0]);
      return settings;
    });
    const words = await wordsIn(language ?? 'en');
    if (line === 'help') world.print(helpText(words));
    else if (line === 'version') world.print(`${VERSION}\n`);
    else return await runAndSave(line, world, words);
    return 0;
  } catch (error) {
    return tell(failureOf(error), argv.includes('--json'), world, await wordsIn(language ?? 'en'));
  }
}
