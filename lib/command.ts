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
async function runCommand(line: CommandLine, world: World): Promise<ExitStatus> {
  const words = await wordsIn(line.language ?? 'en');
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
      return (await import('./command/template.ts')).template(line, world);
  }
}

/** Settings are saved once the command is done: what it refused is not worth keeping. */
async function runAndSave(line: CommandLine, world: World): Promise<ExitStatus> {
  const { saveSettings } = line;
  if (saveSettings === undefined) return runCommand(line, world);
  const { name, text } = saveSettings;
  refuseOverwriting(line, name, world);
  refuseOverSettings(name, world);
  const status = await runCommand(line, world);
  orFail('output-not-writable', name, () => world.write(name, text));
  world.warn(`fruitodds: saved the settings to ${name}; next time give --settings ${name}\n`);
  return status;
}

function failureOf(error: unknown): Failure {
  if (error instanceof Failure) return error;
  return new Failure('internal-fault', { cause: error instanceof Error ? error.message : String(error) });
}

function tell(
  { code, details, files }: Failure,
  json: boolean,
  world: World,
  { failureWords }: Words,
): ExitStatus {
  const words = failureWords(code, details);
  if (json) {
    const error = { code, ...words };
    world.print(`${JSON.stringify(files === null ? { error } : { error, files }, null, 2)}\n`);
  }
  world.warn(`fruitodds: ${words.message}\n${words.fix}\n`);
  return 2;
}

/** The language that a command line asks for, as far as it can be told before the line is understood. */
function languageAsked(argv: readonly string[]): Language {
  const at = argv.findIndex((word) => word === '--language' || word.startsWith('--language='));
  const said = argv[at]?.split('=')[1] ?? argv[at + 1];
  return LANGUAGES.find((known) => at >= 0 && known === said) ?? 'en';
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
    const line = readCommandLine(argv, (file) => openSettings(file, world));
    if (line === 'help') world.print(helpText());
    else if (line === 'version') world.print(`${VERSION}\n`);
    else {
      language = line.language ?? 'en';
      return await runAndSave(line, world);
    }
    return 0;
  } catch (error) {
    return tell(failureOf(error), argv.includes('--json'), world, await wordsIn(language));
  }
}
