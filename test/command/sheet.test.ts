import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { schemaFaults } from '../schema-validator.ts';
import { type MemoryFiles, run } from './memory-world.ts';

const demo = (name: string) => readFileSync(new URL(`../../data-demo/${name}`, import.meta.url));
const FILES = {
  'crosses.csv': demo('crosses.csv'),
  'vials.csv': demo('vials.csv'),
  'flowers.csv': demo('flowers.csv'),
};
const ASKED = ['sheet', 'crosses.csv', '--vials', 'vials.csv', '--flowers', 'flowers.csv'];

const made = (output: string, more: readonly string[] = [], world: MemoryFiles = {}) =>
  run([...ASKED, '-o', output, ...more], { files: FILES, ...world });

describe('the command sheet', () => {
  it('writes a crosses file with a row for each of the 96 flowers, which filled in reads without a problem', async () => {
    const { status, out, err, written } = await made('next.csv');
    expect([status, out, err]).toEqual([0, 'Wrote next.csv.\n', '']);
    const [header, ...rows] = written.get('next.csv')!.trimEnd().split('\r\n');
    expect(rows).toHaveLength(96);
    // Filled in as a grower would: the planned day, and fruit or none by turns. No name of the demo has a comma.
    const filled = rows.map((row, at) => {
      const cells = row.split(',');
      cells[1] = cells.at(-1)!.replace('planned for ', '') || '2026-07-20';
      cells[7] = at % 2 === 0 ? 'fruit' : 'none';
      return cells.join(',');
    });
    const bytes = new TextEncoder().encode([header, ...filled].join('\r\n'));
    const season = readSeason([
      { name: 'next.csv', bytes },
      { name: 'vials.csv', bytes: FILES['vials.csv'] },
    ]);
    expect(season.files[0]).toMatchObject({ kind: 'crosses', rows: 96, used: 96, leftOut: 0, problems: [] });
    expect(season.crosses.every(({ storage, ageDays }) => storage === 'fresh' || ageDays! > 0)).toBe(true);
  });

  it('gives a file that, filled in, is next season’s crosses: both seasons go into one analysis', async () => {
    const { written } = await made('next.csv');
    const [header, ...rows] = written.get('next.csv')!.trimEnd().split('\r\n');
    const at = header!.split(',').indexOf('outcome');
    // Every flower pollinated on its planned day, or on one of July where no day was planned; every third fails.
    const filled = rows.map((row, i) => {
      const cells = row.split(',');
      cells[1] = cells.at(-1)!.replace('planned for ', '') || '2026-07-20';
      cells[at] = i % 3 === 0 ? 'none' : 'fruit';
      return cells.join(',');
    });
    const files = { ...FILES, 'next.csv': [header, ...filled].join('\r\n') };
    const line = ['analyse', 'crosses.csv', 'next.csv', '--vials', 'vials.csv', '--json'];
    const { status, out } = await run(line, { files });
    expect(status).toBeLessThan(2);
    const result = JSON.parse(out);
    expect(schemaFaults('analyse', result)).toEqual([]);
    const { bySeason, changes } = result.seasons;
    const last = bySeason.at(-1);
    expect([last.season, last.flowers, last.fruits]).toEqual(['2026', 96, 64]);
    expect(changes.at(-1)).toMatchObject({ to: '2026', later: { fruits: 64, flowers: 96 } });
    // Each vial's own record has grown by the flowers that the sheet gave it.
    const before = JSON.parse((await run([...line.filter((word) => word !== 'next.csv')], { files })).out);
    const used = (of: typeof result) =>
      of.vials.reduce((sum: number, vial: { flowers: number }) => sum + vial.flowers, 0);
    const column = header!.split(',').indexOf('vial');
    expect(used(result) - used(before)).toBe(filled.filter((row) => row.split(',')[column] !== '').length);
  });

  it('renders a page of the mix that was chosen, in between where none was', async () => {
    const mixes: string[] = [];
    const renderSheet: MemoryFiles['renderSheet'] = async (_, __, mix) => {
      mixes.push(mix);
      return '<!doctype html>';
    };
    const chosen = await made('sheet.html', ['--mix', 'most-varieties', '--json'], { renderSheet });
    expect(chosen.status).toBe(0);
    expect(schemaFaults('report', JSON.parse(chosen.out))).toEqual([]);
    await made('sheet.html', [], { renderSheet });
    expect(mixes).toEqual(['most-varieties', 'balanced']);
  });

  it('overwrites nothing, for a sheet may be filled in', async () => {
    const { status, err } = await made('next.csv', [], { files: { ...FILES, 'next.csv': 'cross_id\n' } });
    expect(status).toBe(2);
    expect(err).toContain('next.csv is there already');
  });

  it('says why there is no sheet', async () => {
    const bare = await run(['sheet', 'crosses.csv', '-o', 's.html'], { files: FILES });
    expect(bare.status).toBe(2);
    expect(bare.err).toContain('list the flowers you expect');
    const none = { ...FILES, 'flowers.csv': 'seed_parent,flowers\nSalt Moon,0\n' };
    const { err, written } = await made('s.html', [], { files: none });
    expect(err).toContain('No flower is expected next season');
    expect(written.size).toBe(0);
  });

  it('refuses a mix that there is not, and --mix elsewhere', async () => {
    expect((await made('s.html', ['--mix', 'best'])).err).toContain('most-fruit, balanced, most-varieties');
    expect((await run(['analyse', 'crosses.csv', '--mix', 'balanced'], { files: FILES })).status).toBe(2);
  });
});
