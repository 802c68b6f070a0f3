/** The files that a site offers besides its pages. */

import type { Analysis } from '../analyse.ts';
import type { SavedFile } from '../notebook/saved-file.ts';
import { savedFile } from '../notebook/saved-file.ts';
import { analysisJson } from './json.ts';

/** The text that `analyse --json` prints. */
export function analysisText(analysis: Analysis): string {
  return `${JSON.stringify(analysisJson(analysis), null, 2)}\n`;
}

/** The downloads of a season's site, in the order in which they are listed. */
export function siteDownloads(analysis: Analysis): SavedFile[] {
  return [savedFile('results.json', 'All results, for programs (JSON)', analysisText(analysis))];
}
