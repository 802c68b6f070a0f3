import { describe, expect, it } from 'vitest';
import { designOf } from '../../lib/regression/design.ts';
import { joinRows } from '../../lib/regression/joined-rows.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { profileIntervals } from '../../lib/regression/profile.ts';
import { sparseBasis } from '../../lib/regression/sparse-basis.ts';

const plants = ['Ash', 'Bay', 'Cob', 'Dew', 'Elm', 'Fig', 'Gum', 'Hop'];
const mother = Array.from({ length: 160 }, (_, i) => plants[(i * 3) % 8]!);
const father = Array.from({ length: 160 }, (_, i) => plants[(i * i + Math.floor(i / 8)) % 8]!);
const age = mother.map((_, i) => (i * 7) % 11);
const successes = mother.map((_, i) => ((i * 5 + (i % 7)) % 3 === 0 ? 1 : 0));
const spec = { successes, columns: { mother, father, age } };
const joined = joinRows(designOf(spec));

/** The same columns with a full one more than is sparse, on an orthogonal basis: a year, whose own part is tiny. */
const dense = (method: 'maximum-likelihood' | 'firth') =>
  logistic(
    {
      successes,
      columns: {
        year: age.map((days) => days + 2e6),
        ...Object.fromEntries(
          [...designOf(spec).names.keys()]
            .slice(1, -1)
            .map((j) => [designOf(spec).names[j]!, designOf(spec).columns[j]!]),
        ),
      },
    },
    { method },
  );

describe('sparseBasis', () => {
  it('gives the columns back, in any order', () => {
    const p = joined.columns.length;
    const order = [...joined.columns.keys()].reverse();
    const basis = sparseBasis(joined.sources, joined.trials, order)!;
    order.forEach((j, k) => {
      for (let i = 0; i < joined.m; i += 1) {
        const value = basis.rows[i * p + k]! * basis.triangle[k * (p + 1)]!;
        expect(value).toBeCloseTo(joined.columns[j]![i]!, 12);
      }
    });
  });

  it('is left for an orthogonal one where columns are few, full or nearly dependent', () => {
    const of = (columns: Record<string, number[] | string[]>) => {
      const { sources, trials } = joinRows(designOf({ successes, columns }));
      return sparseBasis(sources, trials);
    };
    expect(of({ mother })).toBeNull();
    expect(of({ mother, father })).not.toBeNull();
    expect(of({ mother, father, year: age.map((days) => days + 2e6) })).toBeNull();
    expect(of({ mother, again: mother })).toBeNull();
  });

  it('leads to the same fits and ranges as an orthogonal one', () => {
    for (const method of ['maximum-likelihood', 'firth'] as const) {
      const sparse = logistic(spec, { method });
      const full = dense(method);
      expect(sparse.logLik).toBeCloseTo(full.logLik, 9);
      expect(sparse.penalisedLogLik ?? 0).toBeCloseTo(full.penalisedLogLik ?? 0, 8);
      for (const { term, estimate, se } of sparse.terms.slice(1)) {
        const other = full.terms.find((one) => one.term === (term === 'age' ? 'year' : term))!;
        expect(estimate).toBeCloseTo(other.estimate, 8);
        expect(se).toBeCloseTo(other.se, 8);
      }
      const [, bay] = profileIntervals(sparse);
      const other = profileIntervals(full).find(({ term }) => term === bay!.term)!;
      expect(bay!.lower).toBeCloseTo(other.lower!, 7);
      expect(bay!.upper).toBeCloseTo(other.upper!, 7);
    }
  });

  it('leaves the level named that never fails, and Firth finite there', () => {
    const always = successes.map((fruit, i) => (mother[i] === 'Cob' ? 1 : fruit));
    const columns = { mother, father };
    const infinite = logistic({ successes: always, columns });
    expect(infinite.separatedBy).toEqual(['motherCob']);
    expect(infinite.convergence.settled).toBe(false);
    // The supremum: the level's own rows are certain, and the rest is as if they were not there.
    const others = mother.map((_, i) => i).filter((i) => mother[i] !== 'Cob');
    const rest = logistic({
      successes: others.map((i) => always[i]!),
      columns: { mother: others.map((i) => mother[i]!), father: others.map((i) => father[i]!) },
    });
    expect(infinite.logLik).toBeCloseTo(rest.logLik, 7);
    const firth = logistic({ successes: always, columns }, { method: 'firth' });
    expect(firth.separated).toBe(true);
    expect(firth.convergence.settled).toBe(true);
  });

  it('still names the columns that follow from others', () => {
    expect(() => logistic({ successes, columns: { mother, again: mother } })).toThrow(
      'columns must not be linear combinations of one another, got againBay, which follows from motherBay',
    );
  });
});
