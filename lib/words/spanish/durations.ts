/** Spans of time in Spanish. */

import type { Estimate } from '../../proportions/interval.ts';
import { type RoundLength, roundLength, wholeDays } from '../told/lengths.ts';
import { daysIn } from './nouns.ts';
import { CANNOT_TELL, wholeNumber } from './numbers.ts';

const UNITS: Readonly<Record<RoundLength['unit'], readonly [one: string, many: string]>> = {
  week: ['semana', 'semanas'],
  month: ['mes', 'meses'],
  year: ['año', 'años'],
};

const ABOUT: Readonly<Record<RoundLength['unit'], string>> = { week: 'unas', month: 'unos', year: 'unos' };

function roundSaid(count: number): string | null {
  const length = roundLength(Math.round(count));
  return length === null ? null : `${length.said} ${UNITS[length.unit][length.one ? 0 : 1]}`;
}

/** "unas 6 semanas", "cerca de 1 año". */
function aboutSaid(count: number): string | null {
  const length = roundLength(Math.round(count));
  return length === null ? null : `${length.one ? 'cerca de' : ABOUT[length.unit]} ${roundSaid(count)}`;
}

/** "9 días", "unas 6 semanas (44 días)". */
export function days(count: number): string {
  const exact = daysIn(wholeDays(count));
  const rounded = aboutSaid(count);
  return rounded === null ? exact : `${rounded} (${exact})`;
}

export function shortDays(count: number): string {
  return roundSaid(count) ?? daysIn(wholeDays(count));
}

export function daysWithRange(estimate: Estimate): string {
  const { lower, upper } = estimate;
  if (estimate.estimate === null) return lower === null ? CANNOT_TELL : `más de ${days(lower)}`;
  const said = aboutSaid(estimate.estimate);
  const whole = wholeDays(estimate.estimate);
  const range = dayRange(lower, upper);
  if (range === null) return days(estimate.estimate);
  return said === null
    ? `${whole === 1 ? 'cerca de' : 'unos'} ${daysIn(whole)} (${range})`
    : `${said} (${daysIn(whole)}; ${range})`;
}

function dayRange(lower: number | null, upper: number | null): string | null {
  if (lower === null) return null;
  if (upper === null) return `quizá ${wholeNumber(lower)} días o más`;
  return `quizá de ${wholeNumber(lower)} a ${wholeNumber(upper)} días`;
}
