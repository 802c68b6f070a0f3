/** Does anything of a grower's own stand in what is about to be shared? */

import type { Secret } from '../season/secrets.ts';
import { textsOf } from './page-text.ts';
import type { SiteFile } from './site.ts';

/** A secret that was found, and where. */
export interface Leak extends Secret {
  readonly file: string;
  readonly place: string;
}

/** Fewer signs than this cannot be told from the numbers and words of any page. */
const FEWEST_SIGNS = 3;
/** A word, or any other sign that is no space: what is looked for must begin and end where one of these does. */
const TOKEN = /[\p{L}\p{N}\p{M}_]+|[^\s\p{L}\p{N}\p{M}_]/gu;

interface Token {
  readonly text: string;
  readonly index: number;
}

function tokensOf(text: string): Token[] {
  const compared = text.normalize('NFC').toLowerCase();
  return [...compared.matchAll(TOKEN)].map((match) => ({ text: match[0], index: match.index }));
}

/** Values in the order of their signs, found by their first one. */
type Index = ReadonlyMap<string, readonly { readonly value: string; readonly tokens: readonly string[] }[]>;

function indexOf(values: Iterable<string>): Index {
  const index = new Map<string, { value: string; tokens: string[] }[]>();
  for (const value of values) {
    const tokens = tokensOf(value).map(({ text }) => text);
    const [first] = tokens;
    if (first === undefined) continue;
    const entries = index.get(first) ?? [];
    entries.push({ value, tokens });
    index.set(first, entries);
  }
  return index;
}

/** The values that stand in a text, whatever the spaces between their signs, with the place of each find. */
function* findsIn(text: string, index: Index): Generator<{ readonly value: string; readonly at: number }> {
  const tokens = tokensOf(text);
  for (let start = 0; start < tokens.length; start++) {
    for (const { value, tokens: wanted } of index.get(tokens[start]!.text) ?? []) {
      if (wanted.every((token, i) => tokens[start + i]?.text === token)) {
        yield { value, at: tokens[start]!.index };
      }
    }
  }
}

/** Those of some values that stand in a text as a leak would: as whole words, whatever their case and spaces. */
export function phrasesIn(text: string, values: Iterable<string>): Set<string> {
  return new Set([...findsIn(text, indexOf(values))].map(({ value }) => value));
}

const isDate = (value: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(value);

/** A value as it is compared as a whole. */
function foldedWhole(text: string): string {
  return tokensOf(text)
    .map((token) => token.text)
    .join(' ');
}

/**
 * Secrets of a grower that stand in finished files.
 *
 * The rule: a value is looked for as whole words, whatever its case and spaces, in every text node, attribute value,
 * comment, JSON string and key, CSV cell and file name. Values that cannot be told from a page's own words (fewer than
 * three signs, no letter at all, or a phrase of the pages' own text, such as a plant called Early) are looked for only
 * as a whole CSV cell or JSON string, and there not where the pages bring that phrase along themselves. They cannot get
 * into a page unseen all the same: the pages of a coded copy are made from its files alone, whose cells are compared here.
 *
 * @param files about to be shared
 * @param secrets names, tags, notes, dates, file names and hashes of the grower's own
 * @param ownText all text that the pages bring along themselves
 * @returns one entry for each secret and file, in the order of the files
 */
export function findLeaks(files: readonly SiteFile[], secrets: readonly Secret[], ownText: string): Leak[] {
  const secretOf = new Map(secrets.map((secret) => [secret.value, secret]));
  const values = [...secretOf.keys()].filter((value) => tokensOf(value).length > 0);
  const own = phrasesIn(ownText, values);
  const plain = (value: string): boolean =>
    own.has(value) || [...value.trim()].length < FEWEST_SIGNS || !(/\p{L}/u.test(value) || isDate(value));
  const words = indexOf(values.filter((value) => !plain(value)));
  const wholes = new Map(
    values.filter((value) => plain(value) && !own.has(value)).map((value) => [foldedWhole(value), value]),
  );
  return files.flatMap((file) =>
    leaksOf(file, words, wholes).map(({ value, place }) => ({
      ...secretOf.get(value)!,
      file: file.name,
      place,
    })),
  );
}

function leaksOf(file: SiteFile, words: Index, wholes: ReadonlyMap<string, string>) {
  const found = new Map<string, { readonly value: string; readonly place: string }>();
  for (const { text, place, whole } of textsOf(file)) {
    const cell = whole ? wholes.get(foldedWhole(text)) : undefined;
    if (cell !== undefined && !found.has(cell)) found.set(cell, { value: cell, place });
    for (const { value, at } of findsIn(text, words)) {
      if (found.has(value)) continue;
      found.set(value, { value, place: place || `line ${text.slice(0, at).split('\n').length}` });
    }
  }
  return [...found.values()];
}
