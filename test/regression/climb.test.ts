import { describe, expect, it } from 'vitest';
import { climb } from '../../lib/regression/climb.ts';

const f = (...values: number[]): Float64Array => Float64Array.from(values);

/** The concave quadratic -(x - 3)² / 2 - (y + x)² / 2, its top at (3, -3). */
function quadratic(gamma: Float64Array) {
  const [x, y] = [gamma[0]!, gamma[1]!];
  return {
    gamma,
    objective: -((x - 3) ** 2) / 2 - (y + x) ** 2 / 2,
    score: f(3 - x - (y + x), -(y + x)),
    curvature: f(2, 1, 1, 1),
  };
}

describe('climb', () => {
  it('reaches the top of a quadratic in one step', () => {
    const end = climb(quadratic, f(0, 0), 2)!;
    expect(end.point.gamma[0]).toBeCloseTo(3, 12);
    expect(end.point.gamma[1]).toBeCloseTo(-3, 12);
    expect(end.convergence).toMatchObject({ settled: true, iterations: 1 });
  });

  it('holds the coefficients after the first ones', () => {
    // With y held at 1 the top is where 3 - x - (1 + x) = 0.
    expect(climb(quadratic, f(0, 1), 1)!.point.gamma[0]).toBeCloseTo(1, 12);
    expect(climb(quadratic, f(5, 1), 0)!.point.gamma).toEqual(f(5, 1));
  });

  it('halves a step that overshoots', () => {
    // -log cosh x: from 2, Newton's step flies to -12 and beyond.
    const cosh = (gamma: Float64Array) => ({
      gamma,
      objective: -Math.log(Math.cosh(gamma[0]!)),
      score: f(-Math.tanh(gamma[0]!)),
      curvature: f(1 / Math.cosh(gamma[0]!) ** 2),
    });
    const end = climb(cosh, f(2), 1)!;
    expect(end.convergence.settled).toBe(true);
    expect(end.point.gamma[0]).toBeCloseTo(0, 10);
  });

  it.each([
    // From 1: 1e-4, 1e-8, and 1e-12, whose square is enough.
    [1, 4],
    // From 1e-3: 1e-7 and 1e-11, whose square is near, and the next one's enough without being evaluated.
    [1e-3, 3],
  ])('leaves out the step that would only confirm (start %d)', (start, wanted) => {
    let evaluations = 0;
    const nearlyNewton = (gamma: Float64Array) => {
      evaluations += 1;
      return { gamma, objective: -(gamma[0]! ** 2) / 2, score: f(-gamma[0]!), curvature: f(1 / (1 - 1e-4)) };
    };
    const end = climb(nearlyNewton, f(start), 1)!;
    expect(end.convergence).toMatchObject({ settled: true, reason: 'score-is-zero' });
    expect(evaluations).toBe(wanted);
    expect(Math.abs(end.point.gamma[0]!)).toBeLessThan(2e-11);
  });

  it('takes the last step unseen where told how, and no earlier one', () => {
    // Steps shrink a thousandfold: 1, 1e-3, 1e-6, 1e-9, whose square is below 1e-15 and the next one's below 1e-21.
    const seen: number[] = [];
    const slow = (gamma: Float64Array) => {
      seen.push(gamma[0]!);
      return { gamma, objective: -(gamma[0]! ** 2) / 2, score: f(-gamma[0]!), curvature: f(1 / (1 - 1e-3)) };
    };
    const nudge = (point: ReturnType<typeof slow>, step: Float64Array) => ({
      ...point,
      gamma: f(point.gamma[0]! + step[0]!),
    });
    const { point, convergence } = climb(slow, f(1), 1, { nudge })!;
    expect(convergence).toMatchObject({ settled: true, reason: 'score-is-zero' });
    expect(seen).toHaveLength(4);
    expect(seen[3]! / 1e-9).toBeCloseTo(1, 6);
    expect(point.gamma[0]! / 1e-12).toBeCloseTo(1, 3);
  });

  it('says so when it cannot settle, and gives nothing where it cannot start', () => {
    const flat = (gamma: Float64Array) => ({ gamma, objective: 0, score: f(1), curvature: f(0) });
    expect(climb(flat, f(0), 1)!.convergence).toMatchObject({
      settled: false,
      reason: 'singular-information',
    });
    const trap = (gamma: Float64Array) =>
      gamma[0] === 0 ? { gamma, objective: 0, score: f(1), curvature: f(1) } : null;
    expect(climb(trap, f(0), 1)!.convergence).toMatchObject({ settled: false, reason: 'no-uphill-step' });
    expect(climb(trap, f(1), 1)).toBeNull();
  });
});
