/** Seasons whose pages say different things: few flowers, none that took, stored pollen alone, all columns filled in. */

import { readFileSync } from 'node:fs';
import { type Analysis, analyse } from '../../lib/analyse.ts';
import { renderSite } from '../../lib/notebook/render-site.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Season } from '../../lib/season/season.ts';
import type { SeasonSource } from '../../lib/season/sheet.ts';

const HEADER =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,pollen_age_days,harvested_on,bagged,seeds,sown,germinated,control';

/** Sixty invented flowers on six pairs, with fruits, lost tags, seeds and germination, none of it by chance. */
function fullRows(): string[] {
  return Array.from({ length: 60 }, (_, i) => {
    const storage = i % 3 === 0 ? 'frozen' : 'fresh';
    const took = (i * 7) % 10 < (storage === 'frozen' ? 4 : 6);
    const outcome = took ? 'fruit' : i % 11 === 0 ? 'unknown' : 'none';
    const seeds = took ? [`2025-08-01,yes,${40 + i}`, i % 2 ? '20,15' : ','].join(',') : ',yes,,,';
    const pair = `${['A', 'B', 'C'][i % 3]},${['D', 'E'][i % 2]}`;
    const date = `2025-06-${String(1 + (i % 28)).padStart(2, '0')}`;
    return `${i + 1},${date},${pair},${storage},${outcome},${storage === 'frozen' ? 30 + i : ''},${seeds},`;
  });
}

const control = (id: string, kind: string) =>
  kind === 'selfed'
    ? `${id},2025-06-20,A,A,fresh,none,,,yes,,,,selfed`
    : `${id},2025-06-20,A,,,fruit,,,yes,,,,unpollinated`;

const seasons: ReadonlyMap<string, Readonly<Record<string, string>>> = new Map([
  [
    'all columns filled in',
    {
      'crosses.csv': [...fullRows(), control('c1', 'selfed'), control('c2', 'unpollinated')].join('\n'),
      'vials.csv':
        'vial,pollen_parent,collected,storage,doses_left\nV1,D,2025-01-01,frozen,3\nV2,E,2024-01-01,frozen,\n',
      'flowers.csv': 'seed_parent,flowers\nA,6\nB,4\nD,3\n',
    },
  ],
  ['one flower', { 'crosses.csv': '1,2025-06-01,A,B,fresh,fruit,,,,,,,' }],
  [
    'none that took',
    {
      'crosses.csv':
        '1,2025-06-01,A,B,fresh,none,,,,,,,\n2,2025-06-01,A,C,frozen,none,40,,,,,,\n3,2025-06-02,A,A,fresh,none,,,,,,,',
    },
  ],
  [
    'stored pollen alone',
    {
      'crosses.csv': Array.from(
        { length: 12 },
        (_, i) =>
          `${i + 1},2025-06-0${1 + (i % 5)},A,${i % 2 ? 'B' : 'C'},room,${i % 3 ? 'fruit' : 'none'},${1 + (i % 4)},,,,,,`,
      ).join('\n'),
    },
  ],
]);

/** A season with its analysis. */
interface Analysed {
  readonly season: Season;
  readonly analysis: Analysis;
}

function analysed(files: readonly SeasonSource[]): Analysed {
  const season = readSeason(files);
  return { season, analysis: analyse(season) };
}

/** The demo season. */
export function demoAnalysis(): Analysed {
  const folder = new URL('../../data-demo/', import.meta.url);
  const names = ['crosses.csv', 'vials.csv', 'flowers.csv'];
  return analysed(
    names.map((name) => ({ name, bytes: new Uint8Array(readFileSync(new URL(name, folder))) })),
  );
}

/** Each of these seasons, by its kind. */
export function seasonsOfAllKinds(): (readonly [kind: string, season: Analysed])[] {
  return [...seasons].map(([kind, files]) => [
    kind,
    analysed(
      Object.entries(files).map(([name, text]) => ({
        name,
        bytes: new TextEncoder().encode(name === 'crosses.csv' ? `${HEADER}\n${text}\n` : text),
      })),
    ),
  ]);
}

/** The pages that the notebooks make of each of these seasons. */
export async function pagesOfAllKinds(): Promise<{ readonly name: string; readonly text: string }[]> {
  const made: { name: string; text: string }[] = [];
  for (const [kind, { season, analysis }] of seasonsOfAllKinds()) {
    const parts = { downloads: [], otherPages: [], invented: false };
    const { files: pages } = await renderSite(season, analysis, parts);
    made.push(...pages.map(({ name, text }) => ({ name: `${name} of ${kind}`, text })));
  }
  return made;
}
