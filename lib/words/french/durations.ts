/** Lengths of time in French. */
import type { Estimate } from '../../proportions/interval.ts';
import { type RoundLength, roundLength, wholeDays } from '../told/lengths.ts';
import { CANNOT_TELL, counted, elided, wholeNumber } from './numbers.ts';

/** Below two, "an" stays singular in French: "1½ an". */
const UNITS: Readonly<Record<RoundLength['unit'], (said: string) => string>> = {
  week: (said) => `${said} ${said === '1' ? 'semaine' : 'semaines'}`,
  month: (said) => `${said} mois`,
  year: (said) => `${said} ${said === '1' || said === '1½' ? 'an' : 'ans'}`,
};

/** "environ 3 mois (92 jours)". */
export function days(count: number): string {
  const exact = exactDays(count);
  const rounded = roundSaid(count);
  return rounded === null ? exact : `environ ${rounded} (${exact})`;
}

function exactDays(count: number): string {
  return counted(wholeDays(count), 'jour');
}

/** The rounded length alone, for an axis or a cell. */
export function shortDays(count: number): string {
  return roundSaid(count) ?? exactDays(count);
}

function roundSaid(count: number): string | null {
  const length = roundLength(Math.round(count));
  return length === null ? null : UNITS[length.unit](length.said);
}

/** A length with its range. */
export function daysWithRange(estimate: Estimate): string {
  const { lower, upper } = estimate;
  if (estimate.estimate === null) return lower === null ? CANNOT_TELL : `plus ${elided('de', days(lower))}`;
  const said = roundSaid(estimate.estimate);
  const exact = exactDays(estimate.estimate);
  const range = dayRange(lower, upper);
  if (range === null) return days(estimate.estimate);
  return said === null ? `environ ${exact} (${range})` : `environ ${said} (${exact} ; ${range})`;
}

function dayRange(lower: number | null, upper: number | null): string | null {
  if (lower === null) return null;
  if (upper === null) return `peut-être ${wholeNumber(lower)} jours ou plus`;
  return `peut-être ${wholeNumber(lower)} à ${wholeNumber(upper)} jours`;
}
