/** Reads the reference cases in test/reference: CSV tables, formulas and tolerances as their JSON states them. */

import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { DesignSpec } from '../../lib/regression/design.ts';

/** Any value of a reference JSON; each test knows the shape of its own cases. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
export type Table = ReadonlyMap<string, readonly string[]>;

interface Tolerance {
  readonly rel: number;
  readonly abs: number;
}

export interface ReferenceCase {
  readonly id: string;
  readonly source: string;
  readonly input: { readonly [key: string]: Json };
  readonly expected: { readonly [key: string]: Json };
  readonly tolerance: Tolerance & { readonly byKey?: { readonly [key: string]: Tolerance | string } };
}

const folder = new URL('../reference/', import.meta.url);

export function readCases(file: string): readonly ReferenceCase[] {
  return (JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as { cases: ReferenceCase[] }).cases;
}

export function readTable(file: string): Table {
  const lines = readFileSync(new URL(file, folder), 'utf8').trim().split(/\r?\n/);
  const names = lines[0]!.split(',').map((name) => name.replaceAll('"', ''));
  const cells = lines.slice(1).map((line) => line.split(',').map((cell) => cell.replaceAll('"', '')));
  return new Map(names.map((name, j) => [name, cells.map((row) => row[j] ?? '')]));
}

export function texts(table: Table, name: string): readonly string[] {
  const column = table.get(name);
  if (column === undefined) throw new Error(`no column ${name}`);
  return column;
}

export function numbers(table: Table, name: string): readonly number[] {
  return texts(table, name).map(Number);
}

/** Levels of the factors of a case, the reference level first. */
export type Levels = { readonly [factor: string]: readonly string[] } | null | undefined;

type NamedColumns = readonly (readonly [name: string, values: readonly number[]])[];

function indicators(table: Table, factor: string, levels: readonly string[], skip: number): NamedColumns {
  return levels
    .slice(skip)
    .map((level) => [`${factor}${level}`, texts(table, factor).map((cell) => (cell === level ? 1 : 0))]);
}

function variable(table: Table, name: string, levels: Levels, full: boolean): NamedColumns {
  if (levels?.[name]) return indicators(table, name, levels[name], full ? 0 : 1);
  const inner = /^log1p\((.+)\)$/.exec(name)?.[1];
  if (inner !== undefined) return [[name, numbers(table, inner).map((value) => Math.log1p(value))]];
  return [[name, numbers(table, name)]];
}

function product(left: NamedColumns, right: NamedColumns): NamedColumns {
  return right.flatMap(([name, values]) =>
    left.map(([first, factor]) => [`${first}:${name}`, factor.map((v, i) => v * values[i]!)] as const),
  );
}

/** Columns of the right-hand side of a formula with `+`, one `*`, `log1p()`, `1` and `- 1`, treatment contrasts. */
export function formulaColumns(table: Table, formula: string, levels: Levels): NamedColumns {
  const right = formula.split('~')[1]!;
  const noIntercept = /-\s*1\s*$/.test(right);
  const terms = right
    .replace(/-\s*1\s*$/, '')
    .split('+')
    .map((term) => term.trim());
  const main: (readonly [string, readonly number[]])[] = [];
  const interactions: (readonly [string, readonly number[]])[] = [];
  terms.forEach((term, index) => {
    if (term === '1') return;
    const parts = term
      .split('*')
      .map((name) => variable(table, name.trim(), levels, noIntercept && index === 0));
    for (const part of parts) main.push(...part);
    if (parts.length === 2) interactions.push(...product(parts[0]!, parts[1]!));
  });
  return [...main, ...interactions];
}

/** Successes and trials of the left-hand side: `y`, `cbind(y, failures)` or `cbind(y, n - y)`. */
export function formulaResponse(table: Table, left: string): { successes: number[]; trials: number[] } {
  const pair = /^cbind\((\w+), (.+)\)$/.exec(left);
  if (pair === null) {
    const successes = [...numbers(table, left)];
    return { successes, trials: successes.map(() => 1) };
  }
  const successes = [...numbers(table, pair[1]!)];
  const total = /^(\w+) - \w+$/.exec(pair[2]!)?.[1];
  const other = numbers(table, total ?? pair[2]!);
  return {
    successes,
    trials: other.map((value, i) => (total === undefined ? value + successes[i]! : value)),
  };
}

/** The design of a case that has a formula. */
export function formulaDesign(table: Table, formula: string, levels: Levels): DesignSpec {
  const left = formula.split('~')[0]!.trim();
  return {
    ...formulaResponse(table, left),
    columns: new Map(formulaColumns(table, formula, levels)),
    intercept: !/-\s*1\s*$/.test(formula),
  };
}

/** Checks a value, or each value of a list or record, against a case's expectation and the tolerance of its key. */
export function expectReference(
  { id, tolerance }: ReferenceCase,
  key: string,
  actual: unknown,
  wanted: Json | undefined,
): void {
  const own = tolerance.byKey?.[key];
  const { rel, abs } = own === undefined || typeof own === 'string' ? tolerance : own;
  compare(`${id} ${key}`, actual, wanted, rel, abs);
}

function compare(path: string, actual: unknown, wanted: Json | undefined, rel: number, abs: number): void {
  if (wanted === undefined) throw new Error(`${path}: the case has no such value`);
  if (typeof wanted === 'number') {
    const distance = Math.abs((actual as number) - wanted);
    const allowed = abs + rel * Math.abs(wanted);
    expect(distance, `${path}: ${String(actual)} against ${wanted}`).toBeLessThanOrEqual(allowed);
  } else if (wanted !== null && typeof wanted === 'object') {
    for (const [name, value] of Object.entries(wanted)) {
      const part = actual instanceof Map ? actual.get(name) : (actual as Record<string, unknown>)[name];
      compare(`${path}.${name}`, part, value, rel, abs);
    }
  } else {
    expect(actual, path).toBe(wanted);
  }
}

/** One number a term, by its name. */
export function byTerm<T extends { readonly term: string }>(
  terms: readonly T[],
  value: (term: T) => number | null,
): ReadonlyMap<string, number | null> {
  return new Map(terms.map((term) => [term.term, value(term)]));
}

/** Names of a design's columns that belong to one term of a formula, such as a factor or an interaction. */
export function termNames(
  table: Table,
  term: string,
  levels: Levels,
  names: readonly string[],
): readonly string[] {
  const [first, second] = term
    .split(':')
    .map((name) => variable(table, name, levels, true).map(([column]) => column));
  const wanted =
    second === undefined ? first! : second.flatMap((right) => first!.map((left) => `${left}:${right}`));
  return names.filter((name) => wanted.includes(name));
}

/**
 * Checks a covariance in units of its standard errors: those of the references are from a finite-difference Hessian,
 * good to 1e-3. Where a reference holds the diagonal only, only that is compared.
 */
export function expectCovariance(actual: Float64Array, wanted: Json | undefined): void {
  const rows = wanted as readonly (readonly number[])[];
  const p = rows.length;
  const diagonal = rows.every((row, j) => row.every((value, k) => j === k || value === 0));
  rows.forEach((row, j) => {
    row.forEach((value, k) => {
      if (diagonal && j !== k) return;
      const scale = Math.sqrt(rows[j]![j]! * rows[k]![k]!);
      expect(Math.abs(actual[j * p + k]! - value) / scale, `${j}, ${k}`).toBeLessThanOrEqual(2e-3);
    });
  });
}
