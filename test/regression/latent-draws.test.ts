import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../lib/numerics/normal.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { drawNoise, drawNormal, mirror, refill } from '../../lib/regression/latent-draws.ts';
import { emptyPoint } from '../../lib/regression/latent-likelihood.ts';
import { modeFinder } from '../../lib/regression/latent-mode.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { denseCurvature, denseDesign, denseVector, gauss } from './dense-laplace.ts';
import { EXAMPLES } from './latent-examples.ts';

const { spec, scales } = EXAMPLES.get('with three factors, some rows without one')!;
const model = latentModel(spec);
const mode = modeFinder(model).find(scales);
const centre = denseVector(model, mode.point);
const h = denseCurvature(spec, denseDesign(spec, scales), centre);
const covariance = centre.map(
  (_, k) =>
    gauss(
      h,
      centre.map((_, j) => (j === k ? 1 : 0)),
    ).x,
);
const { logDeterminant } = gauss(h, centre);

/** Log density of N(mode, H⁻¹) without its power of 2 pi, from the dense curvature. */
function logNormal(v: readonly number[]): number {
  const step = v.map((value, k) => value - centre[k]!);
  const product = h.map((row) => row.reduce((sum, value, k) => sum + value * step[k]!, 0));
  return logDeterminant / 2 - step.reduce((sum, value, k) => sum + value * product[k]!, 0) / 2;
}

/** Draws as dense vectors, with the log density that each is given. */
function draws(count: number, bounds: Float64Array, seed: number): { v: number[]; logDensity: number }[] {
  const random = randomStream(seed);
  const noise = drawNoise(model, bounds);
  const point = emptyPoint(model);
  return Array.from({ length: count }, () => {
    refill(noise, random);
    const logDensity = drawNormal(model, mode, noise, bounds, point);
    return { v: denseVector(model, point), logDensity };
  });
}

describe('drawNormal', () => {
  const none = new Float64Array(0);

  it('gives each draw the density that the dense normal has there', () => {
    for (const { v, logDensity } of draws(50, none, 1)) expect(logDensity).toBeCloseTo(logNormal(v), 9);
  });

  it('has the mode for its mean and the inverse curvature for its covariance', () => {
    const count = 20_000;
    const sample = draws(count, none, 2);
    centre.forEach((middle, j) => {
      const mean = sample.reduce((sum, { v }) => sum + v[j]!, 0) / count;
      const sd = Math.sqrt(covariance[j]![j]!);
      // 4.5 standard errors: beyond by chance once in 150,000.
      expect(Math.abs(mean - middle)).toBeLessThan((4.5 * sd) / Math.sqrt(count));
      for (let k = 0; k <= j; k += 1) {
        const product =
          sample.reduce((sum, { v }) => sum + (v[j]! - middle) * (v[k]! - centre[k]!), 0) / count;
        const [vjj, vkk, vjk] = [covariance[j]![j]!, covariance[k]![k]!, covariance[j]![k]!];
        // The product of two normals has variance vjj vkk + vjk² (Isserlis 1918).
        expect(Math.abs(product - vjk)).toBeLessThan(4.5 * Math.sqrt((vjj * vkk + vjk * vjk) / count));
      }
    });
  });

  it('keeps the last coefficient below its bound, at the density of the truncated normal', () => {
    const last = centre.length - 1;
    const bound = centre[last]! - 0.7;
    const mass = normalCdf((bound - centre[last]!) / Math.sqrt(covariance[last]![last]!));
    for (const { v, logDensity } of draws(200, Float64Array.of(bound), 3)) {
      expect(v[last]).toBeLessThan(bound);
      expect(logDensity).toBeCloseTo(logNormal(v) - Math.log(mass), 8);
    }
  });

  it('weighs two bounded coefficients so that the mass below both bounds comes out', () => {
    const [first, last] = [centre.length - 2, centre.length - 1];
    const bounds = Float64Array.of(centre[first]! - 0.3, centre[last]! + 0.2);
    const count = 20_000;
    // The plain way: how many draws of the unbounded normal fall below both.
    const hits = draws(count, none, 4).filter(
      ({ v }) => v[first]! < bounds[0]! && v[last]! < bounds[1]!,
    ).length;
    const weights = draws(count, bounds, 5).map(({ v, logDensity }) => {
      expect(v[first]! < bounds[0]! && v[last]! < bounds[1]!).toBe(true);
      return Math.exp(logNormal(v) - logDensity);
    });
    const mass = weights.reduce((a, b) => a + b, 0) / count;
    const variance = weights.reduce((sum, w) => sum + (w - mass) ** 2, 0) / count;
    const p = hits / count;
    expect(Math.abs(mass - p)).toBeLessThan(4.5 * Math.sqrt((p * (1 - p) + variance) / count));
  });
});

describe('refill and mirror', () => {
  it('turns every number of a draw to its other side, and back', () => {
    const noise = drawNoise(model, Float64Array.of(0));
    refill(noise, randomStream(6));
    const kept = structuredClone(noise);
    mirror(noise);
    expect(noise.core).toEqual(kept.core.map((z) => -z));
    expect(noise.block).toEqual(kept.block.map((z) => -z));
    expect(noise.bounded[0]).toBe(1 - kept.bounded[0]!);
    expect(new Set([...kept.core, ...kept.block]).size).toBe(model.coreSize + model.blockSize);
  });

  it('mirrors a draw about the mode', () => {
    const bounds = new Float64Array(0);
    const noise = drawNoise(model, bounds);
    refill(noise, randomStream(7));
    const point = emptyPoint(model);
    drawNormal(model, mode, noise, bounds, point);
    const there = denseVector(model, point);
    mirror(noise);
    drawNormal(model, mode, noise, bounds, point);
    denseVector(model, point).forEach((value, k) => {
      expect((value + there[k]!) / 2).toBeCloseTo(centre[k]!, 12);
    });
  });
});
