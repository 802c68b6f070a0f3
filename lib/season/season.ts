/** What a season holds once its files are read: crosses, vials, expected flowers, and what was wrong. */

export type Outcome = 'fruit' | 'dropped' | 'none' | 'unknown' | 'pending';
export type Control = 'unpollinated' | 'selfed';
export type Endpoint = 'initial' | 'final';
export type FileKind = 'crosses' | 'vials' | 'flowers' | 'unknown';
export type DateOrder = 'dmy' | 'mdy' | 'ymd';

/** Where a record stands: `line` is the file's line where it starts (header 1), `row` what a spreadsheet shows. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly row: number;
}

/** One hand-pollinated flower. Dates are ISO 8601 (YYYY-MM-DD); what the file leaves blank is null. */
export interface Cross extends Place {
  readonly crossId: string;
  readonly pollinationDate: string;
  /** The grower's word for the season; the calendar year of the pollination where the file leaves it blank. */
  readonly season: string;
  readonly seedParent: string;
  /** Null for unpollinated controls only. */
  readonly pollenParent: string | null;
  /** `fresh`, `room`, `refrigerated`, `frozen` or the grower's own word; null for unpollinated controls only. */
  readonly storage: string | null;
  /** Whole days from collection to pollination: 0 for fresh pollen by definition, null where not known. */
  readonly ageDays: number | null;
  readonly pollenCollected: string | null;
  readonly vial: string | null;
  readonly outcome: Outcome;
  readonly control: Control | null;
  readonly grower: string | null;
  readonly wave: string | null;
  readonly checkedOn: string | null;
  readonly harvestedOn: string | null;
  readonly bagged: boolean | null;
  readonly seeds: number | null;
  readonly sown: number | null;
  readonly germinated: number | null;
  readonly fruitWeightGrams: number | null;
  readonly identifiedBy: string | null;
  readonly note: string | null;
}

/** One stored pollen lot. */
export interface Vial extends Place {
  readonly vial: string;
  readonly pollenParent: string;
  readonly collected: string;
  readonly storage: string;
  /** Flowers it can still serve; null where the file leaves it blank. */
  readonly dosesLeft: number | null;
  /** Flowers it could serve when it was filled; absent where the file does not say. */
  readonly dosesFilled?: number;
  readonly thaws: number | null;
  readonly note: string | null;
}

/** What next season is expected to offer on one seed parent. */
export interface ExpectedFlowers extends Place {
  readonly seedParent: string;
  readonly flowers: number;
  readonly opensFrom: string | null;
  readonly opensTo: string | null;
}

/**
 * One thing found in a file. `error`: the row is left out; `warning`: the row is used; `notice`: a guess, an
 * unknown column. `code` is stable; `details` fills the sentence that `words/` makes of it.
 */
export interface Problem extends Place {
  readonly severity: 'error' | 'warning' | 'notice';
  /** The column's header as the file has it; null where the whole record or file is meant. */
  readonly column: string | null;
  /** The offending cell as it stands in the file; null where no cell is meant. */
  readonly value: string | null;
  readonly code: string;
  readonly details: Readonly<Record<string, string | number>>;
  /** What names the record: the flower's tag, the vial; absent where it has none or the whole file is meant. */
  readonly record?: string;
}

/** A column of a file: its header as it stands there, and the column of ours it is read as, null where none. */
export interface FileColumn {
  readonly header: string;
  readonly column: string | null;
}

/** What became of one file. Always `rows = used + leftOut`. */
export interface SeasonFile {
  readonly file: string;
  readonly kind: FileKind;
  readonly sha256: string;
  readonly encoding: string;
  readonly delimiter: string;
  /** The file's columns from left to right, as they were understood. */
  readonly columns: readonly FileColumn[];
  readonly rows: number;
  /** Rows that count: for crosses, those whose outcome is known at the endpoint. */
  readonly used: number;
  /** Rows left out: each has a problem of severity `error`, or an outcome that is unknown or pending. */
  readonly leftOut: number;
  readonly problems: readonly Problem[];
}

/** What the grower said about reading the files; null or empty where nothing was said. */
export interface ReadingAnswers {
  readonly dateOrder: DateOrder | null;
  readonly dateSystem: 1900 | 1904 | null;
  readonly map: readonly { readonly header: string; readonly column: string }[];
  /** Lists of names of one plant. */
  readonly same: readonly (readonly string[])[];
  /** What words of storage mean. */
  readonly storage: readonly { readonly word: string; readonly method: string }[];
  /** The file of settings that answers were taken from. */
  readonly settings: { readonly file: string; readonly sha256: string } | null;
}

/** A season as read: nothing in it is computed from a model. */
export interface Season {
  readonly crosses: readonly Cross[];
  readonly vials: readonly Vial[];
  readonly flowers: readonly ExpectedFlowers[];
  readonly files: readonly SeasonFile[];
  /** ISO date up to which things have happened: the option, or the latest date in the files. */
  readonly asOf: string | null;
  readonly endpoint: Endpoint;
  /** Absent where the season was not read from files. */
  readonly answers?: ReadingAnswers;
}

/**
 * The outcome of a flower at an endpoint: did it set fruit?
 *
 * Initial fruit set counts `fruit` and `dropped` as set; final fruit set counts `fruit` only, and where the
 * season fills `harvested_on` at all, a fruit that has no harvest date is still pending (definitions: fruits at
 * the check ÷ flowers pollinated, and fruits harvested ÷ flowers pollinated).
 *
 * @returns 1 for a fruit, 0 for none, null where it is unknown or too early to say
 */
export function fruitAt(cross: Cross, endpoint: Endpoint, harvestsRecorded: boolean): 0 | 1 | null {
  if (cross.outcome === 'unknown' || cross.outcome === 'pending') return null;
  if (cross.outcome === 'none') return 0;
  if (endpoint === 'initial') return 1;
  if (cross.outcome === 'dropped') return 0;
  return harvestsRecorded && cross.harvestedOn === null ? null : 1;
}

/** Whether any cross of the season has a harvest date, which decides how final fruit set is counted. */
export function recordsHarvests(crosses: readonly Cross[]): boolean {
  return crosses.some((cross) => cross.harvestedOn !== null);
}
