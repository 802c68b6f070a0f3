/** What a report says of its files, errors first. */
import type { SeasonFile } from '../../season/season.ts';
import type { ProblemGroup } from '../file-findings.ts';
import type { FindingsSaid } from '../findings.ts';
import { fileFindings } from './file-findings.ts';

function groupSaid({ faults, fix }: ProblemGroup): string {
  const said = faults.flatMap(({ message, more }) => (more === '' ? [message] : [message, more]));
  return `${said.join(' ')} ${fix}`;
}

/** What the files of a season hold beside what could be used. */
export function findingsSaid(files: readonly SeasonFile[]): FindingsSaid {
  const found = files.map((file) => ({ file: file.file, ...fileFindings(file) }));
  const of = (severity: ProblemGroup['severity']) =>
    found.flatMap(({ file, groups }) =>
      groups.filter((group) => group.severity === severity).map((group) => `${file} : ${groupSaid(group)}`),
    );
  return {
    toMend: [...of('error'), ...of('warning')],
    noticed: found.flatMap(({ file, notices }) => notices.map((notice) => `${file} : ${notice}`)),
  };
}
