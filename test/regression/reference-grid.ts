/** Reference grids of the estimated marginal means in test/reference/f_standardisation.json. */

import type { Fit } from '../../lib/regression/fit.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import {
  formulaDesign,
  type Levels,
  numbers,
  type ReferenceCase,
  readCases,
  readTable,
  type Table,
  texts,
} from './reference-cases.ts';

/** emmeans, R 4.2.2. */
export const gridCases = readCases('f_standardisation.json').filter(({ expected }) => 'emmeans' in expected);

/** How the levels of other factors are averaged. */
export type Weights = 'equal' | 'proportional';

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Mean of a covariate; with equal weights emmeans takes one of two values as a factor, and both count alike. */
function average(table: Table, name: string, weights: Weights): number {
  const all = numbers(table, name);
  const distinct = [...new Set(all)];
  return mean(distinct.length === 2 && weights === 'equal' ? distinct : all);
}

/** Value of one column at the grid: covariates at their means (log1p of the mean age), factors averaged, the exposure at a level. */
function gridValue(
  name: string,
  { input }: ReferenceCase,
  level: string,
  table: Table,
  weights: Weights,
): number {
  const exposure = input.exposure as string;
  const levels = input.levels as Levels;
  const partValue = (part: string): number => {
    if (part.startsWith(exposure)) return part === `${exposure}${level}` ? 1 : 0;
    const factor = Object.keys(levels!).find((key) => part.startsWith(key));
    const inner = /^log1p\((.+)\)$/.exec(part)?.[1];
    if (inner !== undefined) return Math.log1p(average(table, inner, weights));
    if (factor === undefined) return average(table, part, weights);
    if (weights === 'equal') return 1 / levels![factor]!.length;
    return mean(texts(table, factor).map((cell) => (factor + cell === part ? 1 : 0)));
  };
  return name
    .split(':')
    .map(partValue)
    .reduce((product, value) => product * value, 1);
}

/** The fit of a case and the rows of its grid, one a level of the exposure. */
export function gridOf(
  reference: ReferenceCase,
  weights: Weights,
): { readonly fit: Fit; readonly rows: readonly ReadonlyMap<string, number>[] } {
  const { formula, exposure, levels, data } = reference.input;
  const table = readTable(data as string);
  const fit = logistic(formulaDesign(table, formula as string, levels as Levels));
  const names = fit.design.names.slice(1);
  const rows = (levels as Levels)![exposure as string]!.map(
    (level) => new Map(names.map((name) => [name, gridValue(name, reference, level, table, weights)])),
  );
  return { fit, rows };
}
