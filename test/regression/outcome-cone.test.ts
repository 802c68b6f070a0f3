import { describe, expect, it } from 'vitest';
import { orthogonalBasis } from '../../lib/regression/orthogonal-basis.ts';
import {
  along,
  outcomeCone,
  outcomeSigns,
  rises,
  separatingDirection,
} from '../../lib/regression/outcome-cone.ts';

const f = (...values: number[]): Float64Array => Float64Array.from(values);

function coneOf(successes: Float64Array, trials: Float64Array, x: Float64Array) {
  const basis = orthogonalBasis([new Float64Array(x.length).fill(1), x], trials);
  if ('column' in basis) throw new Error('the columns must be independent');
  const sign = outcomeSigns({ successes, trials });
  return outcomeCone(
    basis,
    sign,
    [...sign.keys()].filter((i) => sign[i] !== 0),
  );
}

describe('outcomeCone', () => {
  it('is none where the rows with both outcomes span all columns', () => {
    expect(coneOf(f(1, 1, 0), f(2, 2, 2), f(0, 1, 2))).toBeNull();
  });

  it('holds a certified direction exactly where failures lie below successes', () => {
    const cone = coneOf(f(0, 0, 1, 1), f(1, 1, 1, 1), f(0, 1, 2, 3))!;
    const direction = separatingDirection(cone)!;
    const products = [0, 1, 2, 3].map((i) => along(cone, i, direction));
    expect(Math.min(...products)).toBeGreaterThanOrEqual(-1e-8);
    expect(Math.max(...products)).toBeGreaterThan(0.1);
    expect(separatingDirection(coneOf(f(0, 1, 0, 1), f(1, 1, 1, 1), f(0, 1, 2, 3))!)).toBeNull();
  });

  it('has no rise along what the rows with both outcomes fix', () => {
    // The row at 0 has both outcomes: nothing moves along it.
    const cone = coneOf(f(1, 2), f(2, 2), f(0, 1))!;
    expect(rises(cone, cone.mixed[0]!)).toBe(false);
  });
});
