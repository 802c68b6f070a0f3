import { describe, expect, it } from 'vitest';
import { textsOf } from '../../lib/notebook/page-text.ts';

const found = (name: string, text: string) =>
  textsOf({ name, text }).map((each) => [each.text.replace(/\s+/g, ' ').trim(), each.place]);

describe('textsOf', () => {
  it('reads text and attributes of a page, character references resolved', () => {
    const page =
      '<p title="A &quot;b&quot;">\n<text>Salt</text><text>Moon</text> &lt;i&gt; &#39;x&#x27;</p><!-- hidden -->';
    expect(found('a.html', page)).toEqual([
      ['a.html', 'its own name'],
      ['A "b"', 'an attribute of line 1'],
      ['hidden', 'a comment of line 2'],
      ["Salt Moon <i> 'x'", ''],
    ]);
  });

  it('reads strings and keys of JSON, not its numbers', () => {
    expect(found('a.json', '{"a":{"b":["x",12,null]}}')).toEqual([
      ['a.json', 'its own name'],
      ['a', 'a key of the top'],
      ['b', 'a key of a'],
      ['x', 'a.b[0]'],
    ]);
  });

  it('reads the cells of a CSV text', () => {
    expect(found('a.csv', '\uFEFFx,y\r\n"a ""b"", c",12\r\n').slice(1)).toEqual([
      ['x', 'a cell of line 1'],
      ['y', 'a cell of line 1'],
      ['a "b", c', 'a cell of line 2'],
      ['12', 'a cell of line 2'],
      ['', 'a cell of line 3'],
    ]);
  });

  it('takes any other file as one text', () => {
    expect(found('a.txt', 'Salt Moon')).toEqual([
      ['a.txt', 'its own name'],
      ['Salt Moon', ''],
    ]);
  });
});
