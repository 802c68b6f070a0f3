import { beforeAll, describe, expect, it } from 'vitest';
import { differenceFigure } from '../../lib/charts/difference.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { texts } from './drawn.ts';
import { season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

const [frozen, room] = season.freshVersusStored;

describe('differenceFigure', () => {
  it('says the difference over all flowers, then like for like with the pairs behind it', () => {
    const figure = differenceFigure(frozen!)!;
    expect(figure.finding).toBe(
      'Over all flowers about 3 fewer in every 10 (could be 1 to 4); like for like, by 6 of 9 pairs with both kinds, about 2 ' +
        'fewer in every 10 (could be 4 fewer to about as many).',
    );
    expect(figure.table.rows).toEqual([
      ['all flowers', 'fresh 44 of 70, frozen 31 of 86', 'about 3 fewer in every 10 (could be 1 to 4)'],
      [
        'like for like',
        '9 pairs with both kinds, 6 of them with both outcomes',
        'about 2 fewer in every 10 (could be 4 fewer to about as many)',
      ],
    ]);
  });

  it('draws both on one axis: places follow from the numbers', () => {
    // Axis −2 to 5 tenths on 296 units from 12: 0.268 stands at 12 + 296 × 4.68 / 7 = 209.9, 0.17 at 168.5, 0 at 96.6.
    const svg = differenceFigure(frozen!)!.draw(paper, 'd');
    expect(svg).toContain('M209.9,');
    expect(svg).toContain('M168.5,');
    expect(svg).toMatch(/stroke="currentColor" stroke-width="1.5"><line x1="96.6" x2="96.6"/);
  });

  it('says in words that like for like is missing, and draws no number for it', () => {
    const figure = differenceFigure(room!)!;
    expect(figure.finding).toMatch(
      /; like for like, can’t tell yet: only 1 pair had both kinds and both outcomes\.$/,
    );
    const svg = figure.draw(paper, 'd');
    expect(texts(svg)).toContain('can’t tell yet: only 1 pair to compare');
    expect(svg.match(/h0/g)).toHaveLength(1);
  });

  it('says no pair where there is none, and only can’t tell yet where pairs are not the reason', () => {
    const none = differenceFigure({ ...room!, pairsWithBoth: 0, informativePairs: 0 })!;
    expect(none.finding).toContain('can’t tell yet: no pair had both kinds and both outcomes');
    const unsettled = differenceFigure({ ...room!, pairsWithBoth: 5, informativePairs: 4 })!;
    expect(unsettled.finding).toMatch(/like for like, can’t tell yet\.$/);
  });

  it('is null where one of the two has no flower', () => {
    const difference = { estimate: null, lower: null, upper: null, because: 'no-flowers' };
    expect(differenceFigure({ ...frozen!, difference })).toBeNull();
  });

  it('has room for the widest difference there can be', () => {
    const difference = { estimate: 1, lower: -1, upper: 1 };
    const labels = texts(differenceFigure({ ...frozen!, difference })!.draw(paper, 'd'));
    for (const tick of ['−8', '−4', '0', '4', '8']) expect(labels).toContain(tick);
  });
});
