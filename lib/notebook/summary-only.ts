/** An analysis without anything about a single plant, pair or vial. */

import type { Analysis } from '../analyse.ts';

/** A list entry that has one of these is about a single plant, pair or vial. */
const SINGLE: ReadonlySet<string> = new Set([
  ...[
    'seedParent',
    'pollenParent',
    'plant',
    'vial',
    'crossId',
    'shownAs',
    'effect',
    'first',
    'father',
    'mother',
  ],
]);

/** Lists of names alone: all of them are about single plants or flowers. */
const SINGLE_LISTS: ReadonlySet<string> = new Set([
  ...['crossIds', 'blankDoses', 'leftOutVials', 'newSeedParents', 'newPollenParents', 'unmet'],
]);

function isSingle(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(value).some(([key, entry]) => SINGLE.has(key) && entry !== null);
}

function reduced(value: unknown): unknown {
  if (Array.isArray(value)) return value.filter((entry) => !isSingle(entry)).map(reduced);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, entry]) => [key, SINGLE_LISTS.has(key) ? [] : reduced(entry)]),
  );
}

/**
 * An analysis fit for the level "summary" of a coded copy: lists keep only what is about all plants together, such as
 * storage methods, ages and seasons. What is about single plants, pairs and vials is left out of its list.
 *
 * @example
 * summaryOnly(analysis).pairs; // []
 */
export function summaryOnly(analysis: Analysis): Analysis {
  return reduced(analysis) as Analysis;
}
