/** What a report says of its files, before a language says it: errors first, then warnings, what was noticed apart. */

/** Faults that the same act mends, in words. */
interface Group {
  readonly severity: 'error' | 'warning';
  readonly faults: readonly { readonly message: string; readonly more: string }[];
  readonly fix: string;
}

/** Sentences for a report's list of what to look at, and those that can stay folded. */
export interface FindingsSaid {
  readonly toMend: readonly string[];
  readonly noticed: readonly string[];
}

function groupSaid({ faults, fix }: Group): string {
  const said = faults.flatMap(({ message, more }) => (more === '' ? [message] : [message, more]));
  return `${said.join(' ')} ${fix}`;
}

/** What the files of a season hold, each finding with its file; `mark` stands between the two. */
export function findingsTold<File extends { readonly file: string }>(
  files: readonly File[],
  fileFindings: (file: File) => { readonly groups: readonly Group[]; readonly notices: readonly string[] },
  mark = ':',
): FindingsSaid {
  const found = files.map((file) => ({ file: file.file, ...fileFindings(file) }));
  const of = (severity: Group['severity']) =>
    found.flatMap(({ file, groups }) =>
      groups
        .filter((group) => group.severity === severity)
        .map((group) => `${file}${mark} ${groupSaid(group)}`),
    );
  return {
    toMend: [...of('error'), ...of('warning')],
    noticed: found.flatMap(({ file, notices }) => notices.map((notice) => `${file}${mark} ${notice}`)),
  };
}
