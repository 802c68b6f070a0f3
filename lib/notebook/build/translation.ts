/** A notebook in another language: `reports/NAME.de.md` has prose and slots, its cells are those of `reports/NAME.md`. */

import type { Language } from '../../words/language.ts';
import { LANGUAGES } from '../../words/languages.ts';
import { type Fault, NotebookError } from '../fault.ts';
import type { Notebook, Slot } from './cells.ts';

/** A part of a notebook under one heading, as far as translations must agree on it. */
export interface SlotSection {
  readonly heading: string | null;
  /** The notebook's line of the heading; of the first line where there is none. */
  readonly line: number;
  readonly slots: readonly Slot[];
}

/** Front lines that a translation may have: everything else follows from the notebook itself. */
const OWN_FRONT = /^(?:title|description):/;

/** Of which notebook a file is a translation, and into what; null for a notebook with cells of its own. */
export function translationOf(file: string): { readonly name: string; readonly language: Language } | null {
  const [, name, code] = /([^/]+)\.([a-z]{2})\.md$/.exec(file) ?? [];
  const language = LANGUAGES.find((known) => known !== 'en' && known === code);
  return name === undefined || language === undefined ? null : { name, language };
}

/** A translation with the notebook that it is one of. */
export interface Translation {
  readonly original: Notebook;
  readonly own: Notebook;
  readonly language: Language;
}

/**
 * Notebooks with cells of their own, and translations each with its original.
 *
 * @throws NotebookError for a translation of nothing
 */
export function pairedNotebooks(notebooks: readonly Notebook[]): {
  readonly originals: readonly Notebook[];
  readonly translations: readonly Translation[];
} {
  const originals = notebooks.filter(({ file }) => translationOf(file) === null);
  const translations = notebooks.flatMap((own): Translation[] => {
    const of = translationOf(own.file);
    if (of === null) return [];
    const original = originals.find(({ name }) => name === of.name);
    if (original !== undefined) return [{ original, own, language: of.language }];
    const message = `there is no reports/${of.name}.md whose translation this could be: name it as the notebook is named`;
    throw new NotebookError([{ file: own.file, line: 1, column: 1, message }]);
  });
  return { originals, translations };
}

/** What a translation may not hold, since it comes from the notebook itself. */
export function ownFaults({ file, lines, parts }: Notebook, original: string): Fault[] {
  const cells = parts.filter((part) => part.kind === 'cell');
  const end = lines.indexOf('---', 1);
  const front = lines.slice(1, end).map((line, at) => ({ line, at: at + 2 }));
  return [
    ...front
      .filter(({ line }) => !OWN_FRONT.test(line))
      .map(({ at }) => ({
        ...{ file, line: at, column: 1 },
        message: `a translation gives title and description only: the rest stands in ${original}`,
      })),
    ...cells.map(({ line }) => ({
      ...{ file, line, column: 1 },
      message: `a translation has no cells: those of ${original} run, and their text comes from lib/words`,
    })),
  ];
}

/** How often each slot stands in a section. */
function tally({ slots }: SlotSection): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { expression } of slots) counts.set(expression, (counts.get(expression) ?? 0) + 1);
  return counts;
}

function missing(file: string, own: SlotSection, theirs: SlotSection, original: string): Fault[] {
  const found = tally(own);
  return theirs.slots.flatMap(({ expression, line }) => {
    const left = found.get(expression) ?? 0;
    found.set(expression, left - 1);
    if (left > 0) return [];
    const message = `this section must also show {{ ${expression} }}, as ${original}:${line} does`;
    return [{ file, line: own.line, column: 1, message }];
  });
}

function surplus(file: string, own: SlotSection, theirs: SlotSection, original: string): Fault[] {
  const allowed = tally(theirs);
  return own.slots.flatMap(({ expression, line, column }) => {
    const left = allowed.get(expression) ?? 0;
    allowed.set(expression, left - 1);
    if (left > 0) return [];
    const message = `{{ ${expression} }} stands ${tally(theirs).get(expression) ?? 0} times in this section of ${original} (line ${theirs.line}): take it out here, or move it to its own section`;
    return [{ file, line, column, message }];
  });
}

/**
 * Where a translation's slots are not those of its notebook: the same sections in the same order, each with the same
 * slots, in any order within it.
 *
 * @param file the translation's path
 * @param own sections of the translation
 * @param theirs sections of the notebook
 * @param original the notebook's path
 */
export function unequalSlots(
  file: string,
  own: readonly SlotSection[],
  theirs: readonly SlotSection[],
  original: string,
): Fault[] {
  if (own.length !== theirs.length) {
    const message =
      `there are ${own.length - 1} headings (##) here and ${theirs.length - 1} in ${original}: each needs its twin, ` +
      'in the same order';
    return [{ file, line: own.at(-1)?.line ?? 1, column: 1, message }];
  }
  return own.flatMap((section, at) => [
    ...missing(file, section, theirs[at]!, original),
    ...surplus(file, section, theirs[at]!, original),
  ]);
}
