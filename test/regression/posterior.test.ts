import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../lib/numerics/normal.ts';
import { quantileOfSorted } from '../../lib/numerics/quantile.ts';
import type { Posterior, PosteriorDraw } from '../../lib/regression/posterior.ts';
import { posterior } from '../../lib/regression/posterior.ts';
import type { PriorModel } from '../../lib/regression/prior-model.ts';
import type { Counts, SmallModel, SmallPosterior } from './brute-force-posterior.ts';
import { bruteForcePosterior } from './brute-force-posterior.ts';
import type { ChainMean } from './metropolis.ts';
import { acrossRuns, metropolis } from './metropolis.ts';

const RUNS = 12;
const INTERCEPT = { mean: 0.3, sd: 1.2 };

/** Some of each count a reader would worry about: nothing of one, nothing of five, all of two, one of three. */
const LEVELS: readonly Counts[] = [
  [0, 5],
  [3, 4],
  [1, 3],
  [0, 1],
  [4, 5],
  [2, 2],
  [0, 3],
].map(([successes, trials]) => ({ successes: successes!, trials: trials! }));

function priorModel({ levels, intercept, scale, share }: SmallModel): PriorModel {
  return {
    successes: Float64Array.from(levels, ({ successes }) => successes),
    trials: Float64Array.from(levels, ({ trials }) => trials),
    columns: [{ name: '(Intercept)', values: new Float64Array(levels.length).fill(1), ...intercept }],
    factors: [{ name: 'pair', codes: Int32Array.from(levels, (_, i) => i), size: levels.length, scale }],
    exclusive: share && { factor: 'pair', ...share },
  };
}

function moments(values: readonly number[]): [number, number] {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return [mean, Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length)];
}

/** Everything that the brute force answers, from draws: mean and standard deviation of each, then the rest. */
function answers(fit: Posterior): number[] {
  const of = (quantity: (draw: PosteriorDraw) => number) => moments(fit.draws.map(quantity));
  return [
    ...of(({ columns }) => columns[0]!),
    ...of(({ sds }) => sds[0]!),
    ...of(({ exclusiveShare }) => exclusiveShare),
    ...LEVELS.flatMap((_, a) => of(({ effects }) => effects[0]![a]!)),
    ...(fit.exclusive.length > 0 ? fit.exclusive : LEVELS.map(() => 0)),
    fit.logMarginal,
  ];
}

function exactAnswers(exact: SmallPosterior): { value: number; sd: number }[] {
  const { intercept, factorSd, share, effects, exclusive, logMarginal } = exact;
  return [
    ...[intercept, factorSd, share, ...effects].flatMap(({ mean, sd }) => [
      { value: mean, sd },
      { value: sd, sd },
    ]),
    ...exclusive.map((p) => ({ value: p, sd: Math.sqrt(p * (1 - p)) })),
    { value: logMarginal, sd: 1 },
  ];
}

/** Independent runs of one model: the same model under other seeds. */
function runsOf(model: PriorModel, draws = 3000): ChainMean[] {
  const runs = Array.from({ length: RUNS }, (_, k) => answers(posterior(model, { seed: k + 1, draws })));
  return runs[0]!.map((_, q) => acrossRuns(runs.map((run) => run[q]!)));
}

