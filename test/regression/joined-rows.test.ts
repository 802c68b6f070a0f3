import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designOf } from '../../lib/regression/design.ts';
import { joinRows } from '../../lib/regression/joined-rows.ts';

describe('joinRows', () => {
  it('sums the counts of equal rows, in order of first appearance', () => {
    const design = designOf({
      successes: [1, 0, 2, 1, 0, 1],
      trials: [1, 1, 2, 1, 1, 1],
      columns: { a: [5, -0, 5, 0, 5, 5], b: [1, 1, 1, 1, 2, 1] },
    });
    const joined = joinRows(design);
    expect([...joined.rowOf]).toEqual([0, 1, 0, 1, 2, 0]);
    expect([...joined.successes]).toEqual([4, 1, 0]);
    expect([...joined.trials]).toEqual([4, 2, 1]);
    expect([...joined.columns[1]!].map((value) => value + 0)).toEqual([5, 0, 5]);
    expect([...joined.columns[2]!]).toEqual([1, 1, 2]);
  });

  it('keeps rows apart that differ in the offset only', () => {
    const joined = joinRows(designOf({ successes: [1, 0], columns: { a: [1, 1] }, offset: [0, 1] }));
    expect(joined.m).toBe(2);
  });

  it('agrees with a dictionary of written rows', () => {
    const value = fc.constantFrom(0, 1, 2.5, -3);
    const rows = fc.array(fc.tuple(value, value, fc.integer({ min: 0, max: 1 })), {
      minLength: 200,
      maxLength: 400,
    });
    fc.assert(
      fc.property(rows, (drawn) => {
        const design = designOf({
          successes: drawn.map(([, , y]) => y),
          columns: { a: drawn.map(([a]) => a), b: drawn.map(([, b]) => b) },
        });
        const sums = new Map<string, number>();
        for (const [a, b, y] of drawn) sums.set(`${a} ${b}`, (sums.get(`${a} ${b}`) ?? 0) + y);
        const joined = joinRows(design);
        const own = [...joined.successes].map((y, i) => [
          `${joined.columns[1]![i]} ${joined.columns[2]![i]}`,
          y,
        ]);
        expect(own).toEqual([...sums]);
      }),
      { numRuns: 50, seed: 1 },
    );
  });

  it('leaves rows alone that hardly repeat, and joins thousands of kinds', () => {
    const many = Array.from({ length: 10_000 }, (_, i) => i);
    const apart = joinRows(designOf({ successes: many.map(() => 1), columns: { x: many } }));
    expect(apart.m).toBe(10_000);
    const twice = joinRows(
      designOf({ successes: many.map(() => 1), columns: { x: many.map((i) => i % 3000) } }),
    );
    expect(twice.m).toBe(3000);
    expect(twice.successes.every((y) => y === 3 || y === 4)).toBe(true);
  });

  it.each([
    ['scattered', (i: number) => (i * 7919) % 4000],
    ['side by side', (i: number) => Math.floor(i / 2)],
    ['in turn', (i: number) => i % 4000],
  ])('joins rows that repeat a few times, %s', (_, kind) => {
    const many = Array.from({ length: 20_000 }, (__, i) => kind(i) / 8);
    const joined = joinRows(designOf({ successes: many.map(() => 1), columns: { x: many } }));
    expect(joined.m).toBe(new Set(many).size);
  });

  it('joins whole numbers and labels through a table as it joins other numbers', () => {
    const row = fc.tuple(fc.integer({ min: -3, max: 3 }), fc.constantFrom('Jade', 'Pearl', 'Onyx'));
    fc.assert(
      fc.property(fc.array(row, { minLength: 200, maxLength: 300 }), (drawn) => {
        fc.pre(new Set(drawn.map(([, plant]) => plant)).size > 1);
        const trials = drawn.map((_, i) => 1 + (i % 3));
        const joined = (x: number[], plants: (string | number)[]) =>
          joinRows(
            designOf({ successes: trials.map(() => 1), trials, columns: { x, p: plants as string[] } }),
          );
        const labelled = joined(
          drawn.map(([x]) => x),
          drawn.map(([, plant]) => plant),
        );
        const coded = joined(
          drawn.map(([x]) => x + 0.25),
          drawn.map(([, plant]) => plant.charCodeAt(0) / 7),
        );
        expect([...labelled.rowOf]).toEqual([...coded.rowOf]);
        expect([...labelled.trials]).toEqual([...coded.trials]);
        expect(labelled.columns).toHaveLength(new Set(drawn.map(([, plant]) => plant)).size + 1);
      }),
      { numRuns: 30, seed: 2 },
    );
  });
});
