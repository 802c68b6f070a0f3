/** A season → the files that hold it: CSV as spreadsheets open it, described by a Table Schema. */

import { COLUMNS, type KnownKind } from './columns.ts';
import { csvText } from './csv-text.ts';
import { type DataPackageWords, dataPackage } from './data-package.ts';
import type { Cross, ExpectedFlowers, Season, Vial } from './season.ts';

/** A file to be written: its name and its whole text. */
export interface SeasonText {
  readonly name: string;
  readonly text: string;
}

type Value = string | number | boolean | null;
type Cells<T> = Readonly<Record<string, (record: T) => Value>>;

const CROSS: Cells<Cross> = {
  cross_id: ({ crossId }) => crossId,
  pollination_date: ({ pollinationDate }) => pollinationDate,
  seed_parent: ({ seedParent }) => seedParent,
  pollen_parent: ({ pollenParent }) => pollenParent,
  storage: ({ storage }) => storage,
  pollen_collected: ({ pollenCollected }) => pollenCollected,
  pollen_age_days: ({ ageDays }) => ageDays,
  vial: ({ vial }) => vial,
  outcome: ({ outcome }) => outcome,
  season: ({ season }) => season,
  grower: ({ grower }) => grower,
  wave: ({ wave }) => wave,
  checked_on: ({ checkedOn }) => checkedOn,
  harvested_on: ({ harvestedOn }) => harvestedOn,
  bagged: ({ bagged }) => bagged,
  control: ({ control }) => control,
  seeds: ({ seeds }) => seeds,
  sown: ({ sown }) => sown,
  germinated: ({ germinated }) => germinated,
  fruit_weight_g: ({ fruitWeightGrams }) => fruitWeightGrams,
  identified_by: ({ identifiedBy }) => identifiedBy,
  note: ({ note }) => note,
};

const VIAL: Cells<Vial> = {
  vial: ({ vial }) => vial,
  pollen_parent: ({ pollenParent }) => pollenParent,
  collected: ({ collected }) => collected,
  storage: ({ storage }) => storage,
  doses_left: ({ dosesLeft }) => dosesLeft,
  doses_filled: ({ dosesFilled }) => dosesFilled ?? null,
  thaws: ({ thaws }) => thaws,
  note: ({ note }) => note,
};

const FLOWERS: Cells<ExpectedFlowers> = {
  seed_parent: ({ seedParent }) => seedParent,
  flowers: ({ flowers }) => flowers,
  opens_from: ({ opensFrom }) => opensFrom,
  opens_to: ({ opensTo }) => opensTo,
};

/** A number in plain digits: `1e-7` is written out, since spreadsheets and people read it so. */
function digits(value: number): string {
  const text = String(value);
  const small = /^\d(?:\.(\d+))?e-(\d+)$/.exec(text);
  return small === null ? text : value.toFixed((small[1]?.length ?? 0) + Number(small[2]));
}

function cellText(value: Value): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' ? digits(value) : value;
}

function tableText<T>(kind: KnownKind, cells: Cells<T>, records: readonly T[]): string {
  const names = COLUMNS[kind].map(({ name }) => name);
  return csvText([names, ...records.map((record) => names.map((name) => cellText(cells[name]!(record))))]);
}

/**
 * The files of a season as they would be kept cleanly: `crosses.csv`, `vials.csv` and `flowers.csv`, each where the
 * season has such records, and `datapackage.json`, which describes their columns as a Tabular Data Package.
 *
 * Answers: how do I hand on, or go on with, what was understood of my files? It holds the rows that were used and those
 * whose outcome is unknown or pending, not rows that were left out for an error, nor columns of one's own. The CSV is
 * UTF-8 with a byte-order mark and CR LF; a cell that a spreadsheet could take for a formula gets an apostrophe in
 * front, which `readSeason` takes away. Reading the files with the season's own `asOf` and `endpoint` gives the season
 * again, except for the places of its rows.
 *
 * @param season as `readSeason` gives it
 * @param words descriptions of the package and its columns for `datapackage.json`; none where left out
 * @returns names and texts of files; nothing is written to a disk
 * @example
 * writeSeason(season).map(({ name }) => name); // ['crosses.csv', 'datapackage.json']
 */
export function writeSeason(season: Season, words: DataPackageWords = {}): SeasonText[] {
  const tables = [
    {
      kind: 'crosses',
      count: season.crosses.length,
      text: () => tableText('crosses', CROSS, season.crosses),
    },
    { kind: 'vials', count: season.vials.length, text: () => tableText('vials', VIAL, season.vials) },
    {
      kind: 'flowers',
      count: season.flowers.length,
      text: () => tableText('flowers', FLOWERS, season.flowers),
    },
  ] as const;
  const files = tables
    .filter(({ count }) => count > 0)
    .map(({ kind, text }) => ({ kind, name: `${kind}.csv`, text: text() }));
  const described = `${JSON.stringify(dataPackage(files, words), null, 2)}\n`;
  return [...files.map(({ name, text }) => ({ name, text })), { name: 'datapackage.json', text: described }];
}
