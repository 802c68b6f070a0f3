/** "Worth a look in the files": what a report says of its files, errors first. */

import type { SeasonFile } from '../season/season.ts';
import { fileFindings, type ProblemGroup } from './file-findings.ts';

/** Sentences for a report's list of what to look at, and those that can stay folded. */
export interface FindingsSaid {
  readonly toMend: readonly string[];
  readonly noticed: readonly string[];
}

function groupSaid({ faults, fix }: ProblemGroup): string {
  const said = faults.flatMap(({ message, more }) => (more === '' ? [message] : [message, more]));
  return `${said.join(' ')} ${fix}`;
}

/**
 * What the files of a season hold beside what could be used: errors, then warnings, each with how many more are like
 * it and what mends it; apart from them what was only noticed.
 *
 * @param files of a season, as `readSeason` gives them
 * @example
 * findingsSaid(season.files).toMend[0]; // 'k-season40.csv: Row 15 (tag X00014), column E "pollen_collected": the pollen is called fresh but was 2 days old; …'
 */
export function findingsSaid(files: readonly SeasonFile[]): FindingsSaid {
  const found = files.map((file) => ({ file: file.file, ...fileFindings(file) }));
  const of = (severity: ProblemGroup['severity']) =>
    found.flatMap(({ file, groups }) =>
      groups.filter((group) => group.severity === severity).map((group) => `${file}: ${groupSaid(group)}`),
    );
  return {
    toMend: [...of('error'), ...of('warning')],
    noticed: found.flatMap(({ file, notices }) => notices.map((notice) => `${file}: ${notice}`)),
  };
}
