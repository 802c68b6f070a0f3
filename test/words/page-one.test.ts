import { describe, expect, it } from 'vitest';
import type { HalfAge } from '../../lib/analysis/age-curve.ts';
import type { FreshVersusStored } from '../../lib/analysis/fresh-versus-stored.ts';
import { halfAgeShort, pairsShort, storedShort, vialsToActOn } from '../../lib/words/page-one.ts';
import { storedAnswer } from '../../lib/words/review.ts';
import { season } from '../charts/fixture.ts';

const [frozen, room] = season.freshVersusStored as [FreshVersusStored, FreshVersusStored];

describe('the answers of page one', () => {
  it('say the like-for-like difference with the pairs behind it, without the counts that stand above', () => {
    expect(storedShort({ ...frozen, pairsWithBoth: 9, informativePairs: 7 })).toBe(
      'Against fresh pollen on the same pairs (7 of 9 can tell), frozen pollen gives about 2 fewer in every 10 (could be 4 fewer ' +
        'to about as many).',
    );
  });

  it('say at length why there is no such difference', () => {
    expect(storedShort(room)).toBe(storedAnswer(room));
  });

  it('say how long pollen keeps, or that one can’t tell', () => {
    const half = (more: Partial<HalfAge>): HalfAge => ({
      ...{ storage: 'frozen', oldestAgeDays: 776, estimate: null, lower: 776, upper: null },
      ...more,
    });
    expect(halfAgeShort(half({}))).toBe(
      'Frozen pollen had not fallen to half of its fruit set at the oldest age tried, about 2 years (776 days).',
    );
    expect(halfAgeShort(half({ estimate: 10, lower: 6, upper: 14 }))).toMatch(
      /^Frozen pollen falls to half of its fruit set after .*10 days/,
    );
    for (const lower of [100, null])
      expect(halfAgeShort(half({ lower }))).toBe('How fast frozen pollen fades one can’t tell yet.');
    expect(halfAgeShort(half({ oldestAgeDays: null }))).toContain('no flower has a known pollen age');
  });

  it('name the safest bet by its counts, never a plant with its own pollen nor a pair named incompatible', () => {
    const [first, second] = season.pairs;
    const safer = { ...first!, lower: 0.9, estimate: 0.95, upper: 0.99 };
    const own = { ...safer, pollenParent: safer.seedParent };
    expect(pairsShort([own, { ...safer, named: true }, second!])).toBe(
      'The safest bet is Silberfaden × Nachtlaterne: 8 of 13 took.',
    );
    expect(pairsShort([own])).toBe('The flowers can’t tell yet which pair is the safest bet.');
  });

  it('name the vials to act on, and how many verdicts lie past the oldest pollen tried', () => {
    const [vial] = season.vials;
    const old = { ...vial!, verdict: 'keep' as const, warnings: ['older-than-tried'] };
    expect(vialsToActOn([old, { ...vial!, verdict: 'use-first' }])).toEqual([
      `Use first: ${vial!.vial} (${vial!.pollenParent}).`,
      'On the day of use 1 of 2 vials will be older than any such pollen that was tried: what is said of them is a guess.',
    ]);
  });
});
