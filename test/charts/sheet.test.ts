/** The sheet, and that the drawing library comes only when something is drawn. */
import { readdirSync, readFileSync } from 'node:fs';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { chartCss, drawing, loadPlot } from '../../lib/charts/sheet.ts';

const draw = drawing(
  { label: 'A line', description: 'One line across.' },
  { height: 20, domain: [0, 4], marks: (plot) => [plot.ruleY([10], { x1: 1, x2: 4, stroke: 'var(--ink)' })] },
);

function paper(): Document {
  return parseHTML('<!doctype html><html><body></body></html>').document;
}

describe('drawing', () => {
  it('says what to wait for when the drawing library is not loaded, then draws', async () => {
    expect(() => draw(paper(), 'a')).toThrow(
      'draw: the drawing library must be loaded first, await loadPlot()',
    );
    await loadPlot();
    // x from 12 to 308 for 0 to 4 (margins of 12 on a sheet of 320): 1 stands at 12 + 296 / 4 = 86.
    expect(draw(paper(), 'a')).toContain('<line x1="86" x2="308" y1="10" y2="10"/>');
  });

  it('does not touch the document it draws into', async () => {
    await loadPlot();
    const document = paper();
    const before = document.toString();
    draw(document, 'a');
    expect(document.toString()).toBe(before);
  });
});

describe('loading', () => {
  it('imports each drawing library in one file, and Plot on demand only', () => {
    const folder = new URL('../../lib/charts/', import.meta.url);
    const sources = readdirSync(folder).map(
      (name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const,
    );
    const eager = /^(import(?! type)|export) .*from '(@observablehq\/plot|linkedom|\.\/plot\.ts)'/m;
    expect(sources.filter(([, source]) => eager.test(source)).map(([name]) => name)).toEqual([
      'parse-html.ts',
      'plot.ts',
    ]);
    expect(
      sources.filter(([, source]) => source.includes("await import('./plot.ts')")).map(([name]) => name),
    ).toEqual(['sheet.ts']);
  });
});

describe('the stylesheet text', () => {
  it('keeps drawings from growing on a desk and from being cut in print', () => {
    expect(chartCss).toMatch(/\.chart\{[^}]*width:100%[^}]*max-width:/);
    expect(chartCss).toMatch(/@media print\{\.chart\{[^}]*break-inside:avoid/);
  });
});
