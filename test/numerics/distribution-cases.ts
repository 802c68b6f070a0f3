/** Runs a distribution function over every argument of the reference cases that bear its name in R. */

import { expect } from 'vitest';
import type { TailOption } from '../../lib/numerics/normal.ts';
import { type ReferenceCase, readCases } from '../regression/reference-cases.ts';

/** One set of arguments under R's names; `tail` is R's `lower.tail`. */
export interface Arguments {
  readonly [name: string]: number;
}

/** How a function takes R's arguments. */
export type Call = (at: Arguments, tail: TailOption) => number;

/**
 * 60-digit arithmetic (`j_distributions`), R's own functions on wide grids (`distributions_r`), and tails and quantiles
 * to 1e-300 for shapes from 0.01 to a million, in many digits (`distribution_tails`, `distribution_quantiles`).
 */
export const SETS = [
  'j_distributions.json',
  'distributions_r.json',
  'distribution_tails.json',
  'distribution_quantiles.json',
] as const;

type Columns = Readonly<Record<string, readonly (number | boolean)[]>>;

function checkCase({ id, source, input, expected, tolerance }: ReferenceCase, call: Call): void {
  const columns = input.arguments as Columns;
  const wanted = expected.value as readonly number[];
  const names = Object.keys(columns);
  wanted.forEach((value, i) => {
    const at = Object.fromEntries(names.map((name) => [name, Number(columns[name]![i])]));
    const actual = call(at, { tail: columns.lower?.[i] === false ? 'upper' : 'lower' });
    const allowed = tolerance.abs + tolerance.rel * Math.abs(value);
    expect(
      Math.abs(actual - value),
      `${id}(${JSON.stringify(at)}) is ${actual}, ${source} gives ${value}`,
    ).toBeLessThanOrEqual(allowed);
  });
}

/** Checks the cases of this name in all sets and returns how many sets have one. */
export function checkReference(id: string, call: Call): number {
  const found = SETS.flatMap((set) => readCases(set).filter((each) => each.id === id));
  for (const each of found) checkCase(each, call);
  return found.length;
}
