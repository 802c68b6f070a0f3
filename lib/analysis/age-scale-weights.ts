/** Which age scale do the flowers speak for? A season or two cannot tell, so both are kept, weighted by their evidence. */

/**
 * Probabilities of models that are equally likely beforehand, given the data (Hoeting, Madigan, Raftery & Volinsky 1999,
 * Bayesian model averaging, Statistical Science 14:382–417, equation 2).
 *
 * The scales share every prior: what storage costs at age 0 and what the reference age costs. So neither gains by a vaguer one.
 *
 * @param logMarginals log marginal likelihood of each model
 * @returns weights in the same order, adding up to 1
 */
export function scaleWeights(logMarginals: readonly number[]): number[] {
  const top = Math.max(...logMarginals);
  const raw = logMarginals.map((value) => Math.exp(value - top));
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((weight) => weight / sum);
}
