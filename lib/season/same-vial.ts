/** What a vial's flowers say against its register is told once a vial: one that was filled again contradicts each of them. */

import type { Problem } from './season.ts';

/** What each flower of a vial may say otherwise than the file of vials. */
const OF_A_VIAL: ReadonlySet<string> = new Set([
  'vial-before-collected',
  'vial-father-differs',
  'vial-storage-differs',
]);

/** The first of a group with how many more there are and their rows. */
function together([first, ...others]: readonly [Problem, ...Problem[]]): Problem {
  if (others.length === 0) return first;
  const rows = others.map(({ row }) => row).join('\n');
  return { ...first, details: { ...first.details, more: others.length, rows } };
}

/**
 * Warnings that say the same of one vial as one, at its first flower: `more` counts the others, `rows` lists them.
 *
 * @param problems of one file, top row first
 */
export function onceAVial(problems: readonly Problem[]): Problem[] {
  const byVial = new Map<string, [Problem, ...Problem[]]>();
  const groups = problems.flatMap((problem): [Problem, ...Problem[]][] => {
    const { code, details } = problem;
    if (!OF_A_VIAL.has(code)) return [[problem]];
    const key = JSON.stringify([code, details.vial, details.cross ?? null]);
    const known = byVial.get(key);
    known?.push(problem);
    if (known !== undefined) return [];
    const group: [Problem, ...Problem[]] = [problem];
    byVial.set(key, group);
    return [group];
  });
  return groups.map(together);
}
