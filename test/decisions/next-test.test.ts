import { describe, expect, it } from 'vitest';
import type { TestQuestion } from '../../lib/decisions/next-test.ts';
import { nextTests } from '../../lib/decisions/next-test.ts';
import type { FakeRates } from '../analysis/fake-predictor.ts';
import { fakePredictor } from '../analysis/fake-predictor.ts';
import { vialOf } from './planned.ts';

/** Half of the draws make the vial good (0.8), half bad (0.1), on every seed parent unless told otherwise. */
function questionOf(rates: FakeRates = {}, more: Partial<TestQuestion> = {}): TestQuestion {
  return {
    predict: fakePredictor({ pair: () => [0.8, 0.1], draws: 2, ...rates }),
    useOn: '2026-07-01',
    worth: 0.3,
    over: () => [{ seedParent: 'Ash Lantern', weight: 1 }],
    ...more,
  };
}

const vial = vialOf('V1', 'Blue Hour');

describe('nextTests', () => {
  it('weighs the draws by what a flower would show', () => {
    // Fruit: 0.5 × 0.8 + 0.5 × 0.1 = 0.45, then good with 0.4 ÷ 0.45; none: 0.55, then good with 0.1 ÷ 0.55.
    const [test] = nextTests([vial], questionOf());
    expect(test).toMatchObject({
      vial: 'V1',
      seedParent: 'Ash Lantern',
      verdict: 'keep',
      probabilityWorth: 0.5,
    });
    const [one] = test!.tests;
    expect(one!.outcomes).toEqual([
      {
        fruits: 0,
        probability: expect.closeTo(0.55, 12),
        probabilityWorth: expect.closeTo(2 / 11, 12),
        verdict: 'test-first',
      },
      {
        fruits: 1,
        probability: expect.closeTo(0.45, 12),
        probabilityWorth: expect.closeTo(8 / 9, 12),
        verdict: 'keep',
      },
    ]);
    expect(one!.changes).toBeCloseTo(0.55, 12);
    // Expected rate now 0.45. After none: (0.2 × 0.8 + 0.9 × 0.1) ÷ 1.1 = 0.25 ÷ 1.1, less than 0.3, so 0.3 it is;
    // after a fruit (0.8² + 0.1²) ÷ 0.9 = 0.65 ÷ 0.9.
    expect(one!.gain).toBeCloseTo(0.55 * 0.3 + 0.325 - 0.45, 12);
  });

  it('says of two flowers what each count of fruits would show', () => {
    // None: (0.2² + 0.9²) ÷ 2 = 0.425, good with 0.04 ÷ 0.85; one: 0.32 + 0.18 over 2; both: 0.64 + 0.01 over 2.
    const two = nextTests([vial], questionOf())[0]!.tests[1]!;
    expect(two.outcomes.map(({ probability }) => probability)).toEqual(
      [0.425, 0.25, 0.325].map((value) => expect.closeTo(value, 12)),
    );
    expect(two.outcomes.map(({ probabilityWorth }) => probabilityWorth)).toEqual(
      [4 / 85, 0.64, 64 / 65].map((value) => expect.closeTo(value, 12)),
    );
    expect(two.outcomes.map(({ verdict }) => verdict)).toEqual(['discard', 'keep', 'keep']);
    expect(two.changes).toBeCloseTo(0.425, 12);
  });

  it('chooses the seed parent on which the test tells most', () => {
    // On the second, fruit set is the same whatever the vial is like: that can tell nothing.
    const pair = (mother: string) => (mother === 'Ash Lantern' ? [0.8, 0.1] : [0.5, 0.5]);
    const over = () => [
      { seedParent: 'Cold Ember', weight: 0.1 },
      { seedParent: 'Ash Lantern', weight: 0.9 },
    ];
    expect(nextTests([vial], questionOf({ pair }, { over }))[0]!.seedParent).toBe('Ash Lantern');
  });

  it('puts the likeliest change first and leaves out what no test would change', () => {
    const pair = (_: string, father: string): number[] => {
      if (father === 'Blue Hour') return [0.8, 0.8];
      return father === 'Cold Ember' ? [0.8, 0.1] : [0.9, 0.05];
    };
    const vials = [vial, vialOf('V2', 'Dusk Anchor'), vialOf('V3', 'Cold Ember')];
    const tests = nextTests(vials, questionOf({ pair }));
    // Two flowers: (0.1² + 0.95²) ÷ 2 of Dusk Anchor, 0.425 of Cold Ember; Blue Hour is good in any case.
    expect(tests.map((test) => [test.vial, test.tests[1]!.changes])).toEqual([
      ['V2', expect.closeTo(0.45625, 12)],
      ['V3', expect.closeTo(0.425, 12)],
    ]);
  });

  it('does not spend the last doses on a test', () => {
    const flowersOf = (dosesLeft: number | null) =>
      nextTests([vialOf('V1', 'Blue Hour', { dosesLeft })], questionOf()).map(({ tests }) =>
        tests.map(({ flowers }) => flowers),
      );
    expect([flowersOf(0), flowersOf(1), flowersOf(2), flowersOf(3), flowersOf(null)]).toEqual([
      [],
      [],
      [[1]],
      [[1, 2]],
      [[1, 2]],
    ]);
  });

  it('has no test for what cannot be judged', () => {
    expect(nextTests([vial], questionOf({}, { over: () => [] }))).toEqual([]);
    expect(nextTests([vial], questionOf({ storage: () => null }))).toEqual([]);
    expect(nextTests([vial], questionOf({}, { useOn: '2025-06-30' }))).toEqual([]);
  });
});
