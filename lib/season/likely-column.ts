/** A header that none of our columns knows → the column that it may well mean. */

import { type Column, foldHeader } from './columns.ts';
import { editDistance } from './edit-distance.ts';

const LONGEST_HEADER = 60;
/** A shorter word within a header says too little: "id" is in "width". */
const SHORTEST_WORD = 4;
const LETTERS_A_SLIP = 5;

/** Headers of several words, each as it is compared; so that "mother in pot 3" holds "mother". */
function wordsOf(header: string): string[] {
  return header
    .split(/[^\p{L}\p{N}]+/u)
    .map(foldHeader)
    .filter((word) => word !== '');
}

/** Whether a run of whole words of a header makes up a name. */
function holds(words: readonly string[], name: string): boolean {
  return words.some((_, start) => {
    let joined = '';
    for (let end = start; end < words.length && joined.length < name.length; end++) joined += words[end];
    return joined === name;
  });
}

/**
 * How little a header resembles one of a column's names: 0 where it holds one, else its slips; infinite where more than
 * one letter in five differs.
 */
function unlikeness(header: string, words: readonly string[], { name, synonyms }: Column): number {
  let least = Number.POSITIVE_INFINITY;
  for (const known of [name, ...synonyms].map(foldHeader)) {
    if (known.length >= SHORTEST_WORD && holds(words, known)) return 0;
    const allowed = Math.floor(Math.min(header.length, known.length) / LETTERS_A_SLIP);
    if (allowed === 0 || Math.abs(header.length - known.length) > allowed) continue;
    const slips = editDistance(header, known);
    if (slips <= allowed) least = Math.min(least, slips);
  }
  return least;
}

/**
 * The one column of some that a header resembles most: it holds one of the column's names, or is a slip of one.
 *
 * @returns null where it resembles none, or two alike
 * @example likelyColumn('Polination date', COLUMNS.crosses)?.name // 'pollination_date'
 */
export function likelyColumn(header: string, columns: readonly Column[]): Column | null {
  if (header.length > LONGEST_HEADER) return null;
  const folded = foldHeader(header);
  const words = wordsOf(header);
  let best: Column | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const column of columns) {
    const unlike = unlikeness(folded, words, column);
    if (unlike === least && best !== null) best = null;
    if (unlike < least) [best, least] = [column, unlike];
  }
  return best;
}
