/** The fits of test/reference/i_diagnostics.json. */

import type { Fit, FitMethod } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import {
  formulaDesign,
  type Levels,
  numbers,
  type ReferenceCase,
  readCases,
  readTable,
  texts,
} from './reference-cases.ts';

/** Cases of binary data with a formula: nodal involvement, birth weights, a simulated season. */
export const diagnosticCases: readonly ReferenceCase[] = readCases('i_diagnostics.json').filter(
  ({ input }) => 'hosmer_lemeshow_groups' in input,
);

export function diagnosticCase(id: string): ReferenceCase {
  return readCases('i_diagnostics.json').find((reference) => reference.id === id)!;
}

export function diagnosticFit({ input }: ReferenceCase, method: FitMethod = 'maximum-likelihood'): Fit {
  const table = readTable(input.data as string);
  const design = (input.design ?? input) as { levels: Levels };
  const spec = formulaDesign(table, input.formula as string, design.levels);
  const cluster = input.cluster as string | null | undefined;
  const groups = cluster ? { [cluster]: texts(table, cluster) } : {};
  return logistic({ ...spec, groups }, { method });
}

export function marker(name: string): { successes: readonly number[]; scores: readonly number[] } {
  const table = readTable('i_asah.csv');
  return { successes: numbers(table, 'poor'), scores: numbers(table, name) };
}