describe('posterior of one intercept and one factor, against integrals over a grid', () => {
  /**
   * The mean over twelve seeds may miss the exact value by five of its standard errors: Student's t on 11 degrees
   * of freedom is beyond 5 once in 2,500. Cutting the largest weights (Ionides 2008) leaves a bias that no number
   * of seeds removes: `bias`, in standard deviations of the quantity.
   */
  function expectAnswers(small: SmallModel, bias: number, largestError: number): void {
    const exact = exactAnswers(bruteForcePosterior(small));
    const found = runsOf(priorModel(small));
    expect(found.length).toBe(exact.length);
    found.forEach(({ mean, error }, q) => {
      const { value, sd } = exact[q]!;
      expect(error, `error of quantity ${q}`).toBeLessThanOrEqual(largestError * sd);
      expect(Math.abs(mean - value), `quantity ${q}`).toBeLessThanOrEqual(5 * error + bias * sd);
    });
  }

  it('finds means, standard deviations and the marginal likelihood where every level is ordinary', () => {
    expectAnswers({ levels: LEVELS, intercept: INTERCEPT, scale: 0.8, share: null }, 0.005, 0.025);
  });

  it('finds the probability that a level never succeeds, and the share of such levels', () => {
    const share = { mean: -1.5, sd: 1 };
    expectAnswers({ levels: LEVELS, intercept: INTERCEPT, scale: 0.8, share }, 0.02, 0.025);
  });

  it('keeps the prior where there are no trials', () => {
    const none = LEVELS.map(() => ({ successes: 0, trials: 0 }));
    const share = { mean: -2.6, sd: 0.8 };
    expectAnswers({ levels: none, intercept: INTERCEPT, scale: 0.6, share }, 0.005, 0.025);
  });
});

describe('posterior of two crossed factors, against a Metropolis chain', () => {
  const MOTHERS = 5;
  const FATHERS = 4;
  const SCALES = [0.8, 0.6] as const;
  // Fruits of flowers by mother (row) and father (column): made up, with empty cells and cells without a fruit.
  const fruits = [
    [3, 0, 2, 1],
    [1, 0, 0, 0],
    [4, 1, 2, 0],
    [0, 0, 1, 2],
    [2, 1, 3, 1],
  ];
  const flowers = [
    [4, 2, 3, 1],
    [4, 3, 0, 2],
    [4, 2, 2, 0],
    [2, 3, 3, 4],
    [3, 1, 3, 2],
  ];
  const cells = fruits.flatMap((row, mother) =>
    row.map((successes, father) => ({ mother, father, successes, trials: flowers[mother]![father]! })),
  );
  const tried = cells.filter(({ trials }) => trials > 0);
  const model: PriorModel = {
    successes: Float64Array.from(cells, ({ successes }) => successes),
    trials: Float64Array.from(cells, ({ trials }) => trials),
    columns: [{ name: '(Intercept)', values: new Float64Array(cells.length).fill(1), ...INTERCEPT }],
    factors: [
      {
        name: 'mother',
        codes: Int32Array.from(cells, ({ mother }) => mother),
        size: MOTHERS,
        scale: SCALES[0],
      },
      {
        name: 'father',
        codes: Int32Array.from(cells, ({ father }) => father),
        size: FATHERS,
        scale: SCALES[1],
      },
    ],
    exclusive: null,
  };

  /** State: intercept, the mothers', the fathers' effects in standard deviations, both standard deviations ÷ scale. */
  function coefficients(x: Float64Array): { b: number; mothers: number[]; fathers: number[]; sds: number[] } {
    const sds = SCALES.map((scale, g) => scale * Math.abs(x[1 + MOTHERS + FATHERS + g]!));
    return {
      b: INTERCEPT.mean + INTERCEPT.sd * x[0]!,
      mothers: Array.from(x.subarray(1, 1 + MOTHERS), (z) => z * sds[0]!),
      fathers: Array.from(x.subarray(1 + MOTHERS, 1 + MOTHERS + FATHERS), (z) => z * sds[1]!),
      sds,
    };
  }

  function logDensity(x: Float64Array): number {
    const b = INTERCEPT.mean + INTERCEPT.sd * x[0]!;
    const sdOfMothers = SCALES[0] * Math.abs(x[1 + MOTHERS + FATHERS]!);
    const sdOfFathers = SCALES[1] * Math.abs(x[2 + MOTHERS + FATHERS]!);
    let sum = 0;
    for (let k = 0; k < x.length; k += 1) sum -= (x[k]! * x[k]!) / 2;
    for (const { mother, father, successes, trials } of tried) {
      const eta = b + sdOfMothers * x[1 + mother]! + sdOfFathers * x[1 + MOTHERS + father]!;
      sum += successes * eta - trials * Math.log(1 + Math.exp(eta));
    }
    return sum;
  }

  function quantitiesOf(b: number, effects: readonly ArrayLike<number>[], sds: ArrayLike<number>): number[] {
    const all = [b, ...effects.flatMap((values) => Array.from(values)), ...Array.from(sds)];
    // Second moments too, so that a range of the wrong width is seen.
    return [...all, ...all.map((value) => value * value)];
  }

  it('finds the same means and second moments', () => {
    const chain = metropolis(
      logDensity,
      [0.6, ...Array(MOTHERS + FATHERS).fill(1.8), 1.8, 1.8],
      (x) => {
        const { b, mothers, fathers, sds } = coefficients(x);
        return quantitiesOf(b, [mothers, fathers], sds);
      },
      { sweeps: 40_000, seed: 7 },
    );
    const runs = Array.from({ length: RUNS }, (_, k) => {
      const { draws } = posterior(model, { seed: k + 1 });
      const each = draws.map(({ columns, effects, sds }) => quantitiesOf(columns[0]!, effects, sds));
      return each[0]!.map((_, q) => each.reduce((sum, values) => sum + values[q]!, 0) / each.length);
    });
    chain.forEach((expected, q) => {
      const found = acrossRuns(runs.map((run) => run[q]!));
      // Both sides err: five standard errors of their difference, and 0.5 % for the weights that are cut.
      const tolerance = 5 * Math.hypot(found.error, expected.error) + 0.005;
      expect(Math.hypot(found.error, expected.error), `error of quantity ${q}`).toBeLessThan(0.06);
      expect(Math.abs(found.mean - expected.mean), `quantity ${q}`).toBeLessThan(tolerance);
    });
  });
});

