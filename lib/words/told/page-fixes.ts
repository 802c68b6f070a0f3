/** What the page for one's own season advises where the command would name one of its options. */

import type { Problem } from '../../season/season.ts';

/** Problems that the page has a fix of its own for. */
export type FixedOnPage =
  | 'spreadsheet-file'
  | 'not-text'
  | 'kind-unknown'
  | 'column-missing'
  | 'column-unknown'
  | 'column-guessed'
  | 'vial-unknown'
  | 'future-date'
  | 'outcome-after-as-of'
  | 'name-slip'
  | 'date-serial-read'
  | 'date-order-unclear'
  | 'date-order-mixed'
  | 'date-order-decided'
  | 'date-order-from-neighbour';

/** The fixes of a language. */
export interface PageFixes {
  readonly byCode: Readonly<Record<FixedOnPage, string>>;
  /** Of two columns of one name. */
  readonly rename: string;
  /** Where the page asks below. */
  readonly answer: string;
  /** Where the command would name an option that the page has not. */
  readonly mend: string;
}

/** The fix of a problem as the page puts it; `fix` is the command's, which serves where it names no option. */
export function pageFix({ code, details }: Problem, fix: string, fixes: PageFixes): string {
  if (code === 'column-unclear') return details.same === 'yes' ? fixes.rename : fixes.answer;
  if (code === 'name-spellings' && String(details.name).endsWith('parent')) return fixes.byCode['name-slip'];
  const own = (fixes.byCode as Readonly<Record<string, string>>)[code];
  return own ?? (/--[a-z]/.test(fix) ? fixes.mend : fix);
}

/** The orders that a date can be read in, each with its name and what the date then is. */
export function dateAnswers(
  { details }: Problem,
  name: (order: string | number) => string,
  colon = ': ',
): (readonly [order: string, label: string])[] {
  const orders = [details.firstOrder, details.secondOrder].filter((order) => order !== undefined);
  const readings: readonly (string | number | undefined)[] = [details.first, details.second];
  return orders.map((order, i) => [
    String(order),
    readings[i] === undefined ? name(order) : name(order) + colon + readings[i],
  ]);
}

/** A failure as a language says it, and what of it the page says in its own way. */
export interface PageRefusals<Code extends string, Details> {
  readonly failureWords: (code: Code, details: Details) => { readonly message: string; readonly fix: string };
  /** What the page calls an option of the command. */
  readonly options: Readonly<Record<'--must' | '--at-most' | '--worth' | '--level', string>>;
  /** What can be done on the page, by the code of a failure. */
  readonly fixes: Readonly<Partial<Record<Code, string>>>;
}

/** Why nothing was done, in the command's words, and what can be done about it on the page. */
export function pageRefusal<Code extends string, Details extends { readonly option?: unknown }>(
  code: Code,
  details: Details,
  { failureWords, options, fixes }: PageRefusals<Code, Details>,
): string {
  const option = (options as Readonly<Record<string, string>>)[String(details.option)];
  const { message, fix } = failureWords(code, option === undefined ? details : { ...details, option });
  return `${message} ${fixes[code] ?? fix}`;
}
