/** The examples in doc comments that state a result, `call // result`, are true: for the two lowest floors. */

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const lib = new URL('../lib/', import.meta.url);

interface Example {
  readonly call: string;
  readonly stated: string;
}

/** `@example` up to the next tag or the comment's end, its lines joined. */
function examplesOf(text: string): Example[] {
  return [...text.matchAll(/@example (.*?)(?=\n \* @|\n \*\/)/gs)].flatMap(([, body]) => {
    const [call, stated] = body!.replace(/\n \*\s*/g, ' ').split(' // ');
    return stated === undefined ? [] : [{ call: call!, stated }];
  });
}

const NUMBER = /-?\d+(?:\.\d+)?(?:e-?\d+)?(?:\.\.\.)?/g;

function printed(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  const parts = Object.entries(value).map(([name, part]) => `${name}: ${printed(part)}`);
  return `{ ${parts.join(', ')} }`;
}

/** A number cut off, with three dots, must begin so; a whole one must agree to the last digits but one or two. */
function numberAgrees(actual: string, stated: string): boolean {
  if (stated.endsWith('...')) return actual.startsWith(stated.slice(0, -3));
  return Math.abs(Number(actual) - Number(stated)) <= 1e-14 * Math.abs(Number(stated));
}

function agrees(value: unknown, stated: string): boolean {
  const actual = printed(value);
  const wanted = stated.match(NUMBER) ?? [];
  const found = actual.match(NUMBER) ?? [];
  return (
    actual.replace(NUMBER, '#') === stated.replace(NUMBER, '#') &&
    found.every((number, i) => numberAgrees(number, wanted[i]!))
  );
}

describe.each(['numerics', 'proportions'])('the examples of lib/%s', (floor) => {
  const files = readdirSync(new URL(`${floor}/`, lib)).filter(
    (file) => examplesOf(readFileSync(new URL(`${floor}/${file}`, lib), 'utf8')).length > 0,
  );
  it.each(files)('state what %s returns', async (file) => {
    const address = new URL(`${floor}/${file}`, lib);
    const exported: Record<string, unknown> = await import(address.href);
    const names = Object.keys(exported);
    const examples = examplesOf(readFileSync(address, 'utf8'));
    for (const { call, stated } of examples) {
      const value: unknown = new Function(...names, `return ${call}`)(...Object.values(exported));
      expect(agrees(value, stated), `${call} is ${printed(value)}, not ${stated}`).toBe(true);
    }
  });
});
