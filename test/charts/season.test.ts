import { beforeAll, describe, expect, it } from 'vitest';
import { openPaper } from '../../lib/charts/paper.ts';
import { seasonFigure } from '../../lib/charts/season.ts';
import { texts } from './drawn.ts';
import { season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

describe('seasonFigure', () => {
  it('counts every outcome in its sentence, in its table and in its marks', () => {
    const figure = seasonFigure(season)!;
    expect(figure.finding).toBe(
      '175 flowers: 66 fruits, 9 dropped later, 87 without fruit, 9 tags lost and 4 too early to say.',
    );
    expect(figure.table.rows).toEqual([
      ['fruit', '66'],
      ['dropped later', '9'],
      ['no fruit', '87'],
      ['tag lost', '9'],
      ['too early to say', '4'],
    ]);
    // One mark a flower; hollow ones (dropped, lost, pending: 9 + 9 + 4) are drawn as two layers.
    expect(figure.draw(paper, 's').match(/h0/g)).toHaveLength(66 + 87 + 2 * (9 + 9 + 4));
  });

  it('lets a mark stand for ten flowers of a large season, and says so in its caption', () => {
    const rows = { ...season.rows, byOutcome: [{ outcome: 'fruit' as const, rows: 420 }] };
    const figure = seasonFigure({ rows })!;
    expect(figure.finding).toBe('420 flowers: 420 fruits. One mark is 10 flowers.');
    expect(figure.draw(paper, 's').match(/h0/g)).toHaveLength(42);
    expect(texts(figure.draw(paper, 's'))).toContain('One mark is 10 flowers.');
  });

  it('is null for a season without a row, and leaves out outcomes that do not occur', () => {
    expect(seasonFigure({ rows: { ...season.rows, byOutcome: [{ outcome: 'fruit', rows: 0 }] } })).toBeNull();
    const byOutcome = [
      { outcome: 'fruit' as const, rows: 1 },
      { outcome: 'pending' as const, rows: 0 },
    ];
    expect(seasonFigure({ rows: { ...season.rows, byOutcome } })!.finding).toBe('1 flower: 1 fruit.');
  });
});
