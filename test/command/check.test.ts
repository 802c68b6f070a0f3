import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FileJson } from '../../lib/command/json.ts';
import { LANGUAGES } from '../../lib/words/languages.ts';
import { schemaFaults } from '../schema-validator.ts';
import { CLEAN, crossesCsv, run } from './memory-world.ts';

async function checked(crosses: string, ...options: string[]) {
  const { status, out } = await run(['check', 'crosses.csv', '--json', ...options], {
    files: { 'crosses.csv': crosses },
  });
  return {
    status,
    ...(JSON.parse(out) as { files?: FileJson[]; error?: { code: string; message: string; fix: string } }),
  };
}

const codes = (files: readonly FileJson[] | undefined) =>
  files!.flatMap((file) => file.problems).map(({ code }) => code);

// Exit statuses and shapes: the contract's, sections 2 and 3. Rows are counted by hand.
describe('check', () => {
  it('accounts for every row of a file with nothing to mend, and exits with 0', async () => {
    const { status, files } = await checked(CLEAN);
    expect(status).toBe(0);
    expect(files).toMatchObject([
      { file: 'crosses.csv', kind: 'crosses', rows: 3, used: 3, leftOut: 0, delimiter: ',', problems: [] },
    ]);
    expect(files![0]!.sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  it('is content with lost tags and pending flowers', async () => {
    const crosses = crossesCsv([
      '2025-06-20,Lantern Creek,Salt Moon,fresh,fruit',
      '2025-06-20,Lantern Creek,Salt Moon,fresh,unknown',
      '2025-06-21,Lantern Creek,Salt Moon,fresh,pending',
    ]);
    const { status, files } = await checked(crosses);
    expect(status).toBe(0);
    expect(files).toMatchObject([{ rows: 3, used: 1, leftOut: 2, problems: [] }]);
  });

  it('names line, row, column, value and what to do for a date that does not exist, and exits with 1', async () => {
    const crosses = crossesCsv([
      '2025-06-20,Lantern Creek,Salt Moon,fresh,fruit',
      '2025-02-30,Lantern Creek,Salt Moon,fresh,fruit',
    ]);
    const { status, files } = await checked(crosses);
    expect(status).toBe(1);
    expect(files).toMatchObject([{ rows: 2, used: 1, leftOut: 1 }]);
    const [problem] = files![0]!.problems;
    expect(problem).toMatchObject({
      severity: 'error',
      line: 3,
      row: 3,
      column: 'pollination_date',
      value: '2025-02-30',
      code: 'date-does-not-exist',
    });
    expect(problem!.message).toContain('2025-02-30');
    expect(problem!.fix).not.toBe('');
  });

  it('warns of a vial that is not in the register, and uses the row', async () => {
    const crosses = crossesCsv(
      ['2025-06-20,Lantern Creek,Salt Moon,frozen,fruit,F-99'],
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,vial',
    );
    const vials = 'vial,pollen_parent,collected,storage\nF-01,Salt Moon,2024-07-17,frozen\n';
    const { status, out } = await run(['check', 'crosses.csv', '--vials', 'vials.csv', '--json'], {
      files: { 'crosses.csv': crosses, 'vials.csv': vials },
    });
    const { files } = JSON.parse(out) as { files: FileJson[] };
    expect(status).toBe(1);
    expect(codes(files)).toContain('vial-unknown');
    expect(files[0]).toMatchObject({ used: 1, leftOut: 0 });
  });

  it('finds pollen that was collected after the pollination', async () => {
    const crosses = crossesCsv(
      [
        '2025-06-20,Lantern Creek,Salt Moon,frozen,fruit,2025-06-25',
        '2025-06-20,Lantern Creek,Salt Moon,fresh,none,',
      ],
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,pollen_collected',
    );
    const { status, files } = await checked(crosses);
    expect(status).toBe(1);
    expect(codes(files)).toContain('collected-after-pollination');
  });

  it('notices a column it does not know without calling it a fault', async () => {
    const crosses = crossesCsv(
      ['2025-06-20,Lantern Creek,Salt Moon,fresh,fruit,windy'],
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,weather',
    );
    const { status, files } = await checked(crosses);
    expect(status).toBe(0);
    expect(files![0]!.problems).toMatchObject([
      { severity: 'notice', code: 'column-unknown', column: 'weather' },
    ]);
  });

  it.each([
    ['an empty file', ''],
    ['a header only', crossesCsv([])],
    ['a file without one of the columns it needs', CLEAN.replaceAll(/,[^,\n]*$/gm, '')],
    ['a file of other things', 'name,price\nPot,3\n'],
    ['a file with no row that can be read', crossesCsv(['2025-13-01,A,B,fresh,fruit'])],
  ])('exits with 2 for %s, and says in JSON why and what was found', async (_, crosses) => {
    const { status, error, files } = await checked(crosses);
    expect(status).toBe(2);
    expect(error!.code).toBe('no-usable-row');
    expect(error!.fix).not.toBe('');
    expect(codes(files).length).toBeGreaterThan(0);
  });

  it('asks for the order of dates that could be read in two ways, and takes the answer', async () => {
    const crosses = crossesCsv([
      '03/04/2025,Lantern Creek,Salt Moon,fresh,fruit',
      '05/04/2025,Lantern Creek,Salt Moon,fresh,none',
    ]);
    const asked = await checked(crosses);
    expect([asked.status, asked.error!.code]).toEqual([2, 'question-open']);
    // Both readings, and both answers, in the error and beside the column.
    const [{ problems }] = asked.files as [FileJson];
    const [question] = problems.filter(({ code }) => code === 'date-order-unclear');
    for (const { message, fix } of [asked.error!, question!]) {
      expect(message).toMatch(
        /\d{4}-\d\d-\d\d read as day-month-year, but \d{4}-\d\d-\d\d as month-day-year/,
      );
      expect(fix).toContain('--date-order dmy or --date-order mdy');
    }
    const answered = await checked(crosses, '--date-order', 'dmy');
    expect([answered.status, answered.files![0]!.used]).toEqual([0, 2]);
  });

  it('reads a header as the column it is mapped to', async () => {
    const crosses = CLEAN.replace('seed_parent', 'Pflanze A');
    expect((await checked(crosses)).status).toBe(2);
    expect((await checked(crosses, '--map', 'Pflanze A=seed_parent')).status).toBe(0);
  });

  it('reads standard input', async () => {
    const { status, out } = await run(['check', '-', '--json'], { input: CLEAN });
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ files: [{ file: 'standard input', used: 3 }] });
    expect((await run(['check', '-', '--vials', '-'], { input: CLEAN })).err).toContain('twice');
  });

  it.each(LANGUAGES.map((language) => [language]))(
    'accounts in %s for every row of the demo season that is left out',
    async (language) => {
      const demo = readFileSync(new URL('../../data-demo/crosses.csv', import.meta.url));
      const files = { files: { 'crosses.csv': demo } };
      const json = JSON.parse(
        (await run(['check', 'crosses.csv', '--json', '--language', language], files)).out,
      );
      expect(schemaFaults('check', json)).toEqual([]);
      const [{ leftOut, leftOutBy }] = json.files;
      expect(leftOut).toBeGreaterThan(9);
      const total = (counts: readonly number[]) => counts.reduce((a, b) => a + b, 0);
      expect(total(leftOutBy.map(({ rows }: { rows: number }) => rows))).toBe(leftOut);
      const { out } = await run(['check', 'crosses.csv', '--language', language], files);
      const listed = leftOutBy.map(({ reason }: { reason: string }) =>
        out.split('\n').find((line) => line.includes(`: ${reason}`) || line.includes(`\u00a0: ${reason}`)),
      );
      expect(total(listed.map((line: string) => Number.parseInt(line, 10)))).toBe(leftOut);
    },
  );

  it('says for people what was found, like faults together', async () => {
    const crosses = crossesCsv([
      '2025-02-30,Lantern Creek,Salt Moon,fresh,fruit',
      '2025-02-31,Lantern Creek,Salt Moon,fresh,fruit',
      '2025-06-20,Lantern Creek,Salt Moon,fresh,fruit',
    ]);
    const { out, err } = await run(['check', 'crosses.csv'], { files: { 'crosses.csv': crosses } });
    expect(out).toContain('crosses.csv: crosses, 3 rows, 1 used, 2 left out');
    expect(out.match(/does not exist/g)).toHaveLength(1);
    expect(out).toContain('And 1 more like it (row 3).');
    expect(err).toBe('');
  });

  it('names once why no row can be used', async () => {
    const { status, out, err } = await run(['check', 'crosses.csv'], { files: { 'crosses.csv': '' } });
    expect([status, (out + err).match(/The file is empty/g)?.length]).toEqual([2, 1]);
    expect(err).toBe(
      'fruitodds: No row of crosses.csv can be used.\nMend what check has named, and run it again.\n',
    );
  });

  it('tells all problems at once, and every open question, before it asks', async () => {
    const crosses = crossesCsv(
      ['03/04/2025,Lantern Creek,Salt Moon,fresh,fruit,04/05/2025,x'],
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,checked_on,moon',
    );
    const { status, out, err } = await run(['check', 'crosses.csv'], { files: { 'crosses.csv': crosses } });
    expect(status).toBe(2);
    expect(out).toMatch(/"pollination_date" does not tell.*"checked_on" does not tell.*"moon"/s);
    expect(err).toMatch(
      /^fruitodds: 2 questions that only you can answer: .*"pollination_date".*"checked_on"/,
    );
    expect(err.match(/--date-order dmy/g)).toHaveLength(1);
  });

  it('says plainly that a crosses file was given as the vials', async () => {
    const { status, out } = await run(['check', 'vials.csv', '--vials', 'crosses.csv'], {
      files: {
        'crosses.csv': CLEAN,
        'vials.csv': 'vial,pollen_parent,collected,storage\nF,A,2025-01-01,frozen\n',
      },
    });
    expect(status).toBe(1);
    expect(out).toContain(
      'The file was given as the vials file, but its columns are those of a crosses file.',
    );
    expect(out).not.toContain('no column for');
  });

  it('says that a file cannot be read without a trace of the program', async () => {
    const { status, out, err } = await run(['check', 'missing.csv']);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('missing.csv can’t be read: there is no such file or folder.');
    expect(err).not.toMatch(/\bat \S+:\d+/);
  });
});

describe('check of whole seasons', () => {
  const at = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url));

  it('finds nothing to mend in the demo season', async () => {
    const files = Object.fromEntries(
      ['crosses.csv', 'vials.csv', 'flowers.csv'].map((name) => [name, at(`data-demo/${name}`)]),
    );
    const { status, out } = await run(['check', ...Object.keys(files), '--json'], { files });
    expect(status).toBe(0);
    expect(schemaFaults('check', JSON.parse(out))).toEqual([]);
    // Lines of the files less their headers, by `wc -l`; used are those with an outcome, by `grep -c`.
    expect(JSON.parse(out)).toMatchObject({
      files: [
        { rows: 291, used: 272, leftOut: 19, problems: [] },
        { rows: 20, used: 20, problems: [] },
        { rows: 12, used: 12, problems: [] },
      ],
    });
  });

  it.each(['40', '150', '600', '5000'])(
    'keeps to the schema, and every row is accounted for: %s flowers',
    async (size) => {
      const { out } = await run(['check', 's.csv', '--json'], {
        files: { 's.csv': at(`test/reference/k-season${size}.csv`) },
      });
      const json = JSON.parse(out) as { files: FileJson[] };
      expect(schemaFaults('check', json)).toEqual([]);
      const [{ rows, used, leftOut }] = json.files as [FileJson];
      expect([rows, rows - used]).toEqual([Number(size), leftOut]);
    },
  );
});
