import { beforeAll, describe, expect, it } from 'vitest';
import { ageFigure } from '../../lib/charts/age.ts';
import { openPaper } from '../../lib/charts/paper.ts';
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
  it('says counts at two ages, the half age with its range, and how far the data reach', () => {
    expect(ageFigure(season, 'frozen')!.finding).toBe(
      'Frozen pollen took 5 of 9 at 8 to 14 days and 3 of 18 at 181 to 365 days; it falls to half after about ' +
        '6 months (190 days; could be 121 days or more); nothing is known past about 8 months (240 days).',
    );
  });

  it('tells no age by a band of fewer than 5 flowers where two others have more', () => {
    const byAge = [
      ...season.raw.byAge,
      { ...season.raw.byAge[1]!, from: 1, to: 2, fruits: 1, flowers: 1, estimate: 1 },
    ];
    const sorted = byAge.sort((a, b) => a.from - b.from);
    expect(ageFigure({ ...season, raw: { ...season.raw, byAge: sorted } }, 'frozen')!.finding).toMatch(
      /^Frozen pollen took 5 of 9 at 8 to 14 days/,
    );
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
    expect(rows.at(-1)).toEqual([
      'frozen, estimated',
      '240 days',
      'about 2 in 10; could be under 1 to 4 in 10',
    ]);
  });

  it('says more than the lower end, or can’t tell, where there is no half age', () => {
    const half = { storage: 'frozen', estimate: null, lower: 203, upper: null, oldestAgeDays: 240 };
    expect(ageFigure({ ...season, halfAge: [half] }, 'frozen')!.finding).toContain(
      'it falls to half after more than about 7 months (203 days)',
    );
    expect(ageFigure({ ...season, halfAge: [] }, 'frozen')!.finding).toContain('the flowers can’t tell yet');
  });

  it('is null for a method without a curve', () => {
    expect(ageFigure(season, 'room')).toBeNull();
    expect(ageFigure(season, '__proto__')).toBeNull();
    expect(ageFigure(nearlyEmpty, 'frozen')).toBeNull();
  });
});
