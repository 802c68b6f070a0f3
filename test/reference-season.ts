import { readFileSync } from 'node:fs';
import { readSeason } from '../lib/season/read-season.ts';
import type { Season } from '../lib/season/season.ts';

/** A simulated season of the reference data, read as a grower's file would be. */
export function referenceSeason(name: string): Season {
  const bytes = readFileSync(new URL(`./reference/${name}`, import.meta.url));
  return readSeason([{ name, bytes }]);
}

interface ReferenceCase {
  readonly id: string;
  readonly expected: unknown;
}

const { cases } = JSON.parse(
  readFileSync(new URL('./reference/k_seasons.json', import.meta.url), 'utf8'),
) as { cases: ReferenceCase[] };

/** What the reference data expect of one of the simulated seasons, by the case's id. */
export function referenceCase<T>(id: string): T {
  const found = cases.find((each) => each.id === id);
  if (found === undefined) throw new RangeError(`referenceCase: there must be a case of this id, got ${id}`);
  return found.expected as T;
}
