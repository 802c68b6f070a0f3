import { describe, expect, it } from 'vitest';
import { NO_ANSWERS, NO_SETTINGS } from '../../lib/browser/settings.ts';
import { analyseOptions, taskOf } from '../../lib/browser/task.ts';

const expected = new Map([
  ['Salt "Moon", 2', '7'],
  ['Pale Otter', ' '],
]);

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

describe('taskOf', () => {
  const files = [
    { name: 'a.csv', bytes: new Uint8Array([1]), refused: null },
    { name: 'b.csv', bytes: null, refused: 'locked' },
  ];

  it('takes the files that could be read, and the flowers typed in', () => {
    const { sources, analyse } = taskOf(files, NO_ANSWERS, { ...NO_SETTINGS, expected }, false);
    expect(sources.map(({ name }) => name)).toEqual(['a.csv', 'flowers.csv']);
    expect(analyse).toBeNull();
  });

  it('says what the grower answered', () => {
    const answers = {
      ...{ kinds: new Map([['a.csv', 'crosses' as const]]), map: new Map([['Zorn', 'outcome']]) },
      ...{ dateOrder: 'dmy' as const, samePlants: true, apart: new Set<string>() },
    };
    const must = [{ names: 'A × B', flowers: 2 }];
    const same = [['A', 'a']];
    const file = { file: 's.json', sha256: 'f' };
    const more = { level: '90', ageScale: 'days' as const, dateSystem: 1904 as const, asOf: '2026-01-02' };
    expect(taskOf(files, answers, { ...NO_SETTINGS, ...more, must, same, file }, true)).toEqual({
      sources: [{ name: 'a.csv', bytes: new Uint8Array([1]), kind: 'crosses' }],
      read: {
        ...{ endpoint: 'initial', map: [['Zorn', 'outcome']], same, asOf: '2026-01-02' },
        ...{ dateOrder: 'dmy', dateSystem: 1904, settings: file },
      },
      analyse: { level: 0.9, ageScale: 'days', samePlants: true },
      wishes: { must, atMost: [] },
      share: null,
    });
  });
});
