import { describe, expect, it } from 'vitest';
import { checkLevel, unknown } from '../../lib/proportions/interval.ts';

describe('an estimate that the data cannot give', () => {
  it('is null throughout, with its reason', () => {
    expect(unknown('no-flowers')).toEqual({
      estimate: null,
      lower: null,
      upper: null,
      because: 'no-flowers',
    });
  });
});

describe('the check of a level', () => {
  it('lets pass what lies strictly between 0 and 1', () => {
    for (const level of [1e-9, 0.5, 0.95, 0.999999]) expect(() => checkLevel('f', level)).not.toThrow();
  });

  it('refuses the ends, percentages and what is no number', () => {
    for (const level of [0, 1, 95, -0.1, Number.NaN]) {
      expect(() => checkLevel('f', level)).toThrow(
        new RangeError(`f: level must be a number between 0 and 1, such as 0.95, got ${level}`),
      );
    }
  });
});
