import { describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { summaryText } from '../../lib/command/summary-text.ts';
import { crossesFile, flowersOf, seasonOf } from '../season-of.ts';

describe('summaryText', () => {
  const frozen = { storage: 'frozen', ageDays: 90 };
  const season = seasonOf([...flowersOf(7, 10), ...flowersOf(0, 5, frozen), { outcome: 'unknown' }], {
    files: [crossesFile(16, 15)],
    vials: [
      {
        ...{ file: 'vials.csv', line: 2, row: 2, vial: 'F-01', pollenParent: 'Salt Moon' },
        ...{ collected: '2025-03-01', storage: 'frozen', dosesLeft: null, thaws: null, note: null },
      },
    ],
  });
  const text = summaryText(analyse(season));

  // The report guide: counts first, never a bare 0 %, a range with every rate.
  it('gives the rows, then counts before rates', () => {
    expect(text).toContain('16 rows read, 15 used, 1 left out\n  1: The tag was lost');
    expect(text).toMatch(/fresh +7 of 10 \(about 7 in 10; could be /);
    expect(text).toMatch(/frozen +0 of 5; could still be as high as /);
    expect(text).not.toMatch(/\b0%|100%/);
  });

  it('says that pollen and pair cannot be told apart, rather than a number', () => {
    expect(text).toMatch(/frozen +Fewer than three pairs/);
  });

  it('names each vial with its verdict, father and own record', () => {
    expect(text).toMatch(
      /Vials, for use on 2026-06-20\n {2}F-01 +\S.*Salt Moon, not used yet; expected about /,
    );
  });

  it('leaves out blocks that have nothing to say', () => {
    const bare = summaryText(analyse(seasonOf(flowersOf(1, 2))));
    expect(bare).not.toContain('Vials');
    expect(bare).not.toContain('Like for like');
  });
});
