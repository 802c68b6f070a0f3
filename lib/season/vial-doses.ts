/** Vials from which more flowers were pollinated than they had doses. */

import type { ReadCross } from './crosses.ts';
import type { Vial } from './season.ts';

function usesByVial(
  crosses: readonly ReadCross[],
  filled: ReadonlyMap<string, number>,
): Map<string, ReadCross[]> {
  const uses = new Map<string, ReadCross[]>();
  for (const each of crosses) {
    const { vial } = each.cross;
    if (vial === null || !filled.has(vial)) continue;
    const before = uses.get(vial);
    if (before === undefined) uses.set(vial, [each]);
    else before.push(each);
  }
  return uses;
}

function byDate({ cross: a }: ReadCross, { cross: b }: ReadCross): number {
  const [one, two] = [`${a.pollinationDate} ${a.crossId}`, `${b.pollinationDate} ${b.crossId}`];
  return one < two ? -1 : Number(one > two);
}

/**
 * A warning at the first flower, by date, past the doses that its vial was filled with.
 *
 * `doses_left` is what is left today, so that past flowers never contradict it; only `doses_filled` can be used up.
 */
export function reportOverdrawn(crosses: readonly ReadCross[], vials: readonly Vial[]): void {
  const filled = new Map(
    vials.flatMap(({ vial, dosesFilled }) => (dosesFilled === undefined ? [] : [[vial, dosesFilled]])),
  );
  if (filled.size === 0) return;
  for (const [vial, uses] of usesByVial(crosses, filled)) {
    const doses = filled.get(vial)!;
    const beyond = uses.sort(byDate)[doses];
    if (beyond === undefined) continue;
    const details = { vial, doses, uses: uses.length };
    beyond.cells.report('warning', 'vial-beyond-doses', { column: 'vial', details });
  }
}
