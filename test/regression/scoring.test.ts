import { describe, expect, it } from 'vitest';
import { designOf } from '../../lib/regression/design.ts';
import { joinRows } from '../../lib/regression/joined-rows.ts';
import { scoringProblem } from '../../lib/regression/logistic.ts';
import { columnCoefficients, logSquaredDeterminant } from '../../lib/regression/orthogonal-basis.ts';
import { maximise } from '../../lib/regression/scoring.ts';

const design = designOf({ successes: [2, 8, 3], trials: [10, 10, 5], columns: { age: [0, 3, 9] } });
const problem = scoringProblem('test', joinRows(design), design.names, 'logit', true);

/** Penalised log-likelihood of the three rows, written out. */
function penalised(b0: number, b1: number): number {
  const p = [0, 3, 9].map((x) => 1 / (1 + Math.exp(-b0 - b1 * x)));
  const m = [10, 10, 5];
  const logLik = [2, 8, 3].reduce(
    (sum, y, i) => sum + y * Math.log(p[i]!) + (m[i]! - y) * Math.log(1 - p[i]!),
    0,
  );
  const w = p.map((q, i) => m[i]! * q * (1 - q));
  const [a, b, c] = [w[0]! + w[1]! + w[2]!, 3 * w[1]! + 9 * w[2]!, 9 * w[1]! + 81 * w[2]!];
  return logLik + Math.log(a * c - b * b) / 2;
}

describe('maximise', () => {
  it('finds where the penalised likelihood, written out, is flat', () => {
    const end = maximise(problem, new Float64Array(2), 2)!;
    const [b0, b1] = columnCoefficients(problem.basis, end.point.gamma) as unknown as [number, number];
    expect(end.point.objective + logSquaredDeterminant(problem.basis) / 2).toBeCloseTo(penalised(b0, b1), 10);
    const h = 1e-5;
    expect((penalised(b0 + h, b1) - penalised(b0 - h, b1)) / (2 * h)).toBeCloseTo(0, 7);
    expect((penalised(b0, b1 + h) - penalised(b0, b1 - h)) / (2 * h)).toBeCloseTo(0, 7);
  });

  it('starts from zero with the objective and the slope that are written out', () => {
    const { point } = maximise(problem, new Float64Array(2), 0)!;
    expect(point.objective + logSquaredDeterminant(problem.basis) / 2).toBeCloseTo(penalised(0, 0), 12);
    expect(point.factor[0]).toBeCloseTo(0.5, 14);
    const h = 1e-5;
    const [one, two] = [0, 1].map((k) => {
      const unit = Float64Array.of(0, 0);
      unit[k] = h;
      const [b0, b1] = columnCoefficients(problem.basis, unit) as unknown as [number, number];
      return (penalised(b0, b1) - penalised(-b0, -b1)) / (2 * h);
    });
    expect(point.score[0]).toBeCloseTo(one!, 7);
    expect(point.score[1]).toBeCloseTo(two!, 7);
  });

  it('gives the slope of the profile with the last coefficient held', () => {
    const at = (held: number) => maximise(problem, Float64Array.of(0, held), 1)!.point;
    const h = 1e-4;
    const slope = (at(0.3 + h).objective - at(0.3 - h).objective) / (2 * h);
    expect(at(0.3).score[1]).toBeCloseTo(slope, 6);
  });
});
