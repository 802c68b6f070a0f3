/** The season on one page: one mark a flower, grouped by what became of it. */
import type { Markish } from '@observablehq/plot';
import type { Analysis } from '../analyse.ts';
import type { Outcome } from '../season/season.ts';
import type { Words } from '../words/languages.ts';
import { headed, wholeNumber } from '../words/numbers.ts';
import { seasonWords } from '../words/rate-figures.ts';
import type { Figure } from './figure.ts';
import {
  dotLook,
  dotPlaces,
  dotRowsHeight,
  flowersPerMark,
  type Label,
  labels,
  marksFor,
  SMALL_DOT,
} from './marks.ts';
import { drawing, INNER_WIDTH, LINE, type Plot } from './sheet.ts';

/** What this chart says. */
type SeasonWords = Pick<Words, 'seasonWords' | 'wholeNumber' | 'headed'>;
const ENGLISH: SeasonWords = { seasonWords, wholeNumber, headed };

/** Filled where a fruit stayed, hollow where it fell, small where none came; the unknown are hollow and quiet. */
const LOOKS: Readonly<Record<Outcome, Readonly<Record<string, string | number>>>> = {
  fruit: dotLook(false, 'var(--good)', 4),
  dropped: { r: 3, fill: 'var(--paper)', stroke: 'var(--good)', strokeWidth: 1.6 },
  none: SMALL_DOT,
  unknown: { r: 3, fill: 'var(--paper)', stroke: 'var(--warn)', strokeWidth: 1.2 },
  pending: { r: 3, fill: 'var(--paper)', stroke: 'var(--quiet)', strokeWidth: 1.2 },
};

interface Strip {
  readonly outcome: Outcome;
  readonly marks: number;
  readonly label: Label;
  readonly top: number;
}

function strips(
  outcomes: Analysis['rows']['byOutcome'],
  perMark: number,
  { seasonWords: said, wholeNumber, headed }: SeasonWords,
): { all: Strip[]; height: number } {
  let height = 0;
  const all = outcomes.map(({ outcome, rows }) => {
    const marks = marksFor(rows, perMark);
    const text = headed(said.outcome(outcome), wholeNumber(rows));
    const strip = { outcome, marks, label: { x: 0, y: height + LINE / 2, text }, top: height + LINE };
    height += LINE + dotRowsHeight(marks, INNER_WIDTH) + 4;
    return strip;
  });
  return { all, height };
}

/**
 * Overview of a season: what became of every flower of the crosses files.
 *
 * @param analysis its `rows.byOutcome`
 * @param inWords the language's words; English where left out
 * @returns null where no row could be read
 * @example
 * seasonFigure(analysis)?.table.columns.length; // 2
 */
export function seasonFigure(
  { rows }: Pick<Analysis, 'rows'>,
  inWords: SeasonWords = ENGLISH,
): Figure | null {
  const said = inWords.seasonWords;
  const outcomes = rows.byOutcome.filter((one) => one.rows > 0);
  if (outcomes.length === 0) return null;
  const perMark = flowersPerMark(outcomes.reduce((sum, one) => sum + one.rows, 0));
  const { all, height } = strips(outcomes, perMark, inWords);
  const words = { label: said.label, description: said.description(perMark) };
  const marks = (plot: Plot): Markish[] => [
    ...labels(
      plot,
      all.map(({ label }) => label),
    ),
    ...all.map((strip) =>
      plot.dot(dotPlaces(strip.marks, { top: strip.top }), { x: 'x', y: 'y', ...LOOKS[strip.outcome] }),
    ),
    ...labels(plot, [
      { x: 0, y: height + LINE / 2, text: `${said.perMark(perMark)}.`, colour: 'var(--quiet)' },
    ]),
  ];
  return {
    kind: 'figure',
    name: 'season',
    finding: said.finding(outcomes, perMark),
    ...words,
    table: {
      caption: said.label,
      columns: said.columns.map((title, at) => ({ title, numeric: at > 0 })),
      rows: outcomes.map((one) => [said.outcome(one.outcome), inWords.wholeNumber(one.rows)]),
      source: 'rows.byOutcome',
    },
    draw: drawing(words, { height: height + LINE, domain: [0, 1], marks }),
  };
}
