/** A second way to any posterior, slow and with nothing to get wrong: random-walk Metropolis, one variable a time. */

import { randomStream } from '../../lib/numerics/random.ts';

/** A quantity's posterior mean with the standard error of the chain's estimate of it. */
export interface ChainMean {
  readonly mean: number;
  readonly error: number;
}

const BATCHES = 40;
/** Sweeps between two looks: neighbours are nearly alike. */
const THIN = 5;

/**
 * Means of some quantities over a chain that starts at 0 and moves each variable in turn by a normal step
 * (Metropolis et al. 1953, J. Chem. Phys. 21:1087–1092); errors by batch means (Geyer 1992, Stat. Sci. 7:473–483).
 *
 * @param quantities what is averaged, as a function of the state
 */
export function metropolis(
  logDensity: (x: Float64Array) => number,
  steps: readonly number[],
  quantities: (x: Float64Array) => readonly number[],
  { sweeps, seed }: { readonly sweeps: number; readonly seed: number },
): ChainMean[] {
  const random = randomStream(seed);
  const x = new Float64Array(steps.length);
  let density = logDensity(x);
  const perBatch = Math.floor(sweeps / BATCHES / THIN);
  const batches: number[][] = [];
  const sweep = (): void => {
    for (let k = 0; k < x.length; k += 1) {
      const before = x[k]!;
      x[k] = before + steps[k]! * random.normal();
      const proposed = logDensity(x);
      if (Math.log(random.uniform()) < proposed - density) density = proposed;
      else x[k] = before;
    }
  };
  for (let i = 0; i < sweeps / 20; i += 1) sweep();
  for (let batch = 0; batch < BATCHES; batch += 1) {
    const sums = quantities(x).map(() => 0);
    for (let i = 0; i < perBatch; i += 1) {
      for (let k = 0; k < THIN; k += 1) sweep();
      quantities(x).forEach((value, q) => {
        sums[q]! += value / perBatch;
      });
    }
    batches.push(sums);
  }
  return batches[0]!.map((_, q) => acrossRuns(batches.map((sums) => sums[q]!)));
}

/** Mean of independent runs with its standard error. */
export function acrossRuns(values: readonly number[]): ChainMean {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / (values.length - 1) / values.length) };
}
