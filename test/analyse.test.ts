import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../lib/analyse.ts';
import { readSeason } from '../lib/season/read-season.ts';
import { reasonSentence } from '../lib/words/english.ts';

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_age_days,outcome';

function seasonOf(rows: readonly string[], header = HEADER) {
  return readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode([header, ...rows].join('\n')) }]);
}

function demo() {
  const read = (name: string) => ({
    name,
    bytes: readFileSync(new URL(`../data-demo/${name}`, import.meta.url)),
  });
  return readSeason(['crosses.csv', 'vials.csv', 'flowers.csv'].map(read));
}

/** Every number of a result, with the path that leads to it. */
function numbersOf(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => numbersOf(part, `${path}.${key}`));
}

/** Every `because` of a result. */
function reasonsOf(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    key === 'because' && typeof part === 'string' ? [part] : reasonsOf(part),
  );
}

function expectHonest(result: unknown): void {
  for (const [path, number] of numbersOf(result)) expect(Number.isFinite(number), path).toBe(true);
  for (const reason of reasonsOf(result)) expect(reasonSentence(reason)).toMatch(/\.$/);
}

describe('the analysis of the demo season', () => {
  const season = demo();
  const result = analyse(season);

  it('gives finite numbers or null with a reason that has a sentence', () => {
    expectHonest(result);
  });

  it('uses pollen one year after the last pollination, unless told otherwise', () => {
    const last = season.crosses
      .map(({ pollinationDate }) => pollinationDate)
      .sort()
      .at(-1)!;
    const [year, ...rest] = last.split('-');
    expect(result.provenance.options.useOn).toBe([Number(year) + 1, ...rest].join('-'));
    const later = analyse(season, { useOn: '2030-01-01' });
    const gap = later.vials[0]!.ageDays - result.vials[0]!.ageDays;
    expect(gap).toBe((Date.UTC(2030, 0, 1) - Date.parse(result.provenance.options.useOn!)) / 86_400_000);
  });

  it('sets the worth at half of the fresh rate of the model, which is below the raw fresh rate', () => {
    const fresh = result.raw.byStorage.find(({ storage }) => storage === 'fresh')!;
    expect(result.worth.source).toBe('half-of-fresh');
    expect(result.worth.value).toBeCloseTo(result.worth.freshRate! / 2, 12);
    // Fresh pollen goes to easy pairs, so half of its raw rate would ask too much (the demo season is made so).
    expect(result.worth.freshRate!).toBeLessThan(fresh.estimate!);
  });

  it('finds the like-for-like loss that the demo season was made with, where the raw gap is twice that', () => {
    const frozen = result.freshVersusStored.find(({ storage }) => storage === 'frozen')!;
    // True mean loss of the demo season's frozen crosses, from the model in the head of scripts/demo-data.mjs.
    const trueLoss = 0.119;
    expect(frozen.adjusted.lower!).toBeLessThan(trueLoss);
    expect(frozen.adjusted.upper!).toBeGreaterThan(trueLoss);
    expect(Math.abs(frozen.adjusted.estimate! - trueLoss)).toBeLessThan(
      Math.abs(frozen.difference.estimate! - trueLoss),
    );
  });

  it('names every pair seen and every vial of the register, once each', () => {
    expect(result.pairs).toHaveLength(result.raw.byPair.length);
    expect(result.vials.map(({ vial }) => vial)).toEqual(season.vials.map(({ vial }) => vial));
    expect(result.pairs.reduce((sum, { flowers }) => sum + flowers, 0)).toBe(result.raw.overall.flowers);
  });

  it('does not change with the order of the rows', () => {
    const turned = analyse({ ...season, crosses: [...season.crosses].reverse() });
    expect(turned.vials).toEqual(result.vials);
    expect(turned.ageCurve).toEqual(result.ageCurve);
    const adjusted = ({ freshVersusStored }: typeof result) =>
      freshVersusStored.map((entry) => entry.adjusted);
    expect(adjusted(turned)).toEqual(adjusted(result));
  });

  it('makes ranges wider at a higher level, and keeps what was given as worth', () => {
    const wide = analyse(season, { level: 0.99, worth: 0.25 });
    expect(wide.worth).toEqual({ value: 0.25, source: 'option', freshRate: null });
    wide.pairs.forEach((pair, i) => {
      expect(pair.lower!).toBeLessThanOrEqual(result.pairs[i]!.lower!);
      expect(pair.upper!).toBeGreaterThanOrEqual(result.pairs[i]!.upper!);
    });
  });
});

