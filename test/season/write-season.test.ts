import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Cross, ExpectedFlowers, Season, Vial } from '../../lib/season/season.ts';
import { writeSeason } from '../../lib/season/write-season.ts';
import { seasonOf } from '../season-of.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

/** A season without the places of its rows and what was said of its files. */
function content({ crosses, vials, flowers, asOf, endpoint }: Season) {
  const bare = (records: readonly (Cross | Vial | ExpectedFlowers)[]) =>
    records.map((record) => ({ ...record, file: '', line: 0, row: 0 }));
  return { crosses: bare(crosses), vials: bare(vials), flowers: bare(flowers), asOf, endpoint };
}

function readAgain(season: Season): Season {
  const sources = writeSeason(season)
    .filter(({ name }) => name.endsWith('.csv'))
    .map(({ name, text }) => ({ name, bytes: bytes(text) }));
  return readSeason(sources, {
    endpoint: season.endpoint,
    ...(season.asOf === null ? {} : { asOf: season.asOf }),
  });
}

/** Names that CSV, spreadsheets, JavaScript or HTML could stumble over. */
const hostile = fc.constantFrom(
  ...['=1+1', '-x', '+7', '@home', "'=x", '"quoted"', 'a,b;c|d', '__proto__', 'constructor', '<script>'],
  ...[
    'شمس الليل',
    'ירח',
    'Zoë × Ivo',
    '−1',
    '１＋１',
    '?',
    'sep=;',
    'cross_id',
    'Ivo\u00A0II',
    '\u202Eevil',
    '007',
    '1e5',
  ],
);
const name = fc
  .oneof(hostile, fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }))
  .filter((text) => !/\p{Cc}/u.test(text));
const note = fc
  .oneof(name, fc.constantFrom('two\nlines', 'a\r\nb', 'tab\tin', '- bagged late', ''))
  .map(String);
const day = fc
  .integer({ min: 0, max: 400 })
  .map((days) => new Date(Date.UTC(2024, 5, 1 + days)).toISOString().slice(0, 10));
const blank = <T>(value: fc.Arbitrary<T>) => fc.oneof(value.map(String), fc.constant(''));
const count = fc.nat({ max: 400 });

/** Cells as a grower might write them; the reader decides what a season can hold. */
const crossCells = fc.tuple(
  fc.tuple(name, day, name, name, fc.oneof(fc.constantFrom('fresh', 'frozen', 'Fridge', 'silica'), name)),
  fc.tuple(
    blank(day),
    blank(count),
    blank(name),
    fc.constantFrom('fruit', 'none', 'dropped', 'unknown', 'pending'),
  ),
  fc.tuple(blank(name), blank(name), blank(note), blank(day), blank(day), fc.constantFrom('yes', 'no', '')),
  fc.tuple(fc.constantFrom('', '', 'unpollinated', 'selfed'), blank(count), blank(count), blank(count)),
  fc.tuple(
    blank(fc.double({ min: 0, max: 900, noNaN: true }).map((grams) => grams.toFixed(9))),
    blank(note),
    blank(note),
  ),
);
const HEADERS = {
  crosses:
    'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,pollen_age_days,vial,outcome,season,' +
    'grower,wave,checked_on,harvested_on,bagged,control,seeds,sown,germinated,fruit_weight_g,identified_by,note',
  vials: 'vial,pollen_parent,collected,storage,doses_left,doses_filled,thaws,note',
  flowers: 'seed_parent,flowers,opens_from,opens_to',
};
const rows = {
  crosses: crossCells.map((parts) => parts.flat()),
  vials: fc.tuple(
    name,
    name,
    day,
    fc.constantFrom('frozen', 'room', 'silica'),
    blank(count),
    blank(count),
    blank(count),
    blank(note),
  ),
  flowers: fc.tuple(name, count.map(String), blank(day), blank(day)),
};
const csv = (header: string, cells: readonly (readonly string[])[]) =>
  [header, ...cells.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(','))].join('\n');

describe('writeSeason', () => {
  it('is read back as the same season, whatever its names', () => {
    let crosses = 0;
    fc.assert(
      fc.property(
        fc.array(rows.crosses, { minLength: 1, maxLength: 8 }),
        fc.array(rows.vials, { maxLength: 3 }),
        fc.array(rows.flowers, { maxLength: 3 }),
        fc.constantFrom('initial' as const, 'final' as const),
        (crossRows, vialRows, flowerRows, endpoint) => {
          const sources = [
            { name: 'c.csv', bytes: bytes(csv(HEADERS.crosses, crossRows)) },
            { name: 'v.csv', bytes: bytes(csv(HEADERS.vials, vialRows)) },
            { name: 'f.csv', bytes: bytes(csv(HEADERS.flowers, flowerRows)) },
          ];
          const season = readSeason(sources, { endpoint });
          crosses += season.crosses.length;
          expect(content(readAgain(season))).toEqual(content(season));
        },
      ),
      { numRuns: 300, seed: 17 },
    );
    // The property is about seasons that hold something.
    expect(crosses).toBeGreaterThan(300);
  });

  it('keeps the demo season as it is', () => {
    const demo = ['crosses.csv', 'vials.csv', 'flowers.csv'].map((file) => ({
      name: file,
      bytes: readFileSync(new URL(`../../data-demo/${file}`, import.meta.url)),
    }));
    const season = readSeason(demo);
    const again = readAgain(season);
    expect(content(again)).toEqual(content(season));
    expect(again.files.flatMap(({ problems }) => problems)).toEqual([]);
    expect(writeSeason(again)).toEqual(writeSeason(season));
  });

  it('writes UTF-8 with a mark, CR LF, no formula, and small numbers in digits', () => {
    const [file] = writeSeason(seasonOf([{ seedParent: '=1+1', note: 'a\n"b"', fruitWeightGrams: 1e-7 }]));
    const lines = file!.text.split('\r\n');
    expect(file!.text.startsWith('\uFEFFcross_id,pollination_date,')).toBe(true);
    expect(lines).toHaveLength(3);
    expect(lines[1]).toContain(`,'=1+1,`);
    expect(lines[1]).toMatch(/,0\.0000001,,"a\n""b"""$/);
  });

  it('leaves out the files of which the season has nothing', () => {
    expect(writeSeason(seasonOf([{}])).map((file) => file.name)).toEqual(['crosses.csv', 'datapackage.json']);
  });
});
