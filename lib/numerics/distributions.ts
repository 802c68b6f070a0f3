/** All distribution functions by family: density, cumulative distribution function with both tails, quantile. */
export { betaCdf, betaDensity, betaQuantile } from './beta.ts';
export {
  chiSquareCdf,
  chiSquareDensity,
  chiSquareQuantile,
  gammaCdf,
  gammaDensity,
  gammaQuantile,
} from './gamma.ts';
export {
  type LogOption,
  normalCdf,
  normalDensity,
  normalLogCdf,
  normalQuantile,
  type Tail,
  type TailOption,
} from './normal.ts';
