/** How fast stored pollen fades: a fan of curves, the estimate and its range over the counts, broken off where data end. */
import type { Markish } from '@observablehq/plot';
import type { Analysis } from '../analyse.ts';
import type { AgePoint } from '../analysis/age-curve.ts';
import type { AgeBand } from '../analysis/raw.ts';
import type { Words } from '../words/languages.ts';
import { counts } from '../words/numbers.ts';
import { ageWords, RATE_AXIS } from '../words/rate-figures.ts';
import {
  across,
  ageScale,
  atShare,
  BEYOND,
  BOTTOM,
  HEIGHT,
  height,
  LEFT,
  scaleOf,
  TOP,
  WIDTH,
} from './age-axis.ts';
import { fanMarks } from './age-fan.ts';
import { type Counted, countedAges } from './counted-ages.ts';
import type { Figure } from './figure.ts';
import { type Box, freePlaces, type Wish } from './free-places.ts';
import { dotLook, type Label, labels, storageColour } from './marks.ts';
import { fitted, textWidth } from './names.ts';
import { drawing, LINE, type Plot, SHEET_WIDTH, TEXT_SIZE } from './sheet.ts';

/** What this chart says. */
type AgeWords = Pick<Words, 'ageWords' | 'RATE_AXIS' | 'counts'>;
const ENGLISH: AgeWords = { ageWords, RATE_AXIS, counts };

/** Curves drawn point by point keep at most this many points. */
const MOST_POINTS = 40;

/** Every point, or evenly chosen ones with both ends. */
function thinned(points: readonly AgePoint[]): AgePoint[] {
  const step = Math.max(1, (points.length - 1) / (MOST_POINTS - 1));
  const places = Array.from({ length: Math.min(points.length, MOST_POINTS) }, (_, index) =>
    Math.round(index * step),
  );
  return places.flatMap((place) => points[place] ?? []);
}

/** The curve as a row of small boxes. */
function curveBoxes(points: readonly AgePoint[], oldestDays: number): Box[] {
  return points.slice(1).map((point, i) => {
    const ends = [points[i]!, point];
    const [xs, ys] = [
      ends.map(({ ageDays }) => LEFT + across(ageDays, oldestDays)),
      ends.map(({ estimate }) => height(estimate)),
    ];
    return {
      left: Math.min(...xs),
      right: Math.max(...xs),
      top: Math.min(...ys) - 2,
      bottom: Math.max(...ys) + 2,
    };
  });
}

/** What a label must not cover: the ranges of the counts, the curve, and the words at the top. */
function obstacles(bands: readonly Counted[], points: readonly AgePoint[], oldestDays: number): Box[] {
  const ofBands = bands.map((band) => {
    const x = LEFT + across(band.middle, oldestDays);
    return { left: x - 6, right: x + 6, top: height(band.upper ?? 1), bottom: height(band.lower ?? 0) };
  });
  return [
    ...ofBands,
    ...curveBoxes(thinned(points), oldestDays),
    { left: LEFT + 40, right: SHEET_WIDTH, top: 0, bottom: TOP + LINE - 2 },
  ];
}

/** Counts above or below their ranges, or beside the dot; most flowers first. */
function countWish(band: Counted, oldestDays: number, text: string): Wish<Label> {
  const wide = textWidth(text, TEXT_SIZE);
  const x = LEFT + across(band.middle, oldestDays);
  const place = (y: number, shift: number) => ({
    box: { left: x - wide / 2 + shift, right: x + wide / 2 + shift, top: y - 7, bottom: y + 7 },
    label: {
      x: band.middle,
      y,
      dx: shift,
      text,
      anchor: 'middle' as const,
      colour: storageColour(band.storage),
    },
  });
  const [above, below] = [height(band.upper ?? 1) - 9, height(band.lower ?? 0) + 9];
  const beside = height(band.estimate ?? 0);
  const aside = wide / 2 + 9;
  return {
    places: [
      place(above, 0),
      place(below, 0),
      place(above, aside - 12),
      place(beside, aside),
      place(beside, -aside),
    ],
  };
}

function countLabels(
  bands: readonly Counted[],
  points: readonly AgePoint[],
  oldestDays: number,
  words: AgeWords,
): Label[] {
  const wishes = bands
    .filter(({ storage }) => storage !== 'fresh')
    .sort((a, b) => b.flowers - a.flowers)
    .map((band) => countWish(band, oldestDays, words.counts(band.fruits, band.flowers)));
  const sheet = { left: LEFT - 4, right: SHEET_WIDTH, top: TOP, bottom: BOTTOM };
  return freePlaces(wishes, obstacles(bands, points, oldestDays), sheet);
}

