/** A coded copy of a season and its analysis, made from the copy's own files alone. */

import { type AnalyseOptions, type Analysis, analyse } from '../analyse.ts';
import type { CodeKey } from '../season/code-key.ts';
import { type CodedLevel, codedCopy, codedPlant } from '../season/coded-copy.ts';
import { codedFiles } from '../season/coded-files.ts';
import { addDays } from '../season/dates.ts';
import { readSeason } from '../season/read-season.ts';
import type { Season } from '../season/season.ts';
import { type Secret, secretsOf, singleCodes } from '../season/secrets.ts';
import type { SeasonText } from '../season/write-season.ts';
import { Failure } from './failure.ts';
import type { HeaderMap, StorageWord } from './option-values.ts';

/** A coded copy before it is sealed. */
export interface Coded {
  readonly level: CodedLevel;
  readonly files: readonly SeasonText[];
  readonly key: CodeKey;
  readonly secrets: readonly Secret[];
  /** The day, moved, up to which things have happened. */
  readonly asOf: string | null;
}

/** What was said beside the files, which must not stand in a copy either. */
export interface SaidBeside {
  readonly level: CodedLevel;
  readonly map: readonly HeaderMap[];
  readonly same: readonly (readonly string[])[];
  readonly storage?: readonly StorageWord[];
  readonly settings?: { readonly file: string; readonly sha256: string };
  readonly useOn?: string;
  readonly asOf?: string;
}

function secretsSaid({ same, storage = [], settings, useOn, asOf }: SaidBeside): Secret[] {
  const list = (what: string, values: readonly (string | undefined)[]): Secret[] =>
    values.flatMap((value) => (value === undefined ? [] : [{ what, value }]));
  return [
    ...list('the plant', same.flat()),
    ...list(
      'the method',
      storage.map(({ word }) => word),
    ),
    ...list('the settings', [settings?.file, settings?.sha256]),
    ...list('the date', [useOn, asOf]),
  ];
}

/**
 * The coded copy of a season with its key and with what must not stand in it.
 *
 * @param keyFile the name of the key's file, for the failure
 * @throws Failure where the dates cannot be moved as the key says
 */
export function codedFrom(own: Season, said: SaidBeside, before: CodeKey, keyFile: string): Coded {
  const { key, season } = copyOf(own, before, keyFile);
  const headers = said.map.map(({ header }) => header);
  const single = said.level === 'summary' ? singleCodes(key) : [];
  const secrets = [...secretsOf(own, headers), ...secretsSaid(said), ...single];
  return { level: said.level, files: codedFiles({ season }), key, secrets, asOf: season.asOf };
}

function copyOf(season: Season, key: CodeKey, keyFile: string) {
  try {
    return codedCopy(season, key);
  } catch (error) {
    if (error instanceof RangeError) throw new Failure('dates-too-far', { file: keyFile });
    throw error;
  }
}

/** The options with names under codes and the day of use moved. */
function codedOptions({ useOn, must, atMost, ...rest }: AnalyseOptions, key: CodeKey): AnalyseOptions {
  const coded = (name: string): string => codedPlant(name, key);
  return {
    ...rest,
    ...(useOn === undefined ? {} : { useOn: addDays(useOn, key.shiftDays!) }),
    ...(must && {
      must: must.map((wish) => ({
        ...wish,
        seedParent: coded(wish.seedParent),
        pollenParent: coded(wish.pollenParent),
      })),
    }),
    ...(atMost && {
      atMost: atMost.map((wish) => ({
        ...wish,
        pollenParent: coded(wish.pollenParent),
        ...(wish.seedParent === undefined ? {} : { seedParent: coded(wish.seedParent) }),
      })),
    }),
  };
}

/** Rows of crosses that were left out for a fault, and so are not in the copy. */
function faulty({ files, crosses }: Season): number {
  return files
    .filter(({ kind }) => kind === 'crosses')
    .reduce((sum, { rows }) => sum + rows, -crosses.length);
}

/**
 * The season that a copy's files hold, and its analysis.
 *
 * @param options of the grower's own analysis
 */
export function codedAnalysis(
  own: Season,
  { level, files, key, asOf }: Coded,
  options: AnalyseOptions,
): { readonly season: Season; readonly analysis: Analysis } {
  const sources = files.map(({ name, text }) => ({ name, bytes: new TextEncoder().encode(text) }));
  const season = readSeason(sources, { endpoint: own.endpoint, ...(asOf === null ? {} : { asOf }) });
  const analysis = analyse(season, codedOptions(options, key));
  const { options: used } = analysis.provenance;
  // A wish names single plants, which a summary must not; the plan that is shown still keeps it.
  const shown = level === 'summary' ? { ...used, must: [], atMost: [] } : used;
  const provenance = {
    ...analysis.provenance,
    ...{ options: shown, coded: { level, rowsLeftOut: faulty(own) } },
  };
  return { season, analysis: { ...analysis, provenance } };
}
