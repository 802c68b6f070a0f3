import { describe, expect, it } from 'vitest';
import type { NextTest, TestOutcome } from '../../lib/decisions/next-test.ts';
import type { VialAdvice } from '../../lib/decisions/vials.ts';
import { nextTestSaid, olderThanTriedSaid, verdictSaid, vialReason } from '../../lib/words/english-vials.ts';

const ADVICE: VialAdvice = {
  vial: 'F-01',
  pollenParent: 'Salt Moon',
  storage: 'frozen',
  ageDays: 400,
  oldestTriedDays: 600,
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
      '2 of its 9 flowers took; likely (about 8 in 10) to be worth a flower on the day of use, but unlikely (about 3 in 10) ' +
        'a year later.',
    );
    expect(
      vialReason({ ...ADVICE, reasonCode: 'worth-now-and-a-year-later', probabilityWorthYearLater: 0.7 }),
    ).toBe(
      '2 of its 9 flowers took; likely (about 8 in 10) to be worth a flower on the day of use, and likely (about 7 in 10) ' +
        'a year later.',
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
      '2 of its 9 flowers took; unlikely (about 1 in 10) to be worth a flower on the day of use. It is the last vial of Salt Moon: collect new ' +
        'pollen before you discard it.',
    );
  });

  it('says of an empty vial that it is empty, its record, and no use of it', () => {
    const empty = { ...ADVICE, dosesLeft: 0, warnings: ['no-doses-left'] };
    const said = '2 of its 9 flowers took. By your list it is empty: no dose is left.';
    expect(vialReason(empty)).toBe(said);
    expect(vialReason({ ...empty, lastOfParent: true })).toBe(
      `${said} No vial of Salt Moon has pollen left: collect new.`,
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
      '2 of its 9 flowers took; there is nothing to judge it by: pollinate a few flowers with it first.',
    );
    expect(vialReason({ ...ADVICE, reasonCode: 'sun-spots' })).toBe(
      '2 of its 9 flowers took. The data can’t tell (sun-spots).',
    );
  });

  it('starts with the vial’s own record, however short', () => {
    const start = (fruits: number, flowers: number) =>
      vialReason({ ...ADVICE, fruits, flowers }).split(';')[0];
    expect([start(0, 0), start(0, 1), start(1, 1), start(0, 5)]).toEqual([
      'No flower of its own so far',
      'Its one flower did not take',
      'Its one flower took',
      '0 of its 5 flowers took',
    ]);
  });
});

describe('nextTestSaid', () => {
  const outcome = (fruits: number, verdict: TestOutcome['verdict']): TestOutcome => ({
    fruits,
    probability: 0.3,
    probabilityWorth: 0.3,
    verdict,
  });
  const test = (flowers: 1 | 2, ...outcomes: TestOutcome[]): NextTest => ({
    vial: 'F-09',
    pollenParent: 'Hollow Bell',
    seedParent: 'Lantern Creek',
    verdict: 'test-first',
    probabilityWorth: 0.3,
    tests: [{ flowers, changes: 0.42, gain: 0.031, outcomes }],
  });

  it('says which test, how likely it changes the verdict, and to what', () => {
    expect(nextTestSaid([test(2, outcome(0, 'discard'), outcome(1, 'test-first'), outcome(2, 'keep'))])).toBe(
      'Begin with this test: 2 flowers of Lantern Creek with F-09 (Hollow Bell) would change “test first” with a chance of ' +
        'about 4 in 10 (discard if none takes and keep if both take); that would gain about 3 fruits in 100 later flowers.',
    );
    expect(nextTestSaid([test(1, outcome(0, 'test-first'), outcome(1, 'use-first'))])).toContain(
      '1 flower of Lantern Creek with F-09 (Hollow Bell) would change “test first” with a chance of about 4 in 10 (use first ' +
        'if it takes);',
    );
  });

  // Found by a reader: page one said to test F-09, R-01 and R-02, this sentence to test F-08.
  it('begins with the vial to be tested that gains most, not with one that is to be kept', () => {
    const kept = { ...test(2, outcome(0, 'discard')), vial: 'F-08', verdict: 'keep' as const };
    const small = test(1, outcome(1, 'keep'));
    const large = { ...small, vial: 'R-01', tests: [{ ...small.tests[0]!, changes: 0.3, gain: 0.05 }] };
    expect(nextTestSaid([kept, small, large])).toContain('with R-01 (Hollow Bell) would change “test first”');
    expect(nextTestSaid([kept])).toContain('with F-08 (Hollow Bell) would change “keep”');
  });

  it('says where a test would hardly pay', () => {
    const poor = test(1, outcome(0, 'test-first'), outcome(1, 'use-first'));
    expect(nextTestSaid([{ ...poor, tests: [{ ...poor.tests[0]!, gain: 0.004 }] }])).toContain(
      'gain less than 1 fruit in 100 later flowers',
    );
  });

  it('is nothing where no test would change a verdict', () => {
    expect(nextTestSaid([])).toBe('');
  });
});

describe('a vial older than any pollen that was tried', () => {
  const old = { ...ADVICE, ageDays: 800, warnings: ['older-than-tried'] };

  it('has a mark beside its verdict, and one line says what that means, of how many', () => {
    expect([verdictSaid(old), verdictSaid(ADVICE)]).toEqual(['use first *', 'use first']);
    const cold = { ...old, storage: 'refrigerated', oldestTriedDays: 4 };
    expect(olderThanTriedSaid([ADVICE, old, cold])).toBe(
      '* 2 of 3 vials will be older on that day than any such pollen that was tried (frozen: 600 days; refrigerated: 4 days): ' +
        'what is said of them is a guess from the shape of the curve.',
    );
    expect(olderThanTriedSaid([ADVICE])).toBe('');
  });

  it('has none where it is empty: there is no verdict on it', () => {
    const empty = { ...old, dosesLeft: 0 };
    expect(verdictSaid(empty)).toBe('empty');
    expect(olderThanTriedSaid([empty])).toBe('');
  });
});
