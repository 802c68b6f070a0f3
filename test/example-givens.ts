/** What the examples of doc comments speak of without making it: a fit, a season, an analysis. */

import { parseHTML } from 'linkedom';
import { designColumns, logistic } from '../lib/index.ts';
import { season as analysis } from './charts/fixture.ts';
import { referenceSeason } from './reference-season.ts';

/** Twelve groups of ten flowers: fresh pollen and stored pollen of four ages, four mothers. */
const rows = {
  successes: [7, 8, 6, 9, 5, 6, 4, 3, 6, 5, 4, 2],
  trials: Array<number>(12).fill(10),
  columns: {
    stored: [0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1],
    ageDays: [0, 0, 0, 0, 20, 40, 60, 80, 20, 40, 60, 80],
  },
  groups: { mother: ['a', 'b', 'c', 'd', 'a', 'b', 'c', 'd', 'a', 'b', 'c', 'd'] },
};

export async function givens(): Promise<Readonly<Record<string, unknown>>> {
  const season = referenceSeason('k-season40.csv');
  const mornings = [1, 2, 3, 1, 2, 3, 1, 2, 3, 1, 2, 3];
  const made = designColumns({
    successes: [3, 1, 2],
    trials: [4, 4, 4],
    variables: { storage: ['fresh', 'frozen', 'frozen'] },
    terms: [{ kind: 'factor', variable: 'storage' }],
  });
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  return { season, analysis, document, rows, fit: logistic(rows), mornings, made };
}
