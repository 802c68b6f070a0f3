/** Seasons of awkward names, as a generator: what a grower's spreadsheet may hold and a coded copy must hide. */

import fc from 'fast-check';
import { addDays } from '../../lib/season/dates.ts';
import type { SeasonSource } from '../../lib/season/sheet.ts';

const word = fc.oneof(
  fc.constantFrom(
    '__proto__',
    'constructor',
    '<script>alert(1)</script>',
    'שלום',
    '🌵🌵',
    'P01',
    'Salt "Moon"',
  ),
  fc.constantFrom(
    'Ärger, mit Komma',
    'a',
    '12',
    'red',
    'fresh',
    'T01',
    'x'.repeat(200),
    '=1+1',
    "O'Hara",
    '2025-06-20',
  ),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 8 }),
);

const row = fc.record({
  day: fc.integer({ min: 0, max: 800 }),
  mother: word,
  father: word,
  storage: fc.constantFrom('fresh', 'frozen', 'room', 'the blue box'),
  age: fc.integer({ min: 0, max: 400 }),
  vial: fc.option(word, { nil: '' }),
  outcome: fc.constantFrom('fruit', 'none', 'dropped', 'unknown', 'pending'),
  season: fc.option(word, { nil: '' }),
  grower: fc.option(word, { nil: '' }),
  wave: fc.option(fc.oneof(word, fc.constantFrom('1', '2')), { nil: '' }),
  seeds: fc.integer({ min: 0, max: 900 }),
  note: fc.option(word, { nil: '' }),
});

const HEADER = [
  ...['cross_id', 'pollination_date', 'seed_parent', 'pollen_parent', 'storage', 'pollen_collected', 'vial'],
  ...['outcome', 'season', 'grower', 'wave', 'seeds', 'note', 'place'],
];

const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

/** Bytes of a crosses file of one to twelve flowers. */
export const awkwardFiles: fc.Arbitrary<readonly SeasonSource[]> = fc
  .array(row, { minLength: 1, maxLength: 12 })
  .map((rows) => {
    const lines = rows.map((flower, i) => {
      const date = addDays('2023-01-01', flower.day);
      const collected = flower.storage === 'fresh' ? '' : addDays(date, -flower.age);
      const seeds = flower.outcome === 'fruit' ? String(flower.seeds) : '';
      return [
        ...[`tag ${i} of mine`, date, flower.mother, flower.father, flower.storage, collected, flower.vial],
        ...[
          flower.outcome,
          flower.season,
          flower.grower,
          flower.wave,
          seeds,
          flower.note,
          'behind the old mill',
        ],
      ];
    });
    const text = [HEADER, ...lines].map((cells) => cells.map(quoted).join(',')).join('\n');
    return [{ name: '/home/anna/secret garden.csv', bytes: new TextEncoder().encode(text) }];
  });
