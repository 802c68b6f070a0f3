import { describe, expect, it } from 'vitest';
import type { VialAdvice } from '../../lib/decisions/vials.ts';
import { vialReason } from '../../lib/words/english-vials.ts';

const ADVICE: VialAdvice = {
  vial: 'F-01',
  pollenParent: 'Salt Moon',
  storage: 'frozen',
  ageDays: 400,
  fruits: 2,
  flowers: 9,
  dosesLeft: null,
  over: [{ seedParent: 'Lantern Creek', weight: 1 }],
  estimate: 0.4,
  lower: 0.2,
  upper: 0.6,
  probabilityWorth: 0.81,
  probabilityWorthYearLater: 0.3,
  flowersFor90: 6,
  verdict: 'use-first',
  reasonCode: 'worth-now-only',
  lastOfParent: false,
  warnings: [],
};

// A likelihood word always carries its number: the report guide's rule.
describe('vialReason', () => {
  it('says both days with their probabilities', () => {
    expect(vialReason(ADVICE)).toBe(
      'Likely (about 8 in 10) to be worth a flower on the day of use, but unlikely (about 3 in 10) a year later.',
    );
    expect(
      vialReason({ ...ADVICE, reasonCode: 'worth-now-and-a-year-later', probabilityWorthYearLater: 0.7 }),
    ).toBe(
      'Likely (about 8 in 10) to be worth a flower on the day of use, and likely (about 7 in 10) a year later.',
    );
  });

  it('warns before the last vial of a father is discarded', () => {
    const discarded = {
      ...ADVICE,
      verdict: 'discard',
      reasonCode: 'hardly-worth',
      probabilityWorth: 0.06,
      warnings: ['last-vial'],
    } as const;
    expect(vialReason(discarded)).toBe(
      'Unlikely (about 1 in 10) to be worth a flower on the day of use. It is the last vial of Salt Moon: collect new ' +
        'pollen before you discard it.',
    );
  });

  it('says why there is no number', () => {
    const unjudged = {
      ...ADVICE,
      reasonCode: 'no-estimate',
      probabilityWorth: null,
      probabilityWorthYearLater: null,
    };
    expect(vialReason(unjudged)).toBe(
      'There is nothing to judge it by: pollinate a few flowers with it first.',
    );
    expect(vialReason({ ...ADVICE, reasonCode: 'sun-spots' })).toBe('The data can’t tell (sun-spots).');
  });
});
