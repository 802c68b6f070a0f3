/** The flowers of next season, as markup. */

import type { Html } from '../notebook/html.ts';
import { html } from '../notebook/html.ts';
import { OWN_SEASON } from '../words/own-season.ts';
import type { Settings } from './settings.ts';

/** One field a seed parent for the flowers that it is expected to open. */
export function flowerFields(plants: readonly string[], { expected }: Settings): Html {
  return html`${plants.map(
    (plant, i) => html`<label class="plant" for="own-flowers-${i}"><span class="name">${plant}</span>
<input id="own-flowers-${i}" data-plant="${plant}" inputmode="numeric" size="4" value="${expected.get(plant) ?? ''}"></label>`,
  )}`;
}

/** What stands in place of the fields where a file says it. */
export const flowersFromFile: Html = html`<p>${OWN_SEASON.flowersFromFile}</p>`;
