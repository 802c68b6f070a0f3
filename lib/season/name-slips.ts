/** Names that may be slips of the pen: suggested to the grower, never joined unasked. */

import { editDistance } from './edit-distance.ts';
import type { NameTally, NameUses } from './name-tally.ts';
import { lookalikes } from './spellings.ts';

/** A name written so seldom may be a slip, where the other is written so many times as often. */
const SELDOM = 2;
const TIMES_AS_OFTEN = 4;
/** In shorter words one letter more often tells two plants apart (common practice, no source). */
const SHORTEST_WORD = 6;
/** No grower has so many plants, nor so long names of them; beyond, they are not looked at. */
const MOST_NAMES = 20_000;
const LONGEST_NAME = 60;

/** The words of a name as they are compared. */
function wordsOf(name: string): string[] {
  return name
    .normalize('NFC')
    .toLowerCase()
    .split(/[\s_-]+/u);
}

/** Whether one word is the other with one slip: long enough, of letters only, and begun alike. */
function isSlip(one: string, other: string): boolean {
  const long = Math.min(one.length, other.length) >= SHORTEST_WORD;
  const letters = /^\p{L}+$/u.test(one) && /^\p{L}+$/u.test(other);
  return long && letters && one[0] === other[0] && editDistance(one, other) === 1;
}

/**
 * Whether two names are alike but for one slip within one long word. Numbers and single letters never differ by a slip:
 * M 12 and M 13 are two plants, as Nocturna A and Nocturna B are.
 *
 * @example isNameSlip('Nocturna Alba', 'Noctruna Alba') // true
 */
export function isNameSlip(one: string, other: string): boolean {
  const [words, others] = [wordsOf(one), wordsOf(other)];
  if (words.length !== others.length) return false;
  const differing = words.flatMap((word, i) => (word === others[i] ? [] : [i]));
  return differing.length === 1 && isSlip(words[differing[0]], others[differing[0]]);
}

/** A name, and all that one letter less makes of it: two names one slip apart share at least one of these. */
function* shortened(name: string): Generator<string> {
  yield name;
  for (let i = 0; i < name.length; i++) yield name.slice(0, i) + name.slice(i + 1);
}

/** The names in frequent use, by themselves and by what one letter less makes of them. */
function neighbourhoods(names: readonly NameUses[]): Map<string, NameUses[]> {
  const index = new Map<string, NameUses[]>();
  for (const name of names) {
    if (name.uses < TIMES_AS_OFTEN) continue;
    for (const key of shortened(wordsOf(name.name).join(' '))) {
      const there = index.get(key);
      if (there === undefined) index.set(key, [name]);
      else there.push(name);
    }
  }
  return index;
}

/** The one frequent name that a seldom one is a slip of; undefined where there is none, or more than one. */
function meant(seldom: NameUses, index: ReadonlyMap<string, readonly NameUses[]>): NameUses | undefined {
  const found = new Set<NameUses>();
  for (const key of shortened(wordsOf(seldom.name).join(' '))) {
    for (const usual of index.get(key) ?? []) {
      const often = usual.uses >= seldom.uses * TIMES_AS_OFTEN;
      if (often && isNameSlip(seldom.name, usual.name)) found.add(usual);
    }
  }
  return found.size === 1 ? [...found][0] : undefined;
}

/** A notice for each seldom name that may be a slip of a frequent one. */
export function reportNameSlips(tally: NameTally): void {
  const names = lookalikes(tally)
    .map(([usual]) => usual)
    .filter(({ name }) => name.length <= LONGEST_NAME);
  if (names.length > MOST_NAMES) return;
  const index = neighbourhoods(names);
  for (const seldom of names) {
    const usual = seldom.uses <= SELDOM ? meant(seldom, index) : undefined;
    if (usual === undefined) continue;
    const details = { spelling: seldom.name, uses: seldom.uses, usual: usual.name, usualUses: usual.uses };
    const { cells, column } = seldom.first;
    // One fault, one finding: the cell may have been told as a slip for a word of ours.
    if (column === 'storage' && cells.reported('storage')) continue;
    cells.report('notice', 'name-slip', { column, value: seldom.name, details });
  }
}
