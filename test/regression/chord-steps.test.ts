import { describe, expect, it } from 'vitest';
import { chordStart } from '../../lib/regression/chord-steps.ts';
import { density, modeFinder } from '../../lib/regression/latent-mode.ts';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { smallModel } from './small-mixed-model.ts';

const latent = latentModel({ ...smallModel, columns: [], exclusive: -1 });
const scalesOf = (...sds: number[]) => ({
  columns: new Float64Array(0),
  factors: Float64Array.from(sds),
  exclusive: 0,
});

// The oracle is Newton's method from 0, with the curvature worked out anew at each step.
describe('chordStart', () => {
  it('comes to the mode of scales nearby', () => {
    const finder = modeFinder(latent);
    const last = finder.find(scalesOf(0.8, 1.1));
    const { point: start, value } = chordStart(finder, scalesOf(0.85, 1), last, 1e-18);
    expect(value).toBe(density(latent, scalesOf(0.85, 1), start, finder.work));
    const mode = modeFinder(latent).find(scalesOf(0.85, 1)).point;
    start.block.forEach((value, a) => {
      expect(value).toBeCloseTo(mode.block[a]!, 8);
    });
    start.core.forEach((value, k) => {
      expect(value).toBeCloseTo(mode.core[k]!, 8);
    });
  });

  it('is never worse than the last mode, however far the scales have moved', () => {
    for (const sds of [
      [8, 0],
      [0, 8],
      [30, 30],
    ]) {
      const finder = modeFinder(latent);
      const last = finder.find(scalesOf(0.1, 0.1));
      const { point, value } = chordStart(finder, scalesOf(...sds), last, 1e-18);
      const reached = density(latent, scalesOf(...sds), point, finder.work);
      if (value !== undefined) expect(value).toBe(reached);
      expect(reached).toBeGreaterThanOrEqual(density(latent, scalesOf(...sds), last.point, finder.work));
    }
  });
});
