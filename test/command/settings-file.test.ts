import { describe, expect, it } from 'vitest';
import { schemaFaults } from '../schema-validator.ts';
import { CLEAN, crossesCsv, run } from './memory-world.ts';

describe('the command with settings', () => {
  const asked = crossesCsv(['03/04/2025,A,B,fresh,fruit', '05/04/2025,A,B,fresh,none']).replace(
    'seed_parent',
    'Wer',
  );
  const answers = ['--date-order', 'dmy', '--map', 'Wer=seed_parent'];

  it('serves the next year, whose columns stand otherwise, and tells which header is gone', async () => {
    const saved = JSON.stringify({
      ...{ version: 1, 'date-order': 'dmy', map: ['Wer=seed_parent', 'Womit=storage'] },
      same: ['Salt Moon=Saltmoon'],
    });
    const row = (tag: string, date: string) => `fruit;${date};B;${tag};fresh;Saltmoon;dry`;
    const header = 'outcome;pollination_date;pollen_parent;cross_id;Womit;Wer';
    const read = (head: string) =>
      run(['check', 'next.csv', '--settings', 'mine.json', '--json'], {
        files: {
          'mine.json': saved,
          'next.csv': [head, row('N1', '03/04/2026'), row('N2', '05/04/2026')].join('\n'),
        },
      });
    const moved = await read(`${header};weather`);
    expect(moved.status).toBe(0);
    const [file] = JSON.parse(moved.out).files;
    expect([file.rows, file.used]).toEqual([2, 2]);
    expect(file.problems.map(({ code }: { code: string }) => code)).toEqual(['column-unknown']);
    // The header of the mother has another name this year: the file says so, and asks for it.
    const renamed = await read(`${header.replace('Wer', 'Mutti')};weather`);
    expect(renamed.status).toBe(2);
    const found = JSON.parse(renamed.out).files[0].problems.map(
      ({ code, value }: { code: string; value: string | null }) => [code, value],
    );
    expect(found).toEqual([
      ['column-missing', null],
      ['column-unknown', null],
      ['column-unknown', null],
      ['map-header-missing', 'Wer'],
      ['same-name-missing', 'Saltmoon'],
    ]);
  });

  it('asks once, saves the answer, and takes it next time', async () => {
    const files = { 'a.csv': asked };
    expect((await run(['check', 'a.csv'], { files })).status).toBe(2);
    const first = await run(['check', 'a.csv', ...answers, '--save-settings', 'mine.json'], { files });
    expect(first.err).toBe(
      'fruitodds: saved the settings to mine.json; next time give --settings mine.json\n',
    );
    const saved = first.written.get('mine.json')!;
    expect(JSON.parse(saved)).toEqual({ version: 1, 'date-order': 'dmy', map: ['Wer=seed_parent'] });
    const second = await run(['analyse', 'a.csv', '--settings', 'mine.json', '--json'], {
      files: { ...files, 'mine.json': saved },
    });
    expect(second.status).toBe(0);
    const json = JSON.parse(second.out);
    expect(schemaFaults('analyse', json)).toEqual([]);
    expect(json.provenance).toMatchObject({
      options: { dateOrder: 'dmy', map: [{ header: 'Wer', column: 'seed_parent' }] },
      settings: { file: 'mine.json', sha256: expect.stringMatching(/^[0-9a-f]{64}$/) },
    });
  });

  it('saves nothing of a command that failed, nor over a file of the grower’s', async () => {
    const failed = await run(['check', 'a.csv', '--save-settings', 'mine.json'], {
      files: { 'a.csv': asked },
    });
    expect([failed.status, failed.written.size]).toEqual([2, 0]);
    for (const file of ['a.csv', 'notes.json']) {
      const files = { 'a.csv': CLEAN, 'notes.json': '{ "mine": 1 }' };
      const refused = await run(['check', 'a.csv', '--save-settings', file], { files });
      expect([refused.status, refused.written.size, refused.out]).toEqual([2, 0, '']);
    }
    const again = await run(['check', 'a.csv', '--save-settings', 'mine.json'], {
      files: { 'a.csv': CLEAN, 'mine.json': '{ "version": 1, "worth": 0.2 }' },
    });
    expect(again.written.get('mine.json')).toBe('{\n  "version": 1\n}\n');
  });

  it('names the file where a value in it cannot be meant, or it cannot be read', async () => {
    const files = { 'a.csv': CLEAN, 'mine.json': '{ "version": 1, "worth": 20 }' };
    const { status, err } = await run(['check', 'a.csv', '--settings', 'mine.json'], { files });
    expect([status, err.split('\n')[0]]).toEqual([
      2,
      'fruitodds: The option --worth can’t be "20", as mine.json has it.',
    ]);
    const missing = await run(['check', 'a.csv', '--settings', 'no.json'], { files });
    expect(missing.err).toContain('no.json can’t be read');
  });
});
