import { describe, expect, it } from 'vitest';
import { logGamma } from '../../lib/numerics/special-functions.ts';
import {
  type CountLikelihood,
  negativeBinomialRow,
  poissonRow,
  truncatedNegativeBinomialRow,
  truncatedPoissonRow,
} from '../../lib/regression/count-rows.ts';
import { noSlopes } from '../../lib/regression/shape-climb.ts';

const rows: Readonly<Record<string, CountLikelihood>> = {
  poissonRow,
  negativeBinomialRow,
  truncatedPoissonRow,
  truncatedNegativeBinomialRow,
};
const shaped = ['negativeBinomialRow', 'truncatedNegativeBinomialRow'];
const truncated = ['truncatedPoissonRow', 'truncatedNegativeBinomialRow'];

function slopesAt(row: CountLikelihood, count: number, eta: number, logTheta: number) {
  const slopes = noSlopes();
  row(count, eta, logTheta, slopes);
  return slopes;
}

describe.each(Object.entries(rows))('%s', (name, row) => {
  const places = [
    [1, -1, 0],
    [4, 0.5, 1.2],
    [40, 3, -0.5],
    [90, 4, 6],
    [2, -4, -2],
  ] as const;

  it('has the derivatives that differences give', () => {
    const step = 1e-5;
    const slope = (f: (change: number) => number) => (f(step) - f(-step)) / (2 * step);
    for (const [count, eta, theta] of places) {
      const here = slopesAt(row, count, eta, theta);
      const alongEta = (key: 'value' | 'eta') => slope((d) => slopesAt(row, count, eta + d, theta)[key]);
      const alongShape = (key: 'value' | 'eta' | 'shape') =>
        slope((d) => slopesAt(row, count, eta, theta + d)[key]);
      const near = (value: number, wanted: number) =>
        expect(Math.abs(value - wanted), `${count} ${eta} ${theta}`).toBeLessThan(
          1e-7 * (1 + Math.abs(wanted)),
        );
      near(here.eta, alongEta('value'));
      near(here.etaEta, alongEta('eta'));
      if (!shaped.includes(name)) continue;
      near(here.shape, alongShape('value'));
      near(here.etaShape, alongShape('eta'));
      near(here.shapeShape, alongShape('shape'));
    }
  });

  it('gives probabilities that add up to 1', () => {
    for (const [eta, theta] of [
      [0.3, 0.4],
      [1.5, -0.3],
      [2, 8],
    ] as const) {
      let sum = 0;
      for (let count = truncated.includes(name) ? 1 : 0; count < 2000; count += 1) {
        sum += Math.exp(slopesAt(row, count, eta, theta).value - logGamma(count + 1));
      }
      expect(Math.abs(sum - 1)).toBeLessThan(1e-12);
    }
  });
});

describe('negativeBinomialRow', () => {
  it('is the textbook probability', () => {
    // Γ(y + θ) / (Γ(θ) y!) (θ / (θ + μ))^θ (μ / (θ + μ))^y; with θ = 1 the geometric μ^y / (1 + μ)^(y + 1).
    const mu = 2.5;
    expect(slopesAt(negativeBinomialRow, 3, Math.log(mu), 0).value - logGamma(4)).toBeCloseTo(
      3 * Math.log(mu) - 4 * Math.log(1 + mu),
      13,
    );
  });

  it('goes to the Poisson digit by digit as theta grows, with and without zeros', () => {
    for (const [mixed, plain] of [
      [negativeBinomialRow, poissonRow],
      [truncatedNegativeBinomialRow, truncatedPoissonRow],
    ] as const) {
      for (const logTheta of [18, 20, 22, 24]) {
        const wanted = slopesAt(plain, 30, 3, 0);
        const found = slopesAt(mixed, 30, 3, logTheta);
        const distance = 2000 * Math.exp(-logTheta) + 1e-13;
        expect(Math.abs(found.value - wanted.value)).toBeLessThan(distance);
        expect(Math.abs(found.eta - wanted.eta)).toBeLessThan(distance);
        // ½((y − μ)² − y) / θ is all that is left (Poisson limit, no zeros lost at a mean of 20).
        const slope = -((30 - Math.exp(3)) ** 2 - 30) / 2;
        expect(Math.abs(found.shape * Math.exp(logTheta) - slope)).toBeLessThan(0.05);
      }
    }
  });
});
