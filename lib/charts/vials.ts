/** Every vial's expected fruit set with its range against what is worth a flower, grouped by verdict. */
import type { Markish } from '@observablehq/plot';
import type { Analysis } from '../analyse.ts';
import type { VialAdvice } from '../decisions/vials.ts';
import { vialsWords } from '../words/choice-figures.ts';
import type { Words } from '../words/languages.ts';
import { RATE_AXIS } from '../words/rate-figures.ts';
import { standingOf, standings, type VialStanding, vialsThat } from '../words/told/vials.ts';
import type { Figure } from './figure.ts';
import { type Label, labels, ranges, rateScale, SCALE_HEIGHT } from './marks.ts';
import { fitted, textWidth } from './names.ts';
import { drawing, INNER_WIDTH, LINE, type Plot, TEXT_SIZE } from './sheet.ts';

/** What this chart says. */
type VialsWords = Pick<Words, 'vialsWords' | 'RATE_AXIS'>;
const ENGLISH: VialsWords = { vialsWords, RATE_AXIS };

const COLOURS: Readonly<Record<VialStanding, string>> = {
  keep: 'var(--good)',
  'use-first': 'var(--accent)',
  'test-first': 'var(--quiet)',
  discard: 'var(--warn)',
  empty: 'var(--quiet)',
};
/** A drawing holds at most so many vials: with more it would not fit on a printed page. */
const MOST_DRAWN = 24;
const ROW = LINE + 12;
const TOP = LINE + 2;

interface Row {
  readonly vial: VialAdvice;
  readonly top: number;
}

interface Layout {
  readonly rows: readonly Row[];
  readonly headings: readonly Label[];
  readonly bottom: number;
}

/** The surest first within a verdict; without a probability, last. */
function surestFirst(vials: readonly VialAdvice[]): VialAdvice[] {
  return [...vials].sort((a, b) => (b.probabilityWorth ?? -1) - (a.probabilityWorth ?? -1));
}

function byStanding(vials: readonly VialAdvice[]): (readonly [VialStanding, VialAdvice[]])[] {
  return standings(vials)
    .map((standing) => [standing, surestFirst(vialsThat(standing, vials))] as const)
    .filter(([, some]) => some.length > 0);
}

/** All vials in the order of the chart. */
export function vialsInOrder(vials: readonly VialAdvice[]): VialAdvice[] {
  return byStanding(vials).flatMap(([, some]) => some);
}

function layoutOf(
  groups: readonly (readonly [VialStanding, readonly VialAdvice[]])[],
  said: Words['vialsWords'],
): Layout {
  const rows: Row[] = [];
  const headings: Label[] = [];
  let top = TOP;
  for (const [standing, vials] of groups) {
    const text = said.heading(standing, vials.length);
    headings.push({ x: 0, y: top + LINE / 2, text, colour: COLOURS[standing], weight: 'bold' });
    top += LINE;
    for (const vial of vials.slice(0, Math.max(0, MOST_DRAWN - rows.length))) {
      rows.push({ vial, top });
      top += ROW;
    }
    top += 6;
  }
  return { rows, headings, bottom: top };
}

function isEmpty(vial: VialAdvice): boolean {
  return standingOf(vial) === 'empty';
}

function rowLabels({ vial, top }: Row, said: Words['vialsWords']): Label[] {
  // Of an empty vial nothing can be expected: only its name stands there.
  const expected = isEmpty(vial) ? '' : said.expected(vial);
  const room = INNER_WIDTH - textWidth(expected, TEXT_SIZE) - 8;
  return [
    { x: 0, y: top + LINE / 2, text: fitted(said.name(vial), room, TEXT_SIZE) },
    { x: 1, y: top + LINE / 2, text: expected, anchor: 'end', colour: 'var(--quiet)' },
  ];
}

/** A line at what is worth a flower, a piece a vial so that it runs through no name; its own name above. */
function worthLine(
  plot: Plot,
  value: number | null,
  rows: readonly Row[],
  said: Words['vialsWords'],
): Markish[] {
  if (value === null) return [];
  const text = said.worth(value);
  const latest = 1 - textWidth(text, TEXT_SIZE) / INNER_WIDTH;
  return [
    plot.ruleX(rows, {
      x: () => value,
      y1: ({ top }: Row) => top + LINE - 1,
      y2: ({ top }: Row) => top + ROW - 1,
      stroke: 'var(--accent)',
      strokeWidth: 1.5,
      strokeDasharray: '4 2',
    }),
    ...labels(plot, [{ x: Math.min(value, latest), y: LINE / 2, text, colour: 'var(--accent)' }]),
  ];
}

/**
 * Keep or discard each vial: what it is expected to give on the day of use.
 *
 * @param analysis its `vials` and `worth`
 * @param inWords the language's words; English where left out
 * @returns null where there is no vial; more than 24 vials are in the table only
 * @example
 * vialsFigure(analysis)?.finding; // 'Keep 2, use first 1, …'
 */
export function vialsFigure(
  { vials, worth }: Pick<Analysis, 'vials' | 'worth'>,
  inWords: VialsWords = ENGLISH,
): Figure | null {
  const said = inWords.vialsWords;
  if (vials.length === 0) return null;
  const groups = byStanding(vials);
  const { rows, headings, bottom } = layoutOf(groups, said);
  const words = { label: said.label, description: said.description };
  const omitted: Label = {
    x: 0,
    y: bottom + SCALE_HEIGHT + LINE / 2,
    text: said.shown(rows.length, vials.length),
  };
  const all = rows.length === vials.length;
  const filled = rows.filter(({ vial }) => !isEmpty(vial));
  const marks = (plot: Plot): Markish[] => [
    ...rateScale(plot, TOP, bottom, inWords.RATE_AXIS),
    ...worthLine(plot, worth.value, filled, said),
    ...ranges(
      plot,
      filled.map(({ vial, top }) => ({
        ...vial,
        y: top + LINE + 6,
        hollow: true,
        colour: COLOURS[standingOf(vial)],
      })),
    ),
    ...labels(plot, [...headings, ...rows.flatMap((row) => rowLabels(row, said)), ...(all ? [] : [omitted])]),
  ];
  return {
    kind: 'figure',
    name: 'vials',
    finding: [
      said.finding(
        groups.map(([standing, some]) => [standing, some.length]),
        worth,
      ),
      said.mark(vials),
    ]
      .filter((sentence) => sentence !== '')
      .join(' '),
    ...words,
    table: {
      caption: words.label,
      columns: said.columns.map((title) => ({ title })),
      rows: vialsInOrder(vials).map(said.cells),
      source: 'vials',
    },
    draw: drawing(words, { height: bottom + SCALE_HEIGHT + (all ? 0 : LINE), domain: [0, 1], marks }),
  };
}
