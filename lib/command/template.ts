import { COLUMNS, KINDS, type KnownKind } from '../season/columns.ts';
import { csvText } from '../season/csv-text.ts';
import { EXPLAINED_COLUMNS } from '../season/own-files.ts';
import type { SeasonText } from '../season/write-season.ts';
import { columnHeader, type HeaderLanguage } from '../words/column-headers.ts';
import { COLUMN_WORDS } from '../words/column-words.ts';
import { joined } from '../words/numbers.ts';
import { Failure } from './failure.ts';
import { orFail } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { EXAMPLE } from './template-example.ts';
import type { World } from './world.ts';
import { standing, writeFolder } from './write-out.ts';

type Row = Readonly<Record<string, string>>;

/** A file with headers in a language and some rows, each told by our own names of columns. */
function sheetText(kind: KnownKind, language: HeaderLanguage, rows: readonly Row[] = []): string {
  const names = COLUMNS[kind].map(({ name }) => name);
  const headers = names.map((name) => columnHeader(name, language));
  return csvText([headers, ...rows.map((row) => names.map((name) => row[name] ?? ''))]);
}

/** Every column of every file: its header, whether it is needed, what it holds and how it is written. */
function explainedText(language: HeaderLanguage): string {
  const rows = KINDS.flatMap((kind) =>
    COLUMNS[kind].map(({ name, required }) => {
      const { holds, write, example } = COLUMN_WORDS[kind].get(name)!;
      const header = columnHeader(name, language);
      return [`${kind}.csv`, header, name, required ? 'yes' : 'no', holds, write, example];
    }),
  );
  return csvText([EXPLAINED_COLUMNS, ...rows]);
}

/** Empty files to fill, their columns explained, and a filled example of each. */
export function templateFiles(language: HeaderLanguage): SeasonText[] {
  return [
    ...KINDS.map((kind) => ({ name: `${kind}.csv`, text: sheetText(kind, language) })),
    { name: 'columns-explained.csv', text: explainedText(language) },
    ...KINDS.map((kind) => ({ name: `example-${kind}.csv`, text: sheetText(kind, language, EXAMPLE[kind]) })),
  ];
}

function writeOne(file: string, text: string, world: World): void {
  if (standing(file, world) !== null) throw new Failure('output-exists', { file });
  orFail('output-not-writable', file, () => world.write(file, text));
}

/** The command `template`: an empty crosses file printed or written, or a folder with all files and an example. */
export function template({ output, language, json }: CommandLine, world: World): 0 {
  const files = templateFiles(language ?? 'en');
  const [crosses] = files;
  if (output === undefined) {
    world.print(crosses!.text);
    return 0;
  }
  const single = /\.csv$/i.test(output);
  if (single) writeOne(output, crosses!.text, world);
  else writeFolder(output, files, world);
  const written = single ? [output] : files.map(({ name }) => name);
  if (json) world.print(`${JSON.stringify({ folder: single ? null : output, written }, null, 2)}\n`);
  else world.print(single ? `Wrote ${output}.\n` : `Wrote to ${output}: ${joined(written)}.\n`);
  return 0;
}
