/** Firth's logistic regression with its intercept corrected (FLIC). */

import { cholesky, invertCholesky } from '../numerics/linear-algebra.ts';
import type { Design } from './design.ts';
import type { Fit } from './fit.ts';
import { fitDesign } from './logistic.ts';
import { emptyResponse, logBinomialCoefficients, respond, saturatedLogLik } from './response.ts';

function linearPredictor(
  { columns, offset }: Design,
  coefficients: Float64Array,
  from: number,
): Float64Array {
  const eta = offset.slice();
  for (let j = from; j < columns.length; j += 1) {
    for (let i = 0; i < eta.length; i += 1) eta[i]! += columns[j]![i]! * coefficients[j]!;
  }
  return eta;
}

/** Inverse Fisher information of the design at fitted weights. */
function covarianceAt({ columns }: Design, weight: Float64Array): Float64Array | null {
  const p = columns.length;
  const information = new Float64Array(p * p);
  for (let j = 0; j < p; j += 1) {
    for (let k = 0; k <= j; k += 1) {
      let sum = 0;
      for (let i = 0; i < weight.length; i += 1) sum += weight[i]! * columns[j]![i]! * columns[k]![i]!;
      information[j * p + k] = sum;
    }
  }
  const factor = cholesky(information, p);
  return factor === null ? null : invertCholesky(factor, p);
}

/**
 * Intercept correction of Firth's logistic regression (FLIC).
 *
 * Answers: probabilities from a Firth fit, without its pull towards 1/2. Firth's penalty shrinks coefficients, which
 * is wanted, but also draws the mean probability to a half (0.12 may become 0.16). Here the slopes stay, and the
 * intercept is the maximum-likelihood one given them, so that the mean fitted probability is the observed rate. The
 * covariance is the inverse Fisher information at the corrected coefficients. For predictions only: profiles and
 * tests belong to the fit as it was.
 *
 * @param fit a Firth fit with an intercept
 * @returns a new fit; null where every outcome is the same, since no finite intercept then gives the observed rate
 * @throws RangeError when the fit is not by Firth's method or has no intercept
 * @source Puhr, Heinze, Nold, Lusa & Geroldinger (2017) Statistics in Medicine 36, 2302–2317
 * @example correctIntercept(logistic({ successes: [0, 3], trials: [9, 10], columns: { stored: [1, 0] } }, { method: 'firth' })).terms[0].estimate // -1.02086...
 */
export function correctIntercept(fit: Fit): Fit | null {
  const { design, link } = fit;
  if (fit.method !== 'firth' || design.names[0] !== '(Intercept)') {
    throw new RangeError(
      `correctIntercept: fit must be by Firth's method and have an intercept, got ${fit.method} with ${design.names.join(', ')}`,
    );
  }
  const offset = linearPredictor(design, fit.coefficients, 1);
  const [ones] = design.columns;
  const alone: Design = {
    ...design,
    offset,
    names: ['(Intercept)'],
    columns: [ones!],
    sources: [{ values: ones! }],
  };
  const intercept = fitDesign(alone, 'maximum-likelihood', link);
  if (!intercept.convergence.settled) return null;
  const coefficients = fit.coefficients.slice();
  coefficients[0] = intercept.coefficients[0]!;
  const response = emptyResponse(design.n);
  const kernel = respond(link, linearPredictor(design, coefficients, 0), design, response);
  const covariance = covarianceAt(design, response.weight);
  if (covariance === null) return null;
  const p = design.names.length;
  return {
    ...fit,
    coefficients,
    covariance,
    terms: design.names.map((term, j) => ({
      term,
      estimate: coefficients[j]!,
      se: Math.sqrt(covariance[j * p + j]!),
    })),
    fitted: response.mean,
    logLik: kernel + logBinomialCoefficients(design),
    penalisedLogLik: null,
    deviance: 2 * (saturatedLogLik(design) - kernel),
    interceptCorrected: true,
  };
}
