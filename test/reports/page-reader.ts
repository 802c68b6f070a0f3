/** Reads a finished page as a person would: headings, sentences, tables as text. Knows nothing of how it was made. */

import { parseHTML } from 'linkedom';

export interface Table {
  readonly caption: string;
  /** Keys of the analysis that the table names. */
  readonly source: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Section {
  readonly heading: string;
  /** Paragraphs, list items and captions in order, without tables and code. */
  readonly sentences: readonly string[];
  readonly tables: readonly Table[];
  readonly cautions: number;
  /** Whether each folded part stands closed. */
  readonly folded: readonly boolean[];
  readonly hasWorking: boolean;
}

type Root = ReturnType<typeof parseHTML>['document'];
type Element = NonNullable<ReturnType<Root['querySelector']>>;

function textOf(element: Element | null): string {
  return (element?.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
}

function all(element: Element, selector: string): Element[] {
  return [...element.querySelectorAll(selector)] as Element[];
}

function tableOf(element: Element): Table {
  const source = textOf(element.querySelector('caption .key'));
  return {
    caption: textOf(element.querySelector('caption')).replace(source, '').trim(),
    source,
    columns: all(element, 'thead th').map(textOf),
    rows: all(element, 'tbody tr').map((row) => all(row, 'th, td').map(textOf)),
  };
}

function sectionOf(element: Element): Section {
  const spoken = all(element, 'p, li, figcaption').filter((part) => part.closest('.working') === null);
  return {
    heading: textOf(element.querySelector('h2')),
    sentences: spoken.map(textOf),
    tables: all(element, 'table').map(tableOf),
    cautions: all(element, 'blockquote').length,
    folded: all(element, 'details').map((details) => !details.hasAttribute('open')),
    hasWorking: element.querySelector('details.working code') !== null,
  };
}

/** The sections of a page, in order. */
export function readSections(page: string): readonly Section[] {
  const { document } = parseHTML(page);
  return ([...document.querySelectorAll('main section')] as Element[]).map(sectionOf);
}

/** Every "k of n" of a text. */
export function countsIn(text: string): readonly (readonly [number, number])[] {
  return [...text.matchAll(/(\d+) of (\d+)/g)].map(([, fruits, flowers]) => [
    Number(fruits),
    Number(flowers),
  ]);
}

/** What "about 4 in 10; could be 3 to 60 in 100" leaves open for each number: from … to …, as proportions. */
export interface SaidRate {
  readonly estimate: readonly [number, number];
  readonly lower: readonly [number, number];
  readonly upper: readonly [number, number];
}

/** A number said in `base`, with half a unit to either side; "under 1" reaches down to 0, "over 9" up to 1. */
function room(said: string, base: number): readonly [number, number] {
  const half = 0.5 / base + 1e-6;
  if (said.startsWith('under')) return [0, half];
  if (said.startsWith('over')) return [1 - half, 1];
  return [Number(said) / base - half, Number(said) / base + half];
}

/** The first rate of a text with its range, or null where it says none. */
export function rateIn(text: string): SaidRate | null {
  const number = '((?:under |over )?\\d+)';
  const pattern = `(?:about )?${number} in (100|10); could be ${number}(?: to ${number})? in (100|10)`;
  const found = text.match(new RegExp(pattern));
  if (found === null) return null;
  // "3 to 6 in 10", "4 to 60 in 100", "4 in 10".
  const [, estimate, base, lower, upper = lower, ends] = found;
  return {
    estimate: room(estimate!, Number(base)),
    lower: room(lower!, Number(ends)),
    upper: room(upper!, Number(ends)),
  };
}

/** The probability that stands with a likelihood word: "likely (about 8 in 10)". */
export function likelihoodIn(text: string): readonly [number, number] | null {
  const found = text.match(/likely(?: as not)? \((?:about )?((?:under |over )?\d+) in (100|10)\)/i);
  return found === null ? null : room(found[1]!, Number(found[2]));
}
