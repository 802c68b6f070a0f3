/** The reference cases of two proportions, and their published values. */

import { expect } from 'vitest';
import { type Json, type ReferenceCase, readCases } from '../regression/reference-cases.ts';

export interface Pair {
  readonly x1: number;
  readonly n1: number;
  readonly x2: number;
  readonly n2: number;
  readonly level: number;
}

const all = readCases('b_two_proportions.json');

/** Two counts each: the reference set, then corners (0, n, one trial, a million) in 50-digit arithmetic. */
export const pairCases = [
  ...all.filter(({ input }) => 'x1' in input),
  ...readCases('two_proportions_corners.json'),
];

/** Lists of tables. */
export const stratifiedCases = all.filter(({ input }) => 'strata' in input);

export function pairOf({ input }: ReferenceCase): Pair {
  return input as unknown as Pair;
}

/** The reference writes an end without bound as Infinity and a missing value as NaN; here both are null. */
export function withNulls(value: Json): Json {
  if (typeof value === 'string') return null;
  if (Array.isArray(value)) return value.map(withNulls);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, withNulls(part)]));
}

/** Checks a printed number, or list of numbers, to half a unit of its last digit. */
export function expectPublished(actual: readonly number[], printed: Json, where: string): void {
  const values = (Array.isArray(printed) ? printed : [printed]) as readonly number[];
  const digits = Math.max(...values.map((value) => (String(value).split('.')[1] ?? '').length));
  values.forEach((value, i) => {
    expect(Math.abs(actual[i]! - value), where).toBeLessThanOrEqual(0.5001 * 10 ** -digits);
  });
}
