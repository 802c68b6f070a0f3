import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

const COLUMNS =
  'cross_id pollination_date seed_parent pollen_parent storage pollen_collected pollen_age_days vial outcome checked_on harvested_on bagged control seeds sown germinated fruit_weight_g grower note'.split(
    ' ',
  );
const SOUND = {
  pollination_date: '2025-06-01',
  seed_parent: 'Nocturna',
  pollen_parent: 'Selma',
  storage: 'fresh',
  outcome: 'fruit',
  checked_on: '2025-06-15',
};
const FROZEN = { storage: 'frozen', pollen_collected: '2025-03-01' };

type Cells = Readonly<Record<string, string>>;
/** What a row says besides, and the code and column of the one finding it is to give. */
type Planted = readonly [said: Cells, code: string, column: string | null];

const PLANTED: readonly Planted[] = [
  [{ pollination_date: '2025-02-30' }, 'date-does-not-exist', 'pollination_date'],
  [{ pollination_date: 'last week' }, 'date-not-understood', 'pollination_date'],
  [{ pollination_date: 'June 2025' }, 'date-partial', 'pollination_date'],
  [{ pollination_date: '45809' }, 'date-serial', 'pollination_date'],
  [{ pollination_date: '0205-06-01' }, 'date-implausible', 'pollination_date'],
  [{ pollination_date: '' }, 'cell-blank', 'pollination_date'],
  [{ cross_id: '' }, 'cell-blank', 'cross_id'],
  [{ seed_parent: '' }, 'cell-blank', 'seed_parent'],
  [{ seed_parent: '?' }, 'cell-blank', 'seed_parent'],
  [{ pollen_parent: '' }, 'cell-blank', 'pollen_parent'],
  [{ storage: '' }, 'cell-blank', 'storage'],
  [{ outcome: '' }, 'cell-blank', 'outcome'],
  [{ seed_parent: '#REF!' }, 'cell-error', 'seed_parent'],
  [{ outcome: 'perhaps' }, 'word-not-understood', 'outcome'],
  [{ outcome: 'fruti' }, 'word-not-understood', 'outcome'],
  [{ control: 'bee' }, 'word-not-understood', 'control'],
  [{ outcome: 'angesetzt' }, 'word-guessed', 'outcome'],
  [{ ...FROZEN, storage: 'freezer' }, 'word-guessed', 'storage'],
  [{ ...FROZEN, storage: 'frozne' }, 'storage-slip', 'storage'],
  [{ seeds: 'many' }, 'number-not-understood', 'seeds'],
  [{ seeds: '-3' }, 'number-negative', 'seeds'],
  [{ seeds: '1200000' }, 'number-absurd', 'seeds'],
  [{ seeds: '2.5' }, 'number-not-understood', 'seeds'],
  [{ seeds: '1,200' }, 'number-not-understood', 'seeds'],
  [{ germinated: '-1' }, 'number-negative', 'germinated'],
  [{ fruit_weight_g: '0,35 kg' }, 'number-converted', 'fruit_weight_g'],
  [{ fruit_weight_g: 'heavy' }, 'number-not-understood', 'fruit_weight_g'],
  [{ bagged: 'perhaps' }, 'word-not-understood', 'bagged'],
  [{ checked_on: 'soon' }, 'date-not-understood', 'checked_on'],
  [{ checked_on: '2025-05-01' }, 'checked-before-pollination', 'checked_on'],
  [{ checked_on: '2025-06-03' }, 'checked-too-early', 'checked_on'],
  [{ harvested_on: '2025-05-01' }, 'harvested-before-pollination', 'harvested_on'],
  [{ harvested_on: '2025-08-01', outcome: 'none' }, 'harvested-without-fruit', 'harvested_on'],
  [{ seeds: '40', outcome: 'none' }, 'seeds-without-fruit', 'seeds'],
  [{ seeds: '10', sown: '20' }, 'more-sown-than-seeds', 'sown'],
  [{ sown: '5', germinated: '6' }, 'more-germinated-than-sown', 'germinated'],
  [{ pollen_parent: 'Nocturna' }, 'own-pollen', 'pollen_parent'],
  [{ control: 'selfed' }, 'selfed-with-other-pollen', 'pollen_parent'],
  [{ control: 'unpollinated', outcome: 'none' }, 'unpollinated-with-pollen', 'pollen_parent'],
  [{ pollen_collected: '2025-05-01' }, 'fresh-collected-earlier', 'pollen_collected'],
  [{ storage: 'frozen' }, 'age-missing', null],
  [{ ...FROZEN, pollen_collected: '2025-06-10' }, 'collected-after-pollination', 'pollen_collected'],
  [{ ...FROZEN, pollen_age_days: '12' }, 'age-disagrees', 'pollen_age_days'],
  [{ ...FROZEN, pollen_collected: '2005-03-01' }, 'age-over-ten-years', 'pollen_collected'],
  [{ seed_parent: 'nocturna' }, 'name-spellings', 'seed_parent'],
  [{ seed_parent: 'Nocturma' }, 'name-slip', 'seed_parent'],
  [{ grower: 'Ann  Lee' }, 'name-tidied', 'grower'],
  [{ cross_id: 'again' }, 'tag-conflict', 'cross_id'],
  [{ cross_id: 'again', outcome: 'none' }, 'tag-conflict', 'cross_id'],
  [{ note: 'surplus;cell;here' }, 'row-ragged', null],
];

describe('a file with fifty planted faults', () => {
  it('gives exactly fifty findings, each where it was planted', () => {
    // A sound row follows each planted one, so that nothing is found by counting.
    const rows = PLANTED.flatMap(([said], i) => [
      { ...SOUND, cross_id: `F${i}`, ...said },
      { ...SOUND, cross_id: `S${i}` },
    ]);
    const lines = rows.map((row: Cells) => COLUMNS.map((column) => row[column] ?? '').join(';'));
    const bytes = new TextEncoder().encode([COLUMNS.join(';'), ...lines].join('\r\n'));
    const [file] = readSeason([{ name: 'planted.csv', bytes }]).files;
    expect(PLANTED).toHaveLength(50);
    const found = file.problems.map(({ code, row, column }) => [row, code, column]);
    expect(found).toEqual(PLANTED.map(([, code, column], i) => [2 + 2 * i, code, column]));
    expect(file.used + file.leftOut).toBe(100);
    const errors = file.problems.filter(({ severity }) => severity === 'error').length;
    expect(file.leftOut).toBe(errors);
  });
});
