import { describe, expect, it } from 'vitest';
import { openPaper } from '../../lib/charts/paper.ts';
import { drawing } from '../../lib/charts/sheet.ts';

describe('openPaper', () => {
  it('gives a document with the drawing library loaded, so that a figure can be drawn', async () => {
    const paper = await openPaper();
    const draw = drawing(
      { label: 'Dots', description: 'One dot.' },
      {
        height: 20,
        domain: [0, 1],
        marks: (plot) => [
          plot.dot([{ x: 0.5, y: 10 }], { x: 'x', y: 'y', r: 4, fill: 'var(--ink)', stroke: 'none' }),
        ],
      },
    );
    expect(draw(paper, 'p')).toContain('<path d="M160,10h0" stroke="var(--ink)" stroke-width="8"/>');
  });
});
