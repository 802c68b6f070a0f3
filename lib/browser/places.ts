/** The places of the page by their ids, and the few things that are done to them. */

import type { Html } from '../notebook/html.ts';

/** Access to the places of a page. Each throws a TypeError where the page has no such place. */
export interface Places {
  readonly at: <T extends HTMLElement = HTMLElement>(id: string) => T;
  readonly fill: (id: string, markup: Html | string) => void;
  readonly say: (id: string, text: string) => void;
  readonly show: (id: string, shown: boolean) => void;
  readonly focus: (id: string) => void;
}

/** The places of a document. Markup is what `html` made: text of files is escaped in it. */
export function placesOf(document: Document): Places {
  const at = <T extends HTMLElement>(id: string): T => {
    const place = document.getElementById(id);
    if (place === null) throw new TypeError(`placesOf: the page must have a place ${id}`);
    return place as T;
  };
  return {
    at,
    fill: (id, markup) => {
      at(id).innerHTML = typeof markup === 'string' ? '' : markup.markup;
    },
    say: (id, text) => {
      at(id).textContent = text;
    },
    show: (id, shown) => {
      at(id).hidden = !shown;
    },
    focus: (id) => at(id).focus(),
  };
}

/**
 * Puts the sections of a finished report into the page, one after another with a pause between, so that no step keeps
 * the reader waiting. What stood there before goes first.
 *
 * @param place to fill
 * @param text of the report, a whole page
 * @param wanted asked before each step; where it says no the rest is left
 */
export async function placeReport(
  place: HTMLElement,
  text: string,
  pause: () => Promise<void>,
  wanted: () => boolean,
): Promise<void> {
  place.replaceChildren();
  // The report's own stylesheet stands in this page already, whose policy knows it as a part of its own only.
  const body = text.replace(/<style>[^<]*<\/style>/, '');
  const report = new DOMParser().parseFromString(body, 'text/html');
  for (const part of [...report.querySelectorAll('body > nav, body > main > *')]) {
    await pause();
    if (!wanted()) return;
    place.append(place.ownerDocument.importNode(part, true));
  }
}
