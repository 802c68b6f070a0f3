import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { questions } from '../../lib/season/problems.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { problemWords } from '../../lib/words/english-problems.ts';
import { referenceCase, referenceSeason } from '../reference-season.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,vial,outcome';

function source(text: string, name = 'crosses.csv') {
  return { name, bytes: new TextEncoder().encode(text) };
}

function crossesFile(...rows: string[]) {
  return source([HEADER, ...rows].join('\n'));
}

function codes(season: ReturnType<typeof readSeason>): string[] {
  return season.files.flatMap(({ problems }) => problems.map(({ code }) => code));
}

interface Counts {
  readonly rows: number;
  readonly by_outcome: Readonly<Record<string, number>>;
  readonly analysed: number;
  readonly analysed_with_age: number;
  readonly mothers: number;
  readonly fathers: number;
  readonly pairs: number;
  readonly seeds_recorded: number;
  readonly total_seeds: number;
}

describe('readSeason', () => {
  // Counts from R 4.2.2, in the reference file itself.
  it.each([40, 150, 600, 5000])('loses no row of the simulated season of %i flowers', (flowers) => {
    const expected = referenceCase<Counts>(`k-season${flowers}-counts`);
    const { crosses, files } = referenceSeason(`k-season${flowers}.csv`);
    const count = (word: string) => crosses.filter(({ outcome }) => outcome === word).length;
    expect(crosses).toHaveLength(expected.rows);
    expect({
      fruit: count('fruit'),
      failed: count('none'),
      unknown: count('unknown'),
      pending: count('pending'),
    }).toEqual(expected.by_outcome);
    const analysed = crosses.filter(({ outcome }) => outcome === 'fruit' || outcome === 'none');
    expect(files[0].used).toBe(expected.analysed);
    expect(analysed.filter(({ ageDays }) => ageDays !== null)).toHaveLength(expected.analysed_with_age);
    expect(new Set(analysed.map(({ seedParent }) => seedParent)).size).toBe(expected.mothers);
    expect(new Set(analysed.map(({ pollenParent }) => pollenParent)).size).toBe(expected.fathers);
    const pairs = new Set(analysed.map(({ seedParent, pollenParent }) => `${seedParent} × ${pollenParent}`));
    expect(pairs.size).toBe(expected.pairs);
    const seeds = crosses.flatMap((cross) => cross.seeds ?? []);
    expect(seeds).toHaveLength(expected.seeds_recorded);
    expect(seeds.reduce((sum, n) => sum + n, 0)).toBe(expected.total_seeds);
    expect(files[0].problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('takes the age of stored pollen from its date: 2021-02-15 to 2021-03-24 are 37 days', () => {
    const cross = referenceSeason('k-season40.csv').crosses.find(({ crossId }) => crossId === 'X00003');
    expect(cross).toMatchObject({
      storage: 'frozen',
      pollenCollected: '2021-02-15',
      ageDays: 37,
      outcome: 'fruit',
    });
  });

  it('tells crosses, vials and flowers by their columns and takes an age from the vial', () => {
    const season = readSeason([
      source('vial,pollen_parent,collected,storage,doses_left\nV1,B,2025-05-01,frozen,\n', 'vials.csv'),
      crossesFile('T1,2025-06-01,A,B,frozen,,V1,fruit'),
      source('seed_parent,flowers\nA,12\n', 'flowers.csv'),
    ]);
    expect(season.files.map(({ kind, used }) => [kind, used])).toEqual([
      ['vials', 1],
      ['crosses', 1],
      ['flowers', 1],
    ]);
    expect(season.crosses[0].ageDays).toBe(31);
    expect(season.vials[0].dosesLeft).toBeNull();
    expect(season.flowers[0]).toMatchObject({ seedParent: 'A', flowers: 12, opensFrom: null });
    expect(season.asOf).toBe('2025-06-01');
    expect(codes(season)).toEqual([]);
  });

  it('keeps plants called __proto__, constructor, <script> and 12', () => {
    const { crosses, files } = readSeason([
      crossesFile(
        '__proto__,2025-06-01,__proto__,constructor,fresh,,,fruit',
        'constructor,2025-06-01,<script>,12,fresh,,,none',
        'toString,2025-06-01,12,__proto__,hasOwnProperty,2025-06-01,,none',
        'valueOf,2025-06-01,12,__proto__,constructor,2025-06-01,,none',
      ),
    ]);
    expect(crosses.map(({ seedParent, pollenParent }) => [seedParent, pollenParent])).toEqual([
      ['__proto__', 'constructor'],
      ['<script>', '12'],
      ['12', '__proto__'],
      ['12', '__proto__'],
    ]);
    expect(files[0].problems.map(({ code, value }) => [code, value])).toEqual([
      ['storage-own', 'hasOwnProperty'],
      ['storage-own', 'constructor'],
    ]);
  });

  it('counts a cross as used where its outcome is known at the endpoint', () => {
    const header = `${HEADER},harvested_on`;
    const rows = ['fruit,2025-09-01', 'fruit,', 'dropped,', 'none,', 'unknown,', 'pending,', '?,'];
    const file = source([header, ...rows.map((end, i) => `T${i},2025-06-01,A,B,fresh,,,${end}`)].join('\n'));
    const { files, crosses } = readSeason([file]);
    expect([files[0].used, files[0].leftOut, crosses.length]).toEqual([4, 3, 7]);
    // The second fruit has no harvest date, while harvests are recorded: it is still pending.
    expect(readSeason([file], { endpoint: 'final' }).files[0].used).toBe(3);
  });

  it('treats what lies after asOf as not yet happened', () => {
    const file = source(
      `${HEADER},checked_on\nT1,2025-06-01,A,B,fresh,,,fruit,2025-06-16\nT2,2025-06-20,A,B,fresh,,,none,`,
    );
    const season = readSeason([file], { asOf: '2025-06-10' });
    expect(season.crosses.map(({ crossId, outcome }) => [crossId, outcome])).toEqual([['T1', 'pending']]);
    expect(codes(season)).toEqual(['outcome-after-as-of', 'future-date']);
    expect(season.files[0]).toMatchObject({ rows: 2, used: 0, leftOut: 2 });
    expect(season.asOf).toBe('2025-06-10');
  });

  it('asks what only the grower can tell, and is answered by an option', () => {
    const file = source(
      'cross_id,pollination_date,mother,female,pollen_parent,storage,outcome\nT1,03/04/2025,A,B,C,fresh,fruit',
    );
    const asking = readSeason([file]);
    expect(questions(asking).map(({ code, details }) => [code, details.first, details.second])).toEqual([
      ['column-unclear', 'mother', 'female'],
      ['date-order-unclear', '2025-04-03', '2025-03-04'],
    ]);
    expect(asking.files[0]).toMatchObject({ rows: 1, used: 0, leftOut: 1 });
    const answered = readSeason([file], { dateOrder: 'mdy', map: new Map([['Mother', 'seed_parent']]) });
    expect(questions(answered)).toEqual([]);
    expect(answered.crosses[0]).toMatchObject({ seedParent: 'A', pollinationDate: '2025-03-04' });
  });

  it('reads a file that is given twice once', () => {
    const file = crossesFile('T1,2025-06-01,A,B,fresh,,,fruit');
    const season = readSeason([file, { ...file, name: 'copy.csv' }]);
    expect(season.crosses).toHaveLength(1);
    expect(season.files[1]).toMatchObject({ rows: 1, used: 0, leftOut: 1 });
    expect(codes(season)).toEqual(['file-repeated']);
  });

  it('keeps the accounts of two files of the same name apart', () => {
    const one = crossesFile('T1,2025-06-01,A,B,fresh,,,fruit');
    const two = crossesFile('T2,2025-06-01,A,B,fresh,,,fruit', 'T3,2025-06-01,A,B,fresh,,,unknown');
    expect(readSeason([one, two]).files.map(({ used, leftOut }) => [used, leftOut])).toEqual([
      [1, 0],
      [1, 1],
    ]);
  });

  it('says when no file has a header that was mapped', () => {
    const season = readSeason([crossesFile('T1,2025-06-01,A,B,fresh,,,fruit')], {
      map: new Map([['Mutti', 'seed_parent']]),
    });
    expect(codes(season)).toEqual(['map-header-missing']);
  });

  it('refuses options that are no date and no column', () => {
    expect(() => readSeason([], { asOf: '2025-02-30' })).toThrow(
      'readSeason: asOf must be a day that exists, as YYYY-MM-DD, got "2025-02-30"',
    );
    expect(() => readSeason([], { map: new Map([['x', 'nonsense']]) })).toThrow('got "nonsense"');
  });

  it('gives no season of no file', () => {
    expect(readSeason([])).toEqual({
      crosses: [],
      vials: [],
      flowers: [],
      files: [],
      asOf: null,
      endpoint: 'initial',
      answers: { dateOrder: null, dateSystem: null, map: [], same: [], storage: [], settings: null },
    });
  });

  it('tells what it was told', () => {
    const settings = { file: 'mine.json', sha256: 'ab' };
    const map = new Map([['Mutter', 'seed_parent']]);
    expect(
      readSeason([], {
        dateOrder: 'dmy',
        dateSystem: 1904,
        map,
        same: [['A', 'B']],
        storage: new Map([['cold', 'fridge']]),
        settings,
      }).answers,
    ).toEqual({
      dateOrder: 'dmy',
      dateSystem: 1904,
      map: [{ header: 'Mutter', column: 'seed_parent' }],
      same: [['A', 'B']],
      storage: [{ word: 'cold', method: 'fridge' }],
      settings,
    });
  });
});

const cell = (...usual: string[]) =>
  fc.oneof({ weight: 8, arbitrary: fc.constantFrom(...usual) }, fc.string({ maxLength: 6 }));
const table = fc.array(
  fc.record({
    cross_id: cell('T1', 'T2', 'T3', 'T4', 'T5', ''),
    pollination_date: cell('2025-06-01', '2025-06-02', '2025-02-30', ''),
    seed_parent: cell('A', 'B', 'a', '__proto__'),
    pollen_parent: cell('A', 'B', 'C', ''),
    storage: cell('fresh', 'frozen', 'fridge', 'silica'),
    pollen_collected: cell('', '2025-05-01', '2025-07-01'),
    outcome: cell('fruit', 'none', 'dropped', 'unknown', 'pending', '?', ''),
    seeds: cell('', '10', '-1', '2,5'),
  }),
  { maxLength: 12 },
);
type TableRow = Readonly<Record<string, string>>;

function quoted(cell: string): string {
  return `"${cell.replaceAll('"', '""')}"`;
}

function written(rows: readonly TableRow[], columns: readonly string[]): ReturnType<typeof source> {
  return source(
    [columns, ...rows.map((row) => columns.map((column) => row[column]))]
      .map((cells) => cells.map(quoted).join(','))
      .join('\r\n'),
  );
}

const COLUMNS =
  'cross_id pollination_date seed_parent pollen_parent storage pollen_collected outcome seeds'.split(' ');

describe('any generated table', () => {
  it('is accounted for: rows are used or left out with a reason', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const { files, crosses } = readSeason([written(rows, COLUMNS)]);
        const [file] = files;
        expect(file.rows).toBe(
          rows.filter((row) => Object.values(row).some((text) => text.trim() !== '')).length,
        );
        expect(file.used + file.leftOut).toBe(file.rows);
        const explained = new Set(file.problems.filter((p) => p.severity === 'error').map(({ row }) => row));
        for (const { outcome, row } of crosses)
          if (outcome === 'unknown' || outcome === 'pending') explained.add(row);
        // An error of the header explains all rows at once.
        if (!explained.has(1)) expect(explained.size).toBe(file.leftOut);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('says the same whatever the order of its rows and columns', () => {
    const essence = (season: ReturnType<typeof readSeason>) =>
      season.crosses.map(({ line: _, row: __, ...cross }) => JSON.stringify(cross)).sort();
    const shuffles = table.chain((rows) =>
      fc.tuple(
        fc.constant(rows),
        fc.shuffledSubarray(rows, { minLength: rows.length }),
        fc.shuffledSubarray(COLUMNS, { minLength: COLUMNS.length }),
      ),
    );
    fc.assert(
      fc.property(shuffles, ([rows, shuffledRows, shuffledColumns]) => {
        const before = readSeason([written(rows, COLUMNS)]);
        const after = readSeason([written(shuffledRows, shuffledColumns)]);
        expect(essence(after)).toEqual(essence(before));
        expect(after.files[0].used).toBe(before.files[0].used);
        expect(codes(after).sort()).toEqual(codes(before).sort());
      }),
      { seed: 2, numRuns: 200 },
    );
  });
});

describe('any bytes', () => {
  it('are read without an exception, and every finding has a sentence', () => {
    const clean = readFileSync(new URL('./fixtures/clean.csv', import.meta.url));
    const damaged = fc
      .array(fc.tuple(fc.nat(clean.length - 1), fc.nat(255)), { minLength: 1, maxLength: 30 })
      .map((changes) => {
        const bytes = new Uint8Array(clean);
        for (const [at, byte] of changes) bytes[at] = byte;
        return bytes;
      });
    fc.assert(
      fc.property(fc.oneof(fc.uint8Array({ maxLength: 300 }), damaged), (bytes) => {
        const [file] = readSeason([{ name: 'x.csv', bytes }]).files;
        expect(file.used + file.leftOut).toBe(file.rows);
        for (const problem of file.problems) {
          const { message, fix } = problemWords(problem);
          expect(message + fix).not.toMatch(/undefined|null|NaN|\[object/);
        }
      }),
      { seed: 3, numRuns: 1000 },
    );
  });
});
