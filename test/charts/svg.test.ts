/** Markup of drawings, from elements written by hand: no drawing library takes part. */
import fc from 'fast-check';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { svgMarkup } from '../../lib/charts/svg.ts';

const size = { width: 100, height: 50.04, textSize: 10 };
const naming = { prefix: 'p', label: 'A <name>', description: 'Words & "more"' };

function svg(inner: string): Element {
  return parseHTML(`<!doctype html><html><body><svg>${inner}</svg></body></html>`).document.querySelector(
    'svg',
  )!;
}

function body(inner: string): string {
  return svgMarkup(svg(inner), naming, size).replace(/^.*<\/desc>|<\/svg>$/gs, '');
}

describe('svgMarkup', () => {
  it('names and describes the drawing, escaped', () => {
    expect(svgMarkup(svg(''), naming, size)).toBe(
      '<svg class="chart" role="img" aria-labelledby="p-name" aria-describedby="p-description" viewBox="0 0 100 50"' +
        ' fill="currentColor" font-family="system-ui,sans-serif" font-size="10" text-anchor="middle">' +
        '<title id="p-name">A &lt;name&gt;</title><desc id="p-description">Words &amp; &quot;more&quot;</desc></svg>',
    );
  });

  it('drops styles, classes and inner names', () => {
    expect(body('<style>g{}</style><g style="x:y" class="z" aria-label="dot"><path d="M0,0"/></g>')).toBe(
      '<g><path d="M0,0"/></g>',
    );
  });

  it('writes attributes in one order, whatever the order in the document', () => {
    expect(body('<line y1="1" x2="2" x1="3"/>')).toBe(body('<line x1="3" x2="2" y1="1"/>'));
  });

  it('rounds coordinates to a tenth, halves upwards, small powers too', () => {
    expect(body('<path d="M1.25,-0.04L1e-7,99.96" transform="translate(0.5,10.349)"/>')).toBe(
      '<path d="M1.3,0L0,100" transform="translate(0.5,10.3)"/>',
    );
    expect(body('<path d="M0.15000000000000002,0.1499999999999"/>')).toBe('<path d="M0.2,0.2"/>');
  });

  it('leaves other numbers alone', () => {
    expect(body('<path fill-opacity="0.25" d="M0,0"/>')).toBe('<path d="M0,0" fill-opacity="0.25"/>');
  });

  it('counts ids under the prefix, and references follow', () => {
    expect(
      body('<mask id="plot-clip-7"><path d="M0,0"/></mask><g mask="url(#plot-clip-7)"><path d="M1,1"/></g>'),
    ).toBe('<mask id="p-1"><path d="M0,0"/></mask><g mask="url(#p-1)"><path d="M1,1"/></g>');
  });

  it('makes one path of filled dots', () => {
    expect(body('<g fill="red"><circle cx="1" cy="2" r="3"/><circle cx="4" cy="5.55" r="3"/></g>')).toBe(
      '<g fill="none" stroke-linecap="round"><path d="M1,2h0M4,5.6h0" stroke="red" stroke-width="6"/></g>',
    );
  });

  it('makes a wide and a narrower path of hollow dots: outer and inner edge of the line', () => {
    expect(body('<g fill="white" stroke="red" stroke-width="2"><circle cx="1" cy="2" r="4"/></g>')).toBe(
      '<g fill="none" stroke-linecap="round"><path d="M1,2h0" stroke="red" stroke-width="10"/>' +
        '<path d="M1,2h0" stroke="white" stroke-width="6"/></g>',
    );
  });

  it('leaves circles of different sizes as they are', () => {
    expect(body('<g><circle cx="1" cy="2" r="3"/><circle cx="4" cy="5" r="6"/></g>')).toBe(
      '<g><circle cx="1" cy="2" r="3"/><circle cx="4" cy="5" r="6"/></g>',
    );
  });

  it('keeps any text as text', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (text, value) => {
        const root = svg('<text>x</text>');
        const node = root.querySelector('text')!;
        node.textContent = text;
        node.setAttribute('data-name', value);
        const markup = svgMarkup(root, { ...naming, label: text, description: value }, size);
        const outside = markup.replace(
          /<text[^>]*>[^<>]*(<\/text>)|<text[^>]*\/>|<(title|desc) [^<>]*>[^<>]*/g,
          '',
        );
        expect(outside).toMatch(/^<svg [^<>]*><\/title><\/desc><\/svg>$/);
      }),
    );
  });

  it('throws for a prefix that is no id', () => {
    expect(() => svgMarkup(svg(''), { ...naming, prefix: '1 "' }, size)).toThrow(
      'svgMarkup: prefix must be letters, digits and hyphens, got "1 \\""',
    );
  });
});
