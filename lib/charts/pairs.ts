/** Every pair: counted rate joined to its pooled estimate, safest first; few flowers are not ranked. */
import type { Markish } from '@observablehq/plot';
import type { Analysis } from '../analyse.ts';
import { NAMED_INCOMPATIBLE, type PooledPair } from '../analysis/pairs.ts';
import { pairsWords } from '../words/choice-figures.ts';
import type { Words } from '../words/languages.ts';
import { counts } from '../words/numbers.ts';
import { RATE_AXIS } from '../words/rate-figures.ts';
import { FEWEST_RANKED, type PairGroups, pairGroups } from '../words/told/review.ts';
import type { Figure } from './figure.ts';
import { type Label, labels, ranges, rateScale, SCALE_HEIGHT, SMALL_DOT, storageColour } from './marks.ts';
import { fittedPair, textWidth } from './names.ts';
import { drawing, INNER_WIDTH, LINE, type Plot, TEXT_SIZE } from './sheet.ts';

/** What this chart says. */
type PairsWords = Pick<Words, 'pairsWords' | 'RATE_AXIS' | 'counts'>;
const ENGLISH: PairsWords = { pairsWords, RATE_AXIS, counts };

/** A drawing holds at most so many pairs: with more it would not fit on a printed page. */
const MOST_DRAWN = 28;
const ROW = LINE + 11;
const LEGEND = LINE + 4;

/** All pairs in the order of the chart: ranked by the cautious end, own pollen, those that count as incompatible, few flowers. */
export function pairsInOrder(pairs: readonly PooledPair[]): PooledPair[] {
  const { ranked, selfed, incompatible, few } = pairGroups(pairs);
  return [...ranked, ...selfed, ...incompatible, ...few];
}

interface Row {
  readonly pair: PooledPair;
  readonly top: number;
  readonly incompatible: boolean;
}

interface Layout {
  readonly rows: readonly Row[];
  readonly headings: readonly Label[];
  readonly bottom: number;
}

/** Rows of the groups from the top on, each group under its heading, as many as fit. */
function layoutOf({ ranked, selfed, incompatible, few }: PairGroups, said: Words['pairsWords']): Layout {
  const rows: Row[] = [];
  const headings: Label[] = [];
  let top = LEGEND;
  const place = (heading: string, pairs: readonly PooledPair[], incompatible = false) => {
    const fitting = pairs.slice(0, MOST_DRAWN - rows.length);
    if (fitting.length === 0) return;
    headings.push({ x: 0, y: top + LINE / 2, text: heading, weight: 'bold' });
    top += LINE;
    for (const pair of fitting) {
      rows.push({ pair, top, incompatible });
      top += ROW;
    }
    top += 6;
  };
  place(said.ranked, ranked);
  place(said.selfed, selfed);
  place(said.incompatible(NAMED_INCOMPATIBLE), incompatible, true);
  place(said.few(FEWEST_RANKED), few);
  return { rows, headings, bottom: top };
}

function rowLabels({ pair, top }: Row, taken: string): Label[] {
  const room = INNER_WIDTH - textWidth(taken, TEXT_SIZE) - 8;
  return [
    { x: 0, y: top + LINE / 2, text: fittedPair(pair.seedParent, pair.pollenParent, room, TEXT_SIZE) },
    { x: 1, y: top + LINE / 2, text: taken, anchor: 'end', colour: 'var(--quiet)' },
  ];
}

/** The counted rate stands a little higher than its pooled estimate, so that the line between them shows. */
function countedMarks(plot: Plot, rows: readonly Row[]): Markish[] {
  const joined = rows.filter(({ pair }) => pair.rawRate !== null && pair.estimate !== null);
  const segments = joined.flatMap(({ pair, top }, z) => [
    { x: pair.rawRate, y: top + LINE, z },
    { x: pair.estimate, y: top + LINE + 5, z },
  ]);
  const dots = joined.map(({ pair, top }) => ({ x: pair.rawRate, y: top + LINE }));
  return [
    plot.line(segments, { x: 'x', y: 'y', z: 'z', stroke: 'var(--quiet)', strokeWidth: 1 }),
    plot.dot(dots, { x: 'x', y: 'y', ...SMALL_DOT, r: 2.2 }),
  ];
}

