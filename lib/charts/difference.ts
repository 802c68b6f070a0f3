/** The difference fresh minus stored on an axis of its own: over all flowers, and like for like. */
import type { Markish } from '@observablehq/plot';
import type { FreshVersusStored } from '../analysis/fresh-versus-stored.ts';
import type { Estimate } from '../proportions/interval.ts';
import type { Words } from '../words/languages.ts';
import { wholeNumber } from '../words/numbers.ts';
import { differenceWords } from '../words/rate-figures.ts';
import type { Figure } from './figure.ts';
import { type Label, labels, ranges } from './marks.ts';
import { drawing, LINE, type Plot } from './sheet.ts';

/** What this chart says. */
type DifferenceWords = Pick<Words, 'differenceWords' | 'wholeNumber'>;
const ENGLISH: DifferenceWords = { differenceWords, wholeNumber };

const TOP = LINE;
const ROW = 2 * LINE + 4;
const BOTTOM = TOP + 2 * ROW + 4;
const HEIGHT = BOTTOM + 2 * LINE + 2;

const ROWS = [0, 1] as const;

/** Where the lines of the scale run: beside a row's range, never through its name, however long a language says it. */
const besideRange = (at: number) => ({ y1: TOP + at * ROW + LINE, y2: TOP + (at + 1) * ROW });

/** Both ends of both ranges and zero, outwards to the next tenth, at least 2 in 10 to each side. */
function domainOf(estimates: readonly Estimate[]): [number, number] {
  const ends = estimates.flatMap(({ lower, upper }) => [lower, upper]).filter((end) => end !== null);
  const low = Math.floor(Math.min(-0.2, ...ends) * 10 + 1e-9);
  const high = Math.ceil(Math.max(0.2, ...ends) * 10 - 1e-9);
  return [low / 10, high / 10];
}

/** Every second tenth; every fourth where the axis is long. */
function ticksOf([low, high]: readonly [number, number]): number[] {
  const step = high - low > 1.2 ? 4 : 2;
  const first = Math.ceil(Math.round(low * 10) / step);
  const last = Math.floor(Math.round(high * 10) / step);
  return Array.from({ length: last - first + 1 }, (_, index) => ((first + index) * step) / 10);
}

function scale(
  plot: Plot,
  domain: readonly [number, number],
  { differenceWords: said, wholeNumber }: DifferenceWords,
): Markish[] {
  const ticks = ticksOf(domain);
  const [low, high] = domain;
  return [
    ...ROWS.flatMap((at) => [
      plot.ruleX(ticks, { ...besideRange(at), stroke: 'var(--rule)' }),
      plot.ruleX([0], { ...besideRange(at), stroke: 'currentColor', strokeWidth: 1.5 }),
    ]),
    ...labels(plot, [
      { x: low, y: LINE / 2, text: said.storedBetter, colour: 'var(--stored)' },
      { x: high, y: LINE / 2, text: said.freshBetter, anchor: 'end', colour: 'var(--fresh)' },
      ...ticks.map((x): Label => ({ x, y: BOTTOM + 10, text: wholeNumber(x * 10), anchor: 'middle' })),
      { x: (low + high) / 2, y: BOTTOM + 10 + LINE, text: said.axis, anchor: 'middle' },
    ]),
  ];
}

/** A row of the chart: its name, and the estimate or the words for why there is none. */
function row(plot: Plot, at: number, name: string, estimate: Estimate, why: string, left: number): Markish[] {
  const top = TOP + at * ROW;
  const missing = estimate.estimate === null;
  return [
    ...labels(plot, [{ x: left, y: top + LINE / 2 + 2, text: name }]),
    ...(missing ? labels(plot, [{ x: left, y: top + LINE + 9, text: why, colour: 'var(--quiet)' }]) : []),
    ...ranges(plot, [{ ...estimate, y: top + LINE + 9, hollow: false, colour: 'currentColor' }]),
  ];
}

/**
 * Fresh against one stored method: raw and like-for-like difference.
 *
 * A difference like for like that the data cannot tell is said in words, never drawn.
 *
 * @param entry one entry of `freshVersusStored`
 * @param inWords the language's words; English where left out
 * @returns null where one of the two has no flower
 * @example
 * differenceFigure(analysis.freshVersusStored[0])?.label; // 'Fresh pollen against frozen pollen: the difference'
 */
export function differenceFigure(
  entry: FreshVersusStored,
  inWords: DifferenceWords = ENGLISH,
): Figure | null {
  if (entry.difference.estimate === null) return null;
  const said = inWords.differenceWords;
  const domain = domainOf([entry.difference, entry.adjusted]);
  const words = { label: said.label(entry), description: said.description(entry) };
  const marks = (plot: Plot): Markish[] => [
    ...scale(plot, domain, inWords),
    ...row(plot, 0, said.rawLabel, entry.difference, '', domain[0]),
    ...row(plot, 1, said.adjustedLabel, entry.adjusted, said.missing(entry), domain[0]),
  ];
  return {
    kind: 'figure',
    name: 'difference',
    finding: said.finding(entry),
    ...words,
    table: {
      caption: words.label,
      columns: said.columns.map((title) => ({ title })),
      rows: said.rows(entry),
      source: 'freshVersusStored',
    },
    draw: drawing(words, { height: HEIGHT, domain, marks }),
  };
}
