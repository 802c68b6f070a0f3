import fc from 'fast-check';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { escapeHtml, html, isHtml } from '../../lib/notebook/html.ts';

describe('html', () => {
  it('escapes what could open or close markup (HTML standard, section 13.3 "escaping a string")', () => {
    expect(html`<td title="${'"><img onerror=alert(1)>'}">${'</script><script>'}&${1}</td>`.markup).toBe(
      '<td title="&quot;&gt;&lt;img onerror=alert(1)&gt;">&lt;/script&gt;&lt;script&gt;&1</td>',
    );
  });

  it('puts in pieces made by itself as they are, and lists joined', () => {
    const rows = ['a', '<b>'].map((name) => html`<li>${name}</li>`);
    expect(html`<ul>${rows}</ul>`.markup).toBe('<ul><li>a</li><li>&lt;b&gt;</li></ul>');
  });

  it('takes nothing for markup that the template did not make', () => {
    expect(isHtml(html`<p></p>`)).toBe(true);
    for (const value of ['<p>', { markup: '<p>' }, JSON.parse('{"markup":"<p>","kind":"html"}'), null]) {
      expect(isHtml(value)).toBe(false);
    }
  });

  it('refuses unquoted attributes, numbers that are not finite and values of other kinds', () => {
    expect(() => html`<td title=${'x'}>`).toThrow('html: a value in an attribute must stand in quotes');
    expect(() => html`<td>${Number.NaN}</td>`).toThrow('html: a number must be finite, got NaN');
    expect(() => html`<td>${null as unknown as string}</td>`).toThrow('html: a value must be text');
  });

  it('gives any text back through an HTML parser, as content and as attribute', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }).filter((text) => !/[\0\r]/.test(text)),
        (text) => {
          const { document } = parseHTML(
            `<body><p title="${escapeHtml(text)}">${escapeHtml(text)}</p></body>`,
          );
          expect(document.querySelector('p')?.textContent).toBe(text);
          expect(document.querySelector('p')?.getAttribute('title')).toBe(text);
        },
      ),
    );
  });
});
