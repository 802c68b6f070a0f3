import { describe, expect, it } from 'vitest';
import { ageAnswers } from '../../lib/analysis/age-answers.ts';
import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const OPTIONS = { level: 0.95, because: 'one-outcome' };

describe('ageAnswers', () => {
  it('answers for every stored method, with the reason where there is no model', () => {
    const crosses = [
      ...flowersOf(2, 3),
      ...flowersOf(1, 2, { storage: 'frozen', ageDays: 90 }),
      ...flowersOf(1, 2, { storage: 'room', ageDays: null }),
    ];
    const { ageCurve, halfAge } = ageAnswers(usedFlowers(seasonOf(crosses)), null, null, OPTIONS);
    expect(ageCurve).toEqual([]);
    const open = { estimate: null, lower: null, upper: null };
    expect(halfAge).toEqual([
      { storage: 'frozen', oldestAgeDays: 90, ...open, because: 'one-outcome' },
      { storage: 'room', oldestAgeDays: null, ...open, because: 'no-aged-flowers' },
    ]);
  });

  it('has nothing to say of fresh pollen alone', () => {
    expect(ageAnswers(usedFlowers(seasonOf(flowersOf(2, 3))), null, null, OPTIONS)).toEqual({
      ageCurve: [],
      halfAge: [],
    });
  });
});
