/** A notebook becomes a JavaScript module whose lines and columns are the notebook's own. */

import { type TransformFailure, transformSync } from 'esbuild';
import MarkdownIt from 'markdown-it';
import type { Fault } from '../fault.ts';
import { NotebookError } from '../fault.ts';
import { blankTypes, importLines } from './blank-types.ts';
import type { Notebook, Prose, Slot } from './cells.ts';
import { replaceSlots, slotsOf } from './cells.ts';
import { flatSource, namesDefined, namesMentioned } from './flat.ts';
import { ownFaults, translationOf, unequalSlots } from './translation.ts';

const markdown = new MarkdownIt({ html: false, typographer: false });

/** A slot's mark inside Markdown: two characters that no reader reserves, round its running number. */
const mark = (number: number): string => `\uE000${number}\uE001`;
const marks = /<p>\uE000(\d+)\uE001<\/p>\n?|\uE000(\d+)\uE001/g;

interface Section {
  readonly heading: string | null;
  /** The notebook's line of the heading. */
  readonly line: number;
  readonly id: string;
  readonly pieces: (string | { readonly slot: Slot; readonly block: boolean })[];
  readonly working: string[];
}

/**
 * Compiles a notebook that `checkNotebooks` found no fault in.
 *
 * Each opening fence becomes the first line of a function, its closing fence the return; types become spaces; the
 * prose is HTML already, with slots between, and stands after the last line.
 *
 * @param translation the same in another language: its prose stands between the notebook's cells, which then say
 * everything in that language
 * @param library whether cells find it by `libraryIn`, or bundled with the words of that language already
 * @returns the text of a module that exports `notebook`, a `CompiledNotebook`
 * @throws NotebookError for a slot or heading in a place where it cannot stand, and where the translation's slots are
 * not the notebook's
 */
export function compileNotebook(
  notebook: Notebook,
  translation: Notebook | null = null,
  library: 'spoken' | 'bundled' = 'spoken',
): string {
  const flat = flatSource(notebook);
  const lines = blankTypes(flat.source).split('\n');
  const defined: string[] = [];
  flat.cells.forEach((cell, index) => {
    const mentioned = namesMentioned(flat, index);
    const used = defined.filter((name) => mentioned.has(name));
    const own = namesDefined(flat, index);
    lines[cell.line - 1] = `const cell${index + 1} = async (given, { ${used.join(', ')} }) => {`;
    lines[cell.endLine - 1] = `return { ${own.join(', ')} }; };`;
    defined.push(...own);
  });
  const spoken = translation === null || library === 'bundled';
  const language = spoken ? null : translationOf(translation.file)!.language;
  lines[0] = imported(importLines(flat.source), language).join(' ');
  const sections = translation === null ? sectionsOf(notebook) : sectionsIn(notebook, translation);
  const code = `${lines.join('\n')}\n${exportText(notebook, translation, withoutEmpty(sections))}`;
  refuseBrokenSyntax(notebook, code);
  return code;
}

/** The imports of cells; in a language the library's names come from its own words and charts. */
function imported(lines: readonly string[], language: string | null): string[] {
  if (language === null) return [...lines];
  const names = lines.flatMap((line) => {
    const [, named] = /^import \{ (.*) \} from "fruitodds";$/.exec(line) ?? [];
    return named === undefined ? [] : [named.replaceAll(' as ', ': ')];
  });
  return [
    `import { libraryIn } from "fruitodds/in-language.js"; import * as words from "fruitodds/words/${language}.js";`,
    ...lines.filter((line) => !line.endsWith(' from "fruitodds";')),
    `const { ${names.join(', ')} } = libraryIn(words);`,
  ];
}

function exportText(notebook: Notebook, translation: Notebook | null, sections: readonly Section[]): string {
  const { name, file, order, summary, plan, parts } = notebook;
  const { title, description, file: textFile } = translation ?? notebook;
  const language = translation === null ? 'en' : translationOf(translation.file)!.language;
  const cells = parts
    .filter((part) => part.kind === 'cell')
    .map(({ line }, index) => `{ line: ${line}, run: cell${index + 1} }`);
  const texts = sections.map(({ heading, id, pieces, working }) => {
    const list = pieces.map((piece) => (typeof piece === 'string' ? JSON.stringify(piece) : slotText(piece)));
    const own = JSON.stringify({ heading, id, working }).slice(1, -1);
    return `{ ${own}, pieces: [\n${list.join(',\n')}\n] }`;
  });
  return `export const notebook = { ${JSON.stringify({ name, file, textFile, language, title, description, order, summary, plan }).slice(1, -1)},
url: import.meta.url,
cells: [${cells.join(', ')}],
sections: [${texts.join(',\n')}] };
`;
}

