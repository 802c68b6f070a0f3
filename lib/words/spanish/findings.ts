/** What a report says of its files, errors first. */
import type { SeasonFile } from '../../season/season.ts';
import { type FindingsSaid, findingsTold } from '../told/findings.ts';
import { fileFindings } from './file-findings.ts';

/** What the files of a season hold beside what could be used. */
export function findingsSaid(files: readonly SeasonFile[]): FindingsSaid {
  return findingsTold(files, fileFindings);
}
