import { beforeAll, describe, expect, it } from 'vitest';
import { openPaper } from '../../lib/charts/paper.ts';
import { vialsFigure } from '../../lib/charts/vials.ts';
import { parsed, texts } from './drawn.ts';
import { nearlyEmpty, season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

describe('vialsFigure', () => {
  it('says the verdict counts and what is worth a flower', () => {
    expect(vialsFigure(season)!.finding).toBe(
      'Keep 2, use first 1, test first 2 and discard 1. The line: what is worth a flower, about 3 in 10.',
    );
  });

  it('says so where what is worth a flower is not known, and draws no line for it', () => {
    const figure = vialsFigure({ ...season, worth: nearlyEmpty.worth })!;
    expect(figure.finding).toContain('Only you can say what fruit set is worth a flower.');
    expect(figure.draw(paper, 'v')).not.toContain('stroke-dasharray');
  });

  it('groups vials under their verdict, in the order of verdicts, the surest first', () => {
    const shown = texts(vialsFigure(season)!.draw(paper, 'v'));
    const headings = shown.filter((text) => /^(Keep|Use|Test|Discard)/.test(text));
    expect(headings).toEqual(['Keep: 2', 'Use first: 1', 'Test first: 2', 'Discard: 1']);
    expect(vialsFigure(season)!.table.rows.map(([vial]) => vial)).toEqual([
      'V-01',
      'V-02',
      'V-03',
      'V-04',
      'V-06',
      'V-05',
    ]);
  });

  it('draws the line of what is worth a flower at its place, a piece a vial, through no name', () => {
    const svg = vialsFigure(season)!.draw(paper, 'v');
    const [, pieces] = /stroke-dasharray="4 2"[^>]*>((?:<line[^>]*\/?>(?:<\/line>)?)+)/.exec(svg)!;
    const lines = [...pieces!.matchAll(/x1="([\d.]+)" x2="([\d.]+)" y1="([\d.]+)" y2="([\d.]+)"/g)].map(
      (line) => line.slice(1).map(Number),
    );
    expect(lines).toHaveLength(season.vials.length);
    const names = [...parsed(svg).querySelectorAll('text')]
      .filter((text) => /^V-0/.test(text.textContent ?? ''))
      .map((text) => Number(/,([\d.]+)\)/.exec(text.getAttribute('transform')!)![1]));
    expect(names).toHaveLength(lines.length);
    // 0.3 of 296 units from 12 is 100.8. A name is 12 units high, set in the middle of its place.
    for (const [x1, x2, y1, y2] of lines) {
      expect([x1, x2]).toEqual([100.8, 100.8]);
      for (const y of names) expect(y + 6 <= y1! || y - 6 >= y2!).toBe(true);
    }
  });

  it('tables the vial’s own record first, then what is expected, then how likely it is worth it', () => {
    expect(vialsFigure(season)!.table.rows[0]).toEqual([
      'V-01',
      'Silberfaden, frozen',
      'keep',
      '9 of 17',
      'about 5 in 10; could be 3 to 7 in 10',
      'likely (about 9 in 10)',
    ]);
  });

  it('says can’t tell yet for a vial without an estimate, and draws no dot for it', () => {
    const figure = vialsFigure(season)!;
    expect(figure.table.rows[4]!.slice(3)).toEqual(['no flowers', 'can’t tell yet', 'can’t tell yet']);
    // Five vials have an estimate; a hollow dot is two layers.
    expect(figure.draw(paper, 'v').match(/h0/g)).toHaveLength(10);
  });

  it('lists an empty vial under its own heading and draws neither dot nor line for it', () => {
    const vials = season.vials.map((vial) => (vial.vial === 'V-01' ? { ...vial, dosesLeft: 0 } : vial));
    const figure = vialsFigure({ ...season, vials })!;
    expect(figure.finding).toMatch(/^Keep 1, use first 1, test first 2, discard 1 and empty 1\./);
    expect(figure.table.rows.at(-1)!.slice(0, 3)).toEqual(['V-01', 'Silberfaden, frozen', 'empty']);
    const svg = figure.draw(paper, 'v');
    expect(texts(svg)).toContain('Empty: 1');
    // Four of the five vials with an estimate are left; a hollow dot is two layers.
    expect(svg.match(/h0/g)).toHaveLength(8);
  });

  it('is null without a vial', () => {
    expect(vialsFigure(nearlyEmpty)).toBeNull();
  });

  it('draws at most 24 vials, says so, and keeps all in the table', () => {
    const vials = Array.from({ length: 35 }, (_, index) => ({ ...season.vials[0]!, vial: `F${index}` }));
    const figure = vialsFigure({ ...season, vials })!;
    expect(texts(figure.draw(paper, 'v'))).toContain('24 of 35 vials drawn; all are in the table');
    expect(figure.table.rows).toHaveLength(35);
  });
});