describe('the analysis of a season with little in it', () => {
  it('counts nothing where there is no row', () => {
    const result = analyse(seasonOf([]));
    expect(result.raw.overall).toMatchObject({
      fruits: 0,
      flowers: 0,
      estimate: null,
      because: 'no-flowers',
    });
    expect(result.vials).toEqual([]);
    expectHonest(result);
  });

  it('gives an answer with its uncertainty for one flower', () => {
    const result = analyse(seasonOf(['a,2025-06-01,Moth,Lamp,fresh,,fruit']));
    // Wilson's score range of 1 of 1 at 95 %: lower end n / (n + z²) (Wilson 1927).
    expect(result.raw.overall.lower).toBeCloseTo(1 / (1 + 1.959963984540054 ** 2), 12);
    const [pair] = result.pairs;
    expect(pair!.upper! - pair!.lower!).toBeGreaterThan(0.5);
    expectHonest(result);
  });

  it.each([
    ['every flower took', 'fruit'],
    ['no flower took', 'none'],
  ])('stays finite where %s', (_, outcome) => {
    const row = (i: number) =>
      `c${i},2025-06-0${1 + (i % 4)},M${i % 3},F${i % 2},${i % 2 ? 'fresh,' : `frozen,${10 + i}`},${outcome}`;
    const result = analyse(seasonOf(Array.from({ length: 12 }, (_, i) => row(i))));
    expect(result.models.fixed.method).toBe('firth');
    expect(result.freshVersusStored[0]!.adjusted).toMatchObject({
      estimate: null,
      because: 'too-few-pairs-with-both',
    });
    expectHonest(result);
  });

  it('works out no worth without fresh flowers, and then judges no vial', () => {
    const files = [
      {
        name: 'c.csv',
        text: `${HEADER}\na,2025-06-01,Moth,Lamp,frozen,30,fruit\nb,2025-06-01,Moth,Lamp,frozen,90,none`,
      },
      { name: 'v.csv', text: 'vial,pollen_parent,collected,storage\nV1,Lamp,2025-05-02,frozen' },
    ];
    const season = readSeason(
      files.map(({ name, text }) => ({ name, bytes: new TextEncoder().encode(text) })),
    );
    const result = analyse(season);
    expect(result.worth).toMatchObject({ value: null, because: 'no-fresh-flower' });
    expect(result.vials[0]).toMatchObject({ verdict: 'test-first', probabilityWorth: null });
    expect(result.pairs[0]!.basis).toEqual({ storage: 'frozen', ageDays: 60 });
    expect(analyse(season, { worth: 0.2 }).vials[0]!.probabilityWorth).not.toBeNull();
    expectHonest(result);
  });

  it('takes plants of any name for plants', () => {
    const names = ['__proto__', 'constructor', '<script>', '12'];
    const rows = names.flatMap((mother, i) =>
      names.map(
        (father, j) => `${i}${j},2025-06-01,${mother},${father}x,fresh,,${(i + j) % 2 ? 'fruit' : 'none'}`,
      ),
    );
    const result = analyse(seasonOf(rows));
    expect(result.raw.bySeedParent.map(({ seedParent }) => seedParent).sort()).toEqual([...names].sort());
    expect(result.pairs).toHaveLength(16);
    expectHonest(result);
  });
});

describe('facts of the trade', () => {
  /** Frozen pollen that keeps: 3 of 5 took from every vial, at each of these ages, and 4 of 5 with fresh pollen. */
  function keeping(ages: readonly number[], germination: readonly (readonly [number, number])[] = []) {
    const header = `${HEADER},vial,sown,germinated`;
    const rows = ages.flatMap((age, lot) =>
      [0, 1, 2, 3, 4].map((i) => {
        const [sown, germinated] = germination[lot] ?? ['', ''];
        const taken = i < (age === 0 ? 4 : 3);
        const pollen = age === 0 ? 'fresh,' : `frozen,${age}`;
        const seed = taken ? `${sown},${germinated}` : ',';
        return `${lot}-${i},2025-06-0${1 + i},M${i % 3},F${lot % 2},${pollen},${taken ? 'fruit' : 'none'},${age === 0 ? '' : `V${lot}`},${seed}`;
      }),
    );
    return seasonOf(rows, header);
  }

  // Apple pollen, Ćalić 2021, Table 2: kept 0 to 6 months, at −20 and −80 °C most half ages lie past the last age tried.
  it('names no half age past the oldest of 0 to 6 months, and draws no curve there', () => {
    const { halfAge, ageCurve } = analyse(keeping([0, 30, 60, 90, 120, 180]));
    expect(halfAge).toMatchObject([
      { storage: 'frozen', estimate: null, upper: null, because: 'past-oldest-age', oldestAgeDays: 180 },
    ]);
    expect(halfAge[0]!.lower!).toBeLessThanOrEqual(180);
    expect(Math.max(...ageCurve.map(({ ageDays }) => ageDays))).toBe(180);
  });

  // Cherimoya, Lora 2006 (abstract): germination fell from 57 % to 10 % in three months at −20 °C, field yield did not.
  it('does not take poor germination for poor fruit set', () => {
    const ages = [0, 30, 60, 90];
    const well = analyse(
      keeping(
        ages,
        ages.map(() => [100, 57] as const),
      ),
    );
    const badly = analyse(
      keeping(
        ages,
        ages.map((age) => [100, age === 0 ? 57 : 10] as const),
      ),
    );
    expect(badly.seeds.overall.germination.germinated).toBeLessThan(
      well.seeds.overall.germination.germinated,
    );
    for (const key of [
      'raw',
      'freshVersusStored',
      'models',
      'ageCurve',
      'halfAge',
      'pairs',
      'worth',
    ] as const) {
      expect(badly[key]).toEqual(well[key]);
    }
  });
});

it('tells of its stages in order, each once, and gives the same with nobody listening', () => {
  const season = seasonOf([
    'a,2025-06-01,Moth,Lamp,fresh,,fruit',
    'b,2025-06-01,Moth,Lamp,frozen,30,none',
    'c,2025-06-02,Lamp,Moth,frozen,31,fruit',
  ]);
  const begun: string[] = [];
  const told = analyse(season, {}, (stage) => void begun.push(stage));
  expect(begun).toEqual(['model', 'vials', 'like-for-like', 'rest']);
  expect(told).toEqual(analyse(season));
});

describe('options that break their rule', () => {
  const season = seasonOf(['a,2025-06-01,Moth,Lamp,fresh,,fruit']);
  it.each([
    [{ level: 1 }, /^analyse: level must be a number between 0 and 1/],
    [{ useOn: '2025-02-30' }, /^analyse: useOn must be a date as YYYY-MM-DD, got 2025-02-30$/],
    [{ worth: 0 }, /^analyse: worth must be a proportion between 0 and 1, got 0$/],
  ])('%j is refused with the argument, the rule and the value', (options, message) => {
    expect(() => analyse(season, options)).toThrow(message);
  });
});
