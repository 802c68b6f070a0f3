import { describe, expect, it } from 'vitest';
import { solveCurvature } from '../../lib/regression/latent-curvature.ts';
import { modeFinder } from '../../lib/regression/latent-mode.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { denseCurvature, denseDesign, denseVector, gauss } from './dense-laplace.ts';
import { EXAMPLES } from './latent-examples.ts';

const examples = [...EXAMPLES].map(([name, example]) => ({ name, ...example }));

// The oracle is Gauss's elimination on the whole dense matrix.
describe('solveCurvature', () => {
  it.each(examples)('solves with the dense curvature of a model $name', ({ spec, scales }) => {
    const model = latentModel(spec);
    const mode = modeFinder(model).find(scales);
    const b = {
      core: Float64Array.from({ length: model.coreSize }, (_, k) => Math.sin(3 * k + 1)),
      block: Float64Array.from({ length: model.blockSize }, (_, k) => Math.sin(3 * k + 1) + 1),
    };
    const before = denseVector(model, b);
    const h = denseCurvature(spec, denseDesign(spec, scales), denseVector(model, mode.point));
    const expected = gauss(h, before);
    denseVector(model, solveCurvature(model, mode.curvature, b)).forEach((value, k) => {
      expect(value).toBeCloseTo(expected.x[k]!, 10);
    });
    expect(denseVector(model, b)).toEqual(before);
    expect(mode.logDeterminant).toBeCloseTo(expected.logDeterminant, 10);
  });
});
