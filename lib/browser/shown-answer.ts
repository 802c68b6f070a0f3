/** The first answer and the flowers of next season, as markup. */

import type { Figure } from '../charts/figure.ts';
import { storageFigure } from '../charts/rates.ts';
import type { Html } from '../notebook/html.ts';
import { html } from '../notebook/html.ts';
import { countsAnswer, OWN_SEASON } from '../words/own-season.ts';
import { lostTagsSaid, rowsAnswer, seasonAnswer } from '../words/review.ts';
import type { FirstCounts } from './first-counts.ts';
import type { Settings } from './settings.ts';

/** The sentences of the first answer: what was counted, whether the rows are all right, fresh against stored. */
export function countsSaid(counts: FirstCounts): Html {
  const sentences = [
    seasonAnswer({ ...counts, vials: [] }),
    `${rowsAnswer(counts)} ${lostTagsSaid(counts)}`,
    ...counts.freshVersusStored.map(countsAnswer),
  ];
  return html`${sentences.map((sentence) => html`<p>${sentence}</p>`)}`;
}

/** The chart of the first answer: one mark a flower, fresh against stored. */
export function countsFigure(counts: FirstCounts): Figure | null {
  return storageFigure(counts);
}

/** One field a seed parent for the flowers that it is expected to open. */
export function flowerFields(plants: readonly string[], { expected }: Settings): Html {
  return html`${plants.map(
    (plant, i) => html`<label class="plant" for="own-flowers-${i}"><span class="name">${plant}</span>
<input id="own-flowers-${i}" data-plant="${plant}" inputmode="numeric" size="4" value="${expected.get(plant) ?? ''}"></label>`,
  )}`;
}

/** What stands in place of the fields where a file says it. */
export const flowersFromFile: Html = html`<p>${OWN_SEASON.flowersFromFile}</p>`;
