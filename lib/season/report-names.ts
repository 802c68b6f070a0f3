/** What is told about names, over all files of a season together: spellings of one name, likely slips. */

import type { ReadCross } from './crosses.ts';
import type { ReadFlowers } from './flowers.ts';
import { reportGarbled } from './garbled-names.ts';
import { reportNameSlips } from './name-slips.ts';
import { NameTally } from './name-tally.ts';
import { reportSpellings } from './spellings.ts';
import type { ReadVial } from './vials.ts';

/** The records of all files. */
export interface Records {
  readonly crosses: readonly ReadCross[];
  readonly vials: readonly ReadVial[];
  readonly flowers: readonly ReadFlowers[];
}

function plantsOf({ crosses, vials, flowers }: Records): NameTally {
  const tally = new NameTally();
  for (const { cross, cells } of crosses) {
    tally.add(cross.seedParent, 'seed_parent', cells);
    if (cross.pollenParent !== null) tally.add(cross.pollenParent, 'pollen_parent', cells);
  }
  for (const { vial, cells } of vials) tally.add(vial.pollenParent, 'pollen_parent', cells);
  for (const { flowers: expected, cells } of flowers) tally.add(expected.seedParent, 'seed_parent', cells);
  return tally;
}

function storagesOf({ crosses, vials }: Records): NameTally {
  const tally = new NameTally();
  for (const { cross, cells } of crosses)
    if (cross.storage !== null) tally.add(cross.storage, 'storage', cells);
  for (const { vial, cells } of vials) tally.add(vial.storage, 'storage', cells);
  return tally;
}

function growersOf({ crosses }: Records): NameTally {
  const tally = new NameTally();
  for (const { cross, cells } of crosses) if (cross.grower !== null) tally.add(cross.grower, 'grower', cells);
  return tally;
}

/** Tells which names of plants, storage methods and growers look like one, which may be slips, and which lost letters. */
export function reportNames(records: Records): void {
  for (const tally of [plantsOf(records), storagesOf(records), growersOf(records)]) {
    reportGarbled(tally);
    reportSpellings(tally);
    reportNameSlips(tally);
  }
}
