/** A row of headers → which kind of file it is and which column of ours each of its columns is. */

import { COLUMNS, type Column, columnNamed, foldHeader, KINDS, type KnownKind } from './columns.ts';

/** Where a column of ours stands in a file, and what the grower calls it. */
export interface PlacedColumn {
  readonly index: number;
  readonly header: string;
}

/** How the headers of a file were understood. */
export interface Header {
  readonly kind: KnownKind | 'unknown';
  readonly columns: ReadonlyMap<string, PlacedColumn>;
  readonly guessed: readonly { readonly header: string; readonly column: string }[];
  readonly unknown: readonly string[];
  /** Columns of ours that two headers could mean. */
  readonly unclear: readonly { readonly column: string; readonly headers: readonly string[] }[];
  readonly missing: readonly string[];
  /** The kind that the columns tell where the grower says another and they are not that one's; else null. */
  readonly otherKind: KnownKind | null;
}

/** The grower's own word on what a header means: from the folded header to our column's name. */
export type HeaderMap = ReadonlyMap<string, string>;

/** How surely a header names a column: the grower says so, it is our name, it is a synonym. */
const [SAID, NAMED, GUESSED] = [3, 2, 1];

interface Claim extends PlacedColumn {
  readonly column: Column;
  readonly strength: number;
}

function claimOf(
  header: string,
  index: number,
  kind: KnownKind,
  map: HeaderMap,
  byValues: HeaderMap,
): Claim | null {
  const folded = foldHeader(header);
  const [said, told] = [map.get(folded), byValues.get(folded)];
  const named = (wanted: string | undefined) => COLUMNS[kind].find(({ name }) => name === wanted);
  const column = named(said) ?? columnNamed(header, kind) ?? named(told);
  if (column === undefined) return null;
  const own = folded === foldHeader(column.name);
  return { index, header, column, strength: column.name === said ? SAID : own ? NAMED : GUESSED };
}

function claimsOf(
  headers: readonly string[],
  kind: KnownKind,
  map: HeaderMap,
  byValues: HeaderMap = new Map(),
): Claim[] {
  return headers.flatMap((header, index) => claimOf(header.trim(), index, kind, map, byValues) ?? []);
}

/** How many different columns of one kind of file the cells of a record name. */
export function headersRecognised(cells: readonly string[], map: HeaderMap): number {
  const counts = KINDS.map(
    (kind) => new Set(claimsOf(cells, kind, map).map(({ column }) => column.name)).size,
  );
  return Math.max(...counts);
}

/** The kind whose required columns are best covered: at least two of them, and more surely than another's. */
function kindOf(headers: readonly string[], map: HeaderMap): KnownKind | 'unknown' {
  let best: KnownKind | 'unknown' = 'unknown';
  let highest = 0;
  for (const kind of KINDS) {
    const names = new Map<string, number>();
    for (const { column, strength } of claimsOf(headers, kind, map)) {
      if (column.required) names.set(column.name, Math.max(strength, names.get(column.name) ?? 0));
    }
    const sure = [...names.values()].filter((strength) => strength > GUESSED).length;
    const score = names.size * 100 + sure;
    if (names.size >= 2 && score > highest) [best, highest] = [kind, score];
  }
  return best;
}

function requiredOf(kind: KnownKind): string[] {
  return COLUMNS[kind].filter(({ required }) => required).map(({ name }) => name);
}

/** Another kind than the one said, where the columns are likelier its own: all of its needed ones, or more of them. */
function otherKindOf(
  headers: readonly string[],
  map: HeaderMap,
  said: KnownKind,
  incomplete: boolean,
): KnownKind | null {
  const other = kindOf(headers, map);
  if (other === 'unknown' || other === said) return null;
  const names = new Set(claimsOf(headers, other, map).map(({ column }) => column.name));
  return incomplete || requiredOf(other).every((name) => names.has(name)) ? other : null;
}

/** The claims on one column that are as strong as the strongest. */
function strongest(claims: readonly Claim[]): readonly Claim[] {
  const highest = Math.max(...claims.map(({ strength }) => strength));
  return claims.filter(({ strength }) => strength === highest);
}

/**
 * Understands a row of headers. A column of ours goes to the header that the grower maps to it, else to the one that
 * bears its name, else to the one synonym; two equal claims are left to the grower.
 *
 * @param kind what the file is said to be; told by its columns where it is left out
 * @param byValues what headers mean that no synonym tells, from the folded header to our column
 */
export function understandHeader(
  headers: readonly string[],
  map: HeaderMap,
  kind?: KnownKind,
  byValues: HeaderMap = new Map(),
): Header {
  const known = kind ?? kindOf(headers, map);
  if (known === 'unknown') {
    const nothing = { guessed: [], unknown: [], unclear: [], missing: [], otherKind: null };
    return { kind: known, columns: new Map(), ...nothing };
  }
  const claims = claimsOf(headers, known, map, byValues);
  const columns = new Map<string, PlacedColumn>();
  const guessed: { header: string; column: string }[] = [];
  const unclear: { column: string; headers: string[] }[] = [];
  const taken = new Set<number>();
  for (const { name } of COLUMNS[known]) {
    const best = strongest(claims.filter((claim) => claim.column.name === name));
    for (const claim of best) taken.add(claim.index);
    if (best.length > 1) unclear.push({ column: name, headers: best.map(({ header }) => header) });
    if (best.length !== 1) continue;
    columns.set(name, { index: best[0].index, header: best[0].header });
    if (best[0].strength === GUESSED) guessed.push({ header: best[0].header, column: name });
  }
  const unknown = headers
    .map((header) => header.trim())
    .filter((header, index) => header !== '' && !taken.has(index));
  const asked = new Set(unclear.map(({ column }) => column));
  const missing = requiredOf(known).filter((name) => !columns.has(name) && !asked.has(name));
  const otherKind = kind === undefined ? null : otherKindOf(headers, map, kind, missing.length > 0);
  return { kind: known, columns, guessed, unknown, unclear, missing, otherKind };
}
