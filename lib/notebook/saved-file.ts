/** A file that a notebook saves beside its page, such as the specification of a chart. */

import type { Language } from '../words/language.ts';

/** In prose it shows as a link with `label`; the site writes `text` to `name`. */
export interface SavedFile {
  readonly kind: 'saved-file';
  readonly name: string;
  readonly label: string;
  /** The same words in other languages of the site, by their codes. */
  readonly labels?: ReadonlyMap<Language, string>;
  readonly text: string;
}

/**
 * A file to be saved beside a notebook's page, linked where the prose shows it. Not for the season review, whose
 * report is a single file.
 *
 * @param name of the file, in lower case: letters, digits, hyphens, then its ending: `chart.vl.json`
 * @param label the words of the link
 * @throws RangeError for a name that could leave the page's folder
 * @example
 * savedFile('curve.vl.json', 'The specification of this chart', '{}').name; // 'curve.vl.json'
 */
export function savedFile(name: string, label: string, text: string): SavedFile {
  if (!/^[a-z0-9][a-z0-9-]*(\.[a-z0-9]+)+$/.test(name)) {
    throw new RangeError(`savedFile: name must be of the form chart.vl.json, got ${JSON.stringify(name)}`);
  }
  return { kind: 'saved-file', name, label, text };
}

/** Whether a value is a saved file. */
export function isSavedFile(value: unknown): value is SavedFile {
  return typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'saved-file';
}
