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
 * @param words of the files and their links
 * @param others words of the site's other languages: the files stay as they are, their links are said in each
 */
export function siteDownloads(
  analysis: Analysis,
  files: readonly SeasonText[],
  words: Words = english,
  others: readonly Words[] = [],
): SavedFile[] {
  const links = [words, ...others].map((each) => linksIn(each, analysis, files));
  return links[0]!.map(({ name, label, text }, at) => ({
    ...savedFile(name, label, text()),
    labels: new Map(others.map((each, k) => [each.languageWords.code, links[k + 1]![at]!.label])),
  }));
}

interface Link {
  readonly name: string;
  readonly label: string;
  /** Written when asked: of one language only. */
  readonly text: () => string;
}

function linksIn(words: Words, analysis: Analysis, files: readonly SeasonText[]): Link[] {
  const { downloadLabel, chartFileLabel } = words.commandWords;
  return [
    {
      name: 'results.json',
      label: downloadLabel('results.json'),
      text: () => analysisText(analysis, words),
    },
    ...files.map(({ name, text }) => ({ name, label: downloadLabel(name), text: () => text })),
    ...chartSpecifications(analysis, words).map(({ name, label, specification }) => ({
      name,
      label: chartFileLabel(label),
      text: () => `${JSON.stringify(specification, null, 1)}\n`,
    })),
  ];
}
