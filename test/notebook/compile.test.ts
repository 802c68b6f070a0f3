import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../lib/notebook/build/cells.ts';
import { compileNotebook } from '../../lib/notebook/build/compile.ts';
import { compiled } from './compiled.ts';

const front = '---\ntitle: T\ndescription: D\n---\n';
const code = (text: string): string => compileNotebook(readNotebook('reports/x.md', front + text));

describe('compileNotebook', () => {
  it('keeps every line and column of the cells', () => {
    const lines = code('Text.\n\n```ts\nconst a: number = 1;\n\nconst bc = a + 1;\n```\n').split('\n');
    expect(lines[6]).toBe('const cell1 = async (given, {  }) => {');
    expect(lines[7]).toBe('const a         = 1;');
    expect(lines[9]).toBe('const bc = a + 1;');
    expect(lines[10]).toBe('return { a, bc }; };');
  });

  it('moves imports to the first line, without types', () => {
    const text =
      "```ts\nimport type { Html } from 'fruitodds';\nimport {\n  html,\n} from 'fruitodds';\n```\n```ts\nimport { savedFile } from 'fruitodds';\n```\n";
    expect(code(text).split('\n')[0]).toBe(
      'import { html } from "fruitodds"; import { savedFile } from "fruitodds";',
    );
  });

  it('passes a cell the names it mentions of the cells above', () => {
    const lines = code('```ts\nconst a = 1, { b, c: [d] } = e;\n```\n```ts\nconst f = a + d;\n```\n').split(
      '\n',
    );
    expect(lines[6]).toBe('return { a, b, d }; };');
    expect(lines[7]).toBe('const cell2 = async (given, { a, d }) => {');
  });

  it('has finished HTML for prose, cut at the second headings', async () => {
    const { sections } = await compiled(
      'Opening.\n\n## One *and* two\n\n- a\n- **b** <i>\n\n### Third\n\n## Next\n\nEnd.\n',
    );
    expect(sections).toEqual([
      { heading: null, id: 'opening', working: [], pieces: ['<p>Opening.</p>\n'] },
      {
        heading: 'One and two',
        id: 'section-1',
        working: [],
        pieces: ['<ul>\n<li>a</li>\n<li><strong>b</strong> &lt;i&gt;</li>\n</ul>\n<h3>Third</h3>\n'],
      },
      { heading: 'Next', id: 'section-2', working: [], pieces: ['<p>End.</p>\n'] },
    ]);
  });

  it('knows a slot that stands alone in its paragraph from one in a line', async () => {
    const { sections } = await compiled(
      '{{ a }}\n\nIn {{ a }} line.\n\n- {{ a }}\n\n```ts\nconst a = 1;\n```\n',
    );
    const slots = sections[0]?.pieces.filter((piece) => typeof piece !== 'string');
    expect(slots?.map(({ line, column, block }) => [line, column, block])).toEqual([
      [5, 4, true],
      [7, 7, false],
      [9, 6, false],
    ]);
  });

  it('never lets text in the notebook become part of the program', async () => {
    const { sections } = await compiled(
      '## `</script>` "quoted" \\\\ `${x}`\n\n```ts\nconst a = "</script>`${";\n```\n',
    );
    expect(sections[0]?.heading).toBe('</script> "quoted" \\ ${x}');
    expect(sections[0]?.working).toEqual(['const a = "</script>`${";']);
  });

  it('refuses slots in addresses and headings, and a first heading', () => {
    expect(() => code('See [this]({{ a }}).\n')).toThrow(
      'reports/x.md:5:15: a slot may not stand in an address, a title or the like',
    );
    expect(() => code('See [this](b "{{ a }}").\n')).toThrow(
      'reports/x.md:5:18: a slot may not stand in an address',
    );
    expect(() => code('\n## The {{ a }}\n')).toThrow('reports/x.md:6:1: a heading may not hold a slot');
    expect(() => code('# Title\n')).toThrow(
      'reports/x.md:5:1: the title stands in the front lines: begin with ##',
    );
  });

  it('names the place where blanked types would leave broken JavaScript', () => {
    expect(() => code('```ts\nconst f = (a: number):\n  string => "";\n```\n')).toThrow(
      /^reports\/x\.md:[67]:\d+: /,
    );
  });
});
