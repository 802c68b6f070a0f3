import { describe, expect, it } from 'vitest';
import { logistic } from '../../lib/regression/logistic.ts';
import { overlappingPart } from '../../lib/regression/overlapping-part.ts';
import { profileIntervals } from '../../lib/regression/profile.ts';

/** 400 rows all different, a twentieth of them in a column that never took. */
const rows = Array.from({ length: 400 }, (_, i) => {
  const x = ((i * 37) % 400) / 400;
  const never = i % 20 === 0 ? 1 : 0;
  return { x, never, took: never === 0 && ((i * 53) % 97) / 97 < 0.2 + 0.5 * x ? 1 : 0 };
});
const fit = logistic({
  successes: rows.map(({ took }) => took),
  columns: { x: rows.map(({ x }) => x), never: rows.map(({ never }) => never) },
});

describe('overlappingPart', () => {
  it('is the fit of the rows that the limit does not explain perfectly', () => {
    const part = overlappingPart(fit)!;
    expect(part.design.n).toBe(380);
    // R 4.2.2: glm(y ~ x, binomial) on the rows with never = 0.
    expect(part.terms.map(({ term }) => term)).toEqual(['(Intercept)', 'x']);
    expect(part.terms[0]!.estimate).toBeCloseTo(-0.197345847956, 10);
    expect(part.terms[1]!.estimate).toBeCloseTo(0.757816713884, 10);
  });

  it('gives the ends of coefficients that stay finite, with many distinct rows', () => {
    // R 4.2.2: uniroot on glm deviances with x held, on the same rows. An earlier search found no end here.
    const [, x, never] = profileIntervals(fit);
    expect(x!.lower).toBeCloseTo(0.054385730513, 8);
    expect(x!.upper).toBeCloseTo(1.470623595739, 8);
    expect(never).toMatchObject({ estimate: null, lower: null, because: 'separated' });
  });

  it('is null where the limit explains every row', () => {
    expect(
      overlappingPart(logistic({ successes: [0, 4], trials: [4, 4], columns: { x: [0, 1] } })),
    ).toBeNull();
  });
});
