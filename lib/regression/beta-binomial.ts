/** Beta-binomial regression by maximum likelihood: shares of groups that vary more than a binomial. */

import type { PossibleTest } from '../proportions/interval.ts';
import type { ClimbEnd } from './climb.ts';
import { leadingBlock, overdispersionTest, type ShapeEstimate } from './count-fit.ts';
import { checkColumnCount, type Design, type DesignSpec, designOf } from './design.ts';
import type { Convergence, Fit } from './fit.ts';
import { fitDesign } from './logistic.ts';
import { basisCoefficients, columnCoefficients, independentBasis } from './orthogonal-basis.ts';
import { linkInverse, logBinomialCoefficients } from './response.ts';
import { risingFactorial } from './rising-factorial.ts';
import {
  climbFromLimit,
  observedCovariance,
  type RowSlopes,
  rowPredictors,
  type ShapeModel,
  type ShapePoint,
} from './shape-climb.ts';
import type { FittedTerms } from './terms.ts';

/** A finished fit. Where `convergence.settled` is false its numbers are null, and `convergence.reason` says why. */
export interface BetaBinomialFit extends FittedTerms {
  readonly design: Design;
  /** p coefficients of the logit of the mean, in the order of `design.names`. */
  readonly coefficients: Float64Array | null;
  /** p × p covariance of the coefficients, row by row, from the observed information. */
  readonly covariance: Float64Array | null;
  /**
   * Correlation of two trials of one row, 1 / (a + b + 1). Null at its limits, because `no-overdispersion` (0, the fit is
   * binomial), `all-or-none` (1: no row has both outcomes; the fit takes each row as one trial) or `single-trials` (no row
   * has two trials, which could tell it); `logitSe` is that of its logit.
   */
  readonly correlation: Omit<ShapeEstimate, 'logSe'> & { readonly logitSe: number | null };
  /** (p + 1) × (p + 1) from the observed information, the logit of the correlation last; null where that is. */
  readonly jointCovariance: Float64Array | null;
  /** Expected share of successes of each row. */
  readonly fitted: Float64Array | null;
  /** Log-likelihood with the binomial coefficients. */
  readonly logLik: number | null;
  readonly df: number;
  /** Log-likelihood of the binomial limit; its supremum under separation. */
  readonly binomialLogLik: number;
  /** Likelihood-ratio test against the binomial limit, half a chi-square with 1 df. */
  readonly overdispersion: PossibleTest;
  readonly separatedBy: readonly string[];
  readonly convergence: Convergence;
}

const successSums = { log: 0, first: 0, second: 0 };
const failureSums = { log: 0, first: 0, second: 0 };
const trialSums = { log: 0, first: 0, second: 0 };

/**
 * One row: y of m with mean 1 / (1 + exp(−eta)) and a + b = exp(logShape), without its binomial coefficient.
 *
 * The rising factorials of a, b and a + b over their powers are added to the binomial log-likelihood, to which all goes
 * as a + b grows. Source: Johnson, Kemp & Kotz (2005) Univariate Discrete Distributions, equation 6.16.
 */
function betaBinomialRow(y: number, m: number, eta: number, logShape: number, slopes: RowSlopes): void {
  const total = Math.exp(logShape);
  const mean = linkInverse('logit', eta);
  const spread = mean * linkInverse('logit', -eta);
  const a = total * mean;
  const b = total * linkInverse('logit', -eta);
  const success = risingFactorial(a, y, successSums);
  const failure = risingFactorial(b, m - y, failureSums);
  const trial = risingFactorial(total, m, trialSums);
  const kernel = y * eta - m * (Math.max(eta, 0) + Math.log1p(Math.exp(-Math.abs(eta))));
  const pull = total * spread;
  const tilt = success.first - failure.first;
  slopes.value = kernel + success.log + failure.log - trial.log;
  slopes.eta = pull * tilt;
  slopes.etaEta = pull * (1 - 2 * mean) * tilt + pull * pull * (success.second + failure.second);
  slopes.shape = a * success.first + b * failure.first - total * trial.first;
  slopes.etaShape = pull * (tilt + a * success.second - b * failure.second);
  slopes.shapeShape =
    slopes.shape + a * a * success.second + b * b * failure.second - total * total * trial.second;
}

