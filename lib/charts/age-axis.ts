/** The sheet of the age chart: rates upwards, ages to the right, an empty strip past the oldest age tried. */
import type { Markish } from '@observablehq/plot';
import type { Words } from '../words/languages.ts';
import { type Label, labels } from './marks.ts';
import { LINE, MARGIN, type Plot, SHEET_WIDTH } from './sheet.ts';

/** Where the plot begins and ends, in units from the top. */
export const TOP = LINE + 8;
const PLOT_HEIGHT = 180;
export const BOTTOM = TOP + PLOT_HEIGHT;
/** Height of the whole drawing, with the ages and a legend of three lines below. */
export const HEIGHT = BOTTOM + 5.5 * LINE;
/** Room left of age 0 for the scale of rates. */
export const LEFT = MARGIN + 18;
/** Width from age 0 to the end of the strip. */
export const WIDTH = SHEET_WIDTH - LEFT - MARGIN;
/** Empty share of the axis past the oldest age tried: what is not known. */
export const BEYOND = 1.12;
const AGE_TICKS = [0, 1, 3, 7, 14, 30, 60, 90, 180, 270, 365, 545, 730, 1095, 1460, 1825];
/** Where a rate stands, in units from the top. */
export function height(rate: number): number {
  return BOTTOM - rate * PLOT_HEIGHT;
}

/** A square-root axis spreads the young ages, which are tried most; a short span needs none. */
export function scaleOf(oldestDays: number): 'linear' | 'sqrt' {
  return oldestDays > 60 ? 'sqrt' : 'linear';
}

/** Distance of an age from age 0 on the sheet. */
export function across(ageDays: number, oldestDays: number): number {
  const share = ageDays / (oldestDays * BEYOND);
  return WIDTH * (scaleOf(oldestDays) === 'sqrt' ? Math.sqrt(share) : share);
}

/** The age that stands at a share of the way from age 0 to the end of the strip. */
export function atShare(share: number, end: number): number {
  return end * (scaleOf(end / BEYOND) === 'sqrt' ? share ** 2 : share);
}

/** The ticks that fit, from 0 on. */
function ticksOf(oldestDays: number): number[] {
  const kept: number[] = [];
  for (const tick of AGE_TICKS.filter((age) => age <= oldestDays)) {
    const before = kept[kept.length - 1];
    if (before === undefined || across(tick, oldestDays) - across(before, oldestDays) >= 32) kept.push(tick);
  }
  return kept;
}

/** Both scales with their words, and where the data end. */
export function ageScale(
  plot: Plot,
  oldestDays: number,
  { ageWords, RATE_AXIS }: Pick<Words, 'ageWords' | 'RATE_AXIS'>,
): Markish[] {
  const rates = [0, 0.2, 0.4, 0.6, 0.8, 1];
  const end = oldestDays * BEYOND;
  return [
    plot.ruleY(rates, { y: height, x1: 0, x2: end, stroke: 'var(--rule)' }),
    plot.ruleX([oldestDays], { y1: TOP, y2: BOTTOM, stroke: 'var(--quiet)', strokeDasharray: '4 3' }),
    ...labels(plot, [
      ...rates.map(
        (rate): Label => ({
          x: 0,
          y: height(rate),
          text: String(Math.round(rate * 10)),
          anchor: 'end',
          dx: -9,
        }),
      ),
      { x: 0, y: LINE / 2 - 1, text: RATE_AXIS, dx: -18 },
      ...ticksOf(oldestDays).map(
        (age): Label => ({ x: age, y: BOTTOM + 11, text: String(age), anchor: 'middle' }),
      ),
      { x: 0, y: BOTTOM + 11 + LINE, text: ageWords.axis },
      {
        x: oldestDays,
        y: TOP + 8,
        text: ageWords.oldest(oldestDays),
        anchor: 'end',
        dx: -5,
        colour: 'var(--quiet)',
      },
    ]),
  ];
}
