import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../lib/notebook/build/cells.ts';
import { checkNotebooks } from '../../lib/notebook/build/check.ts';
import { faultLine } from '../../lib/notebook/fault.ts';

// Cells are checked against the package as others see it: `npm test` compiles it first.
const root = fileURLToPath(new URL('../..', import.meta.url));

/** A notebook of these cells: the first line of the first cell is line 6, of the second line 9 if that has one line. */
function faultsOf(cells: readonly string[], prose = '', packages = ''): string[] {
  const front = ['---', 'title: T', 'description: D', packages === '' ? '---' : `packages: ${packages}\n---`];
  const body = cells.map((cell) => `\`\`\`ts\n${cell}\n\`\`\``);
  const text = [...front, ...body, prose].join('\n');
  return checkNotebooks([readNotebook('reports/x.md', text)], root).map(faultLine);
}

describe('checkNotebooks', () => {
  it('finds nothing wrong with cells that use the library, what is given and the cells above', () => {
    const cells = [
      "import type { Html } from 'fruitodds';\nimport { html } from 'fruitodds';\nconst flowers = given.analysis.raw.overall.flowers;",
      'const row: Html = html`<b>${flowers}</b>`;',
    ];
    expect(
      faultsOf(cells, 'Text {{ flowers }} and {{ row }} and {{ given.analysis.provenance.version }}.'),
    ).toEqual([]);
  });

  it('names line and column of a wrong type', () => {
    expect(faultsOf(['const a = 1;', 'const b: string = a;'])).toEqual([
      "reports/x.md:9:7: Type 'number' is not assignable to type 'string'.",
    ]);
  });

  it('checks against the types of the library', () => {
    expect(faultsOf(['const a = given.analysis.raw.overal;'])).toEqual([
      "reports/x.md:6:30: Property 'overal' does not exist on type 'RawRates'. Did you mean 'overall'?",
    ]);
  });

  it('names the place of a slot that no cell defines', () => {
    expect(faultsOf(['const a = 1;'], 'Fine {{ a }}, unknown {{ b }}.')).toEqual([
      "reports/x.md:8:26: Cannot find name 'b'.",
    ]);
    expect(faultsOf(['const a = { b: 1 };'], 'Unknown {{ a.c }}.')).toEqual([
      "reports/x.md:8:14: Property 'c' does not exist on type '{ b: number; }'.",
    ]);
  });

  it('refuses a slot whose value may be missing, or is of a kind that prose cannot show', () => {
    const rule = 'what stands in prose must be text, a number, html or a figure;';
    expect(faultsOf(['const rate = given.analysis.raw.overall;'], '{{ rate.estimate }}')).toEqual([
      `reports/x.md:8:4: ${rule} rate.estimate is number | null`,
    ]);
    expect(faultsOf(['const a = [1];'], '{{ a }}')).toEqual([`reports/x.md:8:4: ${rule} a is number[]`]);
  });

  it('refuses a function declared at the top level, even where nobody would call it too early', () => {
    const rule =
      'the top level of a cell may hold const, import, type and interface only; a function is a const too';
    expect(faultsOf(['function f() { return 1; }'])).toEqual([`reports/x.md:6:1: ${rule}`]);
    for (const code of [
      'let a = 1;',
      'var a = 1;',
      'export const a = 1;',
      'Math.sqrt(2);',
      'if (given) {}',
    ]) {
      expect(faultsOf([code])).toEqual([`reports/x.md:6:1: ${rule}`]);
    }
  });

  it('refuses a name of a cell further down, also inside a function, where the type checker alone would not', () => {
    expect(faultsOf(['const f = () => later + 1;', 'const later = 1;'])).toEqual([
      'reports/x.md:6:17: a cell sees only the cells above it: later is defined further down',
    ]);
    expect(faultsOf(['const f = () => ({ later });', 'const later = 1;'])).toEqual([
      'reports/x.md:6:20: a cell sees only the cells above it: later is defined further down',
    ]);
  });

  it('does not mistake a key or a parameter for a name further down', () => {
    expect(
      faultsOf([
        'const f = (later: { total: number }) => later.total;',
        'const later = 1;\nconst total = 2;',
      ]),
    ).toEqual([]);
  });

  it('refuses names defined twice and names that nothing defines', () => {
    expect(faultsOf(['const a = 1;', 'const a = 2;'])).toEqual([
      "reports/x.md:6:7: Cannot redeclare block-scoped variable 'a'.",
      "reports/x.md:9:7: Cannot redeclare block-scoped variable 'a'.",
    ]);
    expect(faultsOf(['const given = 1;'])).toContain(
      "reports/x.md:6:7: Cannot redeclare block-scoped variable 'given'.",
    );
  });

  it('allows imports from the library and the packages of the front lines only', () => {
    const code = "import { readFileSync } from 'node:fs';";
    expect(faultsOf([code])[0]).toBe(
      'reports/x.md:6:1: a cell may import from fruitodds only, not from node:fs',
    );
    expect(
      faultsOf(["import { table } from 'arquero';\nconst t = table({ a: [1] });"], '', 'arquero'),
    ).toEqual([]);
    expect(faultsOf(["const t = import('arquero');"])).toContain(
      'reports/x.md:6:11: a cell may import at its top level only',
    );
  });

  it('refuses statements that span cells, classes, enums and broken syntax', () => {
    expect(faultsOf(['const a =', '1;'])).toEqual([
      'reports/x.md:6:1: a statement must end in the cell in which it begins',
    ]);
    expect(faultsOf(['const A = class {};'])).toEqual(['reports/x.md:6:11: a cell may not hold a class']);
    expect(faultsOf(['enum E { A }']).join()).toContain('reports/x.md:6:');
    expect(faultsOf(['const a = ;'])).toEqual(['reports/x.md:6:11: Expression expected.']);
  });

  it('takes several notebooks at once, each with its own names', () => {
    const notebook = (name: string, line: string) =>
      readNotebook(`reports/${name}.md`, `---\ntitle: T\ndescription: D\n---\n\`\`\`ts\n${line}\n\`\`\`\n`);
    const faults = checkNotebooks([notebook('a', 'const a = 1;'), notebook('b', 'const b = a;')], root);
    expect(faults.map(faultLine)).toEqual(["reports/b.md:6:11: Cannot find name 'a'."]);
  });
});
