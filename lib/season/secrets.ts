/** What of a grower's own must not stand in a coded copy. */

import type { CodeKey } from './code-key.ts';
import { datesOf, namesOf } from './coded-copy.ts';
import type { Season } from './season.ts';

/** Something of the grower's own, with what it is. */
export interface Secret {
  readonly what: string;
  readonly value: string;
}

/** The last part of a path. */
function baseName(path: string): string {
  return path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
}

/**
 * Every name, tag, note, date, file name and hash of a season, and the grower's own headers.
 *
 * @param headers that the grower mapped to columns
 */
export function secretsOf(season: Season, headers: readonly string[]): Secret[] {
  const names = namesOf(season);
  const list = (what: string, values: Iterable<string | null>): Secret[] =>
    [...new Set(values)].flatMap((value) => (value === null ? [] : [{ what, value }]));
  const { crosses, vials, files } = season;
  return [
    ...list('the plant', names.plants),
    ...list('the vial', names.vials),
    ...list('the tag', names.tags),
    ...list('the grower', names.growers),
    ...list('the season', names.seasons),
    ...list('the wave', names.waves),
    ...list('the storage', names.methods),
    ...list(
      'the person',
      crosses.map(({ identifiedBy }) => identifiedBy),
    ),
    ...list(
      'the note',
      [...crosses, ...vials].map(({ note }) => note),
    ),
    ...list('the date', datesOf(season)),
    ...list(
      'the file',
      files.flatMap(({ file }) => [file, baseName(file)]),
    ),
    ...list(
      'the hash',
      files.map(({ sha256 }) => sha256),
    ),
    ...list('the header', headers),
  ];
}

/** The codes of single plants, pairs and vials, which a summary must not show either. */
export function singleCodes({ codes }: CodeKey): Secret[] {
  return [...codes.plants.values(), ...codes.vials.values(), ...codes.tags.values()].map((value) => ({
    what: 'the code',
    value,
  }));
}
