import { describe, expect, it } from 'vitest';
import {
  emptyPoint,
  linearPredictor,
  logistic01,
  logLikelihood,
  rowWork,
} from '../../lib/regression/latent-likelihood.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { EXCLUSIVE } from './latent-examples.ts';

describe('logistic01', () => {
  it.each([
    // R 4.2: plogis(x), the far ones from exp(x) alone.
    [0, 0.5],
    [1, 0.7310585786300049],
    [-1, 0.2689414213699951],
    [-40, 4.248354255291589e-18],
    [40, 1],
    [800, 1],
    [-800, 0],
  ])('holds at %s', (x, probability) => {
    expect(logistic01(x)).toBeCloseTo(probability, 15);
    if (x === -40) expect(logistic01(x) / probability).toBeCloseTo(1, 13);
  });
});

describe('logLikelihood', () => {
  const plain = latentModel({
    successes: Float64Array.of(2, 0),
    trials: Float64Array.of(3, 4),
    offset: Float64Array.of(0, Math.log(3)),
    columns: [],
    factors: [{ name: 'pair', codes: Int32Array.of(0, 1), size: 2 }],
    exclusive: 0,
  });
  const origin = { core: new Float64Array(0), block: new Float64Array(2) };
  const at = (exclusive: number) => {
    const scales = { columns: new Float64Array(0), factors: Float64Array.of(1), exclusive };
    const work = rowWork(plain);
    linearPredictor(plain, scales, origin, work);
    return { value: logLikelihood(plain, scales, work), work };
  };

  it('is that of binomial counts without their coefficients, with score r − n p and weight n p (1 − p)', () => {
    // p = 1/2 and 3/4: log(1/2³) + log(1/4⁴).
    const { value, work } = at(0);
    expect(value).toBeCloseTo(-11 * Math.LN2, 13);
    expect([...work.score]).toEqual([0.5, -3]);
    expect([...work.weight]).toEqual([0.75, 0.75]);
  });

  it('counts every level as ordinary where none can be barren', () => {
    expect([...at(0).work.level]).toEqual([1, 1]);
  });

  it('mixes a level without success with one that never succeeds', () => {
    // Share 1/5: level 0 has 4/5 × 1/8; level 1 has 1/5 + 4/5 × 1/256, ordinary with probability 1/65 by Bayes.
    const { value, work } = at(0.2);
    expect(value).toBeCloseTo(Math.log(0.8 / 8) + Math.log(0.2 + 0.8 / 256), 13);
    expect(work.level[0]).toBe(1);
    expect(work.level[1]).toBeCloseTo(1 / 65, 14);
    expect(work.score[1]).toBeCloseTo(-3 / 65, 14);
    expect(work.weight[1]).toBeCloseTo(0.75 / 65, 14);
  });

  it('has the same value without score and weight, which it then leaves as they are', () => {
    const scales = { columns: new Float64Array(0), factors: Float64Array.of(1), exclusive: 0.2 };
    const work = rowWork(plain);
    linearPredictor(plain, scales, origin, work);
    expect(logLikelihood(plain, scales, work, false)).toBe(at(0.2).value);
    expect(work.level[1]).toBeCloseTo(1 / 65, 14);
    expect([...work.score, ...work.weight]).toEqual([0, 0, 0, 0]);
  });

  it('adds up thousands of rows in a level, and rows of many trials', () => {
    // Each trial has probability 1/2: log 2 for each of 3,000 single ones, 500 in one row and 3 in another.
    const trials = Float64Array.from({ length: 3002 }, (_, i) => [500, 3][i] ?? 1);
    const many = latentModel({
      successes: trials.map((_, i) => i % 2),
      trials,
      offset: new Float64Array(3002),
      columns: [],
      factors: [{ name: 'pair', codes: new Int32Array(3002), size: 1 }],
      exclusive: 0,
    });
    const scales = { columns: new Float64Array(0), factors: Float64Array.of(1), exclusive: 0.2 };
    const work = rowWork(many);
    linearPredictor(many, scales, { core: new Float64Array(0), block: new Float64Array(1) }, work);
    expect(logLikelihood(many, scales, work)).toBeCloseTo(Math.log(0.8) - 3503 * Math.LN2, 9);
  });

  it('does not overflow far out', () => {
    const scales = { ...EXCLUSIVE.scales, columns: Float64Array.of(1, 1) };
    const model = latentModel(EXCLUSIVE.spec);
    const work = rowWork(model);
    for (const far of [1000, -1000]) {
      const core = new Float64Array(model.coreSize).fill(far);
      linearPredictor(model, scales, { core, block: new Float64Array(model.blockSize) }, work);
      expect(Number.isFinite(logLikelihood(model, scales, work))).toBe(true);
      expect(work.score.every(Number.isFinite)).toBe(true);
    }
  });
});

describe('emptyPoint', () => {
  it('has a coefficient for every level and column, all 0', () => {
    // Three mothers, two vials and two columns in the core, five pairs eliminated.
    const point = emptyPoint(latentModel(EXCLUSIVE.spec));
    expect([...point.core]).toEqual(Array(7).fill(0));
    expect([...point.block]).toEqual(Array(5).fill(0));
  });
});
