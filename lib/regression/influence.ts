/** Leverage and Cook's distance: which rows a fit leans on. */

import type { Fit } from './fit.ts';
import { linkSlope } from './response.ts';
import { bilinear } from './standardise.ts';

export interface Influence {
  /** Diagonal of the hat matrix, one a row; the sum is the number of coefficients. */
  readonly leverage: Float64Array;
  /** Cook's distance of each row, one-step approximation; null where the leverage is 1. */
  readonly cooks: readonly (number | null)[];
}

/**
 * Leverage and Cook's distance of each row.
 *
 * Answers which rows the coefficients would move without. A row with leverage 1 is the only one that tells some
 * column.
 *
 * @param fit a fit of `logistic`; meaningful only where it has settled
 * @source Pregibon (1981) Annals of Statistics 9, 705–724; Williams (1987) Applied Statistics 36, 181–191
 * @example influence(fit).cooks[2] // 0.17777...
 */
export function influence({ design, coefficients, covariance, fitted, link }: Fit): Influence {
  const { n, columns, successes, trials } = design;
  const p = columns.length;
  const row = new Float64Array(p);
  const leverage = new Float64Array(n);
  const cooks: (number | null)[] = [];
  for (let i = 0; i < n; i += 1) {
    let eta = design.offset[i]!;
    for (let j = 0; j < p; j += 1) {
      row[j] = columns[j]![i]!;
      eta += row[j]! * coefficients[j]!;
    }
    const variance = fitted[i]! * (1 - fitted[i]!);
    const weight = variance > 0 ? (trials[i]! * linkSlope(link, eta) ** 2) / variance : 0;
    const h = weight * bilinear(row, covariance, row);
    const pearson =
      variance > 0 ? (successes[i]! - trials[i]! * fitted[i]!) ** 2 / (trials[i]! * variance) : 0;
    leverage[i] = h;
    cooks.push(1 - h > 1e-10 ? (pearson * h) / ((1 - h) * (1 - h) * p) : null);
  }
  return { leverage, cooks };
}
