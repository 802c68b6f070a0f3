/** The frontier of next season's plan: each split of the flowers by its fruits and crosses, three of them named. */
import type { Markish } from '@observablehq/plot';
import type { Analysis } from '../analyse.ts';
import type { Mix } from '../decisions/mix.ts';
import type { Words } from '../words/languages.ts';
import { wholeNumber } from '../words/numbers.ts';
import { mixLabel, planWords } from '../words/plan.ts';
import type { Figure } from './figure.ts';
import type { Box, Wish } from './free-places.ts';
import { freePlaces } from './free-places.ts';
import { dotLook, type Label, labels } from './marks.ts';
import { textWidth } from './names.ts';
import { BOLD_SIZE, drawing, LINE, MARGIN, type Plot, SHEET_WIDTH } from './sheet.ts';

/** What this chart says. */
type PlanWords = Pick<Words, 'planWords' | 'mixLabel' | 'wholeNumber'>;
const ENGLISH: PlanWords = { planWords, mixLabel, wholeNumber };

const TOP = LINE + 8;
const HEIGHT = 150;
const BOTTOM = TOP + HEIGHT;
/** Room for the numbers of the scale at the left. */
const LEFT = 38;
const MOST_TICKS = 5;

/** Round numbers that cover a stretch, at most six. */
function ticksOver(low: number, high: number): number[] {
  const raw = Math.max(1, (high - low) / MOST_TICKS);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * [1, 2, 5, 10].find((factor) => factor * power >= raw - 1e-9)!;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  return Array.from({ length: last - first + 1 }, (_, at) => (first + at) * step);
}

interface Scales {
  readonly across: readonly number[];
  readonly up: readonly number[];
  /** Units from the left and from the top. */
  readonly x: (varieties: number) => number;
  readonly y: (fruits: number) => number;
}

function scalesOf(frontier: readonly Mix[]): Scales {
  const varieties = frontier.map(({ expectedVarieties }) => expectedVarieties);
  const named = frontier.filter(({ name }) => name !== null);
  const across = ticksOver(Math.min(...varieties), Math.max(...varieties));
  const up = ticksOver(
    Math.min(...named.map(({ fruits }) => fruits.percentile10)),
    Math.max(...named.map(({ fruits }) => fruits.percentile90)),
  );
  const place = (ticks: readonly number[], value: number) =>
    (value - ticks[0]!) / (ticks.at(-1)! - ticks[0]!);
  return {
    across,
    up,
    x: (value) => LEFT + place(across, value) * (SHEET_WIDTH - MARGIN - LEFT),
    y: (value) => BOTTOM - place(up, value) * HEIGHT,
  };
}

function axes(plot: Plot, { across, up, y }: Scales, { planWords: said, wholeNumber }: PlanWords): Markish[] {
  const start = across[0]!;
  return [
    plot.ruleY(up.map(y), { stroke: 'var(--rule)' }),
    ...labels(
      plot,
      up.map((tick) => ({ x: start, y: y(tick), text: wholeNumber(tick), anchor: 'end' as const, dx: -6 })),
    ),
    ...labels(
      plot,
      across.map((tick) => ({ x: tick, y: BOTTOM + 12, text: wholeNumber(tick), anchor: 'middle' as const })),
    ),
    ...labels(plot, [
      { x: start, y: LINE / 2, text: said.up, dx: 6 - LEFT },
      { x: across.at(-1)!, y: BOTTOM + 12 + LINE, text: said.across, anchor: 'end' },
    ]),
  ];
}

