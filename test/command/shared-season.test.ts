import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../lib/analyse.ts';
import { readCodeKey } from '../../lib/season/code-key.ts';
import { schemaFaults } from '../schema-validator.ts';
import { CLEAN, type MemoryFiles, run } from './memory-world.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,grower,note';
const SECRETIVE = `${HEADER}
R-17a,2025-06-20,Lantern Creek,Salt Moon,fresh,fruit,Ina Vell,behind the mill
R-17b,2025-06-21,Salt Moon,Lantern Creek,fresh,none,Ina Vell,
R-17c,2025-06-21,Salt Moon,,fresh,none,Ina Vell,
`;
const path = 'ina/secret-garden.csv';
const made = (words: readonly string[], more: MemoryFiles = {}) =>
  run(words, { ...more, files: { [path]: SECRETIVE, ...more.files } });
const NAMES = /Lantern|Moon|Ina|Vell|mill|R-17|2025|garden/;

describe('a coded copy', () => {
  it('prints results under codes, and keeps the names in a file apart', async () => {
    const { status, out, err, written } = await made(['analyse', path, '--json', '--anonymous']);
    expect(status).toBe(1);
    expect(out).not.toMatch(NAMES);
    expect(schemaFaults('analyse', JSON.parse(out))).toEqual([]);
    const result = JSON.parse(out) as Analysis;
    expect(result.provenance.coded).toEqual({ level: 'codes', rowsLeftOut: 1 });
    expect(result.provenance.files.map(({ file }) => file)).toEqual(['coded-crosses.csv']);
    expect(result.raw.overall).toMatchObject({ fruits: 1, flowers: 2 });
    expect(result.pairs.map(({ seedParent }) => seedParent).sort()).toEqual(['P01', 'P02']);
    expect(err).toContain('The names are kept in fruitodds-key.json: do not share it.');
    const key = readCodeKey(written.get('fruitodds-key.json')!);
    expect([...key!.codes.plants.keys()].sort()).toEqual(['Lantern Creek', 'Salt Moon']);
    expect(key!.secret).toBe('ab'.repeat(32));
  });

  it('uses the key of before, whole, and adds to it', async () => {
    const first = await made(['analyse', path, '--anonymous', '--key', 'k.json']);
    const key = first.written.get('k.json')!;
    const more = `${SECRETIVE}R-18,2026-06-20,Candle Weir,Salt Moon,fresh,fruit,Ina Vell,\n`;
    const { written } = await made(['analyse', path, '--anonymous', '--key', 'k.json'], {
      files: { [path]: more, 'k.json': key },
    });
    const [before, after] = [readCodeKey(key)!, readCodeKey(written.get('k.json')!)!];
    for (const [name, code] of before.codes.plants) expect(after.codes.plants.get(name)).toBe(code);
    expect(after.codes.plants.get('Candle Weir')).toBe('P03');
    expect([after.shiftDays, after.secret]).toEqual([before.shiftDays, before.secret]);
  });

  it('shows nothing about single plants in a summary, not even under codes', async () => {
    const { status, out } = await made(['analyse', path, '--json', '--anonymous=summary']);
    expect(status).toBe(1);
    expect(out).not.toMatch(NAMES);
    expect(out).not.toMatch(/"[PVT]\d\d/);
    expect(schemaFaults('analyse', JSON.parse(out))).toEqual([]);
    expect(JSON.parse(out)).toMatchObject({ pairs: [], raw: { overall: { fruits: 1, flowers: 2 } } });
  });

  it('writes nothing, no key either, where a page would show a name, and says where', async () => {
    const { status, err, written } = await made(['report', path, '-o', 'out.html', '--anonymous'], {
      render: async () => '<!doctype html>\n<p>By Ina Vell</p>',
    });
    expect([status, written.size]).toEqual([2, 0]);
    expect(err).toContain('report.html, line 2, would show the grower “Ina Vell”');
  });

  it('tells names from the words of its pages in their language', async () => {
    // A grower of this name is no leak where the page itself says the word, and one in a page that does not.
    const named = { [path]: SECRETIVE.replaceAll('Ina Vell', 'Saisonbericht') };
    const render = async () => '<!doctype html>\n<p>Der Saisonbericht.</p>';
    const words = ['report', path, '-o', 'out.html', '--anonymous'];
    const german = await run([...words, '--language', 'de'], { files: named, render });
    expect([german.status, german.written.has('out.html')]).toEqual([1, true]);
    const english = await run(words, { files: named, render });
    expect([english.status, english.written.size]).toEqual([2, 0]);
    expect(english.err).toContain('would show the grower “Saisonbericht”');
  });

  it('leaves a file alone that is no key', async () => {
    const { status, err, written } = await made(['analyse', path, '--anonymous', '--key', 'photo.jpg'], {
      files: { 'photo.jpg': 'mine' },
    });
    expect([status, written.size]).toEqual([2, 0]);
    expect(err).toContain('photo.jpg does not hold the key of a coded copy');
  });

  it.each([
    ['report', 'out.html', 'out.html'],
    ['site', 'shared', 'shared/key.json'],
  ])('of %s is never written to %s together with its key', async (command, output, key) => {
    const { status, err, written } = await made([command, path, '-o', output, '--anonymous', '--key', key]);
    expect([status, written.size]).toEqual([2, 0]);
    expect(err).toContain('turns codes into names again');
  });

  it('moves the day of use with all other days', async () => {
    const { out, written } = await made(['analyse', path, '--json', '--anonymous', '--use-on', '2026-06-20']);
    expect(out).not.toContain('2026-06-20');
    const { useOn, asOf } = (JSON.parse(out) as Analysis).provenance.options;
    const days = (Date.parse(useOn!) - Date.parse(asOf!)) / 86_400_000;
    expect(days).toBe(364);
    expect(readCodeKey(written.get('fruitodds-key.json')!)!.shiftDays).not.toBeNull();
  });

  it('cleans to files under codes, without the list of faults', async () => {
    const { status, out, written } = await made([
      'clean',
      path,
      '-o',
      'shared',
      '--anonymous',
      '--key',
      'k.json',
    ]);
    expect([status, out]).toEqual([1, 'Wrote to shared: coded-crosses.csv.\n']);
    expect([...written.keys()].sort()).toEqual(['k.json', 'shared/coded-crosses.csv']);
    expect(written.get('shared/coded-crosses.csv')).not.toMatch(NAMES);
    const { status: refused } = await made(['clean', path, '-o', 'shared', '--anonymous=summary']);
    expect(refused).toBe(2);
  });

  it('is no coded copy where none is asked for', async () => {
    const { out, written } = await run(['analyse', 'a.csv', '--json'], { files: { 'a.csv': CLEAN } });
    expect(written.size).toBe(0);
    expect((JSON.parse(out) as Analysis).provenance.coded).toBeUndefined();
  });
});

// The original season is the reference: a simulated one of 150 flowers with lost tags and vials.
it('gives the same statistics: counts alike, fits to rounding, draws to their own accuracy', async () => {
  const files = { 'k.csv': readFileSync(new URL('../reference/k-season150.csv', import.meta.url)) };
  const result = async (...options: string[]) =>
    JSON.parse((await run(['analyse', 'k.csv', '--json', ...options], { files })).out) as Analysis;
  const [own, coded] = [await result(), await result('--anonymous')];
  const counts = ({ raw, rows, fruitSet, waves }: Analysis) => ({
    overall: raw.overall,
    byStorage: raw.byStorage,
    byAge: raw.byAge,
    lost: raw.lostTags,
    byPair: raw.byPair.map(({ fruits, flowers }) => `${fruits}/${flowers}`).sort(),
    used: rows.used,
    fruitSet,
    waves: waves.map(({ rows: size, fruits }) => [size, fruits]),
  });
  expect(counts(coded)).toEqual(counts(own));
  own.freshVersusStored.forEach((entry, i) => {
    const other = coded.freshVersusStored[i]!;
    expect(other.difference).toEqual(entry.difference);
    expect(other.commonOddsRatio.estimate).toBeCloseTo(entry.commonOddsRatio.estimate!, 9);
    if (entry.adjusted.estimate !== null)
      expect(other.adjusted.estimate).toBeCloseTo(entry.adjusted.estimate, 1);
  });
  own.models.fixed.terms.forEach(({ term, estimate }, i) => {
    expect(coded.models.fixed.terms[i]).toMatchObject({ term });
    expect(coded.models.fixed.terms[i]!.estimate).toBeCloseTo(estimate!, 8);
  });
  expect(coded.models.parents.logLik).toBeCloseTo(own.models.parents.logLik!, 5);
  const expected = (analysis: Analysis) =>
    analysis.pairs.map(({ estimate }) => estimate!).sort((a, b) => a - b);
  const gaps = expected(own).map((estimate, i) => Math.abs(estimate - expected(coded)[i]!));
  expect(Math.max(...gaps)).toBeLessThan(0.03);
});
