/** Why the command could do nothing, and what to do about it. */

import type { FailureCode, FailureDetails, FailureWords } from '../english-failures.ts';
import { INPUT_FAILURES } from './failures-of-input.ts';
import { OUTPUT_FAILURES } from './failures-of-output.ts';

type Sentence = (details: FailureDetails) => FailureWords;

const FAILURES: Readonly<Record<FailureCode, Sentence>> = { ...INPUT_FAILURES, ...OUTPUT_FAILURES };

/** The sentences for a failure. */
export function failureWords(code: FailureCode, details: FailureDetails): FailureWords {
  return FAILURES[code](details);
}
