/** Designs of the count cases in test/reference: g_counts.json, and the seeds of k_seasons.json. */

import type { CountSpec } from '../../lib/regression/count-design.ts';
import { type Levels, numbers, type Table, texts } from './reference-cases.ts';
import { indicator } from './reference-seasons.ts';

/** One factor of a column's name as R writes it: `log1p(age)`, or a factor with its level, `storagefridge`. */
function part(table: Table, name: string, levels: Levels): readonly number[] {
  const inner = /^log1p\((.+)\)$/.exec(name)?.[1];
  if (inner !== undefined) return numbers(table, inner).map((value) => Math.log1p(value));
  for (const [factor, labels] of Object.entries(levels ?? {})) {
    const level = labels.find((label) => factor + label === name);
    if (level !== undefined) return indicator(texts(table, factor), level);
  }
  throw new Error(`no column ${name}`);
}

/** Columns by R's names for them, the intercept left out; a colon is a product. */
export function namedColumns(
  table: Table,
  names: readonly string[],
  levels: Levels,
): ReadonlyMap<string, readonly number[]> {
  const columns = names
    .filter((name) => name !== '(Intercept)')
    .map((name) => {
      const parts = name.split(':').map((each) => part(table, each, levels));
      return [
        name,
        parts[0]!.map((_, i) => parts.reduce((product, values) => product * values[i]!, 1)),
      ] as const;
    });
  return new Map(columns);
}

/** Rows of a season with recorded seeds and an age, by storage (fresh the reference) and log1p of the age. */
export function seasonSeeds(table: Table): CountSpec {
  const day = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / 86_400_000;
  const seeds = texts(table, 'seeds');
  const collected = texts(table, 'pollen_collected');
  const pollinated = texts(table, 'date_pollinated');
  const kept = [...seeds.keys()].filter((i) => seeds[i] !== '' && collected[i] !== '');
  const storage = kept.map((i) => texts(table, 'storage')[i]!);
  return {
    counts: kept.map((i) => Number(seeds[i])),
    columns: {
      storagefridge: indicator(storage, 'fridge'),
      storagefreezer: indicator(storage, 'freezer'),
      log1p_age: kept.map((i) => Math.log1p(day(pollinated[i]!) - day(collected[i]!))),
    },
  };
}
