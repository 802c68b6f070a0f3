import { describe, expect, it } from 'vitest';
import { flowersFile, NO_SETTINGS, settingsFaults, shareOf } from '../../lib/browser/settings.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const expected = new Map([
  ['Salt "Moon", 2', '7'],
  ['Pale Otter', ' '],
]);

describe('settingsFaults', () => {
  it('finds none where all is blank or right', () => {
    expect(settingsFaults(NO_SETTINGS)).toEqual([]);
    expect(settingsFaults({ ...NO_SETTINGS, worth: '12.5', useOn: '2026-06-01', expected })).toEqual([]);
  });

  it.each(['0', '100', '-3', '1e2', 'ten'])('refuses %j of a hundred', (worth) => {
    expect(settingsFaults({ ...NO_SETTINGS, worth })).toHaveLength(1);
  });

  it('reads a decimal comma as a point', () => {
    expect([shareOf('33,3'), shareOf('33.3'), shareOf('3,3,3')]).toEqual([0.333, 0.333, null]);
  });

  it('refuses a level and a day of the season that cannot be', () => {
    expect(settingsFaults({ ...NO_SETTINGS, level: '95', asOf: '2026-06-01' })).toEqual([]);
    expect(settingsFaults({ ...NO_SETTINGS, level: '100', asOf: '2026-06-31' })).toEqual([
      'How many ranges hold the truth needs a number above 0 and below 100.',
      'The day up to which things have happened needs a day that exists, as YYYY-MM-DD.',
    ]);
  });

  it('refuses a day that does not exist and flowers that are no whole number', () => {
    expect(
      settingsFaults({ ...NO_SETTINGS, useOn: '2026-02-30', expected: new Map([['A', '2.5']]) }),
    ).toEqual([
      'The day of use needs a day that exists, as YYYY-MM-DD.',
      'The flowers of A need a whole number from 0 up.',
    ]);
  });
});

describe('flowersFile', () => {
  it('is a file that reads back as what was typed', () => {
    const text = flowersFile({ ...NO_SETTINGS, expected })!;
    const { flowers } = readSeason([{ name: 'flowers.csv', bytes: new TextEncoder().encode(text) }]);
    expect(flowers.map(({ seedParent, flowers: count }) => [seedParent, count])).toEqual([
      ['Salt "Moon", 2', 7],
    ]);
  });

  it('is none where nothing was typed', () => {
    expect(flowersFile(NO_SETTINGS)).toBeNull();
  });
});
