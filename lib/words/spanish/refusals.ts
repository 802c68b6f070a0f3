/** What fills the sentence of a refusal: which files, which fault, how many rows. */

import type { Refusal } from '../../analysis/refusal.ts';
import type { Season } from '../../season/season.ts';
import type { FailureDetails } from '../english-failures.ts';
import { joined } from './numbers.ts';
import { problemWords } from './problems.ts';

/** The details that `failureWords` needs for a refusal of this season. */
export function refusalDetails({ code, fault, others = [] }: Refusal, season: Season): FailureDetails {
  const words = (fault === null ? [] : [fault, ...others]).map(problemWords);
  const listed = season.files.filter(({ kind }) => code !== 'no-usable-row' || kindConcerned(season, kind));
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
