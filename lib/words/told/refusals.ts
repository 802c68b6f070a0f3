/** What fills the sentence of a refusal, before a language says it. */

import type { Refusal } from '../../analysis/refusal.ts';
import type { Problem, Season } from '../../season/season.ts';

/** Details of a refusal as every language takes them. */
export interface RefusalDetails {
  readonly [name: string]: string | number | null;
}

/** Where vials or flowers could be read, only the crosses files are meant by "no usable row". */
function kindConcerned({ vials, flowers }: Season, kind: string): boolean {
  return vials.length + flowers.length === 0 || kind === 'crosses';
}

/** Which files, which fault, how many rows. */
export function detailsOf(
  { code, fault, others = [] }: Refusal,
  season: Season,
  words: {
    readonly problemWords: (problem: Problem) => { readonly message: string; readonly fix: string };
    readonly joined: (parts: readonly string[]) => string;
    readonly headed: (head: string, text: string) => string;
  },
): RefusalDetails {
  const listed = season.files.filter(
    ({ kind }) => (code !== 'no-usable-row' && code !== 'nothing-entered') || kindConcerned(season, kind),
  );
  // Of several files each question says which it is about.
  const several = listed.length > 1;
  const said = (fault === null ? [] : [fault, ...others]).map((problem) => {
    const { message, fix } = words.problemWords(problem);
    return { message: several ? words.headed(problem.file, message) : message, fix };
  });
  return {
    files: words.joined(listed.map(({ file }) => file)),
    cause: said.map(({ message }) => message).join(' ') || null,
    remedy: [...new Set(said.map(({ fix }) => fix))].join(' ') || null,
    questions: said.length,
    rows: season.crosses.length,
  };
}
