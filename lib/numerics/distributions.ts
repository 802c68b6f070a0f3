/** All distribution functions by family: density, cumulative distribution function with both tails, quantile. */
export { betaCdf, betaDensity, betaQuantile } from './beta.ts';
export { binomialCdf, binomialDensity, binomialQuantile } from './binomial.ts';
export {
  chiSquareCdf,
  chiSquareDensity,
  chiSquareQuantile,
  gammaCdf,
  gammaDensity,
  gammaQuantile,
} from './gamma.ts';
export { hypergeometricCdf, hypergeometricDensity, hypergeometricQuantile } from './hypergeometric.ts';
export type { LogOption, Tail, TailOption } from './normal.ts';
export { normalCdf, normalDensity, normalLogCdf, normalQuantile } from './normal.ts';
export { studentCdf, studentDensity, studentQuantile } from './student.ts';
