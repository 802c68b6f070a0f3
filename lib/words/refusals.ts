/** What fills the sentence of a refusal: which files, which fault, how many rows. */

import type { Refusal } from '../analysis/refusal.ts';
import type { Season } from '../season/season.ts';
import type { FailureDetails } from './english-failures.ts';
import { problemWords } from './english-problems.ts';
import { joined } from './numbers.ts';

/** The details that `failureWords` needs for a refusal of this season. */
export function refusalDetails({ code, fault, others = [] }: Refusal, season: Season): FailureDetails {
  const listed = season.files.filter(({ kind }) => code !== 'no-usable-row' || kindConcerned(season, kind));
  // Of several files each question says which it is about.
  const several = listed.length > 1;
  const words = (fault === null ? [] : [fault, ...others]).map((problem) => {
    const { message, fix } = problemWords(problem);
    return { message: several ? `${problem.file}: ${message}` : message, fix };
  });
  return {
    files: joined(listed.map(({ file }) => file)),
    cause: words.map(({ message }) => message).join(' ') || null,
    remedy: [...new Set(words.map(({ fix }) => fix))].join(' ') || null,
    questions: words.length,
    rows: season.crosses.length,
  };
}

/** Where vials or flowers could be read, only the crosses files are meant by "no usable row". */
function kindConcerned({ vials, flowers }: Season, kind: string): boolean {
  return vials.length + flowers.length === 0 || kind === 'crosses';
}