/** Slope of a row's log-likelihood by 1 / (a + b) at the binomial limit (Tarone 1979, Biometrika 66, 585–590). */
function leaving(y: number, m: number, mean: number): number {
  return ((y * (y - 1)) / mean + ((m - y) * (m - y - 1)) / (1 - mean) - m * (m - 1)) / 2;
}

/** log(a + b) of the moments, from Pearson's dispersion of the binomial fit, kept within bounds. */
function momentShape({ design: { successes, trials }, fitted, df }: Fit): number {
  let pearson = 0;
  let sum = 0;
  successes.forEach((y, i) => {
    const m = trials[i]!;
    pearson += (y - m * fitted[i]!) ** 2 / (m * fitted[i]! * (1 - fitted[i]!));
    sum += m;
  });
  const { length: n } = successes;
  const dispersion = n > df ? pearson / (n - df) : 1;
  const correlation = Math.min(0.9, Math.max(1e-3, (dispersion - 1) / (sum / n - 1)));
  return Math.log(1 / correlation - 1);
}

function climbCorrelation(model: ShapeModel, binomial: Fit, constant: number): ClimbEnd<ShapePoint> | null {
  const { design, fitted, coefficients, logLik } = binomial;
  let rise = 0;
  for (let i = 0; i < design.n; i += 1) rise += leaving(design.successes[i]!, design.trials[i]!, fitted[i]!);
  const gamma = basisCoefficients(model.basis, coefficients);
  const limit = { gamma, objective: logLik - constant, leaves: rise > 0 };
  return climbFromLimit(model, limit, momentShape(binomial));
}

/** What the fit says where the correlation is not estimated: the binomial fit of the rows, as `because` explains. */
function atLimit(design: Design, fit: Fit, binomialLogLik: number, because: string): BetaBinomialFit {
  const { settled, reason } = fit.convergence;
  const why = settled ? because : reason;
  const logLik = settled ? fit.logLik : null;
  return {
    design,
    terms: fit.terms.map((term) => (settled ? term : { term: term.term, estimate: null, se: null })),
    coefficients: settled ? fit.coefficients : null,
    covariance: settled ? fit.covariance : null,
    correlation: { estimate: null, se: null, logitSe: null, because: why },
    jointCovariance: null,
    fitted: settled ? fit.fitted : null,
    logLik,
    df: fit.df,
    binomialLogLik,
    overdispersion:
      logLik === null || because === 'single-trials'
        ? { statistic: null, df: null, p: null, because: why }
        : overdispersionTest(logLik, binomialLogLik),
    separatedBy: fit.separatedBy,
    convergence: fit.convergence,
  };
}

/** The joint covariance with the logit of the correlation, which is −log(a + b), in its last place. */
function towardsCorrelation(covariance: Float64Array, size: number): Float64Array {
  const turned = covariance.slice();
  for (let k = 0; k < size - 1; k += 1) {
    turned[k * size + size - 1]! *= -1;
    turned[(size - 1) * size + k]! *= -1;
  }
  return turned;
}

/** The numbers at a settled climb. */
function numbersAt(
  { design, terms }: Fit,
  model: ShapeModel,
  { gamma, objective }: ShapePoint,
  joint: Float64Array,
) {
  const { p } = model.basis;
  const size = p + 1;
  const coefficients = columnCoefficients(model.basis, gamma.slice(0, p));
  const covariance = leadingBlock(joint, size, p);
  const estimate = 1 / (1 + Math.exp(gamma[p]!));
  const logitSe = Math.sqrt(joint[size * size - 1]!);
  return {
    terms: terms.map(({ term }, j) => ({
      term,
      estimate: coefficients[j]!,
      se: Math.sqrt(covariance[j * p + j]!),
    })),
    coefficients,
    covariance,
    correlation: { estimate, se: estimate * (1 - estimate) * logitSe, logitSe },
    jointCovariance: towardsCorrelation(joint, size),
    fitted: rowPredictors(model, gamma).map((eta) => linkInverse('logit', eta)),
    logLik: objective + logBinomialCoefficients(design),
  };
}

