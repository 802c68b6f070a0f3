import { describe, expect, it } from 'vitest';
import { randomStream } from '../../lib/numerics/random.ts';
import { hyperPoints, hyperProposal } from '../../lib/regression/hyper-proposal.ts';

// A normal log density in two variables: minus half of (u − m)′ P (u − m).
const P = [
  [2, 0.6],
  [0.6, 1.5],
] as const;
const M = [0.4, -0.8] as const;

function logNormal(u: Float64Array): number {
  const [a, b] = [u[0]! - M[0], u[1]! - M[1]];
  return -(P[0][0] * a * a + 2 * P[0][1] * a * b + P[1][1] * b * b) / 2;
}

describe('hyperProposal', () => {
  const proposal = hyperProposal(logNormal, 2);

  it('stands near the mode of a normal', () => {
    // Forward differences of 0.05 shift the mode by half a step, and a gain of 0.01 by a fifth of a deviation or so.
    expect(Math.abs(proposal.centre[0]! - M[0])).toBeLessThan(0.2);
    expect(Math.abs(proposal.centre[1]! - M[1])).toBeLessThan(0.2);
  });

  it('finds the curvature of a normal, by the factor of its precision', () => {
    const [l11, , l21, l22] = proposal.precision;
    expect(l11! * l11!).toBeCloseTo(P[0][0], 9);
    expect(l21! * l11!).toBeCloseTo(P[0][1], 9);
    expect(l21! * l21! + l22! * l22!).toBeCloseTo(P[1][1], 9);
  });

  it('has a precision of at least a quarter along every axis, however flat the density', () => {
    const flat = hyperProposal(() => 0, 2);
    expect([...flat.centre]).toEqual([0, 0]);
    expect(flat.precision.map(Math.abs)).toEqual(Float64Array.of(0.5, 0, 0, 0.5));
  });

  it('keeps a precision that exists where the second differences are not positive definite', () => {
    const saddle = hyperProposal(
      (u) => -4 * u[0]! * u[1]! - (u[0]! ** 4 + u[1]! ** 4) / 4,
      2,
      Float64Array.of(0, 0),
    );
    expect(saddle.precision[0]! > 0 && saddle.precision[3]! > 0).toBe(true);
    expect(saddle.precision.every(Number.isFinite)).toBe(true);
  });
});

describe('hyperPoints', () => {
  const proposal = {
    centre: Float64Array.from(M),
    precision: Float64Array.of(Math.SQRT2, 0, 0.6 / Math.SQRT2, Math.sqrt(1.5 - 0.18)),
  };
  const points = hyperPoints(proposal, 400, randomStream(8));

  it('has 1.44 times the covariance of the normal approximation, about its centre', () => {
    // P⁻¹ = [1.5, −0.6; −0.6, 2] ÷ 2.64; 1.2² = 1.44. Spread evenly, 400 points are far nearer than 400 random ones.
    const mean = [0, 1].map((k) => points.reduce((sum, { u }) => sum + u[k]!, 0) / points.length);
    const moment = (j: number, k: number) =>
      points.reduce((sum, { u }) => sum + (u[j]! - M[j]!) * (u[k]! - M[k]!), 0) / points.length;
    expect(Math.abs(mean[0]! - M[0])).toBeLessThan(0.02);
    expect(Math.abs(mean[1]! - M[1])).toBeLessThan(0.02);
    expect(Math.abs(moment(0, 0) - (1.44 * 1.5) / 2.64)).toBeLessThan(0.05);
    expect(Math.abs(moment(0, 1) + (1.44 * 0.6) / 2.64)).toBeLessThan(0.05);
    expect(Math.abs(moment(1, 1) - (1.44 * 2) / 2.64)).toBeLessThan(0.05);
  });

  it('gives every point the log density it was drawn with', () => {
    // Normal with precision P ÷ 1.44: half of log det minus half of the quadratic form; det P = 2.64.
    for (const { u, logDensity } of points) {
      expect(logDensity).toBeCloseTo(Math.log(2.64) / 2 - Math.log(1.44) + logNormal(u) / 1.44, 10);
    }
  });

  it('integrates a normal that is narrower exactly, by importance weights', () => {
    // ∫ exp(logNormal) = 2 pi ÷ sqrt(2.64); the densities leave 2 pi out.
    const sum = points.reduce((total, { u, logDensity }) => total + Math.exp(logNormal(u) - logDensity), 0);
    expect((sum / points.length) * Math.sqrt(2.64)).toBeCloseTo(1, 2);
  });

  it('has as many points as asked for, also without hyperparameters', () => {
    const empty = { centre: new Float64Array(0), precision: new Float64Array(0) };
    expect(hyperPoints(empty, 3, randomStream(1))).toHaveLength(3);
    expect(
      hyperPoints(empty, 3, randomStream(1)).every(
        ({ u, logDensity }) => u.length === 0 && Math.abs(logDensity) === 0,
      ),
    ).toBe(true);
  });
});
