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
 * Puts the parts of a report into the page, one after another with a pause between, so that no step keeps the reader
 * waiting. What stood there before goes first.
 *
 * @param place to fill
 * @param parts markup of a finished report, whose text was escaped when it was made
 * @param wanted asked before each step; where it says no the rest is left
 */
export async function placeParts(
  place: HTMLElement,
  parts: readonly string[],
  pause: () => Promise<void>,
  wanted: () => boolean,
): Promise<void> {
  place.replaceChildren();
  for (const part of parts) {
    await pause();
    if (!wanted()) return;
    const made = place.ownerDocument.createElement('template');
    made.innerHTML = part;
    place.append(made.content);
  }
}
