/**
 * All figures together: fit for a page, the same bytes everywhere, small even for a large season.
 * Limits: 12 kB a drawing (so that a report of 300 flowers, 30 pairs and 20 vials stays within 150 kB), text of
 * 12 px on a page 320 px wide with margins of 16 px.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { ageFigure } from '../../lib/charts/age.ts';
import { differenceFigure } from '../../lib/charts/difference.ts';
import type { Figure } from '../../lib/charts/figure.ts';
import { pairsFigure } from '../../lib/charts/pairs.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { planFigure } from '../../lib/charts/plan.ts';
import { storageFigure } from '../../lib/charts/rates.ts';
import { seasonFigure } from '../../lib/charts/season.ts';
import { SHEET_WIDTH, TEXT_SIZE } from '../../lib/charts/sheet.ts';
import { vialsFigure } from '../../lib/charts/vials.ts';
import { expectFitForPage, parsed, texts } from './drawn.ts';
import { type Drawn, LONG_NAME, MARKUP_NAME, nearlyEmpty, proportion, season } from './fixture.ts';
import { golden } from './golden.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

function figuresOf(analysis: Drawn): Figure[] {
  const figures = [
    seasonFigure(analysis),
    storageFigure(analysis),
    ...analysis.freshVersusStored.map((entry) => differenceFigure(entry)),
    ageFigure(analysis, 'frozen'),
    pairsFigure(analysis),
    vialsFigure(analysis),
    planFigure(analysis),
  ];
  return figures.filter((figure) => figure !== null);
}

/** 2,730 flowers, a method with a long name of its own, no label without counts. */
function veryLarge(): Drawn {
  const byStorage = [
    { storage: 'fresh', ...proportion(610, 1200, 0.48, 0.537) },
    {
      storage: 'in the fridge door with silica gel, opened every week',
      ...proportion(400, 1530, 0.24, 0.284),
    },
  ];
  return { ...large(), raw: { ...season.raw, byStorage }, worth: { ...season.worth, value: 0.97 } };
}

/** 300 flowers, 30 pairs, 20 vials; names of 24 letters. */
function large(): Drawn {
  const name = (index: number) => `Nachtkletterer Nummer ${String(index).padStart(2, '0')}`;
  return {
    ...season,
    rows: {
      ...season.rows,
      byOutcome: [
        { outcome: 'fruit', rows: 101 },
        { outcome: 'none', rows: 199 },
      ],
    },
    raw: {
      ...season.raw,
      byStorage: [
        { storage: 'fresh', ...proportion(61, 120, 0.42, 0.596) },
        { storage: 'frozen', ...proportion(40, 180, 0.168, 0.288) },
      ],
    },
    pairs: Array.from({ length: 30 }, (_, index) => ({
      ...season.pairs[index % 10]!,
      seedParent: name(index),
      pollenParent: name(index + 1),
    })),
    vials: Array.from({ length: 20 }, (_, index) => ({
      ...season.vials[index % 6]!,
      vial: `F-${index}`,
      pollenParent: name(index),
    })),
  };
}

