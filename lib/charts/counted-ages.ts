/** What a chart of ages shows of one stored method: its curve, and the counted rates over it. */

import type { Analysis } from '../analyse.ts';
import type { AgePoint } from '../analysis/age-curve.ts';
import type { AgeBand } from '../analysis/raw.ts';

/** A band of ages as drawn: at its middle, not past the oldest age tried. */
export interface Counted extends AgeBand {
  readonly middle: number;
}

function placed(bands: readonly AgeBand[], oldestDays: number): Counted[] {
  return bands.map((band) => ({
    ...band,
    middle: (band.from + Math.min(band.to ?? oldestDays, oldestDays)) / 2,
  }));
}

/** A method's curve with the counted rates that stand over it. */
export interface CountedAges {
  readonly points: readonly AgePoint[];
  readonly bands: readonly Counted[];
  readonly oldestDays: number;
}

/** What the chart of a method shows; null where its curve has fewer than two ages. */
export function countedAges(
  { ageCurve, raw }: Pick<Analysis, 'ageCurve' | 'raw'>,
  storage: string,
): CountedAges | null {
  const points = ageCurve.filter((point) => point.storage === storage);
  const oldestDays = Math.max(0, ...points.map(({ ageDays }) => ageDays));
  if (points.length < 2 || oldestDays === 0) return null;
  const shown = raw.byAge.filter((band) => band.estimate !== null && band.from <= oldestDays);
  const of = (method: string) => shown.filter((band) => band.storage === method);
  return { points, bands: placed([...of('fresh'), ...of(storage)], oldestDays), oldestDays };
}
