/**
 * A slow and obvious second way to the posterior of the smallest model that `posterior` is for: an intercept, one
 * factor and levels that may never succeed. The integrals are sums over grids, written down as the model is stated.
 *
 * The trapezoidal rule on an analytic integrand that has died away at both ends errs by less than any power of the
 * step (Trefethen & Weideman 2014, SIAM Review 56:385–458); halving every step changed nothing by more than 0.0001.
 */

/** Successes and trials of each level: the rows of one level have the same linear predictor. */
export interface Counts {
  readonly successes: number;
  readonly trials: number;
}

export interface SmallModel {
  readonly levels: readonly Counts[];
  readonly intercept: { readonly mean: number; readonly sd: number };
  /** Scale of the half-normal prior of the factor's standard deviation. */
  readonly scale: number;
  /** Logit of the share of levels that never succeed is N(mean, sd²); null where there are none. */
  readonly share: { readonly mean: number; readonly sd: number } | null;
}

export interface Moments {
  readonly mean: number;
  readonly sd: number;
}

export interface SmallPosterior {
  readonly intercept: Moments;
  readonly factorSd: Moments;
  readonly share: Moments;
  readonly effects: readonly Moments[];
  /** Probability of each level that it never succeeds. */
  readonly exclusive: readonly number[];
  readonly logMarginal: number;
}

/** Abscissae and weights of a standard normal, from −7 to 7. */
const STANDARD = Array.from({ length: 57 }, (_, k) => {
  const z = (k - 28) / 4;
  return { z, weight: Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI) / 4 };
});

/** A standard normal folded at 0, by Simpson's rule, since a mean of |z| has a corner there. */
const FOLDED = Array.from({ length: 29 }, (_, k) => {
  const z = k / 4;
  const simpson = k === 0 || k === 28 ? 1 : k % 2 === 1 ? 4 : 2;
  return { z, weight: ((simpson / 3) * 2 * Math.exp(-(z * z) / 2)) / Math.sqrt(2 * Math.PI) / 4 };
});

interface LevelIntegrals {
  /** Integrals of likelihood × (1, effect, effect²) over the effect. */
  readonly ordinary: readonly [number, number, number];
  readonly barren: boolean;
}

function levelIntegrals({ successes, trials }: Counts, b: number, sd: number): LevelIntegrals {
  const sums: [number, number, number] = [0, 0, 0];
  for (const { z, weight } of STANDARD) {
    const p = 1 / (1 + Math.exp(-(b + sd * z)));
    const term = weight * p ** successes * (1 - p) ** (trials - successes);
    sums[0] += term;
    sums[1] += term * sd * z;
    sums[2] += term * sd * sd * z * z;
  }
  return { ordinary: sums, barren: successes === 0 };
}

export function bruteForcePosterior(model: SmallModel): SmallPosterior {
  const size = model.levels.length;
  const total = { one: 0, b: 0, bb: 0, sd: 0, sdsd: 0, share: 0, shareShare: 0 };
  const effect = new Float64Array(size);
  const effectSquared = new Float64Array(size);
  const never = new Float64Array(size);
  const shares = model.share
    ? STANDARD.filter((_, k) => k % 2 === 0).map(({ z, weight }) => ({
        share: 1 / (1 + Math.exp(-(model.share!.mean + model.share!.sd * z))),
        weight: weight * 2,
      }))
    : [{ share: 0, weight: 1 }];
  for (const { z, weight } of STANDARD) {
    const b = model.intercept.mean + model.intercept.sd * z;
    for (const half of FOLDED) {
      const sd = model.scale * half.z;
      const levels = model.levels.map((counts) => levelIntegrals(counts, b, sd));
      const outer = weight * half.weight;
      for (const { share, weight: shareWeight } of shares) {
        const factors = levels.map(
          ({ ordinary, barren }) => (barren ? share : 0) + (1 - share) * ordinary[0],
        );
        const joint = factors.reduce((product, factor) => product * factor, outer * shareWeight);
        total.one += joint;
        total.b += joint * b;
        total.bb += joint * b * b;
        total.sd += joint * sd;
        total.sdsd += joint * sd * sd;
        total.share += joint * share;
        total.shareShare += joint * share * share;
        levels.forEach(({ ordinary, barren }, a) => {
          // The effect of a level that never succeeds keeps its prior N(0, sd²).
          const part = joint / factors[a]!;
          effect[a]! += part * (1 - share) * ordinary[1];
          effectSquared[a]! += part * ((barren ? share * sd * sd : 0) + (1 - share) * ordinary[2]);
          never[a]! += part * (barren ? share : 0);
        });
      }
    }
  }
  const moments = (first: number, second: number): Moments => {
    const mean = first / total.one;
    return { mean, sd: Math.sqrt(second / total.one - mean * mean) };
  };
  return {
    intercept: moments(total.b, total.bb),
    factorSd: moments(total.sd, total.sdsd),
    share: moments(total.share, total.shareShare),
    effects: Array.from(effect, (first, a) => moments(first, effectSquared[a]!)),
    exclusive: Array.from(never, (sum) => sum / total.one),
    logMarginal: Math.log(total.one),
  };
}