describe('posterior of a coefficient with a bound', () => {
  const untold: PriorModel = {
    successes: new Float64Array([2, 1]),
    trials: new Float64Array([3, 3]),
    columns: [
      { name: '(Intercept)', values: new Float64Array([1, 1]), ...INTERCEPT },
      { name: 'age', values: new Float64Array(2), mean: -1, sd: 1, below: 0 },
    ],
    factors: [{ name: 'pair', codes: new Int32Array([0, 1]), size: 2, scale: 0.6 }],
    exclusive: null,
  };
  const slopes = posterior(untold, { draws: 4000 }).draws.map(({ columns }) => columns[1]!);
  const sorted = Float64Array.from(slopes).sort();

  it('keeps its truncated normal prior where the data say nothing about it', () => {
    // N(−1, 1) below 0: mean −1 − phi(1) / Phi(1), R 4.2: -1 - dnorm(1) / pnorm(1) = -1.287599970939178;
    // standard deviation sqrt(1 - dnorm(1) / pnorm(1) * (1 + dnorm(1) / pnorm(1))) = 0.7935...
    const ratio = 0.24197072451914337 / 0.8413447460685429;
    const [mean, sd] = moments(slopes);
    const exactSd = Math.sqrt(1 - ratio - ratio * ratio);
    // 4,000 draws: 4 standard errors of a mean are 4 sd / sqrt(4000) = 0.063 sd.
    expect(Math.abs(mean - (-1 - ratio))).toBeLessThan(0.063 * exactSd);
    expect(Math.abs(sd / exactSd - 1)).toBeLessThan(0.063);
  });

  it.each([0.025, 0.25, 0.5, 0.75, 0.975])('has the prior quantile at %s', (p) => {
    // The share of draws below the exact quantile is binomial: within 4 sqrt(p (1 - p) / 4000) of p.
    const quantile = -1 + normalQuantile(p * 0.8413447460685429);
    const below = sorted.filter((slope) => slope < quantile).length / sorted.length;
    expect(Math.abs(below - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / sorted.length));
  });

  it('never passes its bound, even where the data pull it there', () => {
    const age = new Float64Array([0, 1]);
    const rising: PriorModel = {
      ...untold,
      successes: new Float64Array([2, 20]),
      trials: new Float64Array([20, 20]),
      columns: [untold.columns[0]!, { ...untold.columns[1]!, values: age }],
    };
    const fit = posterior(rising, { draws: 1000 });
    expect(fit.draws.every(({ columns }) => columns[1]! < 0)).toBe(true);
    expect(
      quantileOfSorted(Float64Array.from(fit.draws, ({ columns }) => columns[1]!).sort(), 0.5),
    ).toBeGreaterThan(-0.6);
  });

  it('gives a model without data the marginal likelihood 1, bound or not', () => {
    const silent = { ...untold, successes: new Float64Array(2), trials: new Float64Array(2) };
    // Exact: the integral of the prior. Weights are constant but for the hyperparameter, whose points are spread evenly.
    expect(Math.abs(posterior(silent).logMarginal)).toBeLessThan(0.02);
  });
});

