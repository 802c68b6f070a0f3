import { describe, expect, it } from 'vitest';
import { readNotebook, replaceSlots, slotsOf } from '../../lib/notebook/build/cells.ts';
import { NotebookError } from '../../lib/notebook/fault.ts';

// The expected places are counted by hand in the texts below: line 1 is the first `---`, columns count from 1.
const front = '---\ntitle: A season\ndescription: What it says.\n---\n';

function faultsOf(text: string): string[] {
  try {
    readNotebook('reports/x.md', text);
  } catch (error) {
    if (error instanceof NotebookError) return error.message.split('\n');
    throw error;
  }
  return [];
}

describe('readNotebook', () => {
  it('splits prose and cells and keeps their lines', () => {
    const notebook = readNotebook(
      'reports/x.md',
      `${front}\n## One\n\n\`\`\`ts\nconst a = 1;\n\`\`\`\nEnd {{ a }}.\n`,
    );
    expect(notebook).toMatchObject({
      name: 'x',
      title: 'A season',
      description: 'What it says.',
      packages: [],
    });
    expect(notebook.parts.map(({ kind, line }) => [kind, line])).toEqual([
      ['prose', 5],
      ['cell', 8],
      ['prose', 11],
    ]);
    expect(notebook.parts[1]).toEqual({ kind: 'cell', line: 8, endLine: 10, lines: ['const a = 1;'] });
  });

  it('reads files with CRLF and a byte order mark alike', () => {
    const text = `${front}\n\`\`\`ts\nconst a = 1;\n\`\`\`\n`;
    expect(readNotebook('x.md', `\uFEFF${text.replaceAll('\n', '\r\n')}`)).toEqual(
      readNotebook('x.md', text),
    );
  });

  it('takes a fence of another language, or within another fence, for prose', () => {
    const text = `${front}\n\`\`\`text\n~~~\n\`\`\`\n\n~~~\n\`\`\`ts\nconst a = 1;\n\`\`\`\n~~~\n`;
    expect(readNotebook('x.md', text).parts.map(({ kind }) => kind)).toEqual(['prose']);
  });

  it('lists the packages that only this notebook may import', () => {
    const text = '---\ntitle: T\ndescription: D\npackages: arquero, vega\n---\n';
    expect(readNotebook('x.md', text).packages).toEqual(['arquero', 'vega']);
  });

  it('reads its place in the list of pages, a whole number', () => {
    const text = (order: string) => `---\ntitle: T\ndescription: D\norder: ${order}\n---\n`;
    expect(readNotebook('x.md', text('20')).order).toBe(20);
    expect(readNotebook('x.md', `${front}\n`).order).toBeNull();
    expect(faultsOf(text('first'))).toEqual(['reports/x.md:1:1: order must be a whole number']);
  });

  it('names the place of a missing or unknown front line', () => {
    expect(faultsOf('# Hello\n')).toEqual([
      'reports/x.md:1:1: a notebook must open with front lines: ---, title: …, description: …, ---',
    ]);
    expect(faultsOf('---\ntitle: T\nauthor: me\n---\n')).toEqual([
      'reports/x.md:3:1: a front line must be one of title, description, packages, order, summary, plan, a colon and a value, each once',
      'reports/x.md:1:1: the front lines must give description',
    ]);
  });

  it('names the place of a fence that is never closed and of one that is not at the start of its line', () => {
    expect(faultsOf(`${front}\`\`\`ts\nconst a = 1;\n`)).toEqual([
      'reports/x.md:5:1: this fence is never closed',
    ]);
    expect(faultsOf(`${front}\n  \`\`\`ts\n  const a = 1;\n  \`\`\`\n`)).toEqual([
      'reports/x.md:6:1: the fence of a cell must be ```ts at the start of its line, nothing else',
    ]);
  });

  it('names line and column of a slot that holds more than a name', () => {
    expect(faultsOf(`${front}Fine {{ a.b }}, not {{ a + 1 }}.\n`)).toEqual([
      'reports/x.md:5:21: a slot must hold a name, or name.path: {{ name }}',
    ]);
  });
});

describe('slotsOf and replaceSlots', () => {
  const prose = { kind: 'prose', line: 7, lines: ['{{ a }} and {{b.c}}', '', '> {{  d  }}'] } as const;

  it('finds each slot with line and column of its name', () => {
    expect(slotsOf(prose)).toEqual([
      { expression: 'a', line: 7, column: 4 },
      { expression: 'b.c', line: 7, column: 15 },
      { expression: 'd', line: 9, column: 7 },
    ]);
  });

  it('numbers them in the same order', () => {
    expect(replaceSlots(prose, (number) => `<${number}>`)).toBe('<0> and <1>\n\n> <2>');
  });
});
