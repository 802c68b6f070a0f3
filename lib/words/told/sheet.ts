/** What is told of a crossing sheet: crosses for which no morning was found. */

import type { SheetFlower } from '../../decisions/crossing-sheet.ts';

/** A cross and its number of flowers. */
export interface CrossOfSheet {
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly flowers: number;
}

/** Crosses with fresh pollen whose two plants are expected to flower together on no morning that was found. */
export function crossesUnmet(flowers: readonly SheetFlower[]): readonly CrossOfSheet[] {
  const found: { seedParent: string; pollenParent: string; flowers: number }[] = [];
  for (const { seedParent, pollenParent, pollenThere } of flowers) {
    if (pollenThere) continue;
    const known = found.find((one) => one.seedParent === seedParent && one.pollenParent === pollenParent);
    if (known === undefined) found.push({ seedParent, pollenParent, flowers: 1 });
    else known.flowers += 1;
  }
  return found;
}
