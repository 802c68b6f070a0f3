import { byCodePoint } from '../analysis/flowers.ts';
import { plantsApart, sharedNames } from '../analysis/plants-apart.ts';
import { type Refusal, uncountable } from '../analysis/refusal.ts';
import { plantsOf } from '../decisions/next-season.ts';
import { COLUMNS, KINDS } from '../season/columns.ts';
import { understandHeader } from '../season/header.ts';
import { questions } from '../season/problems.ts';
import type { Problem, Season, SeasonFile } from '../season/season.ts';
import { foldedMap } from '../season/sheet.ts';
import { type FailureCode, failureWords } from '../words/english-failures.ts';
import { placedWords } from '../words/english-problems.ts';
import { fixOnPage, REFUSAL_FIXES } from '../words/own-season.ts';
import { alsoInRows, problemGroups } from '../words/problem-groups.ts';
import { refusalDetails } from '../words/refusals.ts';

/** Like problems of a file: the first, and which other rows have it. */
export interface ProblemGroup {
  readonly problem: Problem;
  readonly message: string;
  readonly also: string;
  readonly fix: string;
}

/** What became of one file, and what only its grower can say about its columns. */
export interface FileReading extends Omit<SeasonFile, 'problems'> {
  readonly groups: readonly ProblemGroup[];
  /** Columns that are needed and stand under none of the headers. */
  readonly missing: readonly string[];
  /** Columns that several headers, of different spelling, could mean. */
  readonly unclear: readonly { readonly column: string; readonly headers: readonly string[] }[];
}

/** What was read, as the grower is asked to confirm it. */
export interface Reading {
  readonly files: readonly FileReading[];
  /** The first date column whose order only the grower can tell. */
  readonly dateQuestion: Problem | null;
  /** Why nothing could be counted; null where it can. */
  readonly refusal: { readonly code: FailureCode; readonly message: string; readonly fix: string } | null;
  /** Seed parents in the order of their first flower. */
  readonly seedParents: readonly string[];
  /** Plant names that stand in the rows of several growers. */
  readonly sameNames: readonly string[];
  /** Names of plants as they stand in the files, in the order of the alphabet. */
  readonly names: readonly string[];
  /** The same with plants of several growers told apart. */
  readonly plants: readonly string[];
  /** Headers that were not understood, and the columns that they could mean. */
  readonly unused: readonly string[];
  readonly columns: readonly string[];
  /** Names that look like one plant: the commoner one first. */
  readonly alike: readonly (readonly [kept: string, other: string])[];
  /** Whether a file of expected flowers was among them. */
  readonly flowersGiven: boolean;
}

/**
 * What a season's reading is shown as.
 *
 * @param season as `readSeason` gives it
 * @param map what the grower said that headers mean
 */
export function readingOf(season: Season, map: ReadonlyMap<string, string>): Reading {
  const refusal = uncountable(season);
  return {
    files: season.files.map((file) => fileReading(file, map)),
    dateQuestion: questions(season).find(({ code }) => code.startsWith('date-order')) ?? null,
    refusal: refusal && refusalWords(refusal, season),
    seedParents: [...new Set(season.crosses.map(({ seedParent }) => seedParent))],
    sameNames: sharedNames(season.crosses),
    names: sortedPlants(season),
    plants: sortedPlants(plantsApart(season).season),
    ...columnsLeft(season),
    alike: alikeNames(season),
    flowersGiven: season.files.some(({ kind }) => kind === 'flowers'),
  };
}

function sortedPlants(season: Season): string[] {
  return [...plantsOf(season)].sort(byCodePoint);
}

function columnsLeft({ files }: Season): Pick<Reading, 'unused' | 'columns'> {
  const headers = files.flatMap(({ columns }) => columns);
  const taken = new Set(headers.map(({ column }) => column));
  const open = headers.filter(({ header, column }) => column === null && header !== '');
  const kinds = KINDS.filter((kind) => files.some((file) => file.kind === kind));
  const names = kinds.flatMap((kind) => COLUMNS[kind].map(({ name }) => name));
  return {
    unused: [...new Set(open.map(({ header }) => header))],
    columns: [...new Set(names)].filter((name) => !taken.has(name)),
  };
}

function alikeNames({ files }: Season): [kept: string, other: string][] {
  const found = files
    .flatMap(({ problems }) => problems)
    .filter(
      ({ code, details }) =>
        code === 'name-slip' || (code === 'name-spellings' && String(details.name).endsWith('parent')),
    );
  return found.map(({ details }) => [String(details.usual), String(details.spelling)]);
}

/** Faults of a file in which there is no sheet to mend. */
const NO_SHEET: ReadonlySet<string> = new Set([
  'not-text',
  'other-format',
  'spreadsheet-file',
  'workbook-locked',
]);

/** The command's sentence, with what the page can do about it. */
function refusalWords(refusal: Refusal, season: Season): Reading['refusal'] {
  const { code, fault } = refusal;
  const { message, fix } = failureWords(code, refusalDetails(refusal, season));
  if (fault !== null && NO_SHEET.has(fault.code)) return { code, message, fix: fixOnPage(fault, fix) };
  return { code, message, fix: REFUSAL_FIXES[code] ?? fix };
}

function groupOf(group: readonly Problem[], columns: SeasonFile['columns']): ProblemGroup {
  const problem = group[0]!;
  const { message, fix } = placedWords(problem, columns);
  return { problem, message, also: alsoInRows(group), fix: fixOnPage(problem, fix) };
}

function fileReading({ problems, ...file }: SeasonFile, map: ReadonlyMap<string, string>): FileReading {
  const groups = problemGroups(problems).map((group) => groupOf(group, file.columns));
  if (file.kind === 'unknown') return { ...file, groups, missing: [], unclear: [] };
  const headers = file.columns.map(({ header }) => header);
  const { missing, unclear } = understandHeader(headers, foldedMap(map), file.kind);
  const askable = unclear.filter((each) => new Set(each.headers).size > 1);
  // Some headers are told by what stands below them.
  const placed = new Set(file.columns.map(({ column }) => column));
  const asked = headers.length === 0 ? [] : missing.filter((column) => !placed.has(column));
  return { ...file, groups, missing: asked, unclear: askable };
}
