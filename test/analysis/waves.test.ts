import { describe, expect, it } from 'vitest';
import { WAVE_GAP_DAYS, waves } from '../../lib/analysis/waves.ts';
import type { Cross } from '../../lib/season/season.ts';
import { threeSeasons } from '../season-facts-reference.ts';
import { seasonOf } from '../season-of.ts';

const on = (pollinationDate: string, cross: Partial<Cross> = {}): Partial<Cross> => ({
  pollinationDate,
  season: pollinationDate.slice(0, 4),
  ...cross,
});

const shown = (crosses: readonly Partial<Cross>[]) =>
  waves(seasonOf(crosses)).map(({ season, wave, from, to, rows }) => [season, wave, from, to, rows]);

describe('waves found from dates', () => {
  // A second wave comes four to six weeks after the first: common practice, no source.
  it('are two where four to six weeks lie between first mornings', () => {
    for (const second of ['2025-07-18', '2025-08-01']) {
      expect(shown([on('2025-06-20'), on('2025-06-23'), on(second)])).toEqual([
        ['2025', '1', '2025-06-20', '2025-06-23', 2],
        ['2025', '2', second, second, 1],
      ]);
    }
  });

  it('begin anew from the gap that the rule names on, and not a day earlier', () => {
    expect(WAVE_GAP_DAYS).toBe(14);
    expect(shown([on('2025-06-20'), on('2025-07-03')])).toHaveLength(1);
    expect(shown([on('2025-06-20'), on('2025-07-04')])).toHaveLength(2);
  });

  it('do not depend on the order of rows, and start again with each season', () => {
    const crosses = [on('2025-08-01'), on('2024-06-20'), on('2025-06-20')];
    expect(shown(crosses)).toEqual([
      ['2024', '1', '2024-06-20', '2024-06-20', 1],
      ['2025', '1', '2025-06-20', '2025-06-20', 1],
      ['2025', '2', '2025-08-01', '2025-08-01', 1],
    ]);
  });

  it('keep growers apart: their plants flower at other times', () => {
    const crosses = [
      on('2025-06-20', { grower: 'Ina' }),
      on('2025-07-01', { grower: 'Bo' }),
      on('2025-07-12', { grower: 'Ina' }),
    ];
    expect(waves(seasonOf(crosses)).map(({ grower, wave }) => [grower, wave])).toEqual([
      ['Ina', '1'],
      ['Bo', '1'],
      ['Ina', '2'],
    ]);
  });

  it('count fruits of flowers with a known outcome; lost tags and controls are rows of the wave only', () => {
    const crosses = [
      on('2025-06-20'),
      on('2025-06-20', { outcome: 'none' }),
      on('2025-06-20', { outcome: 'unknown' }),
      on('2025-06-20', { control: 'selfed', pollenParent: 'Lantern Creek' }),
    ];
    expect(waves(seasonOf(crosses))[0]).toMatchObject({ fruits: 1, flowers: 2, estimate: 0.5, rows: 4 });
  });

  it('have no rate where every tag was lost', () => {
    const [wave] = waves(seasonOf([on('2025-06-20', { outcome: 'unknown' })]));
    expect(wave).toMatchObject({ flowers: 0, estimate: null, because: 'no-flowers' });
  });

  it('are none without a row', () => {
    expect(waves(seasonOf([]))).toEqual([]);
  });
});

describe('waves of the file’s own column', () => {
  it('keep the grower’s words; rows that leave it blank stand apart', () => {
    const crosses = [
      on('2025-06-20', { wave: 'early' }),
      on('2025-06-21', { wave: 'late' }),
      on('2025-09-01', { wave: null }),
    ];
    expect(waves(seasonOf(crosses)).map(({ wave, source }) => [wave, source])).toEqual([
      ['early', 'column'],
      ['late', 'column'],
      [null, 'column'],
    ]);
  });

  it('are the same in the invented grower’s file as those found from its dates', () => {
    const season = threeSeasons();
    const dated = { ...season, crosses: season.crosses.map((cross) => ({ ...cross, wave: null })) };
    const without = (all: ReturnType<typeof waves>) => all.map(({ source: _, ...wave }) => wave);
    expect(waves(dated).every(({ source }) => source === 'dates')).toBe(true);
    expect(without(waves(dated))).toEqual(without(waves(season)));
    // Days between first mornings, read off the file by eye: 17 June to 24 July 2023 is 37 days.
    expect(waves(season).map(({ daysAfterPrevious }) => daysAfterPrevious)).toEqual([
      ...[null, 37, null, 35, null, 39, 38],
    ]);
  });
});
