import { describe, expect, it } from 'vitest';
import { type Analysis, analyse } from '../../lib/analyse.ts';
import { analysisJson, filesJson } from '../../lib/command/json.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const analysis = analyse(seasonOf(flowersOf(2, 3, { storage: 'frozen', ageDays: 90 })));

/** The analysis with another value for one of its keys, as only a fault of ours could make it. */
const spoilt = (key: string, value: unknown) => ({ ...analysis, [key]: value }) as Analysis;

describe('analysisJson', () => {
  it('puts the sentence of each missing estimate beside its code, however deep it stands', () => {
    const json = JSON.parse(JSON.stringify(analysisJson(analysis))) as {
      freshVersusStored: { difference: object }[];
    };
    expect(json.freshVersusStored[0]!.difference).toEqual({
      estimate: null,
      lower: null,
      upper: null,
      because: 'No flower with a known outcome got fresh pollen.',
      becauseCode: 'no-fresh-flower',
    });
  });

  it('refuses to print what JSON would silently turn into null', () => {
    expect(() => analysisJson(spoilt('raw', { rate: Number.NaN }))).toThrow(TypeError);
    expect(() => analysisJson(spoilt('raw', { rate: Number.POSITIVE_INFINITY }))).toThrow(TypeError);
    expect(() => analysisJson(spoilt('raw', { rate: () => 1 }))).toThrow(TypeError);
  });

  it('keeps a plant called __proto__ as text', () => {
    const named = analyse(seasonOf([{ seedParent: '__proto__', pollenParent: 'constructor' }]));
    expect(JSON.stringify(analysisJson(named))).toContain('"seedParent":"__proto__"');
  });
});

describe('filesJson', () => {
  it('says each problem in words, without its place’s file and without what filled the sentence', () => {
    const season = seasonOf([], {
      files: [
        {
          ...{ file: 'a.csv', kind: 'crosses', sha256: '', encoding: 'utf-8', delimiter: ',', columns: [] },
          ...{ rows: 1, used: 0, leftOut: 1 },
          problems: [
            {
              ...{ file: 'a.csv', line: 2, row: 2, severity: 'error', column: 'pollination_date' },
              ...{ value: '2025-02-30', code: 'date-does-not-exist', details: {} },
            },
          ],
        },
      ],
    });
    const [problem] = filesJson(season)[0]!.problems;
    expect(Object.keys(problem!)).toEqual([
      ...['severity', 'line', 'row', 'column', 'value', 'code', 'message', 'fix'],
    ]);
    expect(problem!.message).toContain('2025-02-30');
  });
});
