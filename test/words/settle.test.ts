import { describe, expect, it } from 'vitest';
import type {
  PairSettling,
  Settle,
  Settling,
  StorageSettling,
  VialSettling,
} from '../../lib/analysis/settle.ts';
import { SETTLE_COLUMNS, settleAnswer, settledMeans, settleRows } from '../../lib/words/settle.ts';

const settling = (needed: number, have: number, reach: number): Settling => {
  const more = Math.max(0, needed - have);
  return { needed, have, more, reach, outOfReach: more > reach };
};
const storage = (name: string, have: number, reach = 192): StorageSettling => ({
  ...{ storage: name, ...settling(160, have, reach), pairs: 40, flowersPerKind: 2 },
  assumed: { fresh: 0.6, stored: 0.4, pairSd: 1 },
});
const vial = (name: string, have: number, tooFewDoses: boolean | null): VialSettling => ({
  ...{ vial: name, ...settling(45, have, 192), tooFewDoses },
});
const pair = (seedParent: string, have: number, reach: number): PairSettling => ({
  ...{ seedParent, pollenParent: 'P', ...settling(49, have, reach) },
});
const settle: Settle = {
  ...{ trueDifference: 0.2, power: 0.8, level: 0.95, seasonFlowers: 96 },
  freshVersusStored: [storage('frozen', 110), storage('refrigerated', 44)],
  vials: [vial('F-01', 21, true), vial('F-02', 3, false), vial('F-03', 30, null)],
  pairs: [pair('A', 9, 60), pair('B', 20, 6), pair('C', 1, 12), pair('D', 30, 12)],
};

describe('the answer to how many more flowers would settle it', () => {
  it('is a number for each question', () => {
    expect(settleAnswer(settle)).toBe(
      'About 50 more flowers would settle fresh against frozen pollen, half with each kind on the same pairs; for ' +
        'refrigerated pollen 116. To know from its own flowers alone whether a vial is worth keeping takes 45 of them: within ' +
        'reach for 2 of 3 vials. To know whether a pair is better or worse than the average pair takes 49 flowers on it, within ' +
        'reach for 1 of 4 pairs: A × P.',
    );
  });

  it('says out of reach where it is, with what two seasons offer', () => {
    const far = {
      ...settle,
      freshVersusStored: [storage('frozen', 10, 100)],
      vials: [vial('F-01', 1, true)],
      pairs: [pair('C', 1, 12)],
    };
    expect(settleAnswer(far)).toBe(
      'Fresh against frozen pollen (150 more flowers) is out of reach: two seasons offer 100 flowers. To know from its own ' +
        'flowers alone whether a vial is worth keeping takes 45 of them: out of reach for every vial, by its doses or by two ' +
        'seasons’ flowers. To know whether a pair is better or worse than the average pair takes 49 flowers on it: more than ' +
        'two seasons offer on any seed parent.',
    );
    expect(
      settleAnswer({ ...far, freshVersusStored: [storage('frozen', 10, 100), storage('room', 10, 100)] }),
    ).toContain(
      'Fresh against frozen pollen (150 more flowers) and pollen kept at room temperature (150 more flowers) are out of reach',
    );
  });

  it('says that enough flowers are there, and that there is nothing to settle', () => {
    const enough = { ...settle, freshVersusStored: [storage('frozen', 200)], vials: [], pairs: [] };
    expect(settleAnswer(enough)).toBe('For fresh against frozen pollen there are flowers enough already.');
    expect(settleAnswer({ ...enough, freshVersusStored: [] })).toBe(
      'No stored pollen was used, so there is nothing to settle about it.',
    );
  });

  it('can’t be said for a vial before it is known what is worth a flower', () => {
    const unknown = { needed: null, more: null, outOfReach: null, because: 'no-worth' };
    const asked = { ...settle, vials: [{ ...vial('F-01', 3, null), ...unknown }] };
    expect(settleAnswer(asked)).toContain('For a vial it can’t be said');
    const [, , row] = settleRows(asked);
    expect(row!.slice(2)).toEqual(['can’t tell yet', 'can’t tell yet', 'can’t tell yet']);
  });

  it('says what settled means with its numbers, and that what was observed is not plugged in', () => {
    const means = settledMeans(settle);
    expect(means).toContain('a chance of about 8 in 10');
    expect(means).toContain('2 in every 10 flowers');
    expect(means).toContain('does not hang on what this season happened to show');
    expect(means).toContain('96');
  });
});

describe('the table of what would settle it', () => {
  it('has every method and the three nearest vials and pairs, a cell a column', () => {
    const rows = settleRows(settle);
    expect(rows.map(([question]) => question)).toEqual([
      'fresh against frozen pollen, same pairs',
      'fresh against refrigerated pollen, same pairs',
      'vial F-03 against what is worth a flower',
      'vial F-01 against what is worth a flower',
      'vial F-02 against what is worth a flower',
      'D × P against the average pair',
      'B × P against the average pair',
      'A × P against the average pair',
    ]);
    for (const row of rows) expect(row).toHaveLength(SETTLE_COLUMNS.length);
    expect(rows[3]).toEqual([
      'vial F-01 against what is worth a flower',
      '21',
      '45',
      '24',
      'no: too few doses',
    ]);
    expect(rows[5]!.at(-1)).toBe('out of reach');
    expect(rows[0]!.at(-1)).toBe('yes');
  });
});
