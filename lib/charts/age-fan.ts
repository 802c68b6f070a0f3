/** The fan of the age chart: curves that are as likely as one another, thin, behind the estimate. */

import type { Markish } from '@observablehq/plot';
import type { AgePoint } from '../analysis/age-curve.ts';
import { height } from './age-axis.ts';
import type { Plot } from './sheet.ts';

/** Points of each thin curve, at most: they bend little. */
const MOST_POINTS = 14;

/** One point of one curve of the fan. */
export interface FanPoint {
  readonly curve: number;
  readonly ageDays: number;
  readonly rate: number;
}

/** The curves point by point, each to the oldest age tried and no further. */
export function fanPoints(points: readonly AgePoint[]): FanPoint[] {
  const last = points.length - 1;
  const kept = Math.min(points.length, MOST_POINTS);
  const places = Array.from({ length: kept }, (_, at) => Math.round((at * last) / Math.max(1, kept - 1)));
  return [...new Set(places)].flatMap((place) => {
    const { ageDays, plausible } = points[place]!;
    return plausible.map((rate, curve) => ({ curve, ageDays, rate }));
  });
}

/** The fan as marks of a chart. */
export function fanMarks(plot: Plot, points: readonly AgePoint[]): Markish[] {
  return [
    plot.line(fanPoints(points), {
      x: 'ageDays',
      y: ({ rate }: FanPoint) => height(rate),
      z: 'curve',
      stroke: 'var(--stored)',
      strokeOpacity: 0.4,
      strokeWidth: 0.8,
    }),
  ];
}
