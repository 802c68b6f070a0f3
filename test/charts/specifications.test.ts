import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse, type Spec as VegaSpec, View } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { ageFigure } from '../../lib/charts/age.ts';
import { pairsFigure } from '../../lib/charts/pairs.ts';
import { storageFigure } from '../../lib/charts/rates.ts';
import { chartSpecifications } from '../../lib/charts/specifications.ts';
import { vialsFigure } from '../../lib/charts/vials.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const demo = fileURLToPath(new URL('../../data-demo/', import.meta.url));
const season = readSeason(
  ['crosses.csv', 'vials.csv'].map((name) => ({ name, bytes: readFileSync(demo + name) })),
);
const analysis = analyse(season);
const made = new Map(chartSpecifications(analysis).map((chart) => [chart.name, chart]));

interface Item {
  readonly x: number;
  readonly y: number;
  readonly items?: readonly Item[];
  readonly marktype?: string;
  readonly datum?: Readonly<Record<string, unknown>>;
}

/** Where Vega itself puts the points of a chart, read back by its own scales: the numbers that are seen. */
async function points(
  name: string,
  mark: string,
): Promise<{ datum: Readonly<Record<string, unknown>>; x: number; y: number }[]> {
  const warnings: string[] = [];
  const note = (...words: readonly unknown[]) => void warnings.push(words.join(' '));
  const logger = { level: () => logger, error: note, warn: note, info: () => logger, debug: () => logger };
  const { spec } = compile(made.get(name)!.specification as unknown as TopLevelSpec, {
    logger: logger as never,
  });
  expect(warnings).toEqual([]);
  const view = await new View(parse(spec as VegaSpec), { renderer: 'none' }).runAsync();
  const found: Item[] = [];
  const walk = (item: Item): void => {
    if (item.marktype === mark) found.push(...(item.items ?? []));
    else for (const inner of item.items ?? []) walk(inner);
  };
  walk((view.scenegraph() as unknown as { readonly root: Item }).root);
  const back = (scale: string, at: number): number => {
    const known = view.scale(scale) as { invert?: (at: number) => number };
    return known.invert?.(at) ?? at;
  };
  return found
    .filter(({ datum }) => datum !== undefined && 'flowers' in datum)
    .map(({ datum, x, y }) => ({ datum: datum!, x: back('x', x), y: back('y', y) }));
}

/** Names in the order of a chart's table, without the columns behind. */
const tabled = (rows: readonly (readonly string[])[] | undefined) => rows?.map(([name]) => name);

describe('the charts as specifications', () => {
  it('are those of rates, ages, pairs and vials, called as on the pages', () => {
    expect([...made].map(([name, { label }]) => [name, label])).toEqual([
      ['rates.vl.json', 'Fruit set by storage of the pollen'],
      ['age.vl.json', expect.stringContaining('Fruit set by age of')],
      ['age-2.vl.json', expect.stringContaining('Fruit set by age of')],
      ['age-3.vl.json', expect.stringContaining('Fruit set by age of')],
      ['pairs.vl.json', 'Fruit set of every pair, seed parent first'],
      ['vials.vl.json', 'Every vial against what is worth a flower'],
    ]);
  });

  it('draw the rates at what was counted', async () => {
    const drawn = await points('rates.vl.json', 'symbol');
    expect(drawn.map(({ datum }) => datum.name)).toEqual(tabled(storageFigure(analysis)?.table.rows));
    for (const { datum, x } of drawn) expect(x).toBeCloseTo(Number(datum.fruits) / Number(datum.flowers), 6);
  });

  it('draw every pair and vial in the order of its chart, at its estimate', async () => {
    const pairs = await points('pairs.vl.json', 'symbol');
    expect(pairs.map(({ datum }) => datum.name)).toEqual(tabled(pairsFigure(analysis)?.table.rows));
    const ofPair = new Map(
      analysis.pairs.map((pair) => [`${pair.seedParent} × ${pair.pollenParent}`, pair.estimate]),
    );
    for (const { datum, x } of pairs) expect(x).toBeCloseTo(ofPair.get(String(datum.name))!, 6);
    const vials = await points('vials.vl.json', 'symbol');
    expect(vials).toHaveLength(vialsFigure(analysis)!.table.rows.length);
    const estimates = analysis.vials.map(({ estimate }) => estimate!).sort();
    expect(vials.map(({ x }) => x).sort()).toEqual(estimates.map((rate) => expect.closeTo(rate, 6)));
  });

  it('draw counted ages over the curve', async () => {
    const drawn = await points('age.vl.json', 'symbol');
    const { storage } = analysis.ageCurve[0]!;
    const rows = ageFigure(analysis, storage)!.table.rows;
    expect(drawn.length).toBeLessThan(rows.length);
    for (const { datum, x, y } of drawn) {
      expect(y).toBeCloseTo(Number(datum.fruits) / Number(datum.flowers), 6);
      expect(x).toBeCloseTo(Number(datum.ageDays), 6);
    }
  });

  it('are none where nothing is known of pairs, vials and ages', () => {
    const none = { ...analysis, pairs: [], vials: [], ageCurve: [] };
    expect(chartSpecifications(none).map(({ name }) => name)).toEqual(['rates.vl.json']);
  });
});
