import { describe, expect, it } from 'vitest';
import {
  analyseOptions,
  flowersFile,
  jobOf,
  NO_ANSWERS,
  NO_SETTINGS,
  settingsFaults,
} from '../../lib/browser/settings.ts';
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

  it('refuses a day that does not exist and flowers that are no whole number', () => {
    expect(
      settingsFaults({ ...NO_SETTINGS, useOn: '2026-02-30', expected: new Map([['A', '2.5']]) }),
    ).toEqual([
      'The day of use needs a day that exists, as YYYY-MM-DD.',
      'The flowers of A need a whole number from 0 up.',
    ]);
  });
});

describe('analyseOptions', () => {
  it('leaves out what is blank, so that the library’s defaults hold', () => {
    expect(analyseOptions(NO_SETTINGS, NO_ANSWERS)).toEqual({ level: 0.95 });
  });

  // 33.3 / 100 is 0.33299999999999996; a command line would say 0.333.
  it.each(['7', '12.5', '33.3', '.5'])(
    'reads %j of a hundred as a command line reads the proportion',
    (worth) => {
      const said = { '7': '0.07', '12.5': '0.125', '33.3': '0.333', '.5': '0.005' }[worth];
      expect(analyseOptions({ ...NO_SETTINGS, worth }, NO_ANSWERS).worth).toBe(Number(said));
    },
  );
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

describe('jobOf', () => {
  const files = [
    { name: 'a.csv', bytes: new Uint8Array([1]), refused: null },
    { name: 'b.csv', bytes: null, refused: 'locked' },
  ];

  it('takes the files that could be read, and the flowers typed in', () => {
    const { sources, analyse } = jobOf(files, NO_ANSWERS, { ...NO_SETTINGS, expected }, false);
    expect(sources.map(({ name }) => name)).toEqual(['a.csv', 'flowers.csv']);
    expect(analyse).toBeNull();
  });

  it('says what the grower answered', () => {
    const answers = {
      ...{ kinds: new Map([['a.csv', 'crosses' as const]]), map: new Map([['Zorn', 'outcome']]) },
      ...{ dateOrder: 'dmy' as const, samePlants: true },
    };
    expect(jobOf(files, answers, NO_SETTINGS, true)).toEqual({
      sources: [{ name: 'a.csv', bytes: new Uint8Array([1]), kind: 'crosses' }],
      read: { endpoint: 'initial', map: [['Zorn', 'outcome']], dateOrder: 'dmy' },
      analyse: { level: 0.95, samePlants: true },
    });
  });
});
