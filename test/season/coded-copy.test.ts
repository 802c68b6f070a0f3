import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newCodeKey } from '../../lib/season/code-key.ts';
import { codedCopy } from '../../lib/season/coded-copy.ts';
import { codedFiles } from '../../lib/season/coded-files.ts';
import { daysBetween } from '../../lib/season/dates.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Cross, Season } from '../../lib/season/season.ts';
import { seasonOf } from '../season-of.ts';
import { awkwardFiles } from './awkward-season.ts';

const KEY = newCodeKey('5'.repeat(64));
const CODE = /^(?:[PVTG]\d{2,}|(?:season|wave|method) \d+)$/;

function reread(season: Season): Season {
  const sources = codedFiles(codedCopy(season, KEY)).map(({ name, text }) => ({
    name,
    bytes: new TextEncoder().encode(text),
  }));
  return readSeason(sources);
}

/** What the analysis groups flowers by, with names replaced by the first flower that bears them. */
function shape(season: Season, order: readonly number[]): unknown {
  const crosses = order.map((index) => season.crosses[index]!);
  const first = (of: (cross: Cross) => string | null) =>
    crosses.map((cross) => {
      const own = of(cross);
      return own === null ? null : crosses.findIndex((other) => of(other) === own);
    });
  return {
    mothers: first(({ seedParent }) => seedParent),
    fathers: first(({ pollenParent }) => pollenParent),
    sameName: crosses.map(({ seedParent, pollenParent }) => seedParent === pollenParent),
    vials: first(({ vial }) => vial),
    mornings: first(({ pollinationDate }) => pollinationDate),
    seasons: first(({ season: label }) => label),
    growers: first(({ grower }) => grower),
    storage: first(({ storage }) => storage),
    waves: first(({ wave }) => wave),
    plain: crosses.map(({ ageDays, outcome, seeds }) => [ageDays, outcome, seeds]),
    days: crosses.map(({ pollinationDate }) => daysBetween(crosses[0]!.pollinationDate, pollinationDate)),
  };
}

describe('codedCopy', () => {
  it('keeps who met whom, mornings, ages, seasons and counts, and reads back as it was made', () => {
    fc.assert(
      fc.property(awkwardFiles, (files) => {
        const season = readSeason(files);
        if (season.crosses.length === 0) return;
        const { key } = codedCopy(season, KEY);
        const coded = reread(season);
        const place = new Map(coded.crosses.map(({ crossId }, index) => [crossId, index]));
        const order = season.crosses.map(({ crossId }) => place.get(key.codes.tags.get(crossId)!)!);
        expect(coded.crosses).toHaveLength(season.crosses.length);
        expect(shape(coded, order)).toEqual(shape(season, [...season.crosses.keys()]));
      }),
      { numRuns: 60 },
    );
  });

  it('has nothing but codes, moved dates, counts and known words in its cells', () => {
    fc.assert(
      fc.property(awkwardFiles, (files) => {
        const season = readSeason(files);
        if (season.crosses.length === 0) return;
        const { text } = codedFiles(codedCopy(season, KEY))[0]!;
        const dates = new Set(
          season.crosses.flatMap((cross) => [cross.pollinationDate, cross.pollenCollected]),
        );
        const [, ...rows] = text.replace('\uFEFF', '').trim().split('\r\n');
        for (const cell of rows.flatMap((row) => row.split(','))) {
          const moved = /^\d{4}-\d{2}-\d{2}$/.test(cell) && !dates.has(cell);
          const known = /^(?:|fresh|frozen|room|fruit|none|dropped|unknown|pending|\d{1,5})$/.test(cell);
          expect({ cell, fine: CODE.test(cell) || moved || known }).toEqual({ cell, fine: true });
        }
      }),
      { numRuns: 60 },
    );
  });

  it('gives the same names the same codes and shift next year', () => {
    const first = codedCopy(seasonOf([{ seedParent: 'A', pollenParent: 'B' }]), KEY);
    const next = seasonOf([
      { seedParent: 'B', pollenParent: 'C', pollinationDate: '2026-07-01', season: '2026' },
    ]);
    const second = codedCopy(next, first.key);
    const [one, two] = [first.season.crosses[0]!, second.season.crosses[0]!];
    expect(two.seedParent).toBe(one.pollenParent);
    expect(daysBetween(one.pollinationDate, two.pollinationDate)).toBe(
      daysBetween('2025-06-20', '2026-07-01'),
    );
    expect([one.season, two.season]).toEqual(['season 1', 'season 2']);
  });

  it('codes a plant that the flowers file tells apart by its grower, part by part', () => {
    const season = seasonOf(
      [
        { seedParent: 'Moon', grower: 'Ina', pollenParent: 'X' },
        { seedParent: 'Moon', grower: 'Ole (north)', pollenParent: 'X' },
      ],
      {
        flowers: [
          {
            seedParent: 'Moon (Ole (north))',
            flowers: 4,
            opensFrom: null,
            opensTo: null,
            file: 'f',
            line: 2,
            row: 2,
          },
        ],
      },
    );
    const { season: coded, key } = codedCopy(season, KEY);
    const plant = key.codes.plants.get('Moon');
    const grower = key.codes.growers.get('Ole (north)');
    expect(coded.flowers[0]!.seedParent).toBe(`${plant} (${grower})`);
    expect([...key.codes.plants.keys()].sort()).toEqual(['Moon', 'X']);
  });

  it('drops notes and who identified a plant, and keeps a wave that is a mere number', () => {
    const { season } = codedCopy(
      seasonOf([{ note: 'behind the mill', identifiedBy: 'Ina', wave: '2' }]),
      KEY,
    );
    expect(season.crosses[0]).toMatchObject({ note: null, identifiedBy: null, wave: '2' });
  });

  it('refuses dates that a key of before cannot move', () => {
    const far = seasonOf([{ pollinationDate: '2099-06-20' }]);
    expect(() => codedCopy(far, { ...KEY, shiftDays: 20_000 })).toThrow(
      'codedCopy: the dates of season must lie',
    );
  });
});
