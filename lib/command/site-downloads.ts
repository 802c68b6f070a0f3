/** The files that a site offers besides its pages. */

import type { Analysis } from '../analyse.ts';
import type { SavedFile } from '../notebook/saved-file.ts';
import { savedFile } from '../notebook/saved-file.ts';
import type { Season } from '../season/season.ts';
import { type SeasonText, writeSeason } from '../season/write-season.ts';
import { columnMeaning, PACKAGE_MEANING } from '../words/column-words.ts';
import { analysisJson } from './json.ts';

/** The text that `analyse --json` prints. */
export function analysisText(analysis: Analysis): string {
  return `${JSON.stringify(analysisJson(analysis), null, 2)}\n`;
}

/** What the files of a season are called where they are offered. */
const LABELS: ReadonlyMap<string, string> = new Map([
  ['crosses.csv', 'The crosses as they were understood (CSV)'],
  ['vials.csv', 'The vials as they were understood (CSV)'],
  ['flowers.csv', 'The expected flowers as they were understood (CSV)'],
  ['datapackage.json', 'What the columns of these files mean (JSON)'],
  ['coded-crosses.csv', 'The crosses under codes, to be read again (CSV)'],
  ['coded-vials.csv', 'The vials under codes (CSV)'],
  ['coded-flowers.csv', 'The expected flowers under codes (CSV)'],
]);

/** The season's files as they would be kept cleanly. */
export function cleanFiles(season: Season): SeasonText[] {
  return writeSeason(season, { description: PACKAGE_MEANING, column: columnMeaning });
}

/**
 * The downloads of a season's site, in the order in which they are listed.
 *
 * @param files the season's own, or those of its coded copy
 */
export function siteDownloads(analysis: Analysis, files: readonly SeasonText[]): SavedFile[] {
  return [
    savedFile('results.json', 'All results, for programs (JSON)', analysisText(analysis)),
    ...files.map(({ name, text }) => savedFile(name, LABELS.get(name) ?? name, text)),
  ];
}
