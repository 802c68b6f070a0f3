/** Which of the first rows of a file holds its headers. */

import { type HeaderMap, headersRecognised } from './header.ts';

/** The header is sought in so many rows from the top; above it are titles. */
export const HEADER_SOUGHT_IN = 30;

/** Where the header stands among some records, how many columns of ours it names, and how many cells it has. */
export interface HeaderRow {
  readonly index: number;
  readonly score: number;
  readonly width: number;
}

/** The record among the first ones that names the most columns; the first with any text where none names two. */
export function headerRow(records: readonly (readonly string[])[], map: HeaderMap): HeaderRow {
  const first = Math.max(
    0,
    records.findIndex((cells) => cells.some((cell) => cell.trim() !== '')),
  );
  let best: HeaderRow = { index: first, score: 0, width: records[first]?.length ?? 0 };
  for (let index = first; index < records.length; index++) {
    const score = headersRecognised(records[index], map);
    if (score > Math.max(best.score, 1)) best = { index, score, width: records[index].length };
  }
  return best;
}
