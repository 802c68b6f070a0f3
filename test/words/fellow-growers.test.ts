import { describe, expect, it } from 'vitest';
import { couldBeSaid, rangeRows, splitTestSaid } from '../../lib/words/fellow-growers.ts';

/* Wilson's ranges of 7 of 20 (0.18 to 0.57) and 0 of 5 (0 to 0.43): Newcombe (1998) and the formula by hand. */
const seven = { fruits: 7, flowers: 20, estimate: 0.35, lower: 0.1812, upper: 0.5671 };
const none = { fruits: 0, flowers: 5, estimate: 0, lower: 0, upper: 0.4345 };

const settle = {
  trueDifference: 0.2,
  power: 0.8,
  level: 0.95,
  seasonFlowers: 120,
  freshVersusStored: [],
  vials: [],
  pairs: [],
};
const entry = {
  storage: 'frozen',
  ...{ needed: 200, have: 40, more: 160, reach: 240, outOfReach: false },
  ...{ pairs: 50, flowersPerKind: 2, assumed: { fresh: 0.6, stored: 0.4, pairSd: 1 } },
};

describe('the words for fellow growers', () => {
  it('set counts and range side by side', () => {
    expect(rangeRows([seven, none])).toEqual([
      ['7 of 20', 'about 4 in 10; could be 2 to 6 in 10'],
      ['0 of 5', 'could still be as high as 4 in 10'],
    ]);
  });

  it('say what a range is, on the season’s own flowers', () => {
    expect(couldBeSaid(seven, 0.95)).toBe(
      'In this season 7 of 20 flowers took (about 4 in 10; could be 2 to 6 in 10). Of 100 ranges made in this way, about 95 hold the true rate.',
    );
    expect(couldBeSaid(none, 0.9)).toBe(
      'In this season 0 of 5 flowers took; could still be as high as 4 in 10. Of 100 ranges made in this way, about 90 hold the true rate.',
    );
    const nothing = { fruits: 0, flowers: 0, estimate: null, lower: null, upper: null };
    expect(couldBeSaid(nothing, 0.95)).toBe('Of 100 ranges made in this way, about 95 hold the true rate.');
  });

  it('say how many flowers a fair test takes, or that it cannot be said', () => {
    expect(splitTestSaid({ ...settle, freshVersusStored: [entry] })).toMatch(
      /^By the numbers of this season, fresh against frozen pollen takes 50 pairs with 2 flowers of each kind, 200 flowers in all\. If the true difference is 2 in every 10 flowers, the test finds one with a chance of about 8 in 10\./,
    );
    expect(splitTestSaid(settle)).toMatch(/cannot be said yet/);
  });
});
