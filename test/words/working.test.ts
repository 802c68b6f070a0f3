import { describe, expect, it } from 'vitest';
import { ageRows, drawsSaid, OPTION_COLUMNS, optionRows, spreadRows } from '../../lib/words/working.ts';
import { season } from '../charts/fixture.ts';

describe('the words about the working', () => {
  it('give every age of the methods asked for, as counted', () => {
    expect(ageRows(season.raw.byAge, ['room'])).toEqual([
      ['room temperature', '3 to 7 days', expect.stringMatching(/^0 of 6; could still be as high as/)],
    ]);
    expect(ageRows(season.raw.byAge, [])).toEqual([]);
  });

  it('give the standard deviation of each effect', () => {
    expect(spreadRows({ variances: { seedParent: 0.25, morning: 0, hour: 4 } })).toEqual([
      ['seed parents', '0.50'],
      ['mornings', '0.00'],
      ['hour', '2.00'],
    ]);
  });

  it('say what the answers rest on, or why there are none', () => {
    expect(drawsSaid({ draws: 1000, effectiveDraws: 412, settled: true })).toBe(
      'It was worked out with 1000 draws, worth 412 independent ones.',
    );
    // Found by a reader: 1000 draws were said to be worth 1814.
    expect(drawsSaid({ draws: 1000, effectiveDraws: 1814, settled: true })).toContain(
      'worth 1000 independent',
    );
    expect(drawsSaid({ draws: 0, effectiveDraws: 0, settled: false, because: 'no-aged-flowers' })).toBe(
      'No flower has a known pollen age.',
    );
  });

  it('name every option with its value, also those that nothing was said about', () => {
    const none = {
      level: 0.9,
      endpoint: 'final',
      asOf: null,
      useOn: null,
      ageScale: null,
      worth: null,
      must: [],
      atMost: [],
      samePlants: false,
      dateOrder: null,
      dateSystem: null,
      map: [],
      same: [],
      storage: [],
    } as const;
    const said = optionRows(none);
    expect(said.map(([option]) => option)).toEqual([
      'level',
      'endpoint',
      'as-of',
      'use-on',
      'age-scale',
      'worth',
    ]);
    for (const row of said) expect(row).toHaveLength(OPTION_COLUMNS.length);
    expect(said[0]).toEqual(['level', '90%']);
    expect(optionRows({ ...none, worth: 0.3, ageScale: 'days' }).slice(4)).toEqual([
      ['age-scale', 'days'],
      ['worth', 'about 3 in 10 (0.300)'],
    ]);
    const must = [{ seedParent: 'Salt Moon', pollenParent: '__proto__', flowers: 2 }];
    const atMost = [
      { pollenParent: 'Salt Moon', flowers: 1 },
      { seedParent: 'A', pollenParent: 'B', flowers: 0 },
    ];
    expect(optionRows({ ...none, must, atMost }).slice(6)).toEqual([
      ['must', 'Salt Moon × __proto__: 2 flowers'],
      ['at-most', 'Salt Moon: 1 flower'],
      ['at-most', 'A × B: 0 flowers'],
    ]);
    const reading = {
      samePlants: true,
      dateOrder: 'dmy',
      dateSystem: 1904,
      map: [],
      same: [['A', 'a']],
      storage: [],
    } as const;
    expect(
      optionRows({ ...none, ...reading, map: [{ header: 'Mutter', column: 'seed_parent' }] }).slice(6),
    ).toEqual([
      ['same-plants', 'yes'],
      ['date-order', 'dmy'],
      ['date-system', '1904'],
      ['map', 'Mutter=seed_parent'],
      ['same', 'A=a'],
    ]);
  });
});