function curveMarks(plot: Plot, points: readonly AgePoint[]): Markish[] {
  const rate = (key: 'estimate' | 'lower' | 'upper') => (point: AgePoint) => height(point[key]);
  const data = thinned(points);
  return [
    plot.areaY(data, {
      x: 'ageDays',
      y1: rate('lower'),
      y2: rate('upper'),
      fill: 'var(--stored)',
      fillOpacity: 0.2,
    }),
    plot.line(data, { x: 'ageDays', y: rate('estimate'), stroke: 'var(--stored)', strokeWidth: 2.2 }),
  ];
}

/** Counted rates of one kind, each a dot with its range. */
function countedMarks(plot: Plot, bands: readonly Counted[], kind: 'fresh' | 'stored'): Markish[] {
  const some = bands.filter(({ storage }) => (storage === 'fresh') === (kind === 'fresh'));
  const rate = (key: 'estimate' | 'lower' | 'upper') => (band: Counted) => height(band[key] ?? 0);
  const colour = `var(--${kind})`;
  return [
    plot.ruleX(some, { x: 'middle', y1: rate('lower'), y2: rate('upper'), stroke: colour, strokeWidth: 1.5 }),
    plot.dot(some, { x: 'middle', y: rate('estimate'), ...dotLook(kind === 'stored', colour) }),
  ];
}

/** What the marks are, a line each below the ages: dots are counted, the line is estimated. */
function legend(
  plot: Plot,
  storage: string,
  fresh: AgeBand | undefined,
  end: number,
  said: Words['ageWords'],
): Markish[] {
  const line = (index: number) => BOTTOM + 11 + (1 + index) * LINE;
  const [left, middle, right, words] = [
    atShare(0, end),
    atShare(0.03, end),
    atShare(0.06, end),
    atShare(0.09, end),
  ];
  const own = fitted(said.counted(storage), WIDTH * 0.9, TEXT_SIZE);
  const stroke = [left, right].map((x) => ({ x, y: line(2) }));
  const ofFresh = fresh === undefined ? [] : [{ x: middle, y: line(3) }];
  return [
    plot.dot([{ x: middle, y: line(1) }], { x: 'x', y: 'y', ...dotLook(true, 'var(--stored)') }),
    plot.line(stroke, { x: 'x', y: 'y', stroke: 'var(--stored)', strokeWidth: 2.2 }),
    plot.dot(ofFresh, { x: 'x', y: 'y', ...dotLook(false, 'var(--fresh)') }),
    ...labels(plot, [
      { x: words, y: line(1), text: own },
      { x: words, y: line(2), text: said.estimated },
      ...(fresh === undefined ? [] : [{ x: words, y: line(3), text: said.fresh(fresh) }]),
    ]),
  ];
}

/**
 * Fruit set of one stored method by the age of its pollen.
 *
 * @param analysis its `ageCurve` and `raw.byAge`
 * @param storage the stored method
 * @param inWords the language's words; English where left out
 * @returns null where the curve has fewer than two ages; nothing is drawn past the oldest age tried
 * @example
 * ageFigure(analysis, 'frozen')?.finding; // 'Frozen pollen is estimated to take about 5 in 10 when …'
 */
export function ageFigure(
  analysis: Pick<Analysis, 'ageCurve' | 'raw'>,
  storage: string,
  inWords: AgeWords = ENGLISH,
): Figure | null {
  const said = inWords.ageWords;
  const drawn = countedAges(analysis, storage);
  if (drawn === null) return null;
  const { points, bands: counted, oldestDays } = drawn;
  const fresh = counted.find((band) => band.storage === 'fresh');
  const words = { label: said.label(storage), description: said.description(storage) };
  const marks = (plot: Plot): Markish[] => [
    ...ageScale(plot, oldestDays, inWords),
    ...fanMarks(plot, points),
    ...curveMarks(plot, points),
    ...(['fresh', 'stored'] as const).flatMap((kind) => countedMarks(plot, counted, kind)),
    ...labels(plot, countLabels(counted, points, oldestDays, inWords)),
    ...legend(plot, storage, fresh, oldestDays * BEYOND, said),
  ];
  return {
    kind: 'figure',
    name: 'age',
    finding: said.finding(storage, points[0]!, points.at(-1)!),
    ...words,
    table: {
      caption: words.label,
      columns: said.columns.map((title) => ({ title })),
      rows: [
        ...counted.map(said.cells),
        ...tabled(points).map((point) => said.curveCells(storage, point.ageDays, point)),
      ],
      source: 'raw.byAge, ageCurve',
    },
    draw: drawing(words, {
      height: HEIGHT,
      domain: [0, oldestDays * BEYOND],
      left: LEFT,
      scale: scaleOf(oldestDays),
      marks,
    }),
  };
}

/** A few points of the curve for the table: about every sixth of its length, and its end. */
function tabled(points: readonly AgePoint[]): AgePoint[] {
  const step = Math.max(1, Math.ceil((points.length - 1) / 6));
  return points.filter((_, index) => index % step === 0 || index === points.length - 1);
}
