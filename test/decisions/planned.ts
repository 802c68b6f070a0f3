/** Plain data for tests of the plan: rows of the flowers file, vials, and a question with rates that a test sets. */

import type { PlanQuestion } from '../../lib/decisions/plan-sources.ts';
import type { ExpectedFlowers, Vial } from '../../lib/season/season.ts';
import type { FakeRates } from '../analysis/fake-predictor.ts';
import { fakePredictor } from '../analysis/fake-predictor.ts';

const place = { file: 'flowers.csv', line: 2, row: 2 };

export function offer(
  seedParent: string,
  flowers: number,
  opensFrom: string | null = null,
  opensTo: string | null = null,
): ExpectedFlowers {
  return { ...place, seedParent, flowers, opensFrom, opensTo };
}

export function vialOf(vial: string, pollenParent: string, more: Partial<Vial> = {}): Vial {
  const given = { collected: '2025-07-01', storage: 'frozen', dosesLeft: 3, thaws: null, note: null };
  return { ...place, vial, pollenParent, ...given, ...more };
}

export function questionOf(rates: FakeRates, more: Partial<PlanQuestion> = {}): PlanQuestion {
  return { predict: fakePredictor(rates), useOn: '2026-07-01', incompatible: () => false, ...more };
}
