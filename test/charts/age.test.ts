import { beforeAll, describe, expect, it } from 'vitest';
import { ageFigure } from '../../lib/charts/age.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { days } from '../../lib/words/durations.ts';
import { inTen } from '../../lib/words/numbers.ts';
import { parsed, texts } from './drawn.ts';
import { nearlyEmpty, season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

/** The x of every point of every line and area in a drawing. */
function pathEnds(svg: string): number[] {
  const paths = Array.from(parsed(svg).querySelectorAll('path'), (path) => path.getAttribute('d') ?? '');
  return paths
    .filter((d) => d.includes('L'))
    .map((d) => Math.max(...[...d.matchAll(/[ML]([\d.]+)/g)].map((m) => Number(m[1]))));
}

describe('ageFigure', () => {
  it('says where the curve starts and where the data end, not the section’s own counts again', () => {
    const said = ageFigure(season, 'frozen')!.finding;
    const own = season.ageCurve.filter(({ storage }) => storage === 'frozen');
    expect(said).toBe(
      `Frozen pollen is estimated to take ${inTen(own[0]!.estimate)} when just put away and ` +
        `${inTen(own.at(-1)!.estimate)} at about 8 months (240 days), the oldest tried.`,
    );
    const later = { ...season, ageCurve: own.slice(1) };
    expect(ageFigure(later, 'frozen')!.finding).toContain(` when ${days(own[1]!.ageDays)} old and `);
  });

  it('puts no count of flowers on the curve', () => {
    const svg = ageFigure(season, 'frozen')!.draw(paper, 'a');
    const line = [...parsed(svg).querySelectorAll('path')].find(
      (path) => path.parentElement?.getAttribute('stroke-width') === '2.2',
    );
    const points = [...(line!.getAttribute('d') ?? '').matchAll(/[ML]([\d.]+),([\d.]+)/g)].map((at) => ({
      x: Number(at[1]),
      y: Number(at[2]),
    }));
    const counted = [...parsed(svg).querySelectorAll('text')].filter((text) =>
      /^\d+ of \d+$/.test(text.textContent ?? ''),
    );
    expect(counted.length).toBeGreaterThan(1);
    expect(points.length).toBeGreaterThan(5);
    for (const text of counted) {
      const [x, y] = (/translate\(([\d.]+),([\d.]+)\)/.exec(text.getAttribute('transform')!) ?? [])
        .slice(1)
        .map(Number) as [number, number];
      // A count is about 40 units wide and 12 high, set in the middle of its place.
      const under = points.filter((point) => Math.abs(point.x - x) < 15);
      for (const point of under) expect(Math.abs(point.y - y), text.textContent!).toBeGreaterThan(5);
    }
  });

  it('breaks off where the data end: no line goes past the oldest age tried', () => {
    const svg = ageFigure(season, 'frozen')!.draw(paper, 'a');
    const limit = Number(/stroke-dasharray="4 3"><line x1="([\d.]+)"/.exec(svg)![1]);
    expect(pathEnds(svg).length).toBeGreaterThanOrEqual(2);
    expect(Math.max(...pathEnds(svg))).toBeLessThanOrEqual(limit);
    expect(limit).toBeLessThan(308);
    expect(texts(svg)).toContain('nothing known past 240 days');
  });

  it('draws the counts of its own method and of fresh pollen, of no other', () => {
    const shown = texts(ageFigure(season, 'frozen')!.draw(paper, 'a'));
    expect(shown).toEqual(
      expect.arrayContaining(['5 of 9', '14 of 31', '9 of 28', '3 of 18', 'fresh 44 of 70']),
    );
    expect(shown.join()).not.toContain('0 of 6');
    expect(ageFigure(season, 'frozen')!.table.rows.map(([pollen]) => pollen)).not.toContain(
      'room temperature',
    );
  });

  it('tables the counts first, then the curve with its ranges to the oldest age', () => {
    const { rows } = ageFigure(season, 'frozen')!.table;
    expect(rows[1]).toEqual(['frozen', '8 to 14 days', '5 of 9 (about 6 in 10; could be 3 to 8 in 10)']);
    expect(rows.at(-1)).toEqual(['frozen, estimated', '240 days', 'about 2 in 10; could be 1 to 39 in 100']);
  });

  it('is null for a method without a curve', () => {
    expect(ageFigure(season, 'room')).toBeNull();
    expect(ageFigure(season, '__proto__')).toBeNull();
    expect(ageFigure(nearlyEmpty, 'frozen')).toBeNull();
  });
});