describe('posterior as a function', () => {
  const share = { mean: -1.5, sd: 1 };
  const model = priorModel({ levels: LEVELS, intercept: INTERCEPT, scale: 0.8, share });

  it('gives the same draws for the same seed, and others for another', () => {
    const first = posterior(model, { seed: 5, draws: 200 });
    const again = posterior(model, { seed: 5, draws: 200 });
    const other = posterior(model, { seed: 6, draws: 200 });
    expect(again).toEqual(first);
    expect(other.draws[0]!.columns).not.toEqual(first.draws[0]!.columns);
  });

  it('does not depend on the order of the levels beyond Monte Carlo error', () => {
    const size = LEVELS.length;
    const turned = LEVELS.map((_, a) => (a * 3 + 2) % size);
    const moved = LEVELS.map((_, a) => LEVELS[turned.indexOf(a)]!);
    const there = runsOf(model, 2000);
    const here = runsOf(priorModel({ levels: moved, intercept: INTERCEPT, scale: 0.8, share }), 2000);
    const effectAt = 6;
    const exclusiveAt = effectAt + 2 * size;
    LEVELS.forEach((_, a) => {
      for (const [from, to] of [
        [effectAt + 2 * a, effectAt + 2 * turned[a]!],
        [exclusiveAt + a, exclusiveAt + turned[a]!],
      ] as const) {
        const gap = Math.abs(there[from]!.mean - here[to]!.mean);
        expect(gap).toBeLessThanOrEqual(5 * Math.hypot(there[from]!.error, here[to]!.error));
      }
    });
  });

  it('returns as many draws as asked for, each with an effect a level and a kind a level', () => {
    const { draws } = posterior(model, { draws: 321 });
    expect(draws.length).toBe(321);
    expect(draws.every(({ effects }) => effects[0]!.length === LEVELS.length)).toBe(true);
    expect(draws.every(({ exclusive }) => exclusive.length === LEVELS.length)).toBe(true);
  });

  it('never calls a level barren that has succeeded', () => {
    const { draws, exclusive } = posterior(model);
    LEVELS.forEach(({ successes }, a) => {
      expect(exclusive[a]! > 0).toBe(successes === 0);
      expect(draws.some((draw) => draw.exclusive[a] === 1)).toBe(successes === 0);
    });
  });

  it('refuses an exclusive factor that is not there and a bounded column before an unbounded one', () => {
    const elsewhere = { ...model, exclusive: { factor: 'grower', ...share } };
    expect(() => posterior(elsewhere)).toThrow(
      'posterior: exclusive factor must be one of the factors, got grower',
    );
    const bounded = { name: 'age', values: new Float64Array(LEVELS.length), mean: -1, sd: 1, below: 0 };
    expect(() => posterior({ ...model, columns: [bounded, ...model.columns] })).toThrow(
      'posterior: column (Intercept) must come before the columns with a bound',
    );
  });
});
