/** "Worth a look in the files": what a report says of its files, errors first. */

import type { SeasonFile } from '../season/season.ts';
import { fileFindings } from './file-findings.ts';
import { type FindingsSaid, findingsTold } from './told/findings.ts';

export type { FindingsSaid } from './told/findings.ts';

/**
 * What the files of a season hold beside what could be used: errors, then warnings, each with how many more are like
 * it and what mends it; apart from them what was only noticed.
 *
 * @param files of a season, as `readSeason` gives them
 * @example
 * findingsSaid(season.files).toMend[0]; // 'k-season40.csv: Row 15 (tag X00014), column E "pollen_collected": the pollen is called fresh but was 2 days old; …'
 */
export function findingsSaid(files: readonly SeasonFile[]): FindingsSaid {
  return findingsTold(files, fileFindings);
}
