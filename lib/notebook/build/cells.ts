/** Markdown → notebook: prose, cells and slots, each with its line. Knows neither TypeScript nor HTML. */

import type { Fault } from '../fault.ts';
import { NotebookError } from '../fault.ts';

/** A stretch of Markdown between cells. `line` is the notebook's line where it starts. */
export interface Prose {
  readonly kind: 'prose';
  readonly line: number;
  readonly lines: readonly string[];
}

/** TypeScript between a fence and its end; `line` is that of the opening fence, `endLine` of the closing one. */
export interface Cell {
  readonly kind: 'cell';
  readonly line: number;
  readonly endLine: number;
  readonly lines: readonly string[];
}

/** A value's place in the prose: `{{ name }}` or `{{ name.path }}`. `column` is that of the name. */
export interface Slot {
  readonly expression: string;
  readonly line: number;
  readonly column: number;
}

/** A notebook as written: nothing in it is compiled. */
export interface Notebook {
  readonly name: string;
  /** Path as faults name it, with forward slashes: `reports/season-review.md`. */
  readonly file: string;
  readonly title: string;
  readonly description: string;
  /** Packages its cells may import besides the library; a notebook that has any runs in Node only. */
  readonly packages: readonly string[];
  /** Its place in the site's list of pages, small numbers first; null: after all that have one. */
  readonly order: number | null;
  /** Whether it may stand in a summary for sharing: it names no single plant, pair or vial there. */
  readonly summary: boolean;
  /** Whether it says nothing without a plan of next season: a site without one leaves it out. */
  readonly plan: boolean;
  readonly lines: readonly string[];
  readonly parts: readonly (Prose | Cell)[];
}

const frontKeys: readonly string[] = ['title', 'description', 'packages', 'order', 'summary', 'plan'];
const slotPattern = /\{\{(\s*)([A-Za-z_$][\w$]*(?:\.[A-Za-z_$][\w$]*)*)\s*\}\}/g;

/**
 * Splits a notebook's text into prose and cells.
 *
 * A notebook opens with front lines (`---`, `title: …`, `description: …`, `---`). A fence ` ```ts ` at the start
 * of a line opens a cell; every other fence is prose.
 *
 * @param file path to name in faults, ending in `NAME.md`
 * @param text the whole file; CRLF and LF both end a line
 * @throws NotebookError with every fault found
 */
export function readNotebook(file: string, text: string): Notebook {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const faults: Fault[] = [];
  const front = readFront(file, lines, faults);
  const parts = readParts(file, lines, front.end, faults);
  for (const part of parts) if (part.kind === 'prose') faults.push(...slotFaults(file, part));
  if (faults.length > 0) throw new NotebookError(faults);
  const name = file.slice(file.lastIndexOf('/') + 1).replace(/\.md$/, '');
  const value = (key: string): string => front.values.get(key) ?? '';
  const packages = value('packages')
    .split(/[\s,]+/)
    .filter((word) => word !== '');
  const order = value('order') === '' ? null : Number(value('order'));
  const [summary, plan] = [value('summary') === 'yes', value('plan') === 'yes'];
  return {
    ...{ name, file, title: value('title'), description: value('description') },
    ...{ packages, order, summary, plan, lines, parts },
  };
}

/** Every slot of a stretch of prose, in order. */
export function slotsOf(prose: Prose): Slot[] {
  return prose.lines.flatMap((line, index) =>
    [...line.matchAll(slotPattern)].map((match) => ({
      expression: match[2]!,
      line: prose.line + index,
      column: match.index + 2 + match[1]!.length + 1,
    })),
  );
}

/** The prose with each slot replaced by what `replacement` gives for its running number. */
export function replaceSlots(prose: Prose, replacement: (number: number) => string): string {
  let number = 0;
  return prose.lines.join('\n').replace(slotPattern, () => replacement(number++));
}

function readFront(
  file: string,
  lines: readonly string[],
  faults: Fault[],
): { values: ReadonlyMap<string, string>; end: number } {
  const values = new Map<string, string>();
  const end = lines.indexOf('---', 1);
  if (lines[0] !== '---' || end < 0) {
    const message = 'a notebook must open with front lines: ---, title: …, description: …, ---';
    throw new NotebookError([{ file, line: 1, column: 1, message }]);
  }
  lines.slice(1, end).forEach((line, index) => {
    const [, key, value] = /^([a-z]+):\s*(.*?)\s*$/.exec(line) ?? [];
    if (key === undefined || value === undefined || !frontKeys.includes(key) || values.has(key)) {
      const message = `a front line must be one of ${frontKeys.join(', ')}, a colon and a value, each once`;
      faults.push({ file, line: index + 2, column: 1, message });
    } else values.set(key, value);
  });
  if (!/^\d*$/.test(values.get('order') ?? ''))
    faults.push({ file, line: 1, column: 1, message: 'order must be a whole number' });
  for (const key of ['title', 'description']) {
    if (!values.get(key))
      faults.push({ file, line: 1, column: 1, message: `the front lines must give ${key}` });
  }
  return { values, end: end + 1 };
}

function readParts(file: string, lines: readonly string[], start: number, faults: Fault[]): (Prose | Cell)[] {
  const parts: (Prose | Cell)[] = [];
  let proseStart = start;
  let index = start;
  const closeProse = (end: number): void => {
    if (lines.slice(proseStart, end).some((line) => line.trim() !== '')) {
      parts.push({ kind: 'prose', line: proseStart + 1, lines: lines.slice(proseStart, end) });
    }
  };
  while (index < lines.length) {
    const fence = /^(\s*)(`{3,}|~{3,})\s*(\S*)/.exec(lines[index]!);
    if (fence === null) {
      index += 1;
      continue;
    }
    const end = fenceEnd(lines, index, fence[2]!);
    const place = { file, line: index + 1, column: 1 };
    if (end < 0) faults.push({ ...place, message: 'this fence is never closed' });
    if (fence[3] === 'ts' && lines[index] !== '```ts') {
      faults.push({
        ...place,
        message: 'the fence of a cell must be ```ts at the start of its line, nothing else',
      });
    } else if (fence[3] === 'ts' && end >= 0) {
      closeProse(index);
      parts.push({ kind: 'cell', line: index + 1, endLine: end + 1, lines: lines.slice(index + 1, end) });
      proseStart = end + 1;
    }
    index = end < 0 ? lines.length : end + 1;
  }
  closeProse(lines.length);
  return parts;
}

function fenceEnd(lines: readonly string[], start: number, fence: string): number {
  return lines.findIndex((line, index) => {
    const text = line.trim();
    return index > start && text.length >= fence.length && text === fence[0]!.repeat(text.length);
  });
}

function slotFaults(file: string, prose: Prose): Fault[] {
  return prose.lines.flatMap((line, index) => {
    const rest = line.replace(slotPattern, (slot) => ' '.repeat(slot.length));
    const column = rest.search(/\{\{|[\uE000\uE001]/) + 1;
    if (column === 0) return [];
    const message =
      rest[column - 1] === '{'
        ? 'a slot must hold a name, or name.path: {{ name }}'
        : 'U+E000 and U+E001 are reserved';
    return [{ file, line: prose.line + index, column, message }];
  });
}
