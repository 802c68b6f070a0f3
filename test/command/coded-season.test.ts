import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { codedAnalysis, codedFrom } from '../../lib/command/coded-season.ts';
import { Failure } from '../../lib/command/failure.ts';
import { newCodeKey } from '../../lib/season/code-key.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const TEXT = [
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,note',
  'T1,2025-06-01,Lantern Creek,Salt Moon,fresh,fruit,by the gate',
  'T2,2025-06-02,Salt Moon,Lantern Creek,fresh,none,',
  'T3,2025-06-02,Salt Moon,Lantern Creek,fresh,maybe,',
].join('\n');
const own = readSeason([{ name: 'mine.csv', bytes: new TextEncoder().encode(TEXT) }]);
const key = newCodeKey('5'.repeat(64));
const said = {
  level: 'codes',
  map: [],
  same: [['Salt Moon', 'Salt Mon']],
  storage: [],
  useOn: '2026-05-05',
} as const;

describe('a coded season', () => {
  it('has its numbers from the files of the copy, and its options under codes', () => {
    const coded = codedFrom(own, said, key, 'key.json');
    const must = [{ seedParent: 'Lantern Creek', pollenParent: 'Salt Moon', flowers: 1 }];
    const { season, analysis } = codedAnalysis(own, coded, { useOn: said.useOn, must });
    expect(season.crosses).toHaveLength(2);
    expect(analysis.provenance.coded).toEqual({ level: 'codes', rowsLeftOut: 1 });
    expect(analysis.provenance.options.must[0]!.seedParent).toBe(coded.key.codes.plants.get('Lantern Creek'));
    const days = (a: string, b: string) => (Date.parse(b) - Date.parse(a)) / 86_400_000;
    expect(days(said.useOn, analysis.provenance.options.useOn!)).toBe(coded.key.shiftDays);
    expect(JSON.stringify([coded.files, season, analysis])).not.toMatch(/Lantern|Salt|by the gate|mine\.csv/);
  });

  it('knows as secrets what was said beside the files, and in a summary the codes too', () => {
    const values = (level: 'codes' | 'summary') =>
      codedFrom(own, { ...said, level }, key, 'key.json').secrets.map(({ value }) => value);
    expect(values('codes')).toEqual(expect.arrayContaining(['Salt Mon', '2026-05-05', 'by the gate']));
    expect(values('codes')).not.toContain('P01');
    expect(values('summary')).toContain('P01');
  });

  it('says no wish in a summary, for a wish names single plants', () => {
    const coded = codedFrom(own, { ...said, level: 'summary' }, key, 'key.json');
    const must = [{ seedParent: 'Lantern Creek', pollenParent: 'Salt Moon', flowers: 1 }];
    const atMost = [{ pollenParent: 'Salt Moon', flowers: 2 }];
    const { options } = codedAnalysis(own, coded, { must, atMost }).analysis.provenance;
    expect([options.must, options.atMost]).toEqual([[], []]);
    expect(JSON.stringify(options)).not.toMatch(/"P\d\d"/);
  });

  it('comes to the same numbers and verdicts as the season under its own names', () => {
    const files = ['crosses.csv', 'vials.csv', 'flowers.csv'].map((name) => ({
      name,
      bytes: readFileSync(new URL(`../../data-demo/${name}`, import.meta.url)),
    }));
    const demo = readSeason(files);
    const coded = codedFrom(demo, { level: 'codes', map: [], same: [] }, key, 'key.json');
    const { analysis } = codedAnalysis(demo, coded, {});
    const original = analyse(demo);
    const advice = ({ vials }: typeof original) =>
      vials
        .map(({ storage, ageDays, estimate, probabilityWorth, verdict }) =>
          [storage, ageDays, estimate?.toFixed(9), probabilityWorth?.toFixed(9), verdict].join(),
        )
        .sort();
    expect(advice(analysis)).toEqual(advice(original));
    expect(new Set(original.vials.map(({ verdict }) => verdict)).size).toBeGreaterThan(1);
    const rates = ({ pairs }: typeof original) => pairs.map(({ estimate }) => estimate!.toFixed(9)).sort();
    expect(rates(analysis)).toEqual(rates(original));
  });

  it('names the key’s file where dates cannot be moved', () => {
    const far = {
      ...own,
      crosses: own.crosses.map((cross) => ({ ...cross, pollinationDate: '9999-01-01' })),
    };
    const stuck = { ...key, shiftDays: 4000 };
    expect(() => codedFrom(far, said, stuck, 'key.json')).toThrow(Failure);
  });
});
