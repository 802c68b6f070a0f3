/**
 * The examples in doc comments run, and what they state, `call // result`, is true. An example may speak of what
 * `test/example-givens.ts` gives, say `fit` or `season`, and of the exports of its own file and of the library.
 */

import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import * as door from '../lib/index.ts';
import { givens } from './example-givens.ts';

const lib = new URL('../lib/', import.meta.url);

interface Example {
  readonly of: string;
  readonly code: string;
}

// Inner functions of these floors are held to their examples too, elsewhere those of the door alone.
const WHOLE_FLOOR = /^(?:numerics|proportions|regression)\//;

/** The `@example`s of a file's functions. */
function examplesOf(file: string): Example[] {
  const source = ts.createSourceFile(
    file,
    readFileSync(new URL(file, lib), 'utf8'),
    ts.ScriptTarget.Latest,
    true,
  );
  const functions = source.statements
    .filter(ts.isFunctionDeclaration)
    .filter(({ name }) => WHOLE_FLOOR.test(file) || name!.text in door);
  return functions.flatMap((declared) =>
    ts
      .getJSDocTags(declared)
      .filter(({ tagName }) => tagName.text === 'example')
      .map((tag) => ({ of: declared.name!.text, code: ts.getTextOfJSDocComment(tag.comment) ?? '' })),
  );
}

/** An example's JavaScript: each expression that stands alone is handed to `shown` with the remark behind it. */
function javascriptOf(code: string): string {
  const source = ts.createSourceFile('example.ts', code, ts.ScriptTarget.Latest, true);
  const lines = source.statements.map((statement) => {
    if (!ts.isExpressionStatement(statement)) return statement.getText();
    const remark = ts.getTrailingCommentRanges(code, statement.end)?.[0];
    const stated = remark === undefined ? '' : code.slice(remark.pos + 2, remark.end).trim();
    return `shown(await (${statement.expression.getText()}), ${JSON.stringify(stated)});`;
  });
  return ts.transpile(`return (async () => {\n${lines.join('\n')}\n})()`, { target: ts.ScriptTarget.Latest });
}

const NUMBER = /-?\d+(?:\.\d+)?(?:e-?\d+)?(?:\.\.\.)?/g;

function printed(value: unknown): string {
  if (typeof value === 'string') return `'${value}'`;
  if (typeof value !== 'object' || value === null) return String(value);
  if (Array.isArray(value) || ArrayBuffer.isView(value))
    return `[${[...(value as Iterable<unknown>)].map(printed).join(', ')}]`;
  const parts = Object.entries(value).map(([name, part]) => `${name}: ${printed(part)}`);
  return `{ ${parts.join(', ')} }`;
}

/** A number cut off, with three dots, must begin so; a whole one must agree to the last digits but one or two. */
function numberAgrees(actual: string, stated: string): boolean {
  if (stated.endsWith('...')) return actual.startsWith(stated.slice(0, -3));
  return Math.abs(Number(actual) - Number(stated)) <= 1e-14 * Math.abs(Number(stated));
}

/** A text cut off, with an ellipsis before its closing quote, must begin so. */
function agrees(value: unknown, stated: string): boolean {
  const actual = printed(value);
  if (stated.startsWith("'") && stated.endsWith("…'")) return actual.startsWith(stated.slice(0, -2));
  const wanted = stated.match(NUMBER) ?? [];
  const found = actual.match(NUMBER) ?? [];
  return (
    actual.replace(NUMBER, '#') === stated.replace(NUMBER, '#') &&
    found.every((number, i) => numberAgrees(number, wanted[i]!))
  );
}

// What begins otherwise is prose, which nothing can hold to its word.
const RESULT = /^(?:['{[-]|\d|null$|true$|false$)/;

const files = readdirSync(lib, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !/^(?:browser|command|notebook\/build|bin|index)/.test(file))
  .filter((file) => examplesOf(file).length > 0)
  .sort();

describe('the examples of doc comments', () => {
  it.each(files)('run and state what they return: lib/%s', async (file) => {
    const own: Record<string, unknown> = await import(new URL(file, lib).href);
    const scope = { ...(await givens()), ...door, ...own };
    for (const { of, code } of examplesOf(file)) {
      const seen: unknown[] = [];
      const shown = (value: unknown, stated: string): void => {
        seen.push(value);
        const said = `${of}: ${code} is ${printed(value)}, not ${stated}`;
        expect.soft(stated, `${of} states no result: ${code}`).toMatch(RESULT);
        expect.soft(agrees(value, stated), said).toBe(true);
      };
      await new Function(...Object.keys(scope), 'shown', javascriptOf(code))(...Object.values(scope), shown);
      expect(seen.length, `${of} shows nothing: ${code}`).toBeGreaterThan(0);
    }
  });
});
