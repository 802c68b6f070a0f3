import { describe, expect, it } from 'vitest';
import {
  checkChoice,
  checkCounts,
  checkFinite,
  checkInside,
  checkNumber,
  checkPositive,
  checkProbability,
  checkWhole,
} from '../../lib/numerics/arguments.ts';

const text = '3' as unknown as number;

describe('checks of arguments', () => {
  it('name function, argument, rule and value', () => {
    expect(() => checkCounts('wilson', 23, 20)).toThrow(
      new RangeError('wilson: successes must be a whole number from 0 to trials (20), got 23'),
    );
    expect(() => checkChoice('f', 'tail', 'left', ['lower', 'upper'])).toThrow(
      new RangeError('f: tail must be one of lower, upper, got "left"'),
    );
  });

  it('throw a TypeError where the kind of value is wrong', () => {
    const checks = [checkNumber, checkFinite, checkPositive, checkProbability, checkInside, checkWhole];
    for (const check of checks) {
      expect(() => check('f', 'x', text)).toThrow(TypeError);
      expect(() => check('f', 'x', text)).toThrow(/^f: x must be .*, got "3"$/);
      expect(() => check('f', 'x', undefined as unknown as number)).toThrow(TypeError);
      expect(() => check('f', 'x', Number.NaN)).toThrow(RangeError);
    }
  });

  it('let pass what the rule allows, its ends included or not', () => {
    expect(() => checkNumber('f', 'x', -Infinity)).not.toThrow();
    expect(() => checkFinite('f', 'x', -1e300)).not.toThrow();
    expect(() => checkFinite('f', 'x', Infinity)).toThrow(RangeError);
    expect(() => checkPositive('f', 'x', 0)).toThrow(RangeError);
    expect(() => checkProbability('f', 'x', 0)).not.toThrow();
    expect(() => checkProbability('f', 'x', 1)).not.toThrow();
    expect(() => checkInside('f', 'x', 0)).toThrow(RangeError);
    expect(() => checkInside('f', 'x', 1)).toThrow(RangeError);
    expect(() => checkWhole('f', 'x', 0)).not.toThrow();
    expect(() => checkWhole('f', 'x', 0, 1)).toThrow('f: x must be a whole number of at least 1, got 0');
  });

  it('take counts of successes from 0 to all trials, of which there is at least one', () => {
    expect(() => checkCounts('f', 0, 1)).not.toThrow();
    expect(() => checkCounts('f', 1, 1)).not.toThrow();
    for (const [x, n] of [
      [-1, 5],
      [1.5, 5],
      [6, 5],
      [Number.NaN, 5],
      [0, 0],
      [0, 2.5],
      [0, Infinity],
    ] as const) {
      expect(() => checkCounts('f', x, n, '2')).toThrow(/^f: (successes2|trials2) must be/);
    }
  });
});
