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

interface Tallies {
  readonly plants: NameTally;
  readonly storages: NameTally;
  readonly growers: NameTally;
}

/** Every name by what it names; the crosses are gone through once, since fetching a million records is what takes time. */
function talliesOf({ crosses, vials, flowers }: Records): Tallies {
  const [plants, storages, growers] = [new NameTally(), new NameTally(), new NameTally()];
  for (const { cross, cells } of crosses) {
    plants.add(cross.seedParent, 'seed_parent', cells);
    if (cross.pollenParent !== null) plants.add(cross.pollenParent, 'pollen_parent', cells);
    if (cross.storage !== null) storages.add(cross.storage, 'storage', cells);
    if (cross.grower !== null) growers.add(cross.grower, 'grower', cells);
  }
  for (const { vial, cells } of vials) {
    plants.add(vial.pollenParent, 'pollen_parent', cells);
    storages.add(vial.storage, 'storage', cells);
  }
  for (const { flowers: expected, cells } of flowers) plants.add(expected.seedParent, 'seed_parent', cells);
  return { plants, storages, growers };
}

/** Tells which names of plants, storage methods and growers look like one, which may be slips, and which lost letters. */
export function reportNames(records: Records): void {
  const { plants, storages, growers } = talliesOf(records);
  for (const tally of [plants, storages, growers]) {
    reportGarbled(tally);
    reportSpellings(tally);
    reportNameSlips(tally);
  }
}
