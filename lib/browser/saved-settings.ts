import { VERSION } from '../version.ts';
import type { Job } from './messages.ts';
import type { Reading } from './reading.ts';

type Task = Omit<Job, 'number'>;

/** A word of a command line as most shells read it. */
function shellWord(word: string): string {
  return /^[\w./=:-]+$/.test(word) ? word : `"${word.replaceAll(/["\\$`]/g, '\\$&')}"`;
}

/** The options of the command that make it do the same. */
function optionWords({ read, analyse }: Task): string[] {
  const { useOn, worth, samePlants } = analyse ?? {};
  return [
    ...read.map.flatMap(([header, column]) => ['--map', `${header}=${column}`]),
    ...(read.dateOrder ? ['--date-order', read.dateOrder] : []),
    ...(read.endpoint === 'final' ? ['--endpoint', 'final'] : []),
    ...(useOn === undefined ? [] : ['--use-on', useOn]),
    ...(worth === undefined ? [] : ['--worth', String(worth)]),
    ...(samePlants ? ['--same-plants'] : []),
  ];
}

/** The option under which the command is told what kind of file it is; a crosses file needs none. */
function fileWords({ sources }: Task): string[] {
  return sources.flatMap(({ name, kind }) =>
    kind === 'vials' || kind === 'flowers' ? [`--${kind}`, name] : [name],
  );
}

/**
 * The settings of a report as a file: which files, which options, and the command that makes the same report.
 *
 * @param task what was done
 * @param reading what was read of its files
 * @returns JSON with `version`, `files`, `options` and `command`
 */
export function settingsText(task: Task, reading: Reading): string {
  const { read, analyse } = task;
  const settings = {
    version: VERSION,
    files: reading.files.map(({ file, kind, sha256 }) => ({ file, kind, sha256 })),
    options: { ...read, map: read.map.map(([header, column]) => ({ header, column })), ...analyse },
    command: [
      'npx fruitodds report',
      ...[...fileWords(task), ...optionWords(task)].map(shellWord),
      '-o report.html',
    ].join(' '),
  };
  return `${JSON.stringify(settings, null, 2)}\n`;
}
