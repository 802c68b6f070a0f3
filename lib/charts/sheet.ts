/**
 * The sheet that every chart is drawn on: one width, one text size, one scale of x, rows placed from the top.
 *
 * Drawn for a phone: text is at least 12 px where the sheet is 285 px wide or wider.
 */
import type { Markish } from '@observablehq/plot';
import type { Figure } from './figure.ts';
import { svgMarkup } from './svg.ts';

/** The drawing library, as charts see it. */
export type Plot = typeof import('./plot.ts');

/** Width of every drawing in its own units, and the size of all its text. */
export const SHEET_WIDTH = 320;
export const TEXT_SIZE = 13.5;
/** Size to measure bold text with: it is about a tenth wider. */
export const BOLD_SIZE = 1.12 * TEXT_SIZE;
/** Left and right margin: half a wide tick label. */
export const MARGIN = 12;
export const INNER_WIDTH = SHEET_WIDTH - 2 * MARGIN;
/** Height of a line of text with the space below it. */
export const LINE = 18;

/**
 * Rules for a page's stylesheet: drawings are as wide as a phone, no wider than reads well on a desk, and so wide on
 * paper that the highest of them fits on a page with its caption.
 */
export const chartCss = `.chart{display:block;width:100%;max-width:27.5rem;height:auto;overflow:visible}
@media print{.chart{max-width:18rem;break-inside:avoid}}
`;

let loaded: Plot | null = null;

/**
 * Loads the drawing library, once. It is not loaded with the charts, since most commands draw nothing and it
 * takes longer to load than they take to answer: await this before the first figure is drawn.
 */
export async function loadPlot(): Promise<void> {
  loaded ??= await import('./plot.ts');
}

/** What one chart puts on its sheet. */
export interface Sheet {
  readonly height: number;
  /** Ends of the x scale, left and right. */
  readonly domain: readonly [number, number];
  /** Where x begins on the sheet, for a scale at the left; the margin otherwise. */
  readonly left?: number;
  /** How x runs between them: evenly, or as its square root, which spreads young ages. */
  readonly scale?: 'linear' | 'sqrt';
  /** Marks from back to front; y is counted in units from the top. */
  readonly marks: (plot: Plot) => readonly Markish[];
}

/** The `draw` of a figure: from a sheet and the words for those who do not see it. */
export function drawing(
  words: { readonly label: string; readonly description: string },
  sheet: Sheet,
): Figure['draw'] {
  return (document, prefix) => {
    if (loaded === null)
      throw new TypeError('draw: the drawing library must be loaded first, await loadPlot()');
    const drawn = loaded.plot({
      document,
      width: SHEET_WIDTH,
      height: sheet.height,
      margin: 0,
      x: {
        type: sheet.scale ?? 'linear',
        domain: sheet.domain,
        range: [sheet.left ?? MARGIN, SHEET_WIDTH - MARGIN],
        axis: null,
      },
      y: { type: 'identity', axis: null },
      marks: [...sheet.marks(loaded)],
    });
    return svgMarkup(
      drawn,
      { prefix, ...words },
      { width: SHEET_WIDTH, height: sheet.height, textSize: TEXT_SIZE },
    );
  };
}
