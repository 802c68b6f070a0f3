/** Small made-up latent models of every shape that the latent files tell apart. */

import type { LatentScales } from '../../lib/regression/latent-likelihood.ts';
import type { LatentSpec } from '../../lib/regression/latent-model.ts';

export interface LatentExample {
  readonly spec: LatentSpec;
  readonly scales: LatentScales;
}

const rows = {
  successes: Float64Array.of(2, 0, 1, 3, 0, 1, 0, 2),
  trials: Float64Array.of(3, 2, 1, 4, 1, 2, 3, 2),
  offset: Float64Array.of(0.1, -0.4, 0, 0.7, 0.2, -1, 0.3, 0),
};
const one = new Float64Array(8).fill(1);
const age = Float64Array.of(0, 0.5, 1, 0, 2, 0.1, 0.9, 0);
const mother = { name: 'mother', codes: Int32Array.of(0, 0, 1, 1, 2, 2, 0, 1), size: 3 };
const pair = { name: 'pair', codes: Int32Array.of(0, 1, 2, 3, 4, 4, 1, 2), size: 5 };
/** Rows without a vial, as fresh pollen is. */
const vial = { name: 'vial', codes: Int32Array.of(-1, 0, 0, -1, 1, 1, -1, 0), size: 2 };

function example(
  factors: LatentSpec['factors'],
  factorScales: readonly number[],
  columns: readonly Float64Array[] = [one, age],
  exclusive = -1,
): LatentExample {
  return {
    spec: { ...rows, columns, factors, exclusive },
    scales: {
      columns: Float64Array.from(columns, (_, c) => 1.2 - 0.4 * c),
      factors: Float64Array.from(factorScales),
      exclusive: exclusive < 0 ? 0 : 0.2,
    },
  };
}

export const EXAMPLES: ReadonlyMap<string, LatentExample> = new Map([
  ['with three factors, some rows without one', example([mother, pair, vial], [0.8, 0.6, 0.5])],
  ['without any factor', example([], [])],
  ['without any column', example([mother, pair], [0.8, 0.6], [])],
  ['whose largest factor leaves rows out', example([mother, { ...vial, size: 4 }], [0.8, 0.5])],
  [
    'with an empty factor',
    example([pair, { name: 'vial', codes: new Int32Array(8).fill(-1), size: 0 }], [0.6, 0.5]),
  ],
  ['with a factor of scale 0', example([mother, pair], [0, 0.6])],
]);

/** Levels 1 and 4 of the pairs and the others: level 1 has no success in five trials. */
export const EXCLUSIVE = example([mother, pair, vial], [0.8, 0.6, 0.5], [one, age], 1);
/** The same with the exclusive factor in the core, the mothers being fewer than the pairs. */
export const EXCLUSIVE_IN_CORE = example([mother, pair], [0.8, 0.6], [one, age], 0);
