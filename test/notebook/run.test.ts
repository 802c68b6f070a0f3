import { describe, expect, it } from 'vitest';
import { html } from '../../lib/notebook/html.ts';
import type { CompiledNotebook, FilledNotebook } from '../../lib/notebook/run.ts';
import { runNotebook } from '../../lib/notebook/run.ts';
import { savedFile } from '../../lib/notebook/saved-file.ts';
import { compiled } from './compiled.ts';
import { smallSeason } from './small-season.ts';

async function filled(text: string): Promise<FilledNotebook> {
  return runNotebook(await compiled(text), smallSeason);
}

/** A notebook whose one slot stands alone in its paragraph, or in a line, and shows this value. */
function showing(value: unknown, block: boolean): CompiledNotebook {
  const slot = {
    value: ({ a }: Readonly<Record<string, unknown>>) => a,
    expression: 'a',
    line: 9,
    column: 4,
    block,
  };
  return {
    name: 'x',
    file: 'reports/x.md',
    title: 'T',
    description: 'D',
    order: null,
    summary: false,
    url: 'file:///x.js',
    cells: [{ line: 5, run: async () => ({ a: value }) }],
    sections: [{ heading: null, id: 'opening', pieces: [slot], working: [] }],
  };
}

async function shown(value: unknown, block = true): Promise<unknown> {
  const { sections } = await runNotebook(showing(value, block), smallSeason);
  return sections[0]?.pieces[0];
}

describe('runNotebook', () => {
  it('runs the cells in order, each on the names of those above, and fills the prose', async () => {
    const text =
      '## One\n```ts\nconst a = 2;\n```\nTwice {{ a }} is {{ b.c }}.\n```ts\nconst b = { c: a * 2 };\n```\n';
    const { sections } = await filled(text);
    expect(sections).toEqual([
      {
        heading: 'One',
        id: 'section-1',
        pieces: ['<p>Twice ', '2', ' is ', '4', '.</p>\n'],
        working: ['const a = 2;', 'const b = { c: a * 2 };'],
      },
    ]);
  });

  it('waits for cells that await', async () => {
    const { sections } = await filled(
      '```ts\nconst a = await Promise.resolve("late");\n```\nIt is {{ a }}.\n',
    );
    expect(sections[0]?.pieces.join('')).toBe('<p>It is late.</p>\n');
  });

  it('gives cells the season and its analysis under the name given', async () => {
    const { sections } = await filled('```ts\nconst v = given.analysis.provenance.version;\n```\n{{ v }}\n');
    expect(sections[0]?.pieces).toEqual(['<p>0.0.0</p>\n']);
  });

  it('names line and column of the notebook where a cell fails', async () => {
    const text =
      'Text.\n\n```ts\nconst a: number = 1;\nconst b: string = (a as number) > 0 ? a.toFixed(101) : "";\n```\n';
    // Line 9 of the notebook: four front lines, then the fifth line of the text; `toFixed` stands at column 41.
    await expect(filled(text)).rejects.toThrow(/^reports\/season\.md:9:41: RangeError: toFixed\(\)/);
  });

  it('names the cell where what fails has no place of its own', async () => {
    await expect(filled('\n```ts\nconst a = (() => { throw "no reason"; })();\n```\n')).rejects.toThrow(
      'reports/season.md:6:1: Error: no reason',
    );
  });

  it('escapes text, so that no name becomes markup', async () => {
    expect(await shown('</script><script>alert(1)</script>')).toBe(
      '<p>&lt;/script&gt;&lt;script&gt;alert(1)&lt;/script&gt;</p>\n',
    );
    expect(await shown('"><img onerror=alert(1)>', false)).toBe('&quot;&gt;&lt;img onerror=alert(1)&gt;');
  });

  it('puts html and figures in as they are', async () => {
    expect(await shown(html`<ul></ul>`)).toBe('<ul></ul>');
    const figure = { kind: 'figure', name: 'x' };
    expect(await shown(figure)).toBe(figure);
  });

  it('links a saved file and hands it on', async () => {
    const file = savedFile('curve.vl.json', 'The <specification>', '{}');
    const { sections, savedFiles } = await runNotebook(showing(file, false), smallSeason);
    expect(sections[0]?.pieces).toEqual(['<a href="curve.vl.json">The &lt;specification&gt;</a>']);
    expect(savedFiles).toEqual([file]);
  });

  it.each([
    [Number.NaN, 'NaN'],
    [Number.POSITIVE_INFINITY, 'Infinity'],
    [null, 'null'],
    [undefined, 'undefined'],
    [['a'], 'object'],
    [{ markup: '<b>' }, 'object'],
  ])('refuses %j in prose, with line and column', async (value, kind) => {
    await expect(shown(value)).rejects.toThrow(
      `reports/x.md:9:4: what stands in prose must be text, a finite number, html or a figure; a is ${kind}`,
    );
  });

  it('refuses a figure within a line', async () => {
    await expect(shown({ kind: 'figure' }, false)).rejects.toThrow(
      'reports/x.md:9:4: a figure must stand alone in its paragraph: {{ a }}',
    );
  });
});
