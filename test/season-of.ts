import type { Cross, Season, SeasonFile, Vial } from '../lib/season/season.ts';

const BLANK: Cross = {
  file: 'crosses.csv',
  line: 2,
  row: 2,
  crossId: '1',
  pollinationDate: '2025-06-20',
  season: '2025',
  seedParent: 'Lantern Creek',
  pollenParent: 'Salt Moon',
  storage: 'fresh',
  ageDays: 0,
  pollenCollected: null,
  vial: null,
  outcome: 'fruit',
  control: null,
  grower: null,
  wave: null,
  checkedOn: null,
  harvestedOn: null,
  bagged: null,
  seeds: null,
  sown: null,
  germinated: null,
  fruitWeightGrams: null,
  identifiedBy: null,
  note: null,
};

/** A season made of what a test says about its crosses; the rest of each cross is filled in. */
export function seasonOf(
  crosses: readonly Partial<Cross>[],
  season: Partial<Omit<Season, 'crosses'>> & { readonly vials?: readonly Vial[] } = {},
): Season {
  const full = crosses.map((cross, i) => ({
    ...BLANK,
    crossId: String(i + 1),
    line: i + 2,
    row: i + 2,
    ...cross,
  }));
  return { crosses: full, vials: [], flowers: [], files: [], asOf: null, endpoint: 'initial', ...season };
}

/** `fruits` taken flowers and the rest not, all otherwise alike. */
export function flowersOf(fruits: number, flowers: number, cross: Partial<Cross> = {}): Partial<Cross>[] {
  return Array.from({ length: flowers }, (_, i) => ({ ...cross, outcome: i < fruits ? 'fruit' : 'none' }));
}

/** A crosses file as the reader reports it. */
export function crossesFile(rows: number, used: number, problems: SeasonFile['problems'] = []): SeasonFile {
  return {
    file: 'crosses.csv',
    kind: 'crosses',
    sha256: '',
    encoding: 'utf-8',
    delimiter: ',',
    columns: [],
    rows,
    used,
    leftOut: rows - used,
    problems,
  };
}
