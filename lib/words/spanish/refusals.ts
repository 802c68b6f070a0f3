/** What fills the sentence of a refusal: which files, which fault, how many rows. */
import type { Refusal } from '../../analysis/refusal.ts';
import type { Season } from '../../season/season.ts';
import type { FailureDetails } from '../english-failures.ts';
import { detailsOf } from '../told/refusals.ts';
import { headed, joined } from './numbers.ts';
import { problemWords } from './problems.ts';

/** The details that `failureWords` needs for a refusal of this season. */
export function refusalDetails(refusal: Refusal, season: Season): FailureDetails {
  return detailsOf(refusal, season, { problemWords, joined, headed });
}
