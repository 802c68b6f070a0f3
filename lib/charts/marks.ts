/** The marks that charts share: a dot with its range, labels, the scale of rates, rows of dots, a legend. */
import type { Markish } from '@observablehq/plot';
import { INNER_WIDTH, LINE, type Plot } from './sheet.ts';

/** Text at a place: x on the chart's scale, y in units from the top. */
export interface Label {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly colour?: string;
  readonly weight?: 'bold';
  /** Shift to the right, in units. */
  readonly dx?: number;
}

/** Groups in order of first appearance, so that each kind becomes one mark. */
function grouped<T>(items: readonly T[], keyOf: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return [...groups.values()];
}

/** The page's colour around letters, so that no line runs through them. */
const HALO = { stroke: 'var(--paper)', strokeWidth: 4, strokeLinejoin: 'round' } as const;

/** Labels, those of one look in one mark. */
export function labels(plot: Plot, all: readonly Label[]): Markish[] {
  const look = ({ anchor, colour, weight, dx }: Label) => JSON.stringify([anchor, colour, weight, dx]);
  return grouped(all, look).map((group) => {
    const { anchor = 'start', colour = 'currentColor', weight, dx = 0 } = group[0] as Label;
    return plot.text(group, {
      x: 'x',
      y: 'y',
      text: 'text',
      textAnchor: anchor,
      dx,
      ...HALO,
      fill: colour,
      ...(weight === undefined ? {} : { fontWeight: weight }),
    });
  });
}

/** An estimate in a row: null ends and a null estimate are not drawn. */
export interface RangeRow {
  readonly y: number;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly hollow: boolean;
  readonly colour: string;
}

/** A dot and a range for each row, never a bar: filled or hollow, in its colour. */
export function ranges(plot: Plot, rows: readonly RangeRow[]): Markish[] {
  const look = ({ hollow, colour }: RangeRow) => `${hollow} ${colour}`;
  return grouped(rows, look).flatMap((group) => {
    const { hollow, colour } = group[0] as RangeRow;
    const closed = group.filter(({ lower, upper }) => lower !== null && upper !== null);
    return [
      plot.ruleY(closed, { y: 'y', x1: 'lower', x2: 'upper', stroke: colour, strokeWidth: 2 }),
      plot.dot(known(group), { x: 'estimate', y: 'y', ...dotLook(hollow, colour) }),
    ];
  });
}

function known(rows: readonly RangeRow[]): RangeRow[] {
  return rows.filter(({ estimate }) => estimate !== null);
}

/** The large dot of an estimate, or of a flower that took. */
export function dotLook(hollow: boolean, colour: string, radius = 5) {
  return hollow
    ? { r: radius - 1, fill: 'var(--paper)', stroke: colour, strokeWidth: 2 }
    : { r: radius, fill: colour, stroke: 'none' };
}

/** The colour of a storage method: one for fresh, one for everything stored, which labels tell apart. */
export function storageColour(storage: string): string {
  return storage === 'fresh' ? 'var(--fresh)' : 'var(--stored)';
}

const RATE_TICKS = [0, 0.2, 0.4, 0.6, 0.8, 1];
/** Height that `rateScale` needs below its rows. */
export const SCALE_HEIGHT = 2 * LINE + 2;

/** The scale of rates below rows that run from `top` to `bottom`: faint lines, counts of ten, the axis in words. */
export function rateScale(plot: Plot, top: number, bottom: number, axis: string): Markish[] {
  const ticks = RATE_TICKS.map((x) => ({ x, y: bottom + 10, text: String(Math.round(x * 10)) }));
  return [
    plot.ruleX(RATE_TICKS, { y1: top, y2: bottom, stroke: 'var(--rule)' }),
    ...labels(
      plot,
      ticks.map((tick) => ({ ...tick, anchor: 'middle' as const })),
    ),
    ...labels(plot, [{ x: 0.5, y: bottom + 10 + LINE, text: axis, anchor: 'middle' }]),
  ];
}

/** How many flowers one mark stands for: 1 up to 300 flowers, then 10, 100 … so that a drawing stays small. */
export function flowersPerMark(flowers: number): number {
  let perMark = 1;
  while (flowers / perMark > 300) perMark *= 10;
  return perMark;
}

/** Marks for a count of flowers; a few are never rounded to none. */
export function marksFor(flowers: number, perMark: number): number {
  return flowers === 0 ? 0 : Math.max(1, Math.round(flowers / perMark));
}

/** Distance of the marks of a dot array, both ways. */
export const PITCH = 10;

/** Places of `count` marks from `first` on, row by row, in an array that is `room` units wide from `left` on. */
export function dotPlaces(
  count: number,
  {
    first = 0,
    top,
    left = 0,
    room = INNER_WIDTH,
  }: { first?: number; top: number; left?: number; room?: number },
): { readonly x: number; readonly y: number }[] {
  const columns = Math.floor(room / PITCH);
  return Array.from({ length: count }, (_, index) => ({
    x: (left + (((first + index) % columns) + 0.5) * PITCH) / INNER_WIDTH,
    y: top + (Math.floor((first + index) / columns) + 0.5) * PITCH,
  }));
}

/** Height of a dot array. */
export function dotRowsHeight(count: number, room = INNER_WIDTH): number {
  return Math.ceil(count / Math.floor(room / PITCH)) * PITCH;
}

/** Flowers that did not take: small dots. */
export const SMALL_DOT = { r: 1.6, fill: 'var(--quiet)', stroke: 'none' } as const;