describe('every figure', () => {
  it('is drawn for the fixture: two differences, one of each other kind', () => {
    expect(figuresOf(season).map(({ name }) => name)).toEqual([
      'season',
      'storage',
      'difference',
      'difference',
      'age',
      'pairs',
      'vials',
      'plan',
    ]);
  });

  it('is fit for a page: no style, no fixed colour, no text past its edge, at most 12 kB', () => {
    for (const analysis of [season, nearlyEmpty, large(), veryLarge()]) {
      for (const figure of figuresOf(analysis)) expectFitForPage(figure.draw(paper, 'figure'));
    }
  });

  it('fits on a printed page: 288 px wide it leaves 75 px of 943 (Letter, margins of 15 mm) for its caption', () => {
    const verdicts = ['keep', 'use-first', 'test-first', 'discard'] as const;
    const many = {
      ...season,
      pairs: Array.from({ length: 60 }, (_, index) => season.pairs[(index * 3) % 10]!),
      vials: Array.from({ length: 60 }, (_, index) => ({
        ...season.vials[0]!,
        verdict: verdicts[index % 4]!,
      })),
    };
    for (const figure of figuresOf(many)) {
      const height = Number(/viewBox="0 0 320 ([\d.]+)"/.exec(figure.draw(paper, 'figure'))![1]);
      expect((height * 288) / SHEET_WIDTH + 75).toBeLessThanOrEqual(943);
    }
  });

  it('stays small together: 300 flowers, 30 pairs and 20 vials within 50 kB', () => {
    const drawn = figuresOf(large()).map((figure) => figure.draw(paper, 'figure'));
    expect(drawn.join('').length).toBeLessThan(50_000);
  });

  it('has text of at least 12 px on a page 320 px wide with margins of 16 px', () => {
    expect((TEXT_SIZE * (320 - 2 * 16)) / SHEET_WIDTH).toBeGreaterThanOrEqual(12);
    for (const figure of figuresOf(season)) {
      const sizes = [...figure.draw(paper, 'figure').matchAll(/font-size="([^"]*)"/g)].map(
        ([, size]) => size,
      );
      expect(sizes).toEqual([String(TEXT_SIZE)]);
    }
  });

  it('has a name and a description, which the drawing refers to by ids under its prefix', () => {
    figuresOf(season).forEach((figure, index) => {
      const root = parsed(figure.draw(paper, `f${index}`));
      expect(root.getAttribute('role')).toBe('img');
      expect(root.getAttribute('aria-labelledby')).toBe(`f${index}-name`);
      expect(root.querySelector(`#f${index}-name`)?.textContent).toBe(figure.label);
      expect(root.getAttribute('aria-describedby')).toBe(`f${index}-description`);
      expect(root.querySelector(`#f${index}-description`)?.textContent).toBe(figure.description);
      for (const node of root.querySelectorAll('[id]')) {
        expect(node.getAttribute('id')).toMatch(new RegExp(`^f${index}-`));
      }
    });
  });

  it('has a table with a caption, a source, and as many cells in each row as columns', () => {
    for (const { table } of figuresOf(season)) {
      expect(table.caption).not.toBe('');
      expect(table.source).toMatch(/^(rows|raw|freshVersusStored|pairs|vials|plan)/);
      expect(table.rows.length).toBeGreaterThan(0);
      for (const row of table.rows) {
        expect(row).toHaveLength(table.columns.length);
        for (const cell of row) expect(cell).not.toMatch(/^$|\bnull\b|undefined|NaN|\b0%|100%/);
      }
    }
  });

  it('ends its finding with a full stop and starts it with a capital or a number', () => {
    for (const { finding } of figuresOf(season)) expect(finding).toMatch(/^[A-Z0-9].*\.$/s);
  });

  it('is the same when drawn again, in another time zone too', () => {
    const once = figuresOf(season).map((figure) => figure.draw(paper, 'figure'));
    const zone = process.env.TZ;
    process.env.TZ = 'Pacific/Apia';
    const again = figuresOf(season).map((figure) => figure.draw(paper, 'figure'));
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
    expect(again).toEqual(once);
  });

  it('keeps a name that is markup as text', () => {
    const drawn = figuresOf(season).map((figure) => figure.draw(paper, 'figure'));
    expect(drawn.join('')).toContain('&lt;script&gt;');
    expect(drawn.map((svg) => parsed(svg).querySelectorAll('script').length)).toEqual(drawn.map(() => 0));
  });

  it('shortens a long name in the drawing and keeps it whole in the table', () => {
    for (const figure of [pairsFigure(season), vialsFigure(season)]) {
      expect(texts(figure!.draw(paper, 'figure')).join()).not.toContain(LONG_NAME);
      expect(texts(figure!.draw(paper, 'figure')).join()).toMatch(/Mondsch\p{L}*…\p{L}*eich/u);
      const cells = figure!.table.rows.flat().join();
      expect(cells).toContain(LONG_NAME);
      expect(cells).toContain(MARKUP_NAME);
    }
  });
});

describe('the stored drawings', () => {
  const names = ['season', 'storage', 'difference', 'difference-unknown', 'age', 'pairs', 'vials', 'plan'];

  it.each(names.map((name, index) => [name, index] as const))('%s is unchanged', (name, index) => {
    expect(golden(name, figuresOf(season)[index]!.draw(paper, name))).toBe('unchanged');
  });
});
