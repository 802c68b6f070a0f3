import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { readNotebook } from '../../lib/notebook/build/cells.ts';
import { checkNotebooks, notebookChecker } from '../../lib/notebook/build/check.ts';
import { faultLine } from '../../lib/notebook/fault.ts';

// Cells are checked against the package as others see it: `npm test` compiles it first.
const root = fileURLToPath(new URL('../..', import.meta.url));

/** A notebook and the faults it must have, each without its `reports/NUMBER.md:`. Places are counted by hand. */
interface Case {
  readonly title: string;
  /** The first line of the first cell is line 6, of the second one line 9 if the first has one line. */
  readonly cells: readonly string[];
  /** Stands below the cells: line 8 after one cell of one line. */
  readonly prose?: string;
  readonly packages?: string;
  readonly faults: readonly string[];
}

const shape =
  'the top level of a cell may hold const, import, type and interface only; a function is a const too';
const shown = 'what stands in prose must be text, a number, html or a figure;';
const order = 'a cell sees only the cells above it: later is defined further down';

const cases: readonly Case[] = [
  {
    title: 'finds nothing wrong with cells that use the library, what is given and the cells above',
    cells: [
      "import type { Html } from 'fruitodds';\nimport { html } from 'fruitodds';\nconst n = given.analysis.raw.overall.flowers;",
      'const row: Html = html`<b>${n}</b>`;',
    ],
    prose: 'Text {{ n }} and {{ row }} and {{ given.analysis.provenance.version }}.',
    faults: [],
  },
  {
    title: 'names line and column of a wrong type',
    cells: ['const a = 1;', 'const b: string = a;'],
    faults: ["9:7: Type 'number' is not assignable to type 'string'."],
  },
  {
    title: 'checks against the types of the library',
    cells: ['const a = given.analysis.raw.overal;'],
    faults: ["6:30: Property 'overal' does not exist on type 'RawRates'. Did you mean 'overall'?"],
  },
  {
    title: 'names the place of a slot that no cell defines',
    cells: ['const a = 1;'],
    prose: 'Fine {{ a }}, unknown {{ b }}.',
    faults: ["8:26: Cannot find name 'b'."],
  },
  {
    title: 'names the place of a path that leads nowhere',
    cells: ['const a = { b: 1 };'],
    prose: 'Unknown {{ a.c }}.',
    faults: ["8:14: Property 'c' does not exist on type '{ b: number; }'."],
  },
  {
    title: 'refuses a slot whose value may be missing',
    cells: ['const rate = given.analysis.raw.overall;'],
    prose: '{{ rate.estimate }}',
    faults: [`8:4: ${shown} rate.estimate is number | null`],
  },
  {
    title: 'refuses a slot whose value prose cannot show',
    cells: ['const a = [1];'],
    prose: '{{ a }}',
    faults: [`8:4: ${shown} a is number[]`],
  },
  ...[
    'function f() { return 1; }',
    'let a = 1;',
    'var a = 1;',
    'export const a = 1;',
    'Math.sqrt(2);',
    'if (given) {}',
  ].map((code) => ({ title: `refuses ${code} at the top level`, cells: [code], faults: [`6:1: ${shape}`] })),
  {
    title: 'refuses a name of a cell further down inside a function, where the type checker alone would not',
    cells: ['const f = () => later + 1;', 'const later = 1;'],
    faults: [`6:17: ${order}`],
  },
  {
    title: 'refuses such a name in a shorthand',
    cells: ['const f = () => ({ later });', 'const later = 1;'],
    faults: [`6:20: ${order}`],
  },
  {
    title: 'does not mistake a key or a parameter for a name further down',
    cells: ['const f = (later: { total: number }) => later.total;', 'const later = 1;\nconst total = 2;'],
    faults: [],
  },
  {
    title: 'refuses a name defined twice',
    cells: ['const a = 1;', 'const a = 2;'],
    faults: [
      "6:7: Cannot redeclare block-scoped variable 'a'.",
      "9:7: Cannot redeclare block-scoped variable 'a'.",
    ],
  },
  {
    title: 'refuses to define given anew',
    cells: ['const given = 1;'],
    faults: ["6:7: Cannot redeclare block-scoped variable 'given'."],
  },
  {
    title: 'refuses imports of what is not named in the front lines',
    cells: ["import { table } from 'arquero';\nconst t = table({ a: [1] });"],
    faults: ['6:1: a cell may import from fruitodds only, not from arquero'],
  },
  {
    title: 'allows imports of what the front lines name',
    cells: ["import { table } from 'arquero';\nconst t = table({ a: [1] });"],
    packages: 'arquero',
    faults: [],
  },
  {
    title: 'refuses imports inside of a statement',
    cells: ["const t = import('fruitodds');"],
    faults: ['6:11: a cell may import at its top level only'],
  },
  {
    title: 'refuses a statement that spans cells',
    cells: ['const a =', '1;'],
    faults: ['6:1: a statement must end in the cell in which it begins'],
  },
  { title: 'refuses classes', cells: ['const A = class {};'], faults: ['6:11: a cell may not hold a class'] },
  {
    title: 'names the place of broken syntax',
    cells: ['const a = ;'],
    faults: ['6:11: Expression expected.'],
  },
  {
    title: 'keeps the names of notebooks apart',
    cells: ['const onlyHere = n;'],
    faults: ["6:18: Cannot find name 'n'."],
  },
];

function notebookText({ cells, prose = '', packages }: Case): string {
  const front = [
    '---',
    'title: T',
    packages ? `packages: ${packages}\ndescription: D` : 'description: D',
    '---',
  ];
  return [...front, ...cells.map((cell) => `\`\`\`ts\n${cell}\n\`\`\``), prose].join('\n');
}

describe('checkNotebooks', () => {
  let found: readonly string[] = [];
  beforeAll(() => {
    const notebooks = cases.map((one, index) => readNotebook(`reports/${index}.md`, notebookText(one)));
    found = checkNotebooks(notebooks, root).map(faultLine);
  });

  it.each(cases.map((one, index) => ({ ...one, index })))('$title', ({ faults, index }) => {
    const file = `reports/${index}.md:`;
    expect(found.filter((line) => line.startsWith(file)).map((line) => line.slice(file.length))).toEqual(
      faults,
    );
  });
});

describe('notebookChecker', () => {
  it('asked again finds what a new one finds: faults come, go and stay, of each notebook', () => {
    const notebook = (name: string, cell: string, slot = 'a') =>
      readNotebook(
        `reports/${name}.md`,
        `---\ntitle: T\ndescription: D\n---\n\`\`\`ts\n${cell}\n\`\`\`\n\n{{ ${slot} }}\n`,
      );
    const [fine, wrong] = ['const a = 1;', "const a: number = 'x';"];
    const check = notebookChecker(root);
    const rounds = [
      [notebook('one', fine), notebook('two', wrong)],
      [notebook('one', wrong), notebook('two', wrong)],
      [notebook('one', fine, 'missing'), notebook('two', fine)],
      [notebook('one', fine), notebook('two', fine), notebook('three', wrong)],
    ];
    const counts = rounds.map((round) => {
      const faults = check(round).map(faultLine);
      expect(faults).toEqual(checkNotebooks(round, root).map(faultLine));
      return faults.length;
    });
    expect(counts).toEqual([1, 2, 1, 1]);
  });
});
