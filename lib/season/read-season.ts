/** The door of the import floor: files become a Season. */

import { tidyName } from './cell.ts';
import { storageMap } from './cell-readings.ts';
import { COLUMNS, foldHeader, KINDS } from './columns.ts';
import { crossRows, type ReadCross } from './crosses.ts';
import { asMeant } from './csv-text.ts';
import type { DateSystem } from './date-cell.ts';
import { isIsoDate } from './dates.ts';
import { reportFarYears } from './far-years.ts';
import { flowerRows, type ReadFlowers } from './flowers.ts';
import { pollenAge, type VialRegister } from './pollen-age.ts';
import { problemAt } from './problems.ts';
import { leaveOutRepeats } from './repeats.ts';
import { type Records, reportNames } from './report-names.ts';
import type { RowCells } from './row-cells.ts';
import { SamePlants } from './same-plants.ts';
import { onceAVial } from './same-vial.ts';
import {
  type Cross,
  type DateOrder,
  type Endpoint,
  fruitAt,
  type ReadingAnswers,
  type Season,
  type SeasonFile,
  type Vial,
} from './season.ts';
import { makeSensible } from './sense.ts';
import { foldedMap, layOut, type SeasonSource, type Sheet } from './sheet.ts';
import { foldWord } from './values.ts';
import { reportOverdrawn } from './vial-doses.ts';
import { type ReadVial, vialRows } from './vials.ts';

/** How files are read. */
export interface ReadOptions {
  /** The day up to which things have happened (ISO 8601); the latest date in the crosses and vials where left out. */
  readonly asOf?: string;
  /** Which fruit set decides what counts as used. */
  readonly endpoint?: Endpoint;
  /** The order of day, month and year in dates that are not ISO 8601. */
  readonly dateOrder?: DateOrder;
  /** From which day a spreadsheet's own numbers for days count: 1900, or 1904 as older ones on a Mac do; 1900 where left out. */
  readonly dateSystem?: DateSystem;
  /** What the grower says that headers mean: from their header to our column. */
  readonly map?: ReadonlyMap<string, string>;
  /** Lists of names of one plant, as the grower says; the first of each is kept. */
  readonly same?: readonly (readonly string[])[];
  /** What the grower says that words of storage mean: from their word to a method, ours or another of theirs. */
  readonly storage?: ReadonlyMap<string, string>;
  /** The file of settings that these options were taken from, to be named in the result's provenance. */
  readonly settings?: { readonly file: string; readonly sha256: string };
}

function checkOptions({ asOf, map, same = [], storage = new Map() }: ReadOptions): void {
  if ([...storage].flat().some((word) => tidyName(word) === ''))
    throw new RangeError('readSeason: storage must lead from a word to a method, neither of them blank');
  if (same.some((names) => names.length < 2 || names.some((name) => tidyName(name) === ''))) {
    throw new RangeError('readSeason: same must hold lists of two names or more, none of them blank');
  }
  if (asOf !== undefined && !isIsoDate(asOf)) {
    throw new RangeError(`readSeason: asOf must be a day that exists, as YYYY-MM-DD, got "${asOf}"`);
  }
  const names = new Set(KINDS.flatMap((kind) => COLUMNS[kind].map(({ name }) => name)));
  for (const column of map?.values() ?? []) {
    if (!names.has(column))
      throw new RangeError(`readSeason: map must lead to a column of a season's files, got "${column}"`);
  }
}

function answersOf({
  dateOrder,
  dateSystem,
  map = new Map(),
  same = [],
  storage = new Map(),
  settings,
}: ReadOptions): ReadingAnswers {
  return {
    dateOrder: dateOrder ?? null,
    dateSystem: dateSystem ?? null,
    map: [...map].map(([header, column]) => ({ header, column })),
    same,
    storage: [...storage].map(([word, method]) => ({ word, method })),
    settings: settings ?? null,
  };
}

/** A file given twice is read once. */
function withoutRepeatedFiles(sheets: readonly Sheet[]): Sheet[] {
  const first = new Map<string, string>();
  return sheets.map((sheet) => {
    const content = JSON.stringify([sheet.sha256, sheet.part]);
    const earlier = first.get(content);
    if (earlier === undefined) first.set(content, sheet.file);
    if (earlier === undefined || sheet.rows.length === 0) return sheet;
    sheet.problems.push(problemAt(sheet.header, 'error', 'file-repeated', { details: { earlier } }));
    return { ...sheet, readable: false };
  });
}

