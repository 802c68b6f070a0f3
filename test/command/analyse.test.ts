import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { NextTest } from '../../lib/decisions/next-test.ts';
import { schemaFaults } from '../schema-validator.ts';
import { CLEAN, crossesCsv, type Run, run } from './memory-world.ts';

const demo = (name: string) => readFileSync(new URL(`../../data-demo/${name}`, import.meta.url));
const DEMO = { 'crosses.csv': demo('crosses.csv'), 'vials.csv': demo('vials.csv') };
const ASKED = ['analyse', 'crosses.csv', '--vials', 'vials.csv'];

const analysed = (crosses: string, ...options: string[]) =>
  run(['analyse', 'crosses.csv', ...options], { files: { 'crosses.csv': crosses } });

describe('a day of use that is past', () => {
  it('is told of, as one kept in the settings soon is, and a later one is not', async () => {
    const past = await analysed(CLEAN, '--use-on', '2020-01-01');
    expect(past.err).toContain('--use-on 2020-01-01 lies before the last pollination');
    expect((await analysed(CLEAN, '--use-on', '2027-01-01')).err).toBe('');
  });
});

describe('analyse of the demo season', () => {
  let json: Run;
  let text: Run;
  beforeAll(async () => {
    json = await run([...ASKED, '--json'], { files: DEMO });
    text = await run(ASKED, { files: DEMO });
  });

  it('prints JSON as the schema describes it, and nothing else', () => {
    expect(schemaFaults('analyse', JSON.parse(json.out))).toEqual([]);
    expect([json.status, json.err]).toEqual([0, '']);
  });

  // data-demo/crosses.csv counted by splitting its lines, apart from the library.
  it('counts the flowers of the file', () => {
    const { rows, raw } = JSON.parse(json.out) as {
      rows: { read: number; used: number; leftOut: number };
      raw: { byStorage: { storage: string; fruits: number; flowers: number }[] };
    };
    expect(rows).toMatchObject({ read: 291, used: 272, leftOut: 19 });
    expect(raw.byStorage.map(({ storage, fruits, flowers }) => [storage, fruits, flowers])).toEqual([
      ['fresh', 73, 113],
      ['frozen', 46, 120],
      ['refrigerated', 12, 22],
      ['room', 1, 3],
    ]);
  });

  it('puts a sentence beside every code', () => {
    const { vials, rows } = JSON.parse(json.out) as {
      vials: { reason: string; reasonCode: string }[];
      rows: { byReason: { reason: string; reasonCode: string }[] };
    };
    for (const { reason, reasonCode } of [...vials, ...rows.byReason]) {
      expect(reason).toMatch(/^[\p{Lu}\d].*\.$/su);
      expect(reasonCode).toMatch(/^[a-z-]+$/);
    }
    expect(vials).toHaveLength(20);
  });

  it('names the test flowers that would most likely change a verdict', () => {
    const { nextTests, vials } = JSON.parse(json.out) as {
      nextTests: NextTest[];
      vials: { vial: string; verdict: string; probabilityWorth: number }[];
    };
    expect(nextTests.length).toBeGreaterThan(0);
    const chances = nextTests.map(({ tests }) => tests.at(-1)!.changes);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    for (const { vial, verdict, probabilityWorth, tests } of nextTests) {
      const judged = vials.find((one) => one.vial === vial)!;
      expect([verdict, probabilityWorth]).toEqual([judged.verdict, judged.probabilityWorth]);
      for (const { outcomes, changes } of tests) {
        const sum = (of: (outcome: (typeof outcomes)[number]) => number) =>
          outcomes.reduce((total, outcome) => total + of(outcome), 0);
        // Law of total probability: what is thought after a test is on average what was thought before it.
        expect(sum(({ probability }) => probability)).toBeCloseTo(1, 9);
        expect(sum((outcome) => outcome.probability * outcome.probabilityWorth)).toBeCloseTo(
          probabilityWorth,
          9,
        );
        expect(sum((outcome) => (outcome.verdict === verdict ? 0 : outcome.probability))).toBeCloseTo(
          changes,
          9,
        );
      }
    }
  });

  it('says the same for people in a screenful', () => {
    expect(text.status).toBe(0);
    expect(text.out).toContain('291 rows read, 272 used, 19 left out');
    expect(text.out).toContain('73 of 113');
    expect(text.out.split('\n').length).toBeLessThan(60);
    expect(text.out).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  it('prints the same bytes twice', async () => {
    expect((await run([...ASKED, '--json'], { files: DEMO })).out).toBe(json.out);
  });
});

describe('analyse with a flowers file', () => {
  const files = { ...DEMO, 'flowers.csv': demo('flowers.csv') };
  const planned = [...ASKED, '--flowers', 'flowers.csv', '--json'];

  it('prints a plan as the schema describes it, with every wish kept', async () => {
    const wishes = [
      '--must',
      'Salt Moon x Pale Otter=2',
      '--must',
      'Salt Moon x Old Ferry=2',
      '--at-most',
      'Lantern Creek=3',
    ];
    const { status, out, err } = await run([...planned, ...wishes], { files });
    expect([status, err]).toEqual([0, '']);
    const json = JSON.parse(out);
    expect(schemaFaults('analyse', json)).toEqual([]);
    type Line = { seedParent: string; pollenParent: string; flowers: number };
    const { plan } = json as { plan: { frontier: { allocation: Line[] }[]; unmet: unknown[] } };
    for (const { allocation } of plan.frontier) {
      const total = (of: (line: Line) => boolean) =>
        allocation.filter(of).reduce((sum, { flowers }) => sum + flowers, 0);
      expect(total(({ pollenParent }) => pollenParent === 'Lantern Creek')).toBeLessThanOrEqual(3);
      expect(
        total(({ seedParent, pollenParent }) => seedParent === 'Salt Moon' && pollenParent === 'Old Ferry'),
      ).toBeGreaterThanOrEqual(2);
    }
    // The flowers of Pale Otter end on 5 July, those of Salt Moon begin on the 15th; no vial is of Pale Otter's pollen.
    expect(plan.unmet).toMatchObject([
      { seedParent: 'Salt Moon', pollenParent: 'Pale Otter', planned: 0, becauseCode: 'no-common-morning' },
    ]);
  });

  it('says why there is no plan without one', async () => {
    const json = JSON.parse((await run([...ASKED, '--json'], { files: DEMO })).out);
    expect(json).toMatchObject({ plan: null, planBecauseCode: 'no-flowers-file' });
  });

  it('exits with 2 and the nearest name, where a wish names no plant of the files', async () => {
    const { status, out } = await run([...planned, '--must', 'Salt Mon x Copper Tide'], { files });
    expect(status).toBe(2);
    const { error } = JSON.parse(out) as { error: { code: string; fix: string } };
    expect(error.code).toBe('plant-unknown');
    expect(error.fix).toContain('Did you mean Salt Moon?');
  });

  it.each([
    ['no flower at all', 'seed_parent,flowers\nSalt Moon,0\n', 'no-expected-flowers'],
    ['one plant alone', 'seed_parent,flowers\nSalt Moon,5\n', 'no-pollen-for-flowers'],
  ])('has no mix, because: %s', async (_, flowers, code) => {
    const asked = ['analyse', 'crosses.csv', '--flowers', 'flowers.csv', '--json'];
    const { out } = await run(asked, { files: { ...DEMO, 'flowers.csv': flowers } });
    const json = JSON.parse(out);
    expect(schemaFaults('analyse', json)).toEqual([]);
    expect(json).toMatchObject({ plan: { frontier: [], becauseCode: code } });
  });
});

describe('analyse of the simulated seasons', () => {
  it.each(['40', '150', '600', '5000'])(
    'keeps to the schema with %s flowers',
    async (size) => {
      const bytes = readFileSync(new URL(`../reference/k-season${size}.csv`, import.meta.url));
      const { status, out } = await run(['analyse', 's.csv', '--json'], { files: { 's.csv': bytes } });
      expect(schemaFaults('analyse', JSON.parse(out))).toEqual([]);
      // Some fresh pollen was collected two days before: a warning.
      expect(status).toBe(1);
    },
    300_000,
  );
});

// Statuses are the contract's, section 2.
describe('analyse of seasons that say little', () => {
  const FROZEN = crossesCsv(
    ['2025-06-20,A,B,frozen,fruit,30', '2025-06-20,B,A,frozen,none,30', '2025-06-21,A,C,frozen,none,60'],
    'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,pollen_age_days',
  );

  it.each([
    ['one row', crossesCsv(['2025-06-20,A,B,fresh,fruit'])],
    ['all taken', CLEAN.replaceAll('none', 'fruit')],
    ['none taken', CLEAN.replaceAll('fruit', 'none')],
    ['a single storage method', CLEAN],
    ['stored pollen only', FROZEN],
  ])('prints JSON that keeps to the schema: %s', async (_, crosses) => {
    const { status, out } = await analysed(crosses, '--json');
    expect(status).toBe(0);
    expect(schemaFaults('analyse', JSON.parse(out))).toEqual([]);
    expect((await analysed(crosses)).out).not.toMatch(/NaN|Infinity|undefined/);
  });

  it.each([
    ['no-usable-outcome', CLEAN.replaceAll(/fruit|none/g, 'unknown')],
    ['no-usable-row', crossesCsv([])],
    ['no-usable-row', ''],
    ['no-crosses', 'vial,pollen_parent,collected,storage\nF-01,Salt Moon,2024-07-17,frozen\n'],
  ])('exits with 2 and %s as JSON and in words', async (code, crosses) => {
    const { status, out, err } = await analysed(crosses, '--json');
    expect(status).toBe(2);
    expect(schemaFaults('error', JSON.parse(out))).toEqual([]);
    expect(JSON.parse(out)).toMatchObject({ error: { code } });
    expect(err).toMatch(/^fruitodds: .+\n.+\n$/);
    expect((await analysed(crosses)).out).toBe('');
  });

  it('exits with 1 and points to check where the files hold warnings', async () => {
    const crosses = crossesCsv(['2025-06-20,A,B,fresh,fruit', '2025-02-30,A,B,fresh,none']);
    const { status, err } = await analysed(crosses);
    expect(status).toBe(1);
    expect(err).toContain('1 error');
    expect(err).toContain('fruitodds check');
  });

  // Plants of different growers with the same name are different plants unless it is said: common practice, no source.
  it('tells plants of two growers apart, and takes them for one where that is said', async () => {
    const header = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,grower';
    const rows = ['Ina', 'Bo'].flatMap((grower, day) => [
      `2025-06-2${day},__proto__,Salt Moon,fresh,fruit,${grower}`,
      `2025-06-2${day},Salt Moon,Blue Hour ${day},fresh,none,${grower}`,
    ]);
    const mothers = async (...options: string[]) => {
      const { out } = await analysed(crossesCsv(rows, header), '--json', ...options);
      expect(schemaFaults('analyse', JSON.parse(out))).toEqual([]);
      const { raw } = JSON.parse(out) as { raw: { bySeedParent: { seedParent: string; flowers: number }[] } };
      return raw.bySeedParent.map(({ seedParent, flowers }) => [seedParent, flowers]);
    };
    expect(await mothers()).toEqual([
      ['Salt Moon (Bo)', 1],
      ['Salt Moon (Ina)', 1],
      ['__proto__ (Bo)', 1],
      ['__proto__ (Ina)', 1],
    ]);
    expect(await mothers('--same-plants')).toEqual([
      ['Salt Moon', 2],
      ['__proto__', 2],
    ]);
  });

  it('takes level, day of use and worth from the command line', async () => {
    const options = ['--level', '0.9', '--use-on', '2027-01-01', '--worth', '0.3', '--endpoint', 'final'];
    const { out } = await analysed(CLEAN, '--json', ...options);
    expect(JSON.parse(out)).toMatchObject({
      provenance: { options: { level: 0.9, useOn: '2027-01-01', worth: 0.3, endpoint: 'final' } },
    });
  });
});
