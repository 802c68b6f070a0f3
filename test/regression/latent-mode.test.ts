import { describe, expect, it } from 'vitest';
import { centralGradient } from '../../lib/numerics/minimise.ts';
import { density, gradient, modeFinder } from '../../lib/regression/latent-mode.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { denseDensity, denseDesign, denseLaplace, denseVector } from './dense-laplace.ts';
import { EXAMPLES, EXCLUSIVE, EXCLUSIVE_IN_CORE } from './latent-examples.ts';

const examples = [...EXAMPLES].map(([name, example]) => ({ name, ...example }));
const exclusives = [
  { name: 'in the eliminated block', ...EXCLUSIVE },
  { name: 'in the core', ...EXCLUSIVE_IN_CORE },
];

/** Some point that is not the mode. */
function away(length: number): number[] {
  return Array.from({ length }, (_, k) => Math.sin(3 * k + 1));
}

function pointOf(model: ReturnType<typeof latentModel>, core: readonly number[], block: readonly number[]) {
  expect([core.length, block.length]).toEqual([model.coreSize, model.blockSize]);
  return { core: Float64Array.from(core), block: Float64Array.from(block) };
}

describe('modeFinder', () => {
  it.each(examples)(
    'finds the mode and Laplace’s approximation of a dense model $name',
    ({ spec, scales }) => {
      const model = latentModel(spec);
      const mode = modeFinder(model).find(scales);
      const dense = denseLaplace(spec, scales);
      expect(mode.settled).toBe(true);
      denseVector(model, mode.point).forEach((value, k) => {
        expect(value).toBeCloseTo(dense.mode[k]!, 7);
      });
      // A mode to 1e-7 leaves the determinant to about that: at the mode only the density itself is flat.
      expect(mode.logMarginal).toBeCloseTo(dense.logMarginal, 8);
    },
  );

  it.each([...examples, ...exclusives])('stands where the gradient is 0: model $name', ({ spec, scales }) => {
    const model = latentModel(spec);
    const finder = modeFinder(model);
    const { point } = finder.find(scales, undefined, { tolerance: 1e-14 });
    density(model, scales, point, finder.work);
    const slope = gradient(model, scales, point, finder.work);
    for (const value of [...slope.core, ...slope.block]) expect(Math.abs(value)).toBeLessThan(1e-6);
  });

  it('finds the same mode from another start, and leaves the start as it is', () => {
    const { spec, scales } = examples[0]!;
    const model = latentModel(spec);
    const finder = modeFinder(model);
    const start = pointOf(model, away(model.coreSize), away(model.blockSize));
    const kept = structuredClone(start);
    const there = finder.find(scales, start).point;
    expect(start).toEqual(kept);
    const here = finder.find(scales).point;
    denseVector(model, there).forEach((value, k) => {
      expect(value).toBeCloseTo(denseVector(model, here)[k]!, 7);
    });
  });

  it('needs no step from a mode', () => {
    const { spec, scales } = examples[0]!;
    const finder = modeFinder(latentModel(spec));
    const first = finder.find(scales);
    const again = finder.find(scales, finder.find(scales, first.point).point);
    expect(again.iterations).toBe(1);
    expect(again.logMarginal).toBeCloseTo(first.logMarginal, 12);
  });

  it('gives the prior back where there are no trials', () => {
    const { spec, scales } = examples[0]!;
    const silent = { ...spec, successes: new Float64Array(8), trials: new Float64Array(8) };
    const mode = modeFinder(latentModel(silent)).find(scales);
    // The integral of the prior is 1, and Laplace's approximation of a normal is exact.
    expect(mode.logMarginal).toBe(0);
    expect(Math.max(...mode.point.core, ...mode.point.block)).toBe(0);
  });

  it('goes back to a mode from far away on either side', () => {
    const { spec, scales } = examples[0]!;
    const model = latentModel(spec);
    const finder = modeFinder(model);
    const expected = finder.find(scales).logMarginal;
    for (const far of [30, -30]) {
      const start = {
        core: new Float64Array(model.coreSize).fill(far),
        block: new Float64Array(model.blockSize).fill(far),
      };
      const mode = finder.find(scales, start);
      expect(mode.settled).toBe(true);
      expect(mode.logMarginal).toBeCloseTo(expected, 9);
    }
  });
});

describe('density and gradient', () => {
  it.each([...examples, ...exclusives])('are those of the dense model $name', ({ spec, scales }) => {
    const model = latentModel(spec);
    const finder = modeFinder(model);
    const point = pointOf(model, away(model.coreSize), away(model.blockSize));
    const x = denseDesign(spec, scales);
    const v = denseVector(model, point);
    expect(density(model, scales, point, finder.work)).toBeCloseTo(denseDensity(spec, scales, x, v), 11);
    const slope = denseVector(model, gradient(model, scales, point, finder.work));
    // Central differences of the definition: step² = 1e-8 times third derivatives of order 1.
    const differences = centralGradient(
      (at) => denseDensity(spec, scales, x, [...at]),
      Float64Array.from(v),
      1e-4,
    );
    slope.forEach((value, k) => {
      expect(Math.abs(value - differences[k]!)).toBeLessThan(1e-6);
    });
  });
});
