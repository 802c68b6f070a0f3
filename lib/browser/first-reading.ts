import type { Analysis } from '../analyse.ts';
import { defaultUse, provenance, seasonPart } from '../analyse.ts';
import { controlEffects } from '../analysis/controls.ts';
import { usedFlowers } from '../analysis/flowers.ts';
import { freshVersusStored } from '../analysis/fresh-versus-stored.ts';
import { FEWEST_PAIRS } from '../analysis/like-for-like.ts';
import { plantsApart } from '../analysis/plants-apart.ts';
import { rawRates } from '../analysis/raw.ts';
import { rowCounts } from '../analysis/rows.ts';
import type { CompiledNotebook, Given } from '../notebook/run.ts';
import { unknown } from '../proportions/interval.ts';
import type { Season } from '../season/season.ts';

/** Sections that counts alone can fill, like for like and the vials apart. */
export const FIRST_SECTIONS = 3;

/** The keys of the analysis that need no model; lists of what needs one are empty. */
export type FirstAnalysis = Pick<
  Analysis,
  | 'provenance'
  | 'rows'
  | 'raw'
  | 'seasons'
  | 'waves'
  | 'pending'
  | 'fruitSet'
  | 'controls'
  | 'freshVersusStored'
> & { readonly vials: readonly []; readonly halfAge: readonly [] };

/**
 * What counting alone tells, before any model is fitted. It takes milliseconds where the models take seconds; `adjusted`
 * is null with `being-worked-out` wherever a model could tell it.
 *
 * @param read what `readSeason` returned
 * @param options as `analyse` takes them
 */
export function firstAnalysis(
  read: Season,
  options: { readonly level?: number; readonly samePlants?: boolean; readonly useOn?: string } = {},
): FirstAnalysis {
  const { level = 0.95, useOn } = options;
  const { season, growers } = plantsApart(read, options);
  const raw = rawRates(season, { level });
  return {
    provenance: provenance(season, options, { level, useOn: useOn ?? defaultUse(season), worth: null }),
    rows: rowCounts(season),
    raw,
    ...seasonPart(season, usedFlowers(season), growers, level),
    controls: controlEffects(raw, { level }),
    freshVersusStored: freshVersusStored(season, {
      level,
      adjusted: (_storage, informativePairs) =>
        unknown(informativePairs < FEWEST_PAIRS ? 'too-few-pairs-with-both' : 'being-worked-out'),
    }),
    vials: [],
    halfAge: [],
  };
}

/** The first sections of the season review with their own cells, and what these find as given. */
export function firstReading(
  { cells, sections, ...notebook }: CompiledNotebook,
  season: Season,
  analysis: FirstAnalysis,
): { readonly notebook: CompiledNotebook; readonly given: Given } {
  const shown = sections.slice(0, FIRST_SECTIONS);
  const own = cells.slice(0, shown.flatMap(({ working }) => working).length);
  return {
    notebook: { ...notebook, sections: shown, cells: own },
    // The cells of these sections ask for no other key where `countsOnly` is said.
    given: { season, analysis: analysis as unknown as Analysis, countsOnly: true },
  };
}
