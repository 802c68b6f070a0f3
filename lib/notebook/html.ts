/** Markup that is safe to insert: made by the `html` template only, whose values are escaped. */

/** One symbol for every copy of this file that a process may load; text from a CSV can never carry it. */
const brand: unique symbol = Symbol.for('fruitodds.html') as never;

/** A piece of finished markup. Only `html` makes one. */
export interface Html {
  readonly [brand]: true;
  readonly markup: string;
}

/** What may stand in `${…}` of an `html` template: text is escaped, lists are joined. */
export type HtmlValue = string | number | Html | readonly HtmlValue[];

const escapes: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ["'", '&#39;'],
]);

/** Escapes text for element content and for quoted attributes alike. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => escapes.get(character)!);
}

/** Whether a value was made by the `html` template. */
export function isHtml(value: unknown): value is Html {
  return typeof value === 'object' && value !== null && brand in value && value[brand] === true;
}

/**
 * Markup with escaped values: `` html`<b>${name}</b>` ``.
 *
 * Answers: how does text from a file get into a page without becoming markup? Not for style, script or event
 * attributes, which the page's policy would block anyway, nor for unquoted attributes.
 *
 * @param literals the markup as its author wrote it
 * @param values strings and finite numbers (escaped), `Html` (as it is) or lists of these (joined)
 * @throws TypeError where a value stands in an unquoted attribute, RangeError for a number that is not finite
 * @example
 * html`<td>${'<script>'}</td>`.markup; // '<td>&lt;script&gt;</td>'
 */
export function html(literals: TemplateStringsArray, ...values: readonly HtmlValue[]): Html {
  let markup = literals[0]!;
  values.forEach((value, index) => {
    if (/=\s*$/.test(literals[index]!)) {
      throw new TypeError('html: a value in an attribute must stand in quotes');
    }
    markup += markupOf(value) + literals[index + 1]!;
  });
  return { [brand]: true, markup };
}

/** Markup of one value: escaped text, or the markup it is. */
export function markupOf(value: HtmlValue): string {
  if (isHtml(value)) return value.markup;
  if (typeof value === 'string') return escapeHtml(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`html: a number must be finite, got ${value}`);
    return String(value);
  }
  if (Array.isArray(value)) return value.map(markupOf).join('');
  throw new TypeError(`html: a value must be text, a number, html or a list of these, got ${typeof value}`);
}
