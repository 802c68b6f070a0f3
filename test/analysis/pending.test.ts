import { describe, expect, it } from 'vitest';
import { pending } from '../../lib/analysis/pending.ts';
import { rowCounts } from '../../lib/analysis/rows.ts';
import { threeSeasons } from '../season-facts-reference.ts';
import { crossesFile, seasonOf } from '../season-of.ts';

const young = { outcome: 'pending' as const };

// Two weeks from pollination to the check: common practice, no source.
describe('pending flowers', () => {
  it('are to be looked at two weeks after pollination, day by day', () => {
    const season = seasonOf(
      [
        { ...young, pollinationDate: '2025-09-14' },
        { ...young, pollinationDate: '2025-09-10' },
        { ...young, pollinationDate: '2025-09-14' },
        { outcome: 'none' },
      ],
      { asOf: '2025-09-24' },
    );
    expect(pending(season)).toEqual({
      asOf: '2025-09-24',
      lookAfterDays: 14,
      flowers: 3,
      due: 1,
      looks: [
        { lookOn: '2025-09-24', flowers: 1, due: true, crossIds: ['2'] },
        { lookOn: '2025-09-28', flowers: 2, due: false, crossIds: ['1', '3'] },
      ],
      awaitingHarvest: 0,
    });
  });

  it('cross a year’s end and a leap day', () => {
    const season = seasonOf(
      [
        { ...young, pollinationDate: '2024-12-25' },
        { ...young, pollinationDate: '2024-02-20' },
      ],
      { asOf: null },
    );
    expect(pending(season).looks.map(({ lookOn, due }) => [lookOn, due])).toEqual([
      ['2024-03-05', false],
      ['2025-01-08', false],
    ]);
  });

  it('are with hanging fruits as many as the rows left out for it', () => {
    const crosses = [
      { ...young },
      { ...young, control: 'selfed' as const },
      { harvestedOn: '2025-08-20' },
      { harvestedOn: null },
    ];
    const season = seasonOf(crosses, { endpoint: 'final', files: [crossesFile(4, 1)] });
    const { flowers, awaitingHarvest } = pending(season);
    expect([flowers, awaitingHarvest]).toEqual([2, 1]);
    const left = rowCounts(season).byReason.find(({ reason }) => reason === 'outcome-pending');
    expect(left!.rows).toBe(3);
  });

  // Counted in the file by its outcome column: 8 rows of 2025-09-14.
  it('are 8 in the invented grower’s file, on one day', () => {
    expect(pending(threeSeasons()).looks.map(({ lookOn, flowers }) => [lookOn, flowers])).toEqual([
      ['2025-09-28', 8],
    ]);
  });

  it('are none where there is none', () => {
    expect(pending(seasonOf([{}]))).toMatchObject({ flowers: 0, due: 0, looks: [] });
  });
});
