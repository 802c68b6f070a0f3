/** Designs of the whole seasons in test/reference/k_seasons.json. */

import type { DesignSpec } from '../../lib/regression/design.ts';
import { readTable, texts } from './reference-cases.ts';

/** The analysed rows with an age of one season. */
export interface SeasonRows {
  readonly successes: readonly number[];
  readonly storage: readonly string[];
  readonly ageDays: readonly number[];
  readonly pair: readonly string[];
  readonly mother: readonly string[];
}

function days(iso: string): number {
  return Date.parse(`${iso}T00:00:00Z`) / 86_400_000;
}

export function seasonRows(file: string): SeasonRows {
  const table = readTable(file);
  const column = (name: string): readonly string[] => texts(table, name);
  const outcome = column('outcome');
  const collected = column('pollen_collected');
  const kept = [...outcome.keys()].filter(
    (i) => (outcome[i] === 'fruit' || outcome[i] === 'failed') && collected[i] !== '',
  );
  const pick = (values: readonly string[]): readonly string[] => kept.map((i) => values[i]!);
  return {
    successes: kept.map((i) => (outcome[i] === 'fruit' ? 1 : 0)),
    storage: pick(column('storage')),
    ageDays: kept.map((i) => days(column('date_pollinated')[i]!) - days(collected[i]!)),
    pair: kept.map((i) => `${column('mother')[i]!} × ${column('father')[i]!}`),
    mother: pick(column('mother')),
  };
}

export function indicator(labels: readonly string[], label: string): readonly number[] {
  return labels.map((value) => (value === label ? 1 : 0));
}

/** log1p of the age; in model B only for stored pollen. */
export function logAge(rows: SeasonRows, model: string): readonly number[] {
  return rows.ageDays.map((age, i) => (model === 'B' && rows.storage[i] === 'fresh' ? 0 : Math.log1p(age)));
}

/** Model A or B: storage (fresh the reference) and log1p of the age. */
export function seasonDesign(rows: SeasonRows, model: string): DesignSpec {
  return {
    successes: rows.successes,
    columns: {
      storagefridge: indicator(rows.storage, 'fridge'),
      storagefreezer: indicator(rows.storage, 'freezer'),
      log1p_age: logAge(rows, model),
    },
    groups: { pair: rows.pair, mother: rows.mother },
  };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Mean of `values` within the pair of each row. */
export function pairMeans(rows: SeasonRows, values: readonly number[]): readonly number[] {
  const sums = new Map<string, { sum: number; count: number }>();
  rows.pair.forEach((pair, i) => {
    const { sum, count } = sums.get(pair) ?? { sum: 0, count: 0 };
    sums.set(pair, { sum: sum + values[i]!, count: count + 1 });
  });
  return rows.pair.map((pair) => sums.get(pair)!.sum / sums.get(pair)!.count);
}
