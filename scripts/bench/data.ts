/** Seasons of any size from a seed: what the fits are timed on, here and in R. */

import { randomStream } from '../../lib/numerics/random.ts';

/** One array a column, all of the same length; labels of factors are words, as a user has them. */
export interface BenchData {
  readonly numbers: Readonly<Record<string, readonly number[]>>;
  readonly labels: Readonly<Record<string, readonly string[]>>;
}

const logistic01 = (eta: number): number => 1 / (1 + Math.exp(-eta));

/**
 * Flowers with fresh or frozen pollen, its age in whole days, and parents with effects of their own.
 *
 * @param n rows
 * @param parents seed parents, and as many pollen parents; with one of each there are no labels
 * @param pairSd standard deviation of what each pair adds
 */
export function season(n: number, parents: number, pairSd = 0, seed = 1): BenchData {
  const random = randomStream(seed);
  const below = (count: number): number => Math.floor(random.uniform() * count);
  const effects = (count: number, sd: number) => Array.from({ length: count }, () => sd * random.normal());
  const mothers = effects(parents, 0.8);
  const fathers = effects(parents, 0.6);
  const pairs = effects(parents * parents, pairSd);
  const numbers: Record<string, number[]> = { fruit: [], frozen: [], age: [] };
  const labels: Record<string, string[]> = { mother: [], father: [], pair: [] };
  for (let i = 0; i < n; i += 1) {
    const mother = below(parents);
    const father = below(parents);
    const frozen = random.uniform() < 0.5 ? 1 : 0;
    const age = frozen * below(400);
    const eta =
      0.4 -
      0.5 * frozen -
      0.002 * age +
      mothers[mother]! +
      fathers[father]! +
      pairs[mother * parents + father]!;
    numbers.fruit!.push(random.uniform() < logistic01(eta) ? 1 : 0);
    numbers.frozen!.push(frozen);
    numbers.age!.push(age);
    if (parents === 1) continue;
    labels.mother!.push(`Mother ${mother}`);
    labels.father!.push(`Father ${father}`);
    labels.pair!.push(`Mother ${mother} × Father ${father}`);
  }
  return { numbers, labels: parents === 1 ? {} : labels };
}

/** Flowers with measurements of any value, so that no two rows are alike: temperature, moisture, weight, age. */
export function measured(n: number, seed = 2): BenchData {
  const random = randomStream(seed);
  const numbers: Record<string, number[]> = {
    fruit: [],
    frozen: [],
    age: [],
    temperature: [],
    moisture: [],
    weight: [],
  };
  for (let i = 0; i < n; i += 1) {
    const frozen = random.uniform() < 0.5 ? 1 : 0;
    const row = {
      frozen,
      age: frozen * Math.log1p(400 * random.uniform()),
      temperature: 22 + 3 * random.normal(),
      moisture: random.uniform(),
      weight: Math.exp(random.normal()),
    };
    const eta =
      -0.4 * frozen - 0.2 * row.age + 0.1 * (row.temperature - 22) + 0.8 * row.moisture - 0.1 * row.weight;
    numbers.fruit!.push(random.uniform() < logistic01(eta) ? 1 : 0);
    for (const [name, value] of Object.entries(row)) numbers[name]!.push(value);
  }
  return { numbers, labels: {} };
}

/** Some columns of the data as a design has them. */
export function columnsOf({ numbers }: BenchData, ...names: string[]): Record<string, readonly number[]> {
  return Object.fromEntries(names.map((name) => [name, numbers[name]!]));
}

/** The data as a CSV file: what R reads. */
export function csv({ numbers, labels }: BenchData): string {
  const columns = Object.entries({ ...numbers, ...labels });
  const lines = [columns.map(([name]) => name).join(',')];
  const n = columns[0]![1].length;
  for (let i = 0; i < n; i += 1) lines.push(columns.map(([, values]) => values[i]).join(','));
  return `${lines.join('\n')}\n`;
}
