import type { MixedModel } from '../../lib/regression/laplace-gradient.ts';

const plants = ['a', 'a', 'a', 'b', 'b', 'b', 'c', 'c', 'c', 'd', 'd', 'd'];
const mornings = [0, 1, 2, 0, 1, 2, 0, 1, 2, 0, 1, -1];

/** Twelve made-up rows: four plants crossed with three mornings, the last row without a morning. */
export const smallModel: MixedModel = {
  successes: Float64Array.of(5, 6, 3, 1, 2, 0, 4, 6, 2, 0, 2, 1),
  trials: Float64Array.of(6, 7, 6, 5, 6, 6, 6, 7, 6, 5, 6, 4),
  offset: Float64Array.from(plants, (_, i) => (i % 5 === 0 ? 0.3 : 0)),
  columns: [Float64Array.from(plants, () => 1), Float64Array.of(0, 1, 2, 1, 0, 2, 2, 1, 0, 0, 2, 1)],
  factors: [
    { name: 'plant', codes: Int32Array.from(plants, (plant) => 'abcd'.indexOf(plant)), size: 4 },
    { name: 'morning', codes: Int32Array.from(mornings), size: 3 },
  ],
};