function reportUnusedMap(sheets: readonly Sheet[], sources: ReadOptions['map']): void {
  const used = new Set(
    sheets.flatMap(({ columns }) => [...columns.values()].map(({ header }) => foldHeader(header))),
  );
  for (const [header, column] of sources ?? []) {
    if (sheets.length === 0 || used.has(foldHeader(header))) continue;
    const place = sheets[0].header;
    sheets[0].problems.push(
      problemAt(place, 'warning', 'map-header-missing', { value: header, details: { column } }),
    );
  }
}

/** Tells the first file of names that were to be joined to another and stand nowhere. */
function reportUnmetNames([first]: readonly Sheet[], same: SamePlants): void {
  for (const name of first === undefined ? [] : same.neverMet())
    first.problems.push(problemAt(first.header, 'warning', 'same-name-missing', { value: name }));
}

/** Tells the first file of words of storage that were said to mean a method and stand nowhere. */
function reportUnmetStorage(sheets: readonly Sheet[], storage: ReadonlyMap<string, string>): void {
  const [first] = sheets;
  if (first === undefined || storage.size === 0) return;
  const met = new Set(
    sheets.flatMap(({ readings }) => [...(readings.get('storage')?.known.keys() ?? [])].map(foldWord)),
  );
  for (const [word, method] of storage) {
    if (met.has(foldWord(word))) continue;
    first.problems.push(
      problemAt(first.header, 'warning', 'storage-word-missing', { value: word, details: { method } }),
    );
  }
}

function vialsOf(sheets: readonly Sheet[], asOf: string | undefined): ReadVial[] {
  const read = sheets.filter(({ kind, readable }) => kind === 'vials' && readable).flatMap(vialRows);
  for (const { vial, cells } of read) {
    if (asOf === undefined || vial.collected <= asOf) continue;
    cells.report('error', 'future-date', { column: 'collected', details: { asOf } });
  }
  const standing = read.filter(({ cells }) => !cells.leftOut);
  leaveOutRepeats(standing, {
    tag: ({ vial }) => vial.vial,
    key: ({ vial }) => vial.vial,
    content: ({ vial }) => vial,
    column: 'vial',
    repeated: 'vial-repeated',
    conflict: 'vial-conflict',
  });
  return standing.filter(({ cells }) => !cells.leftOut);
}

function registerOf(sheets: readonly Sheet[], vials: readonly Vial[]): VialRegister {
  const files = sheets.filter(({ kind }) => kind === 'vials');
  const named = files.flatMap(({ rows, columns }) => {
    const placed = columns.get('vial');
    return placed === undefined
      ? []
      : rows.map(({ cells }) => tidyName(asMeant((cells[placed.index] ?? '').trim())));
  });
  return { given: files.length > 0, named: new Set(named), vials: new Map(vials.map((v) => [v.vial, v])) };
}

/** Tags are unique within a season, for each grower who names themselves. */
function tagKey({ season, grower, crossId }: Cross): string {
  return JSON.stringify([season, grower, crossId]);
}

function crossesOf(sheets: readonly Sheet[], asOf: string | undefined): ReadCross[] {
  const read: ReadCross[] = [];
  for (const sheet of sheets) {
    if (sheet.kind !== 'crosses' || !sheet.readable) continue;
    for (const each of crossRows(sheet)) {
      makeSensible(each, asOf ?? null);
      if (!each.cells.leftOut) read.push(each);
    }
  }
  leaveOutRepeats(read, {
    tag: ({ cross }) => cross.crossId,
    key: ({ cross }) => tagKey(cross),
    content: ({ cross }) => cross,
    column: 'cross_id',
    repeated: 'tag-repeated',
    conflict: 'tag-conflict',
  });
  return read.filter(({ cells }) => !cells.leftOut);
}

function flowersOf(sheets: readonly Sheet[]): ReadFlowers[] {
  return sheets.filter(({ kind, readable }) => kind === 'flowers' && readable).flatMap(flowerRows);
}

/** The file's columns from left to right, each with the column of ours that it is read as. */
function columnsOf({ headers, columns }: Sheet): SeasonFile['columns'] {
  const byIndex = new Map([...columns].map(([column, { index }]) => [index, column]));
  return headers.map((header, index) => ({ header: header.trim(), column: byIndex.get(index) ?? null }));
}

