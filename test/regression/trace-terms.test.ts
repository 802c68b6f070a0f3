import { describe, expect, it } from 'vitest';
import { emptyInverse, invertCurvature } from '../../lib/regression/curvature-inverse.ts';
import { modeFinder } from '../../lib/regression/latent-mode.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { emptyTraceTerms, traceTerms } from '../../lib/regression/trace-terms.ts';
import { denseCurvature, denseDesign, denseVector, gauss } from './dense-laplace.ts';
import { EXAMPLES } from './latent-examples.ts';

const { spec: whole, scales } = EXAMPLES.get('with three factors, some rows without one')!;
const spec = { ...whole, columns: [] };

// The oracle is Gauss's elimination on the whole dense matrix, row by row.
describe('traceTerms', () => {
  it('has H⁻¹ S z at the levels of each row, and z′ S H⁻¹ S z', () => {
    const model = latentModel(spec);
    const inverse = emptyInverse(model);
    const own = { ...scales, columns: new Float64Array(0) };
    const mode = modeFinder(model).find(own);
    invertCurvature(model, mode.curvature, inverse);
    const terms = emptyTraceTerms(model);
    // Twice, for the room is used again and again.
    for (let turn = 0; turn < 2; turn += 1) traceTerms(model, own.factors, inverse, terms);
    const design = denseDesign(spec, own);
    const h = denseCurvature(spec, design, denseVector(model, mode.point));
    const starts = [0, 3, 8];
    design.forEach((row, i) => {
      const { x } = gauss(h, row);
      spec.factors.forEach(({ codes }, g) => {
        const wanted = codes[i]! < 0 ? 0 : x[starts[g]! + codes[i]!]!;
        expect(terms.meeting[g]![i]).toBeCloseTo(wanted, 12);
      });
      const leverage = row.reduce((sum, value, k) => sum + value * x[k]!, 0);
      expect(terms.leverage[i]).toBeCloseTo(leverage, 12);
    });
  });
});