function withCorrelation(binomial: Fit, model: ShapeModel, end: ClimbEnd<ShapePoint>): BetaBinomialFit {
  const { design } = binomial;
  const joint = observedCovariance(model, end.point);
  if (!end.convergence.settled || joint === null) {
    const reason = joint === null ? 'singular-information' : end.convergence.reason;
    const convergence = { ...end.convergence, settled: false, reason };
    return atLimit(design, { ...binomial, convergence }, binomial.logLik, reason);
  }
  const numbers = numbersAt(binomial, model, end.point, joint);
  return {
    design,
    ...numbers,
    df: end.point.gamma.length,
    binomialLogLik: binomial.logLik,
    overdispersion: overdispersionTest(numbers.logLik, binomial.logLik),
    separatedBy: [],
    convergence: end.convergence,
  };
}

/** Each row as one trial: what is left of a row whose trials all end alike because of what they share. */
function asSingleTrials(design: Design): Design {
  return {
    ...design,
    successes: design.successes.map((y) => Math.min(y, 1)),
    trials: new Float64Array(design.n).fill(1),
  };
}

/**
 * Beta-binomial regression: logit of the mean, one intra-class correlation for all rows.
 *
 * Answers how the odds of a success (a germinated seed) change with the columns, where the trials of one row (a seed lot,
 * a dish) are alike beyond what the columns say. Not for rows that share something with other rows (see `mixedLogistic`),
 * nor for single flowers, which cannot tell a correlation.
 *
 * The share of a row is beta distributed with mean pi and a + b = 1 / correlation − 1; its count has variance
 * m pi (1 − pi) (1 + (m − 1) correlation). A negative correlation is not looked for: see `correlation` for what is said at
 * the limits 0 and 1. Standard errors from the observed information of coefficients and logit of the correlation together.
 * Under separation the numbers are null and `convergence.reason` is `separated`.
 *
 * @param spec n rows of successes and trials, p columns, an offset; see `DesignSpec`
 * @returns a finished fit; `waldIntervals` makes the ranges of its terms
 * @throws RangeError when the rules of `DesignSpec` are broken, there is no column, more columns than rows, or a column
 *   that is a linear combination of others (it is named)
 * @source Crowder (1978) Applied Statistics 27, 34–37; Prentice (1986) JASA 81, 321–327
 * @example betaBinomial({ successes: [1, 9, 8, 3, 0, 10], trials: [10, 12, 9, 11, 10, 12], columns: { fresh: [0, 1, 0, 1, 0, 1] } }).correlation.estimate // 0.34710...
 */
export function betaBinomial(spec: DesignSpec): BetaBinomialFit {
  const design = designOf(spec, 'betaBinomial');
  const { n, successes, trials, offset, names, columns } = design;
  checkColumnCount('betaBinomial', design);
  const basis = independentBasis('betaBinomial', names, columns, new Float64Array(n).fill(1));
  const binomial = fitDesign(design, 'maximum-likelihood', 'logit');
  const limit = (because: string) => atLimit(design, binomial, binomial.logLik, because);
  if (!binomial.convergence.settled) return limit(binomial.convergence.reason);
  if (trials.every((m) => m === 1)) return limit('single-trials');
  if (successes.every((y, i) => y === 0 || y === trials[i])) {
    const single = fitDesign(asSingleTrials(design), 'maximum-likelihood', 'logit');
    return atLimit(design, single, binomial.logLik, 'all-or-none');
  }
  const row = (i: number, eta: number, shape: number, slopes: RowSlopes) =>
    betaBinomialRow(successes[i]!, trials[i]!, eta, shape, slopes);
  const model = { basis, offset, row, shaped: true };
  const end = climbCorrelation(model, binomial, logBinomialCoefficients(design));
  return end === null ? limit('no-overdispersion') : withCorrelation(binomial, model, end);
}
