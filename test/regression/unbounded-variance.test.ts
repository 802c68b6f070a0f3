import { describe, expect, it } from 'vitest';
import { mixedLogistic } from '../../lib/regression/mixed-logistic.ts';

/*
 * Pairs of one or two flowers, each of which all took or all failed. Laplace's optimum by lme4 1.1-31, R 4.2.2:
 * glmer(cbind(s, t - s) ~ 1 + (1 | pair), family = binomial).
 */
const pairs = Array.from({ length: 40 }, (_, i) => i);
const design = (successes: readonly number[], trials: readonly number[]) => ({
  ...{ successes, trials, columns: {} },
  groups: { pair: pairs.map((i) => `pair ${i}`) },
});
const few = pairs.map((i) => (i % 3 > 0 ? 1 : 2));
const sparse = design(
  pairs.map((i) => (i < 12 ? few[i]! : 0)),
  few,
);
const twos = design(
  pairs.map((i) => 2 * (i % 2)),
  pairs.map(() => 2),
);

/** The exact log-likelihood at a spread, at the best of many intercepts: sums over a fine grid of the normal effect. */
function exact({ successes, trials }: typeof sparse, sd: number): number {
  const steps = 4001;
  const effects = Array.from({ length: steps }, (_, k) => -8 + (16 * k) / (steps - 1));
  const density = effects.map((u) => (Math.exp((-u * u) / 2) / Math.sqrt(2 * Math.PI)) * (16 / (steps - 1)));
  const at = (intercept: number): number => {
    const rates = effects.map((u) => 1 / (1 + Math.exp(-(intercept + sd * u))));
    const levels = new Map<string, number>();
    return successes.reduce((sum, s, i) => {
      const key = `${s} ${trials[i]}`;
      const known = levels.get(key);
      const chance =
        known ?? rates.reduce((all, p, k) => all + density[k]! * p ** s * (1 - p) ** (trials[i]! - s), 0);
      levels.set(key, chance);
      return sum + Math.log(chance);
    }, 0);
  };
  return Math.max(...Array.from({ length: 61 }, (_, k) => at(((k - 30) / 30) * 1.5 * sd)));
}

describe('a variance without an upper bound', () => {
  it.each([
    ['one or two flowers a pair', sparse, 45.57651, -18.42055],
    ['two flowers a pair', twos, 8.353768, -36.08626],
  ] as const)('is Laplace’s own, as other software finds it, and named: %s', (_, spec, sd, logLik) => {
    const fit = mixedLogistic(spec);
    expect(fit.convergence.settled).toBe(true);
    expect(fit.logLik).toBeCloseTo(logLik, 3);
    expect(Math.abs(fit.variances[0]!.sd / sd - 1)).toBeLessThan(1e-3);
    expect(fit.unbounded).toEqual(['pair']);
  });

  it('has an exact likelihood that only grows', () => {
    const grown = [2, 5, 12, 30].map((sd) => exact(sparse, sd));
    for (const [k, value] of grown.slice(1).entries()) expect(value).toBeGreaterThan(grown[k]!);
  });

  it('is not named where one level has both outcomes, nor where the variance cannot be told at all', () => {
    const mixed = design([1, ...twos.successes.slice(1)], twos.trials);
    expect(mixedLogistic(mixed).unbounded).toEqual([]);
    const single = mixedLogistic(
      design(
        pairs.map((i) => i % 2),
        pairs.map(() => 1),
      ),
    );
    expect([single.unidentified, single.unbounded]).toEqual([['pair'], []]);
  });
});
