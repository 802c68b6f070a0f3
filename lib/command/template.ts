import { COLUMNS, KINDS, type KnownKind } from '../season/columns.ts';
import { csvText } from '../season/csv-text.ts';
import { EXPLAINED_COLUMNS } from '../season/own-files.ts';
import type { SeasonText } from '../season/write-season.ts';
import { columnHeader } from '../words/column-headers.ts';
import type { Words } from '../words/languages.ts';
import { Failure } from './failure.ts';
import { orFail } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { exampleIn } from './template-example.ts';
import type { World } from './world.ts';
import { standing, writeFolder } from './write-out.ts';

type Row = Readonly<Record<string, string>>;

/** A file with headers in a language and some rows, each told by our own names of columns. */
function sheetText(kind: KnownKind, { languageWords }: Words, rows: readonly Row[] = []): string {
  const names = COLUMNS[kind].map(({ name }) => name);
  const headers = names.map((name) => columnHeader(name, languageWords.code));
  return csvText([headers, ...rows.map((row) => names.map((name) => row[name] ?? ''))]);
}

/** Every column of every file: its header, whether it is needed, what it holds and how it is written. */
function explainedText({ COLUMN_WORDS, languageWords, templateWords: said }: Words): string {
  const rows = KINDS.flatMap((kind) =>
    COLUMNS[kind].map(({ name, required }) => {
      const { holds, write, example } = COLUMN_WORDS[kind].get(name)!;
      const header = columnHeader(name, languageWords.code);
      return [`${kind}.csv`, header, name, said.needed[required ? 'yes' : 'no'], holds, write, example];
    }),
  );
  return csvText([EXPLAINED_COLUMNS[languageWords.code], ...rows]);
}

/** Empty files to fill, their columns explained, and a filled example of each. */
export function templateFiles(words: Words): SeasonText[] {
  const example = exampleIn(words.templateWords.notes);
  return [
    ...KINDS.map((kind) => ({ name: `${kind}.csv`, text: sheetText(kind, words) })),
    { name: 'columns-explained.csv', text: explainedText(words) },
    ...KINDS.map((kind) => ({ name: `example-${kind}.csv`, text: sheetText(kind, words, example[kind]) })),
  ];
}

function writeOne(file: string, text: string, world: World): void {
  if (standing(file, world) !== null) throw new Failure('output-exists', { file });
  orFail('output-not-writable', file, () => world.write(file, text));
}

/** The command `template`: an empty crosses file printed or written, or a folder with all files and an example. */
export function template({ output, json }: CommandLine, world: World, words: Words): 0 {
  const files = templateFiles(words);
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
  else {
    const { wrote, wroteTo } = words.commandWords;
    world.print(`${single ? wrote(output) : wroteTo(output, written)}\n`);
  }
  return 0;
}