/** A name beside the end of a mix's range: above, below, to the right or to the left of it. */
function nameWish(mix: Mix, scales: Scales, text: string): Wish<Label> {
  const width = textWidth(text, BOLD_SIZE);
  const middle = scales.x(mix.expectedVarieties);
  const centre = Math.min(Math.max(middle, LEFT + width / 2), SHEET_WIDTH - MARGIN - width / 2);
  const [high, low] = [scales.y(mix.fruits.percentile90), scales.y(mix.fruits.percentile10)];
  const place = (left: number, y: number) => ({
    box: { left, right: left + width, top: y - LINE / 2, bottom: y + LINE / 2 },
    label: {
      x: mix.expectedVarieties,
      y,
      text,
      weight: 'bold' as const,
      dx: left - middle,
      colour: 'var(--accent)',
    },
  });
  return {
    places: [
      place(centre - width / 2, high - LINE / 2 - 2),
      place(centre - width / 2, low + LINE / 2 + 2),
      place(middle + 6, high + LINE / 2),
      place(middle - width - 6, high + LINE / 2),
      place(middle + 6, low - LINE / 2),
      place(middle - width - 6, low - LINE / 2),
    ],
  };
}

function obstacles(named: readonly Mix[], { x, y }: Scales): Box[] {
  return named.map(({ expectedVarieties, fruits }) => ({
    left: x(expectedVarieties) - 2,
    right: x(expectedVarieties) + 2,
    top: y(fruits.percentile90),
    bottom: y(fruits.percentile10),
  }));
}

function mixMarks(plot: Plot, frontier: readonly Mix[], scales: Scales, { mixLabel }: PlanWords): Markish[] {
  const points = frontier.map((mix) => ({ x: mix.expectedVarieties, y: scales.y(mix.expectedFruits) }));
  const named = frontier.filter(({ name }) => name !== null);
  const spans = named.map(({ expectedVarieties: x, expectedFruits, fruits }) => ({
    x,
    y: scales.y(expectedFruits),
    high: scales.y(fruits.percentile90),
    low: scales.y(fruits.percentile10),
  }));
  return [
    plot.line(points, { x: 'x', y: 'y', stroke: 'var(--quiet)', strokeWidth: 1.5 }),
    plot.dot(points, { x: 'x', y: 'y', r: 2.5, fill: 'var(--quiet)', stroke: 'none' }),
    plot.ruleX(spans, { x: 'x', y1: 'high', y2: 'low', stroke: 'var(--accent)', strokeWidth: 2 }),
    plot.dot(spans, { x: 'x', y: 'y', ...dotLook(false, 'var(--accent)') }),
    // One mark a name: each is shifted by its own amount.
    ...freePlaces(
      named.map((mix) => nameWish(mix, scales, mixLabel(mix.name))),
      obstacles(named, scales),
      { left: LEFT - 8, right: SHEET_WIDTH, top: LINE + 2, bottom: BOTTOM },
    ).flatMap((label) => labels(plot, [label])),
  ];
}

/**
 * How to split next season's flowers: fruits against crosses with at least one fruit.
 *
 * @param analysis its `plan`
 * @param inWords the language's words; English where left out
 * @returns null without a plan, or where no mix could be made
 * @example
 * planFigure(analysis)?.finding; // 'From most fruit to most varieties you give up 9 fruits and gain 12 crosses.'
 */
export function planFigure({ plan }: Pick<Analysis, 'plan'>, inWords: PlanWords = ENGLISH): Figure | null {
  if (plan === null || plan.frontier.length === 0) return null;
  const scales = scalesOf(plan.frontier);
  const said = inWords.planWords;
  const { label, description } = said;
  const marks = (plot: Plot): Markish[] => [
    ...axes(plot, scales, inWords),
    ...mixMarks(plot, plan.frontier, scales, inWords),
  ];
  const domain = [scales.across[0]!, scales.across.at(-1)!] as const;
  return {
    kind: 'figure',
    name: 'plan',
    finding: said.finding(plan),
    label,
    description,
    table: {
      caption: said.caption,
      columns: said.columns.map((title, at) => ({ title, numeric: at > 0 })),
      rows: plan.frontier.map(said.cells),
      source: 'plan.frontier',
    },
    draw: drawing({ label, description }, { height: BOTTOM + 2 * LINE + 4, domain, left: LEFT, marks }),
  };
}
