import { describe, expect, it } from 'vitest';
import { numberStyles, shownBy } from '../../lib/season/number-formats.ts';

describe('shownBy', () => {
  it.each([
    ['yyyy-mm-dd', 'day'],
    ['d. mmmm yyyy', 'day'],
    ['[$-407]d. mmm yy;@', 'day'],
    ['dd/mm/yyyy hh:mm', 'day'],
    ['mmm-yy', 'month'],
    ['General', 'number'],
    ['0.00', 'number'],
    ['0 "days"', 'number'],
    ['[Red]0', 'number'],
    ['h:mm', 'number'],
    ['#,##0\\d', 'number'],
  ])('%s shows a %s', (code, shown) => {
    expect(shownBy(code)).toBe(shown);
  });
});

describe('numberStyles', () => {
  it('reads the styles of cells, not those of named styles', () => {
    const xml =
      '<styleSheet><numFmts><numFmt numFmtId="164" formatCode="d&quot;.&quot;m&quot;.&quot;yy"/></numFmts>' +
      '<cellStyleXfs><xf numFmtId="14"/></cellStyleXfs>' +
      '<cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="164"/><xf numFmtId="17"/><xf/></cellXfs></styleSheet>';
    expect(numberStyles(xml)).toEqual(['number', 'day', 'day', 'month', 'number']);
  });
});
