/** The files of a coded copy: what is handed on, and what every shared number is worked out from. */

import type { CodedCopy } from './coded-copy.ts';
import { type SeasonText, writeSeason } from './write-season.ts';

/**
 * The CSV files of a coded copy: crosses, and vials and flowers where there are any.
 *
 * Reading them with `readSeason`, and its `asOf` and `endpoint`, gives the coded season: so nothing can reach a shared
 * page that does not stand in these files.
 *
 * @example
 * codedFiles(codedCopy(season, key)).map(({ name }) => name); // ['coded-crosses.csv', 'coded-vials.csv']
 */
export function codedFiles({ season }: Pick<CodedCopy, 'season'>): SeasonText[] {
  return writeSeason({ ...season, files: [], endpoint: 'initial' })
    .filter(({ name }) => name.endsWith('.csv'))
    .map(({ name, text }) => ({ name: `coded-${name}`, text }));
}
