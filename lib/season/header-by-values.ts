/** Headers that can mean several columns: what stands below them decides. */

import { foldHeader } from './columns.ts';
import { isSerial, readDate, threeNumbers } from './date-cell.ts';
import type { Header } from './header.ts';
import type { Row } from './rows.ts';
import { foldWord, isBlank, OWN_METHODS, STORAGES } from './values.ts';

/** "Pollen" over a column may be its plant, how it was kept, or its day. */
const OPEN: ReadonlySet<string> = new Set(['pollen', 'polen']);
/** What is looked at: more rows tell nothing new. */
const LOOKED_AT = 1000;

/** Whether a header can mean several columns. */
export function isOpenHeader(header: string): boolean {
  return OPEN.has(foldHeader(header));
}

function isStorage(text: string): boolean {
  const word = foldWord(text);
  return STORAGES.has(word) || OWN_METHODS.has(word);
}

function isDay(text: string): boolean {
  return threeNumbers(text) !== null || isSerial(text) || 'value' in readDate(text, null);
}

/** What most of some texts are; null where there is none, or a method of storage stands among names. */
function meaningOf(texts: readonly string[], kind: Header['kind']): string | null {
  const storages = texts.filter(isStorage).length;
  if (texts.length === 0) return null;
  if (storages * 2 >= texts.length) return 'storage';
  if (texts.filter(isDay).length * 2 >= texts.length)
    return kind === 'vials' ? 'collected' : 'pollen_collected';
  return storages === 0 ? 'pollen_parent' : null;
}

/**
 * The columns of ours that headers of several meanings are, by what stands below them: from the folded header to our name,
 * where no other header has that column.
 */
export function meaningsByValues(
  headers: readonly string[],
  rows: readonly Row[],
  { kind, columns, unclear, unknown }: Header,
): Map<string, string> {
  const meant = new Map<string, string>();
  if (kind !== 'crosses' && kind !== 'vials') return meant;
  headers.forEach((header, index) => {
    if (!isOpenHeader(header) || !unknown.includes(header.trim())) return;
    const texts = rows.slice(0, LOOKED_AT).map(({ cells }) => (cells[index] ?? '').trim());
    const meaning = meaningOf(
      [...new Set(texts)].filter((text) => !isBlank(text)),
      kind,
    );
    if (meaning === null || columns.has(meaning) || unclear.some(({ column }) => column === meaning)) return;
    meant.set(foldHeader(header), meaning);
  });
  return meant;
}
