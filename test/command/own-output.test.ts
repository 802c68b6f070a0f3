import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../lib/words/languages.ts';
import { CLEAN, crossesCsv, run } from './memory-world.ts';

// What the command wrote is given to it again: with flowers it is read, without it is passed over and said so.

const SICK = crossesCsv([
  '2025-06-20,A,B,fresh,fruit',
  '2025-06-31,A,B,fresh,none',
  '2025-06-21,B,A,fresh,none',
]);
const inLanguage = LANGUAGES.map((language) => [language]);

async function cleaned(): Promise<Record<string, string>> {
  const { written } = await run(['clean', 'c.csv', '-o', 'out'], { files: { 'c.csv': SICK } });
  return Object.fromEntries(written);
}

describe('files that the command wrote', () => {
  it.each(inLanguage)(
    'in %s: the whole folder of clean can be analysed, its list of findings passed over',
    async (language) => {
      const files = await cleaned();
      const asked = [...Object.keys(files), '--language', language];
      const { status, err } = await run(['analyse', ...asked], { files });
      expect([status, err]).toEqual([0, '']);
      const checked = JSON.parse((await run(['check', ...asked, '--json'], { files })).out);
      const found = checked.files.flatMap((file: { file: string; rows: number; problems: object[] }) =>
        file.problems.map((problem) => ({ ...problem, file: file.file, rows: file.rows })),
      );
      expect(found).toMatchObject([
        { file: 'out/datapackage.json', severity: 'notice', code: 'own-file', rows: 0 },
        { file: 'out/problems.csv', severity: 'notice', code: 'own-file', rows: 0 },
      ]);
      for (const { message } of found) expect(message).toMatch(/fruitodds/);
    },
  );

  it('are known as results, keys and explained columns too', async () => {
    const made = { 'c.csv': CLEAN };
    const results = (await run(['analyse', 'c.csv', '--json'], { files: made })).out;
    const findings = (await run(['check', 'c.csv', '--json'], { files: made })).out;
    const template = await run(['template', '-o', 't'], {});
    const shared = await run(['report', 'c.csv', '--anonymous', '-o', 'r.html', '--key', 'key.json'], {
      files: made,
    });
    const files = {
      ...made,
      'results.json': results,
      'check.json': findings,
      'columns.csv': template.written.get('t/columns-explained.csv')!,
      'key.json': shared.written.get('key.json')!,
    };
    const { status, out } = await run(['check', ...Object.keys(files)], { files });
    expect(status).toBe(0);
    expect(out.match(/written by fruitodds and holds no flowers; it is passed over/g)).toHaveLength(4);
  });

  it('are no vials, if that is what they are said to be', async () => {
    const files = { 'c.csv': CLEAN, ...(await cleaned()) };
    const { status, out } = await run(['check', 'c.csv', '--vials', 'out/problems.csv'], { files });
    expect(status).toBe(1);
    expect(out).toContain('Errors');
  });

  it('do not answer alone', async () => {
    const files = await cleaned();
    const { status, err } = await run(['check', 'out/problems.csv'], { files });
    expect([status, err]).toMatchObject([
      2,
      expect.stringContaining('No row of out/problems.csv can be used'),
    ]);
  });
});

describe('a crossing sheet that is still to be filled in', () => {
  const header =
    'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,vial,outcome,note';
  const rows = ['2026-001,,A,B,fresh,,,,planned', '2026-002,,B,A,fresh,,,,'];
  const unfilled = { 'next.csv': [header, ...rows].join('\n') };

  it.each(inLanguage)(
    'says once in %s that no flower is entered yet and what to fill in, with status 2',
    async (language) => {
      for (const command of ['check', 'analyse']) {
        const { status, err, out } = await run([command, 'next.csv', '--language', language], {
          files: unfilled,
        });
        expect(status).toBe(2);
        expect(err).not.toMatch(/check/);
        expect(err).toContain('pollination_date');
        if (command === 'check') expect(out.match(/pending/g)).toHaveLength(1);
      }
      const json = JSON.parse(
        (await run(['check', 'next.csv', '--json', '--language', language], { files: unfilled })).out,
      );
      expect(json.error.code).toBe('nothing-entered');
      expect(json.files[0]).toMatchObject({
        rows: 2,
        used: 0,
        leftOut: 2,
        problems: [{ code: 'nothing-entered' }],
      });
    },
  );

  it('is left out beside last season’s crosses, by that reason', async () => {
    const files = { ...unfilled, 'c.csv': CLEAN };
    const { status, out } = await run(['analyse', 'c.csv', 'next.csv', '--json'], { files });
    expect(status).toBe(1);
    expect(JSON.parse(out).rows).toMatchObject({
      read: 5,
      used: 3,
      byReason: [{ reasonCode: 'nothing-entered', rows: 2 }],
    });
  });

  it('is read as ever once one flower is entered', async () => {
    const begun = {
      'next.csv': [header, rows[0]!.replace(',,', ',2026-06-10,').replace(',,,,', ',,,fruit,'), rows[1]].join(
        '\n',
      ),
    };
    const { status, out } = await run(['check', 'next.csv', '--json'], { files: begun });
    expect(status).toBe(1);
    expect(JSON.parse(out).files[0]).toMatchObject({ rows: 2, used: 1, leftOut: 1 });
  });
});
