/** The files that a site offers besides its pages. */

import type { Analysis } from '../analyse.ts';
import { chartSpecifications } from '../charts/specifications.ts';
import type { SavedFile } from '../notebook/saved-file.ts';
import { savedFile } from '../notebook/saved-file.ts';
import type { Season } from '../season/season.ts';
import { type SeasonText, writeSeason } from '../season/write-season.ts';
import * as english from '../words/index.ts';
import type { Words } from '../words/languages.ts';
import { analysisJson } from './json.ts';

/** The text that `analyse --json` prints. */
export function analysisText(analysis: Analysis, words: Words = english): string {
  return `${JSON.stringify(analysisJson(analysis, words), null, 2)}\n`;
}

/** The season's files as they would be kept cleanly. */
export function cleanFiles(season: Season, words: Words = english): SeasonText[] {
  return writeSeason(season, { description: words.PACKAGE_MEANING, column: words.columnMeaning });
}

/**
 * The downloads of a season's site, in the order in which they are listed.
 *
 * @param files the season's own, or those of its coded copy
 */
export function siteDownloads(
  analysis: Analysis,
  files: readonly SeasonText[],
  words: Words = english,
): SavedFile[] {
  const { downloadLabel, chartFileLabel } = words.commandWords;
  return [
    savedFile('results.json', downloadLabel('results.json'), analysisText(analysis, words)),
    ...files.map(({ name, text }) => savedFile(name, downloadLabel(name), text)),
    ...chartSpecifications(analysis, words).map(({ name, label, specification }) =>
      savedFile(name, chartFileLabel(label), `${JSON.stringify(specification, null, 1)}\n`),
    ),
  ];
}
