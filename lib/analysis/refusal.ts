import { questions } from '../season/problems.ts';
import type { Problem, Season } from '../season/season.ts';
import { usedFlowers } from './flowers.ts';

/** Why nothing can be done with the files: a code whose sentence is in `words/`, and the fault that says it best. */
export interface Refusal {
  readonly code: 'question-open' | 'no-usable-row' | 'nothing-entered' | 'no-crosses' | 'no-usable-outcome';
  readonly fault: Problem | null;
  /** Further open questions. */
  readonly others?: readonly Problem[];
}

/** No row can be used: the first fault that was found says why. */
function noUsableRow(files: Season['files']): Refusal {
  const problems = files.flatMap((file) => file.problems);
  const fault =
    problems.find(({ severity }) => severity === 'error') ?? problems.find(({ code }) => code === 'own-file');
  return { code: fault?.code === 'nothing-entered' ? fault.code : 'no-usable-row', fault: fault ?? null };
}

/**
 * Why a season as read gives nothing to check: a question is open that only the grower can answer, or no file gives a
 * single row. Null where it does.
 */
export function unusable(season: Season): Refusal | null {
  const [question, ...others] = questions(season);
  if (question !== undefined) return { code: 'question-open', fault: question, others };
  const { crosses, vials, flowers, files } = season;
  return crosses.length + vials.length + flowers.length > 0 ? null : noUsableRow(files);
}

/**
 * Why a season as read has no flowers to count: what makes it unusable, no crosses file, no cross, or no cross with a
 * known outcome. Null where it has.
 */
export function uncountable(season: Season): Refusal | null {
  const refusal = unusable(season);
  if (refusal !== null) return refusal;
  const crosses = season.files.filter(({ kind }) => kind === 'crosses');
  if (crosses.length === 0) return { code: 'no-crosses', fault: null };
  if (season.crosses.length === 0) return noUsableRow(crosses);
  return usedFlowers(season).length === 0 ? { code: 'no-usable-outcome', fault: null } : null;
}
