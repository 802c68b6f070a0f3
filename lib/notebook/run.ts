/** Runs a compiled notebook's cells in order and fills the slots of its prose. No package, no file: any engine. */

import type { Analysis } from '../analyse.ts';
import type { Figure } from '../charts/figure.ts';
import type { MixName } from '../decisions/mix.ts';
import type { Season } from '../season/season.ts';
import type { Language } from '../words/language.ts';
import { NotebookError } from './fault.ts';
import type { Html } from './html.ts';
import { escapeHtml, isHtml } from './html.ts';
import type { SavedFile } from './saved-file.ts';
import { isSavedFile } from './saved-file.ts';
import type { SiteContents } from './site-contents.ts';

/** What a notebook's cells find under the name `given`. */
export interface Given {
  readonly season: Season;
  readonly analysis: Analysis;
  /** What stands beside this page, where it is one of a site; a report is a file of its own. */
  readonly site?: SiteContents;
  /** Whether only counts are known yet: what rests on a model is left out, and only the first sections are shown. */
  readonly countsOnly?: true;
  /** The mix that a crossing sheet carries out; the balanced one where it is not said. */
  readonly mix?: MixName;
}

/** What a slot of the prose can show. */
export type Shown = string | number | Html | Figure | SavedFile;

/** Names that cells define, with their values. */
export type Names = Readonly<Record<string, unknown>>;

export interface CompiledSlot {
  /** The value, from the names of all cells. */
  readonly value: (names: Names) => unknown;
  readonly expression: string;
  readonly line: number;
  readonly column: number;
  /** Whether it stands alone in its paragraph, where a figure or a table may stand too. */
  readonly block: boolean;
}

export interface CompiledCell {
  /** The notebook's line of the opening fence. */
  readonly line: number;
  readonly run: (given: Given, names: Names) => Promise<Names>;
}

export interface CompiledSection {
  /** Null for what stands above the first heading. */
  readonly heading: string | null;
  readonly id: string;
  /** Finished HTML and the slots between. */
  readonly pieces: readonly (string | CompiledSlot)[];
  /** The cells as written, for readers who want to see how a number came about. */
  readonly working: readonly string[];
}

/** What `compileNotebook` writes: the export `notebook` of `dist/reports/NAME.js`. */
export interface CompiledNotebook {
  readonly name: string;
  /** The notebook's path as faults name it: `reports/season-review.md`. */
  readonly file: string;
  /** The file that its prose comes from: of a translation `reports/season-review.de.md`; else the same. */
  readonly textFile?: string;
  /** Of its prose and of all that its cells say; English where left out. */
  readonly language?: Language;
  readonly title: string;
  readonly description: string;
  /** Its place in the site's list of pages, small numbers first; null: after all that have one. */
  readonly order: number | null;
  /** Whether it may stand in a summary for sharing. */
  readonly summary: boolean;
  /** Whether a site without a plan of next season leaves it out. */
  readonly plan?: boolean;
  /** Address of the compiled module, whose lines and columns are the notebook's own. */
  readonly url: string;
  readonly cells: readonly CompiledCell[];
  readonly sections: readonly CompiledSection[];
}

/** A section with its values in place: HTML, and figures still to be drawn. */
export interface FilledSection {
  readonly heading: string | null;
  readonly id: string;
  readonly pieces: readonly (string | Figure)[];
  readonly working: readonly string[];
}

/** A notebook that has run. */
export interface FilledNotebook {
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly sections: readonly FilledSection[];
  /** Files its page links to, to be written beside it. */
  readonly savedFiles: readonly SavedFile[];
}

/**
 * Runs the cells of a notebook top to bottom, each on `given` and the names of the cells above, then fills the
 * slots of its prose: text is escaped, `Html` and figures are put in as they are.
 *
 * @param suffix what the names of saved files get before their ending: a site has them once a language
 * @throws NotebookError naming file, line and column of the notebook where a cell fails, or where a slot's value is
 * neither text, a finite number, `Html`, a figure nor a saved file
 */
export async function runNotebook(
  notebook: CompiledNotebook,
  given: Given,
  suffix = '',
): Promise<FilledNotebook> {
  let names: Names = {};
  for (const cell of notebook.cells) {
    try {
      names = { ...names, ...(await cell.run(given, names)) };
    } catch (error) {
      throw cellError(notebook, cell, error);
    }
  }
  const savedFiles: SavedFile[] = [];
  const sections = notebook.sections.map(({ heading, id, pieces, working }) => ({
    heading,
    id,
    working,
    pieces: pieces.map((piece) =>
      typeof piece === 'string'
        ? piece
        : filledSlot(notebook, piece, names, (file) => {
            const saved = { ...file, name: file.name.replace('.', `${suffix}.`) };
            savedFiles.push(saved);
            return saved;
          }),
    ),
  }));
  return {
    name: notebook.name,
    title: notebook.title,
    description: notebook.description,
    sections,
    savedFiles,
  };
}

function filledSlot(
  notebook: CompiledNotebook,
  slot: CompiledSlot,
  names: Names,
  save: (file: SavedFile) => SavedFile,
): string | Figure {
  const value = slot.value(names);
  const { expression, line, column, block } = slot;
  if (isHtml(value)) return value.markup;
  if (typeof value === 'string' || (typeof value === 'number' && Number.isFinite(value))) {
    return paragraph(escapeHtml(String(value)), block);
  }
  if (isSavedFile(value)) {
    const { name, label } = save(value);
    return paragraph(`<a href="${escapeHtml(name)}">${escapeHtml(label)}</a>`, block);
  }
  const figure = isFigure(value);
  if (figure && block) return value;
  const message = figure
    ? `a figure must stand alone in its paragraph: {{ ${expression} }}`
    : `what stands in prose must be text, a finite number, html or a figure; ${expression} is ${kindOf(value)}`;
  throw new NotebookError([{ file: notebook.textFile ?? notebook.file, line, column, message }]);
}

function paragraph(markup: string, block: boolean): string {
  return block ? `<p>${markup}</p>\n` : markup;
}

function kindOf(value: unknown): string {
  return value === null || typeof value === 'number' ? String(value) : typeof value;
}

function isFigure(value: unknown): value is Figure {
  return typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'figure';
}

function cellError(notebook: CompiledNotebook, cell: CompiledCell, error: unknown): NotebookError {
  const name = error instanceof Error ? error.name : 'Error';
  const message = error instanceof Error ? error.message : String(error);
  const place = placeIn(notebook.url, error) ?? { line: cell.line, column: 1 };
  return new NotebookError([{ file: notebook.file, ...place, message: `${name}: ${message}` }], {
    cause: error,
  });
}

/** The first place of the compiled module that an error's stack names: the same line and column as the notebook's. */
function placeIn(url: string, error: unknown): { line: number; column: number } | null {
  const stack = error instanceof Error ? (error.stack ?? '') : '';
  const path = decodeURI(new URL(url).pathname);
  for (const address of [url, path]) {
    const [, after] = stack.split(`${address}:`, 2);
    const [, line, column] = /^(\d+):(\d+)/.exec(after ?? '') ?? [];
    if (line !== undefined) return { line: Number(line), column: Number(column) };
  }
  return null;
}
