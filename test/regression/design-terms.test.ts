import { describe, expect, it } from 'vitest';
import {
  checkTerms,
  columnsOfTerm,
  type DesignTerm,
  mapOf,
  partsOf,
  termName,
  variableOf,
} from '../../lib/regression/design-terms.ts';

const source = {
  caller: 'fruit',
  n: 3,
  variables: new Map<string, readonly (number | string)[]>([
    ['mother', ['b', 'a', 'c']],
    ['age', [0, 1, 2]],
  ]),
  levels: new Map([['mother', ['a', 'b', 'c']]]),
};
const mother = { kind: 'factor', variable: 'mother' } as const;
const age = { kind: 'numeric', variable: 'age' } as const;
const columns = (term: DesignTerm, all = false) =>
  columnsOfTerm(source, term, all).map(([name, values]) => [name, ...values]);

describe('columnsOfTerm', () => {
  it('codes treatment contrasts, the first level the reference (Chambers & Hastie 1992, section 2.3.2)', () => {
    expect(columns(mother)).toEqual([
      ['motherb', 1, 0, 0],
      ['motherc', 0, 0, 1],
    ]);
    expect(columns(mother, true)[0]).toEqual(['mothera', 0, 1, 0]);
  });

  it('multiplies columns in an interaction and gives each level its slope within a factor', () => {
    expect(columns({ kind: 'interaction', of: [mother, age] })).toEqual([
      ['motherb:age', 0, 0, 0],
      ['motherc:age', 0, 0, 2],
    ]);
    expect(columns({ kind: 'within', factor: 'mother', term: age })).toEqual([
      ['mothera:age', 0, 1, 0],
      ['motherb:age', 0, 0, 0],
      ['motherc:age', 0, 0, 2],
    ]);
  });
});

describe('names and parts of terms', () => {
  it('name a term by its variables', () => {
    expect(termName({ kind: 'log1p', variable: 'age' })).toBe('log1p(age)');
    expect(termName({ kind: 'natural-spline', variable: 'age', knots: [] })).toBe('ns(age)');
    expect(termName({ kind: 'interaction', of: [mother, age] })).toBe('mother:age');
    expect(termName({ kind: 'within', factor: 'mother', term: age })).toBe('mother:age');
    expect(partsOf({ kind: 'within', factor: 'mother', term: age })).toEqual([mother, age]);
  });

  it('take records and Maps alike', () => {
    expect(mapOf({ a: 1 })).toEqual(new Map([['a', 1]]));
    expect(mapOf(new Map([['__proto__', 1]])).get('__proto__')).toBe(1);
  });
});

describe('checkTerms and variableOf', () => {
  it('refuse an interaction without its margins, and a variable that is not there', () => {
    expect(() => checkTerms('fruit', [age, { kind: 'interaction', of: [mother, age] }])).toThrow(
      'fruit: terms must hold mother where they hold the interaction mother:age, got age, mother:age',
    );
    expect(() =>
      checkTerms('fruit', [mother, age, { kind: 'interaction', of: [mother, age] }]),
    ).not.toThrow();
    expect(() => variableOf(source, 'father')).toThrow(
      'fruit: terms must name variables (mother, age), got father',
    );
  });
});
