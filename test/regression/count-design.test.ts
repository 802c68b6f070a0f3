import { describe, expect, it } from 'vitest';
import { type CountSpec, countDesignOf } from '../../lib/regression/count-design.ts';

const spec: CountSpec = { counts: [4, 0, 7], columns: { stored: [0, 1, 1] }, exposure: [1, 2, 1] };
const design = (change: Partial<CountSpec>, least = 0) =>
  countDesignOf({ ...spec, ...change }, 'seeds', least);

describe('countDesignOf', () => {
  it('copies counts and columns, puts the intercept first and takes the logarithm of the exposure', () => {
    const counts = [4, 0, 7];
    const made = design({ counts });
    counts[0] = 99;
    expect(made.names).toEqual(['(Intercept)', 'stored']);
    expect([...made.counts]).toEqual([4, 0, 7]);
    expect(made.columns.map((column) => [...column])).toEqual([
      [1, 1, 1],
      [0, 1, 1],
    ]);
    expect([...made.offset]).toEqual([0, Math.log(2), 0]);
  });

  it('has no intercept where none is wanted, and columns of any name', () => {
    const columns = new Map([['__proto__', [1, 0, 2]]]);
    expect(design({ columns, intercept: false }).names).toEqual(['__proto__']);
  });

  it('names the argument, the rule and the value of what it refuses', () => {
    expect(() => design({ counts: [] })).toThrow('seeds: counts must have at least one entry, got none');
    expect(() => design({ counts: [1, 2.5, 3] })).toThrow(
      'seeds: counts must be whole numbers of at least 0, got 2.5 in row 2',
    );
    expect(() => design({ counts: [1, -1, 3] })).toThrow(
      'counts must be whole numbers of at least 0, got -1 in row 2',
    );
    expect(() => design({}, 1)).toThrow('seeds: counts must be whole numbers of at least 1, got 0 in row 2');
    expect(() => design({ counts: [1, Number.NaN, 3] })).toThrow(
      'seeds: counts must hold finite numbers, got NaN in row 2',
    );
    expect(() => design({ columns: { stored: [0, 1] } })).toThrow(
      'seeds: column stored must have 3 entries as counts has, got 2',
    );
    expect(() => design({ columns: { stored: [0, 1, Infinity] } })).toThrow(
      'seeds: column stored must hold finite numbers, got Infinity in row 3',
    );
    expect(() => design({ exposure: [1, 0, 1] })).toThrow(
      'seeds: exposure must hold numbers above 0, got 0 in row 2',
    );
    expect(() => design({ exposure: [1, 1] })).toThrow(
      'seeds: exposure must have 3 entries as counts has, got 2',
    );
    expect(() => design({ columns: {}, intercept: false })).toThrow(
      'seeds: columns must hold at least one column or the intercept, got none',
    );
    expect(() => design({ columns: { a: [1, 2, 3], b: [1, 0, 0], c: [0, 0, 1] } })).toThrow(
      'seeds: columns must not outnumber the rows (3), got 4',
    );
  });
});
