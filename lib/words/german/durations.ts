/** Dauern auf Deutsch. */

import type { Estimate } from '../../proportions/interval.ts';
import { type RoundLength, roundLength, wholeDays } from '../told/lengths.ts';
import { daysIn } from './nouns.ts';
import { CANNOT_TELL, wholeNumber } from './numbers.ts';

const UNITS: Readonly<Record<RoundLength['unit'], readonly [one: string, many: string]>> = {
  week: ['Woche', 'Wochen'],
  month: ['Monat', 'Monate'],
  year: ['Jahr', 'Jahre'],
};

function roundSaid(count: number): string | null {
  const length = roundLength(Math.round(count));
  return length === null ? null : `${length.said} ${UNITS[length.unit][length.one ? 0 : 1]}`;
}

/** „9 Tage“, „etwa 6 Wochen (44 Tage)“. */
export function days(count: number): string {
  const exact = daysIn(wholeDays(count));
  const rounded = roundSaid(count);
  return rounded === null ? exact : `etwa ${rounded} (${exact})`;
}

export function shortDays(count: number): string {
  return roundSaid(count) ?? daysIn(wholeDays(count));
}

export function daysWithRange(estimate: Estimate): string {
  const { lower, upper } = estimate;
  if (estimate.estimate === null) return lower === null ? CANNOT_TELL : `mehr als ${days(lower)}`;
  const said = roundSaid(estimate.estimate);
  const exact = daysIn(wholeDays(estimate.estimate));
  const range = dayRange(lower, upper);
  if (range === null) return days(estimate.estimate);
  return said === null ? `etwa ${exact} (${range})` : `etwa ${said} (${exact}; ${range})`;
}

function dayRange(lower: number | null, upper: number | null): string | null {
  if (lower === null) return null;
  if (upper === null) return `möglich: ${wholeNumber(lower)} Tage oder mehr`;
  return `möglich: ${wholeNumber(lower)} bis ${wholeNumber(upper)} Tage`;
}
