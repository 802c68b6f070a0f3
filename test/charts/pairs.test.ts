import { beforeAll, describe, expect, it } from 'vitest';
import { pairsFigure } from '../../lib/charts/pairs.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { FEWEST_RANKED } from '../../lib/words/review.ts';
import { texts } from './drawn.ts';
import { season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

describe('pairsFigure', () => {
  it('names the safest bet by its cautious end, counts first', () => {
    expect(pairsFigure(season)!.finding).toBe(
      'Safest bet: Nachtlaterne × Silberfaden, 11 of 14; for fresh pollen about 7 in 10; could be 5 to 9 in 10.',
    );
  });

  it('sorts by the cautious end, not by the estimate', () => {
    const [first, second] = season.pairs;
    const bold = { ...first!, seedParent: 'Wagemut', estimate: 0.9, lower: 0.2 };
    expect(pairsFigure({ pairs: [bold, second!] })!.finding).toMatch(
      /^Safest bet: Silberfaden × Nachtlaterne/,
    );
  });

  it('ranks no pair of fewer than 5 flowers, however good it looks', () => {
    const few = season.pairs.map((pair) => ({
      ...pair,
      flowers: FEWEST_RANKED - 1,
      fruits: FEWEST_RANKED - 1,
    }));
    const figure = pairsFigure({ pairs: few })!;
    expect(figure.finding).toBe('The flowers can’t tell yet which pair is safest.');
    expect(texts(figure.draw(paper, 'p'))).not.toContain('Safest first');
  });

  it('sets perhaps incompatible pairs apart, their chance as a word with its number in the table', () => {
    const figure = pairsFigure(season)!;
    expect(texts(figure.draw(paper, 'p'))).toContain('Probably incompatible (8+ in 10)');
    expect(figure.table.rows.find(([name]) => name === 'Abendglocke × Abendstern')).toEqual([
      'Abendglocke × Abendstern',
      '0 of 11',
      'about 1 in 10; could be under 1 to 31 in 100',
      'fresh pollen',
      'likely (about 8 in 10)',
    ]);
  });

  it('names the basis of an estimate that is not for fresh pollen, and draws it hollow', () => {
    const pairs = season.pairs
      .slice(0, 1)
      .map((pair) => ({ ...pair, basis: { storage: 'frozen', ageDays: 94 } }));
    const figure = pairsFigure({ pairs })!;
    expect(figure.table.rows[0]![3]).toBe('frozen pollen, 94 days');
    expect(figure.draw(paper, 'p')).toContain('stroke="var(--stored)" stroke-width="10"');
    expect(figure.draw(paper, 'p')).not.toContain('var(--fresh)');
  });

  it('joins the counted rate with the pooled one, a line for each pair', () => {
    const svg = pairsFigure(season)!.draw(paper, 'p');
    // 11 of 14 stands at 12 + 296 × 0.7857 = 244.6, its pooled 0.72 at 225.1.
    expect(svg).toMatch(/M244\.6,[\d.]+L225\.1,/);
    expect(svg.match(/<path d="M[\d.]+,[\d.]+L[^L"]*"/g)).toHaveLength(season.pairs.length);
  });

  it('draws at most 28 pairs, says so, and keeps all in the table', () => {
    const pairs = Array.from({ length: 40 }, (_, index) => ({
      ...season.pairs[0]!,
      seedParent: `Nacht ${index}`,
    }));
    const figure = pairsFigure({ pairs })!;
    expect(texts(figure.draw(paper, 'p')).filter((text) => text.startsWith('Nacht '))).toHaveLength(28);
    expect(texts(figure.draw(paper, 'p'))).toContain('28 of 40 pairs drawn; all are in the table');
    expect(figure.table.rows).toHaveLength(40);
  });

  it('does without an estimate, and is null without a pair', () => {
    const unknown = {
      ...season.pairs[0]!,
      estimate: null,
      lower: null,
      upper: null,
      rawRate: null,
      incompatible: null,
    };
    const figure = pairsFigure({ pairs: [unknown] })!;
    expect(figure.table.rows[0]!.slice(2)).toEqual(['can’t tell yet', 'fresh pollen', 'can’t tell yet']);
    expect(figure.draw(paper, 'p')).not.toMatch(/NaN|null/);
    expect(pairsFigure({ pairs: [] })).toBeNull();
  });
});