function slotText({ slot, block }: { slot: Slot; block: boolean }): string {
  const name = slot.expression.split('.')[0];
  return `{ value: ({ ${name} }) => ${slot.expression}, ${JSON.stringify({ ...slot, block }).slice(1)}`;
}

function sectionsOf(notebook: Notebook): Section[] {
  const sections: Section[] = [{ heading: null, line: 1, id: 'opening', pieces: [], working: [] }];
  const faults: Fault[] = [];
  for (const part of notebook.parts) {
    if (part.kind === 'cell') sections.at(-1)!.working.push(part.lines.join('\n'));
    else addProse(notebook.file, part, sections, faults);
  }
  if (faults.length > 0) throw new NotebookError(faults);
  return sections;
}

function withoutEmpty(sections: readonly Section[]): Section[] {
  return sections.filter(
    ({ heading, pieces, working }) => heading !== null || pieces.length + working.length > 0,
  );
}

/** The sections of a translation, each with the working of its twin. */
function sectionsIn(notebook: Notebook, translation: Notebook): Section[] {
  const [theirs, own] = [sectionsOf(notebook), sectionsOf(translation)];
  const slotted = (sections: readonly Section[]) =>
    sections.map(({ heading, line, pieces }) => ({
      ...{ heading, line },
      slots: pieces.flatMap((piece) => (typeof piece === 'string' ? [] : [piece.slot])),
    }));
  const faults = [
    ...ownFaults(translation, notebook.file),
    ...unequalSlots(translation.file, slotted(own), slotted(theirs), notebook.file),
  ];
  if (faults.length > 0) throw new NotebookError(faults);
  return own.map((section, at) => ({ ...section, working: theirs[at]!.working }));
}

function addProse(file: string, prose: Prose, sections: Section[], faults: Fault[]): void {
  const slots = slotsOf(prose);
  const environment = {};
  const tokens = markdown.parse(replaceSlots(prose, mark), environment);
  const seen = new Set<number>();
  let from = 0;
  const flush = (to: number): void => {
    const rendered = markdown.renderer.render(tokens.slice(from, to), markdown.options, environment);
    sections.at(-1)!.pieces.push(...piecesOf(rendered, slots, seen));
  };
  tokens.forEach((token, index) => {
    if (token.type !== 'heading_open' || token.level !== 0) return;
    const place = { file, line: prose.line + token.map![0], column: 1 };
    const heading = tokens[index + 1]!.children!.map(({ content }) => content).join('');
    if (token.tag === 'h1')
      faults.push({ ...place, message: 'the title stands in the front lines: begin with ##' });
    if (heading.includes('\uE000')) faults.push({ ...place, message: 'a heading may not hold a slot' });
    if (token.tag !== 'h2') return;
    flush(index);
    from = index + 3;
    sections.push({ heading, line: place.line, id: `section-${sections.length}`, pieces: [], working: [] });
  });
  flush(tokens.length);
  slots.forEach(({ line, column }, number) => {
    const message = 'a slot may not stand in an address, a title or the like';
    if (!seen.has(number)) faults.push({ file, line, column, message });
  });
}

/** Cuts rendered HTML at its slots. A slot inside a tag is left unseen, which the caller reports. */
function piecesOf(rendered: string, slots: readonly Slot[], seen: Set<number>): Section['pieces'] {
  const pieces: Section['pieces'] = [];
  let from = 0;
  for (const match of rendered.matchAll(marks)) {
    const before = rendered.slice(0, match.index);
    if (before.lastIndexOf('<') > before.lastIndexOf('>')) continue;
    const number = Number(match[1] ?? match[2]);
    if (match.index > from) pieces.push(rendered.slice(from, match.index));
    pieces.push({ slot: slots[number]!, block: match[1] !== undefined });
    seen.add(number);
    from = match.index + match[0].length;
  }
  if (from < rendered.length) pieces.push(rendered.slice(from));
  return pieces;
}

/** Blanked types can leave a line break where JavaScript allows none; then the fault is named here, not when run. */
function refuseBrokenSyntax({ file, lines }: Notebook, code: string): void {
  try {
    transformSync(code, { loader: 'js', format: 'esm', logLevel: 'silent' });
  } catch (error) {
    const faults = (error as TransformFailure).errors.map(({ text, location }) => ({
      file,
      line: Math.min(location?.line ?? 1, lines.length),
      column: (location?.column ?? 0) + 1,
      message: text,
    }));
    throw new NotebookError(faults, { cause: error });
  }
}
