import { describe, expect, it } from 'vitest';
import {
  columnsOf,
  labelledColumns,
  specOfSources,
  untouchedSources,
  widthOf,
  withColumns,
} from '../../lib/regression/column-source.ts';

describe('labelledColumns', () => {
  // R 4.2.2: model.matrix(~ m, data.frame(m = c("b", "a", "c", "b")))
  it('makes the treatment contrasts of R, the first level in sorted order as reference', () => {
    const { names, source } = labelledColumns('test', 'm', ['b', 'a', 'c', 'b'], false);
    expect(names).toEqual(['mb', 'mc']);
    expect(widthOf(source)).toBe(2);
    expect(columnsOf([source]).map((column) => [...column])).toEqual([
      [1, 0, 0, 1],
      [0, 0, 1, 0],
    ]);
  });

  // R 4.2.2: model.matrix(~ 0 + m, data.frame(m = c("b", "a", "b")))
  it('has an indicator of every level where asked', () => {
    const { names, source } = labelledColumns('test', 'm', ['b', 'a', 'b'], true);
    expect(names).toEqual(['ma', 'mb']);
    expect(columnsOf([source]).map((column) => [...column])).toEqual([
      [0, 1, 0],
      [1, 0, 1],
    ]);
  });

  it('refuses what is no label, and a single level', () => {
    expect(() => labelledColumns('fit', 'm', ['b', 3], false)).toThrow(
      'fit: column m must hold labels only, got 3 in row 2',
    );
    expect(() => labelledColumns('fit', 'm', ['b', 'b'], false)).toThrow(
      'fit: column m must have two levels or more, got b only',
    );
  });
});

describe('withColumns', () => {
  it('writes the columns out once, in order', () => {
    const values = Float64Array.of(4, 5, 6);
    const rows = withColumns({ sources: [{ values }, { codes: Int32Array.of(0, 2, 1), width: 2 }] });
    expect(rows.columns.map((column) => [...column])).toEqual([
      [4, 5, 6],
      [0, 0, 1],
      [0, 1, 0],
    ]);
    expect(rows.columns).toBe(rows.columns);
  });
});

describe('specOfSources', () => {
  const named = {
    names: ['a', 'plantJade', 'plantOnyx'],
    sources: [{ values: Float64Array.of(1, 2, 3) }, { codes: Int32Array.of(0, 2, 1), width: 2 }],
  };

  it('writes the columns out at the first look, once', () => {
    const spec = specOfSources({ successes: [1, 0, 1] }, named);
    expect(untouchedSources(spec)).toBe(named);
    expect([...spec.columns]).toEqual([
      ['a', Float64Array.of(1, 2, 3)],
      ['plantJade', Float64Array.of(0, 0, 1)],
      ['plantOnyx', Float64Array.of(0, 1, 0)],
    ]);
    expect(spec.columns).toBe(spec.columns);
  });

  it('leaves its sources to nobody once the columns were seen, for they may have been changed', () => {
    const spec = specOfSources({ successes: [1, 0, 1] }, named);
    spec.columns.get('a')![0] = 7;
    expect(untouchedSources(spec)).toBeUndefined();
    expect(untouchedSources({ ...spec })).toBeUndefined();
  });
});
