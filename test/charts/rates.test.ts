import { beforeAll, describe, expect, it } from 'vitest';
import { openPaper } from '../../lib/charts/paper.ts';
import { storageFigure } from '../../lib/charts/rates.ts';
import { texts } from './drawn.ts';
import { nearlyEmpty, proportion, season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

describe('storageFigure', () => {
  it('says counts, rate and range of each method, and no rate for none of many', () => {
    const figure = storageFigure(season)!;
    expect(figure.finding).toBe(
      'Fresh pollen 44 of 70 (about 6 in 10; could be 5 to 7 in 10); frozen pollen 31 of 86 (about 4 in 10; could be ' +
        '3 to 5 in 10); pollen kept at room temperature 0 of 6; could still be as high as 4 in 10.',
    );
    expect(figure.table.source).toBe('raw.byStorage');
    expect(figure.table.rows[2]).toEqual([
      'room temperature',
      '0 of 6',
      '0 of 6; could still be as high as 4 in 10',
    ]);
    expect(texts(figure.draw(paper, 's'))).toContain('room temperature: up to 4 in 10');
  });

  it('draws one mark a flower and one dot a rate, fresh filled and stored hollow', () => {
    const svg = storageFigure(season)!.draw(paper, 's');
    const paths = [...svg.matchAll(/<path d="([^"]*)" stroke="([^"]*)" stroke-width="([^"]*)"/g)];
    const dots = (colour: string, wide: string) =>
      paths
        .filter((path) => path[2] === `var(--${colour})` && path[3] === wide)
        .reduce((sum, path) => sum + path[1]!.split('h0').length - 1, 0);
    expect(dots('fresh', '8')).toBe(44);
    expect(dots('stored', '8')).toBe(31);
    expect(dots('quiet', '3.2')).toBe(70 - 44 + (86 - 31) + 6);
    expect(dots('fresh', '10')).toBe(1);
    expect(dots('stored', '10')).toBe(2);
    // The inside of the hollow ones: flowers that took, and the dots of two rates.
    expect(dots('paper', '4.8')).toBe(31);
    expect(dots('paper', '6')).toBe(2);
  });

  it('keeps the counts of a method whose name is too long', () => {
    const byStorage = [{ storage: 'in the fridge door with silica gel', ...proportion(3, 9, 0.121, 0.646) }];
    const figure = storageFigure({ raw: { ...season.raw, byStorage } })!;
    expect(texts(figure.draw(paper, 's'))[0] ?? '').not.toBe('');
    expect(texts(figure.draw(paper, 's')).some((text) => /…?.*: 3 of 9 took$/.test(text))).toBe(true);
    expect(figure.finding).toContain('Pollen stored as “in the fridge door with silica gel” 3 of 9');
  });

  it('does with one method, and is null without a flower', () => {
    expect(storageFigure(nearlyEmpty)!.finding).toBe(
      'Fresh pollen 1 of 2 (about 5 in 10; could be 1 to 9 in 10).',
    );
    const none = { storage: 'fresh', fruits: 0, flowers: 0, estimate: null, lower: null, upper: null };
    expect(storageFigure({ raw: { ...season.raw, byStorage: [none] } })).toBeNull();
  });
});
