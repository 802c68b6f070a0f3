import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { crossesCsv, run } from './memory-world.ts';

const MESSY = crossesCsv(
  [
    '20/06/2025,Lantern Creek,Salt Moon,Fridge,yes,9,full',
    '30/02/2025,Lantern Creek,Salt Moon,fresh,no,,full',
    '22/06/2025,=1+1,Salt  Moon,fresh,no,,new',
  ],
  'Tag,Date,Mother,Father,Storage,Result,Age,Moon',
);
const cleaned = (...options: string[]) =>
  run(['clean', 'a.csv', '-o', 'out', ...options], { files: { 'a.csv': MESSY } });

describe('clean', () => {
  it('writes the season as it was understood, described, with what was found', async () => {
    const { status, out, written } = await cleaned();
    expect(status).toBe(1);
    expect([...written.keys()]).toEqual(['out/crosses.csv', 'out/datapackage.json', 'out/problems.csv']);
    const lines = written.get('out/crosses.csv')!.split('\r\n');
    expect(lines[1]).toBe('1,2025-06-20,Lantern Creek,Salt Moon,refrigerated,,9,,fruit,2025,,,,,,,,,,,,');
    expect(lines[2]).toMatch(/^3,2025-06-22,'=1\+1,Salt Moon,fresh,/);
    expect(out).toBe(
      'Wrote 2 rows to out: crosses.csv, datapackage.json and problems.csv.\n' +
        'Not in them: 1 row with errors and 1 column of your own; problems.csv names each.\n',
    );
    expect(written.get('out/problems.csv')).toContain('date-does-not-exist');
    const described = JSON.parse(written.get('out/datapackage.json')!);
    expect(described.description).toContain('apostrophe');
    expect(described.resources[0].schema.fields[0].description).toContain('tag');
  });

  it('gives files in which nothing is left to mend', async () => {
    const { written } = await cleaned();
    const again = await run(['check', 'c.csv'], { files: { 'c.csv': written.get('out/crosses.csv')! } });
    expect([again.status, again.out]).toEqual([
      0,
      'c.csv: crosses, 2 rows, 2 used, 0 left out\n  Nothing to mend.\n',
    ]);
  });

  it('says nothing more of a season of which everything is written', async () => {
    const demo = (name: string) => readFileSync(new URL(`../../data-demo/${name}`, import.meta.url));
    const { status, out } = await run(['clean', 'c.csv', 'v.csv', '-o', 'out'], {
      files: { 'c.csv': demo('crosses.csv'), 'v.csv': demo('vials.csv') },
    });
    // 291 and 20 rows below the headers, by `wc -l`.
    expect([status, out]).toEqual([
      0,
      'Wrote 311 rows to out: crosses.csv, vials.csv, datapackage.json and problems.csv.\n',
    ]);
  });

  it('writes nothing while a question is open, and tells its files as JSON', async () => {
    const asked = await run(['clean', 'a.csv', '-o', 'out'], {
      files: { 'a.csv': crossesCsv(['03/04/2025,A,B,fresh,fruit']) },
    });
    expect([asked.status, asked.written.size]).toEqual([2, 0]);
    expect(JSON.parse((await cleaned('--json')).out)).toMatchObject({
      folder: 'out',
      written: ['crosses.csv', 'datapackage.json', 'problems.csv'],
    });
  });
});
