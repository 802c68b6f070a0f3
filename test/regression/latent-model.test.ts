import { describe, expect, it } from 'vitest';
import { latentModel } from '../../lib/regression/latent-model.ts';
import { EXAMPLES, EXCLUSIVE, EXCLUSIVE_IN_CORE } from './latent-examples.ts';

function named(name: string) {
  return latentModel(EXAMPLES.get(name)!.spec);
}

describe('latentModel', () => {
  const model = named('with three factors, some rows without one');

  it('eliminates the factor with most levels and lines up the rest: factors first, then columns', () => {
    // Three mothers, five pairs, two vials, two columns: the pairs go.
    expect(model.eliminated).toBe(1);
    expect(model.blockSize).toBe(5);
    expect(model.factorStart).toEqual([0, -1, 3]);
    expect(model.columnStart).toBe(5);
    expect(model.coreSize).toBe(7);
  });

  it('lists what each eliminated level touches, in order, the columns always', () => {
    // By hand from the codes: pair 1 has mother 0 twice, once with vial 0; pair 4 has mother 2 and vial 1.
    const lists = Array.from({ length: 5 }, (_, a) => [
      ...model.touchIndex.subarray(model.touchStart[a], model.touchStart[a + 1]),
    ]);
    expect(lists).toEqual([
      [0, 5, 6],
      [0, 3, 5, 6],
      [1, 3, 5, 6],
      [1, 5, 6],
      [2, 4, 5, 6],
    ]);
  });

  it('knows the place of every row in those lists', () => {
    for (let i = 0; i < model.n; i += 1) {
      model.factors.forEach(({ codes }, g) => {
        const place = model.position[i * 3 + g]!;
        if (g === 1 || codes[i]! < 0) {
          expect(place).toBe(-1);
          return;
        }
        const level = model.factors[1]!.codes[i]!;
        expect(place).toBeGreaterThanOrEqual(model.touchStart[level]!);
        expect(place).toBeLessThan(model.touchStart[level + 1]!);
        expect(model.touchIndex[place]).toBe(model.factorStart[g]! + codes[i]!);
      });
    }
  });

  it('eliminates nothing where there is no factor', () => {
    const plain = named('without any factor');
    expect([plain.eliminated, plain.blockSize, plain.coreSize]).toEqual([-1, 0, 2]);
    expect(plain.touchIndex).toHaveLength(0);
  });

  it('takes the first of two factors of the same size', () => {
    const { spec } = EXCLUSIVE;
    const [mother] = spec.factors;
    expect(
      latentModel({ ...spec, factors: [mother!, { ...mother!, name: 'other' }], exclusive: -1 }).eliminated,
    ).toBe(0);
  });

  it('finds the levels without any success', () => {
    // Pair 1 has 0 of 2 and 0 of 3; every mother has a fruit.
    expect([...latentModel(EXCLUSIVE.spec).barren]).toEqual([0, 1, 0, 0, 0]);
    expect([...latentModel(EXCLUSIVE_IN_CORE.spec).barren]).toEqual([0, 0, 0]);
    expect(model.barren.length).toBe(0);
  });
});