function legend(plot: Plot, hollow: boolean, said: Words['pairsWords']): Markish[] {
  const y = LINE / 2;
  const colour = hollow ? 'var(--stored)' : 'var(--fresh)';
  return [
    plot.dot([{ x: 0.02, y }], { x: 'x', y: 'y', ...SMALL_DOT, r: 2.2 }),
    ...ranges(plot, [{ y, estimate: 0.38, lower: 0.33, upper: 0.43, hollow, colour }]),
    ...labels(plot, [
      { x: 0.05, y, text: said.counted },
      { x: 0.46, y, text: said.pooled },
    ]),
  ];
}

/** Pooled estimates: a dot with its range, or a cross where the two are perhaps incompatible. */
function pooledMarks(plot: Plot, rows: readonly Row[]): Markish[] {
  const all = rows.map(({ pair: { estimate, lower, upper, basis }, top, incompatible }) => ({
    ...{ estimate, lower, upper, incompatible },
    y: top + LINE + 5,
    hollow: basis.storage !== 'fresh',
    colour: incompatible ? 'var(--warn)' : storageColour(basis.storage),
  }));
  const crossed = all.filter(({ incompatible }) => incompatible);
  return [
    ...ranges(
      plot,
      all.map((row) => (row.incompatible ? { ...row, estimate: null } : row)),
    ),
    plot.dot(
      crossed.filter(({ estimate }) => estimate !== null),
      { x: 'estimate', y: 'y', symbol: 'times', r: 5, stroke: 'var(--warn)', strokeWidth: 2.5 },
    ),
  ];
}

function marksOf(
  plot: Plot,
  { rows, headings, bottom }: Layout,
  all: number,
  inWords: PairsWords,
): Markish[] {
  const said = inWords.pairsWords;
  const omitted: Label = {
    x: 0,
    y: bottom + SCALE_HEIGHT + LINE / 2,
    text: said.shown(rows.length, all),
  };
  return [
    ...rateScale(plot, LEGEND, bottom, inWords.RATE_AXIS),
    ...legend(plot, rows[0]?.pair.basis.storage !== 'fresh', said),
    ...countedMarks(plot, rows),
    ...pooledMarks(plot, rows),
    ...labels(plot, [
      ...headings,
      ...rows.flatMap((row) => rowLabels(row, inWords.counts(row.pair.fruits, row.pair.flowers))),
    ]),
    ...(rows.length < all ? labels(plot, [omitted]) : []),
  ];
}

/**
 * Fruit set of every pair, pooled towards its parents.
 *
 * @param analysis its `pairs`
 * @param inWords the language's words; English where left out
 * @returns null where no pair was seen; more than 28 pairs are in the table only
 * @example
 * pairsFigure(analysis)?.table.rows.length; // 10
 */
export function pairsFigure(
  { pairs }: Pick<Analysis, 'pairs'>,
  inWords: PairsWords = ENGLISH,
): Figure | null {
  const said = inWords.pairsWords;
  if (pairs.length === 0) return null;
  const groups = pairGroups(pairs);
  const layout = layoutOf(groups, said);
  const words = { label: said.label, description: said.description };
  const extra = layout.rows.length < pairs.length ? LINE : 0;
  return {
    kind: 'figure',
    name: 'pairs',
    finding: said.finding(groups),
    ...words,
    table: {
      caption: words.label,
      columns: said.columns(pairs[0]!.basis).map((title) => ({ title })),
      rows: pairsInOrder(pairs).map((pair) => said.cells(pair, NAMED_INCOMPATIBLE)),
      source: 'pairs',
    },
    draw: drawing(words, {
      height: layout.bottom + SCALE_HEIGHT + extra,
      domain: [0, 1],
      marks: (plot) => marksOf(plot, layout, pairs.length, inWords),
    }),
  };
}
