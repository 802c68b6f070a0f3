import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { blankTypes, importLines } from '../../lib/notebook/build/blank-types.ts';

function parsed(text: string): ts.SourceFile {
  return ts.createSourceFile('x.mts', text, ts.ScriptTarget.ES2023, true);
}

/** TypeScript's own emit, reprinted, is the second opinion on what is left when the types are gone; it also drops needless brackets. */
function reprinted(text: string): string {
  const compilerOptions = {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.ES2022,
    removeComments: true,
  };
  const { outputText } = ts.transpileModule(text, { compilerOptions });
  return outputText.replace(/\s*export \{\};\s*/, '').replace(/\((\w+)\)\./g, '$1.');
}

const samples = [
  'const a: number = 1;',
  'const f = (x: string, y?: number): string => x + y!;',
  'const g = <T,>(x: T): [T, T] => [x, x];',
  'const h = async function <T extends object>(this_: T): Promise<void> { await null; };',
  'const m = new Map<string, number>([["a", 1]]);',
  'const n = [1].map((x): number => x) as readonly number[]',
  'const o = { a: 1 } as const;',
  'const p = { a: 1 } satisfies Record<string, number>;',
  'const q = (a as unknown as { b: number }).b;',
  'type T = { a: number };\nconst r = 1;',
  'interface I { a(): void }\nconst s = 2;',
  'const { t, u }: { t: number; u: string } = v;',
  'const w = html<string>`<p>${1 as number}</p>`;',
  'const x1 = a! + b!.c!();',
  'const y1 = (z: number = 1, ...rest: number[]) => rest.length as number;',
  'const k = a < b && c > d;',
];

describe('blankTypes', () => {
  it.each(samples)('leaves the JavaScript of %j', (text) => {
    expect(reprinted(blankTypes(parsed(text)).replace(/^;/, ''))).toBe(reprinted(text));
  });

  it.each(samples)('keeps every other character of %j at its line and column', (text) => {
    const blanked = blankTypes(parsed(text));
    expect(blanked).toHaveLength(text.length);
    for (const [index, character] of [...blanked].entries()) {
      if (character !== ' ' && character !== ';') expect(character).toBe(text[index]);
    }
  });

  it('ends a statement where its type did, so that the next line is no call', () => {
    expect(blankTypes(parsed('const a = b as C\n(d)'))).toBe('const a = b;    \n(d)');
  });

  it('blanks imports, which importLines gives without their types', () => {
    const text =
      "import type { A } from 'a';\nimport b, { type C, d as e } from 'b';\nimport * as f from 'f';\nimport 'g';";
    expect(blankTypes(parsed(text)).trim()).toBe('');
    expect(importLines(parsed(text))).toEqual([
      'import b, { d as e } from "b";',
      'import * as f from "f";',
      'import "g";',
    ]);
  });
});
