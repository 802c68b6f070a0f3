import type { Analysis } from '../analyse.ts';
import { freshVersusStored } from '../analysis/fresh-versus-stored.ts';
import { plantsApart } from '../analysis/plants-apart.ts';
import { rawRates } from '../analysis/raw.ts';
import { rowCounts } from '../analysis/rows.ts';
import { unknown } from '../proportions/interval.ts';
import type { Season } from '../season/season.ts';

/** What counting alone tells, before any model is fitted: keys of the analysis, like for like left open. */
export type FirstCounts = Pick<Analysis, 'rows' | 'raw' | 'freshVersusStored'>;

/**
 * The first answer: rows, rates as counted, and fresh against stored over all flowers. It takes milliseconds where the
 * models take seconds; `adjusted` is null with `not-settled` in each entry and must not be shown.
 *
 * @param read what `readSeason` returned
 * @param options as `analyse` takes them
 */
export function firstCounts(
  read: Season,
  { level = 0.95, samePlants = false }: { readonly level?: number; readonly samePlants?: boolean } = {},
): FirstCounts {
  const { season } = plantsApart(read, { samePlants });
  return {
    rows: rowCounts(season),
    raw: rawRates(season, { level }),
    freshVersusStored: freshVersusStored(season, { level, adjusted: () => unknown('not-settled') }),
  };
}
