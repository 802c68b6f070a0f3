import { describe, expect, it } from 'vitest';
import {
  checkColumnCount,
  type DesignSpec,
  designOf,
  finiteNumbers,
  namedColumns,
} from '../../lib/regression/design.ts';

const spec: DesignSpec = {
  successes: [1, 0, 3],
  trials: [2, 1, 3],
  columns: { stored: [0, 1, 1] },
  groups: { pair: ['b', 'a', 'b'] },
};
const design = (change: Partial<DesignSpec>, unlabelled?: 'refuse' | 'keep') =>
  designOf({ ...spec, ...change }, 'fruit', unlabelled);

describe('designOf', () => {
  it('copies what it is given, puts the intercept first and codes labels in order of appearance', () => {
    const successes = [1, 0, 3];
    const made = design({ successes });
    successes[0] = 2;
    expect(made.n).toBe(3);
    expect([...made.successes]).toEqual([1, 0, 3]);
    expect([...made.offset]).toEqual([0, 0, 0]);
    expect(made.names).toEqual(['(Intercept)', 'stored']);
    expect(made.columns.map((column) => [...column])).toEqual([
      [1, 1, 1],
      [0, 1, 1],
    ]);
    expect(made.groups).toEqual([{ name: 'pair', codes: Int32Array.of(0, 1, 0), levels: ['b', 'a'] }]);
  });

  it('takes single trials where none are given, and plants of any name', () => {
    const { columns: _, trials: __, ...rest } = spec;
    const made = designOf({
      ...rest,
      successes: [1, 0, 1],
      columns: new Map([['__proto__', [1, 2, 3]]]),
      groups: new Map([['<script>', ['__proto__', 'constructor', '__proto__']]]),
      intercept: false,
    });
    expect([...made.trials]).toEqual([1, 1, 1]);
    expect(made.names).toEqual(['__proto__']);
    expect(made.groups[0]!.levels).toEqual(['__proto__', 'constructor']);
  });

  it('keeps a row without a label only where that is asked for', () => {
    const groups = { pair: ['a', null, 'b'] };
    expect([...design({ groups }, 'keep').groups[0]!.codes]).toEqual([0, -1, 1]);
    expect(() => design({ groups })).toThrow(
      'fruit: group pair must have a label in each row, got null in row 2',
    );
  });

  it('names the argument, the rule and the value of what it refuses', () => {
    const refuses = (change: Partial<DesignSpec>, message: string) =>
      expect(() => design(change)).toThrow(message);
    refuses({ successes: [] }, 'fruit: successes must have at least one entry, got none');
    refuses({ trials: [2, 1] }, 'fruit: trials must have 3 entries as successes has, got 2');
    refuses({ trials: [2, 0, 3] }, 'fruit: trials must be whole numbers of at least 1, got 0 in row 2');
    refuses(
      { successes: [3, 0, 3] },
      'fruit: successes must be a whole number from 0 to trials (2), got 3 in row 1',
    );
    refuses(
      { successes: [1, 0.5, 3] },
      'fruit: successes must be a whole number from 0 to trials (1), got 0.5',
    );
    refuses({ offset: [0, Number.NaN, 0] }, 'fruit: offset must hold finite numbers, got NaN in row 2');
    refuses({ columns: { a: [1, 2] } }, 'fruit: column a must have 3 entries as successes has, got 2');
    refuses({ groups: { pair: ['a'] } }, 'fruit: group pair must have 3 entries as successes has, got 1');
  });
});

describe('the checks that designs of other responses share', () => {
  it('name the response whose length rules', () => {
    expect(() => finiteNumbers('seeds', 'exposure', [1], 2, 'counts')).toThrow(
      'seeds: exposure must have 2 entries as counts has, got 1',
    );
    expect(() => namedColumns('seeds', { columns: { a: [1] } }, 2, 'counts')).toThrow(
      'seeds: column a must have 2 entries as counts has, got 1',
    );
  });

  it('want at least one column, and no more than rows', () => {
    expect(() => checkColumnCount('seeds', { names: [], n: 3 })).toThrow(
      'seeds: columns must hold at least one column or the intercept, got none',
    );
    expect(() => checkColumnCount('seeds', { names: ['a', 'b'], n: 1 })).toThrow(
      'seeds: columns must not outnumber the rows (1), got 2',
    );
    expect(() => checkColumnCount('seeds', { names: ['a', 'b'], n: 2 })).not.toThrow();
  });

  it('takes columns of labels as treatment contrasts, and reads their columns out when asked', () => {
    const spec = { successes: [1, 0, 1], columns: { age: [3, 4, 5], storage: ['room', 'fresh', 'room'] } };
    const design = designOf(spec);
    expect(design.names).toEqual(['(Intercept)', 'age', 'storageroom']);
    expect(design.columns.map((column) => [...column])).toEqual([
      [1, 1, 1],
      [3, 4, 5],
      [1, 0, 1],
    ]);
    // Without an intercept the first factor has all its levels: R 4.2.2, model.matrix(~ 0 + age + storage).
    expect(designOf({ ...spec, intercept: false }).names).toEqual(['age', 'storagefresh', 'storageroom']);
    expect(() => designOf({ successes: [1, 0], columns: { storage: ['room'] } }, 'fit')).toThrow(
      'fit: column storage must have 2 entries as successes has, got 1',
    );
  });
});