function accountOf(sheet: Sheet, used: number): SeasonFile {
  const { file, kind, sha256, encoding, delimiter, rows } = sheet;
  const problems = onceAVial([...sheet.problems].sort((a, b) => a.line - b.line));
  return {
    file,
    kind,
    sha256,
    encoding,
    delimiter,
    columns: columnsOf(sheet),
    rows: rows.length,
    used,
    leftOut: rows.length - used,
    problems,
  };
}

/** How many records of each sheet count: a cross counts where its outcome is known at the endpoint. */
function usedBySheet({ crosses, vials, flowers }: Records, endpoint: Endpoint): Map<Sheet, number> {
  const counts = new Map<Sheet, number>();
  const count = ({ cells: { sheet } }: { readonly cells: RowCells }): void =>
    void counts.set(sheet, (counts.get(sheet) ?? 0) + 1);
  const harvests = crosses.some(({ cross }) => cross.harvestedOn !== null);
  for (const each of crosses) if (fruitAt(each.cross, endpoint, harvests) !== null) count(each);
  vials.forEach(count);
  flowers.forEach(count);
  return counts;
}

/** The latest date on which something happened; flowers expected next season have not. */
function latestPast({ crosses, vials }: Records): string | null {
  let latest = '';
  // ISO dates sort as text, and a blank sorts first.
  const note = (date: string | null): void => {
    if (date !== null && date > latest) latest = date;
  };
  for (const { cross } of crosses) {
    note(cross.pollinationDate);
    note(cross.checkedOn);
    note(cross.harvestedOn);
  }
  for (const { vial } of vials) note(vial.collected);
  return latest || null;
}

/**
 * Reads the files of one or more seasons: crosses, vials, expected flowers, in any order, each told by its columns.
 *
 * It answers what was pollinated with what and what became of it, and accounts for every row: `rows = used + leftOut`
 * in each file, and each row left out has an error, or an outcome that is unknown or pending. Nothing in a file makes
 * it throw; what only the grower can tell is among `questions(season)`, and that file then gives no rows.
 *
 * @param sources file names as they are to be printed, and the files' bytes
 * @param options `asOf`, an ISO date; `endpoint`, `initial` or `final` fruit set; `dateOrder`; `dateSystem`; `map`; `same`; `storage`
 * @throws RangeError where an option is no date, no column, no list of names or no word
 * @example
 * const text = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome\nT1,2025-06-01,A,B,fresh,fruit';
 * const season = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(text) }]);
 * season.crosses[0].outcome; // 'fruit'
 * season.files[0].used; // 1
 */
export function readSeason(sources: readonly SeasonSource[], options: ReadOptions = {}): Season {
  checkOptions(options);
  const { asOf, endpoint = 'initial', map = new Map() } = options;
  const same = new SamePlants(options.same ?? []);
  const { storage = new Map() } = options;
  const sheetOptions = { ...options, map: foldedMap(map), same, storage: storageMap(storage) };
  const sheets = withoutRepeatedFiles(sources.flatMap((source) => layOut(source, sheetOptions)));
  reportUnusedMap(sheets, map);

  const readVials = vialsOf(sheets, asOf);
  const readCrosses = crossesOf(sheets, asOf);
  const readFlowers = flowersOf(sheets);
  const vials = readVials.map(({ vial }) => vial);
  const register = registerOf(sheets, vials);
  for (const { cross, cells } of readCrosses) cross.ageDays = pollenAge(cross, register, cells);
  const crosses = readCrosses.map(({ cross }) => cross);
  const records = { crosses: readCrosses, vials: readVials, flowers: readFlowers };
  reportFarYears(records);
  reportOverdrawn(readCrosses, vials);
  reportNames(records);
  reportUnmetNames(sheets, same);
  reportUnmetStorage(sheets, storage);

  const used = usedBySheet(records, endpoint);
  return {
    crosses,
    vials,
    flowers: readFlowers.map(({ flowers }) => flowers),
    files: sheets.map((sheet) => accountOf(sheet, used.get(sheet) ?? 0)),
    asOf: asOf ?? latestPast(records),
    endpoint,
    answers: answersOf(options),
  };
}
