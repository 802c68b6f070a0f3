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
  const order = (pairs: typeof season.pairs) => pairsFigure({ pairs })!.table.rows.map(([name]) => name);

  it('says how many pairs are ranked, and how many not', () => {
    expect(pairsFigure(season)!.finding).toBe(
      '6 pairs ranked by the cautious end of the range, for fresh pollen; no rank: 1 counted as incompatible and 3 of few flowers.',
    );
  });

  it('sorts by the cautious end, not by the estimate', () => {
    const [first, second] = season.pairs;
    const bold = { ...first!, seedParent: 'Wagemut', estimate: 0.9, lower: 0.2 };
    expect(order([bold, second!])).toEqual(['Silberfaden × Nachtlaterne', 'Wagemut × Silberfaden']);
  });

  it('ranks no pair of fewer than 5 flowers, however good it looks', () => {
    const few = season.pairs.map((pair) => ({
      ...pair,
      flowers: FEWEST_RANKED - 1,
      fruits: FEWEST_RANKED - 1,
    }));
    const figure = pairsFigure({ pairs: few })!;
    expect(figure.finding).toMatch(/^No pair has flowers enough for a rank/);
    expect(texts(figure.draw(paper, 'p'))).not.toContain('Safest first');
  });

  // Found by a reader: a plant with its own pollen was the safest bet for a plan that never uses own pollen.
  it('gives a plant with its own pollen no rank, however safe it looks', () => {
    const [first] = season.pairs;
    const self = { ...first!, pollenParent: first!.seedParent, estimate: 0.97, lower: 0.9, upper: 0.99 };
    expect(order([self, first!])).toEqual(['Nachtlaterne × Silberfaden', 'Nachtlaterne × Nachtlaterne']);
    expect(texts(pairsFigure({ pairs: [self] })!.draw(paper, 'p'))).toContain('Own pollen: no rank');
  });

  it('groups by what the analysis names, not by a rounded chance', () => {
    const near = { ...season.pairs[0]!, incompatible: 0.7999, named: false };
    const drawn = texts(pairsFigure({ pairs: [near] })!.draw(paper, 'p'));
    expect(drawn).toContain('Safest first');
    expect(drawn).not.toContain('Counted as incompatible (8+ in 10)');
  });

  it('sets pairs that count as incompatible apart, their chance as a word with its number in the table', () => {
    const figure = pairsFigure(season)!;
    expect(texts(figure.draw(paper, 'p'))).toContain('Counted as incompatible (8+ in 10)');
    expect(figure.table.rows.find(([name]) => name === 'Abendglocke × Abendstern')).toEqual([
      'Abendglocke × Abendstern',
      '0 of 11',
      'about 1 in 10; could be under 1 to 31 in 100',
      'likely (about 83 in 100)',
    ]);
  });

  it('names the basis of an estimate that is not for fresh pollen, and draws it hollow', () => {
    const pairs = season.pairs
      .slice(0, 1)
      .map((pair) => ({ ...pair, basis: { storage: 'frozen', ageDays: 94 } }));
    const figure = pairsFigure({ pairs })!;
    expect(figure.table.columns[2]!.title).toBe('pooled estimate, frozen pollen, 94 days');
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
    expect(figure.table.rows[0]!.slice(2)).toEqual(['can’t tell yet', 'can’t tell yet']);
    expect(figure.draw(paper, 'p')).not.toMatch(/NaN|null/);
    expect(pairsFigure({ pairs: [] })).toBeNull();
  });
});
