import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

/** Each fixture is a clean file with one planted fault: severity, code, line, column, value. */
const FAULTS: Record<string, readonly (readonly [string, string, number, string | null, string | null])[]> = {
  'age-disagrees': [['warning', 'age-disagrees', 3, 'pollen_age_days', '12']],
  'age-missing': [['warning', 'age-missing', 3, null, null]],
  'age-over-ten-years': [['warning', 'age-over-ten-years', 3, 'pollen_collected', '2005-03-01']],
  binary: [['error', 'not-text', 1, null, null]],
  'blank-lines': [['error', 'file-empty', 1, null, null]],
  'blank-outcome': [['error', 'cell-blank', 4, 'outcome', '']],
  'cell-error': [['error', 'cell-error', 3, 'seed_parent', '#REF!']],
  'cell-blank': [['error', 'cell-blank', 4, 'seed_parent', '']],
  'checked-before-pollination': [['warning', 'checked-before-pollination', 2, 'checked_on', '2025-05-16']],
  'checked-too-late': [['warning', 'checked-too-late', 2, 'checked_on', '2052-06-16']],
  'checked-too-early': [['warning', 'checked-too-early', 2, 'checked_on', '2025-06-03']],
  clean: [],
  'collected-after-pollination': [
    ['warning', 'collected-after-pollination', 3, 'pollen_collected', '2025-06-20'],
  ],
  'column-guessed': [['notice', 'column-guessed', 1, 'mother', null]],
  'column-missing': [['error', 'column-missing', 1, null, null]],
  'column-twice': [['error', 'column-unclear', 1, 'seed_parent', null]],
  'column-unclear': [['error', 'column-unclear', 1, 'mother', null]],
  'column-unknown': [['notice', 'column-unknown', 1, 'moon', null]],
  'column-without-header': [['notice', 'column-without-header', 1, null, null]],
  'control-character': [['error', 'control-character', 4, null, null]],
  'control-not-understood': [['error', 'word-not-understood', 4, 'control', 'bee']],
  cr: [],
  crlf: [],
  'date-does-not-exist': [['error', 'date-does-not-exist', 3, 'pollination_date', '2025-02-30']],
  'date-implausible': [['error', 'date-implausible', 3, 'pollination_date', '0205-06-01']],
  'date-not-understood': [['error', 'date-not-understood', 3, 'pollination_date', 'last Tuesday']],
  'date-order-dmy': [['notice', 'date-order-decided', 1, 'pollination_date', '25/04/2025']],
  'date-order-from-neighbour': [
    ['notice', 'date-order-decided', 1, 'pollination_date', '25/06/2025'],
    ['notice', 'date-order-from-neighbour', 1, 'pollen_collected', null],
  ],
  'date-order-mdy': [['notice', 'date-order-decided', 1, 'pollination_date', '04/25/2025']],
  'date-order-mixed': [['error', 'date-order-mixed', 1, 'pollination_date', '04/26/2025']],
  'date-order-same-day': [],
  'date-order-unclear': [['error', 'date-order-unclear', 1, 'pollination_date', '03/04/2025']],
  'date-partial': [['error', 'date-partial', 2, 'pollination_date', 'June 2025']],
  'date-serial-read': [['notice', 'date-serial-read', 1, 'pollination_date', '45809']],
  'date-serial': [['error', 'date-serial', 3, 'pollination_date', '45809']],
  'file-empty': [['error', 'file-empty', 1, null, null]],
  'flowers-backwards': [['warning', 'opens-backwards', 2, 'opens_to', '2026-05-01']],
  'flowers-clean': [],
  'flowers-not-a-number': [['error', 'number-not-understood', 3, 'flowers', 'some']],
  'flowers-total': [['error', 'total-row', 4, 'seed_parent', 'Total']],
  'flowers-repeated': [['warning', 'flowers-repeated', 4, 'seed_parent', 'Selma']],
  'fresh-collected-earlier': [['warning', 'fresh-collected-earlier', 2, 'pollen_collected', '2025-05-20']],
  'harvested-before-pollination': [
    ['warning', 'harvested-before-pollination', 2, 'harvested_on', '2025-05-16'],
  ],
  'harvested-too-late': [['warning', 'harvested-too-late', 2, 'harvested_on', '2052-08-16']],
  'harvested-without-fruit': [['warning', 'harvested-without-fruit', 3, 'harvested_on', '2025-08-16']],
  'header-trailing-separators': [],
  'header-repeated': [['error', 'header-repeated', 3, null, null]],
  'header-only': [['error', 'no-rows', 1, null, null]],
  'kind-unknown': [['error', 'kind-unknown', 1, null, null]],
  'lines-quoted': [
    ['notice', 'lines-quoted', 1, null, null],
    ['error', 'word-not-understood', 3, 'outcome', 'perhaps'],
  ],
  'mixed-line-ends': [],
  'more-germinated-than-sown': [['warning', 'more-germinated-than-sown', 2, 'germinated', '30']],
  'more-sown-than-seeds': [['warning', 'more-sown-than-seeds', 2, 'sown', '300']],
  'name-garbled': [['warning', 'name-garbled', 2, 'seed_parent', 'KÃ¶nigin']],
  'name-slip': [['notice', 'name-slip', 6, 'seed_parent', 'Noctruna']],
  'name-spellings': [['warning', 'name-spellings', 4, 'seed_parent', 'nocturna']],
  'name-tidied': [['notice', 'name-tidied', 4, 'pollen_parent', 'Ivo  II']],
  'number-converted': [['notice', 'number-converted', 2, 'fruit_weight_g', '0,09 kg']],
  'number-is-date': [['warning', 'number-is-date', 2, 'sown', '2025-10-01']],
  'old-workbook': [['error', 'spreadsheet-file', 1, null, null]],
  'other-format': [['error', 'other-format', 1, null, null]],
  'own-pollen': [['warning', 'own-pollen', 2, 'pollen_parent', 'Nocturna']],
  'parents-in-one': [
    ['error', 'parents-in-one', 1, 'cross', 'Nocturna × Selma'],
    ['error', 'column-missing', 1, null, null],
    ['error', 'column-missing', 1, null, null],
    ['notice', 'column-unknown', 1, 'cross', null],
  ],
  pipe: [],
  'quote-not-closed': [['error', 'quote-not-closed', 3, null, null]],
  'quotes-after-spaces': [],
  'quoted-newline': [['error', 'word-not-understood', 4, 'outcome', 'perhaps']],
  'row-nearly-blank': [['error', 'row-nearly-blank', 5, 'cross_id', 'T4']],
  'row-short': [['notice', 'row-short', 3, null, null]],
  'row-too-long': [['error', 'row-ragged', 3, null, 'surplus']],
  'row-too-short': [['error', 'row-ragged', 3, null, null]],
  'seeds-absurd': [['warning', 'number-absurd', 2, 'seeds', '1200000']],
  'seeds-negative': [['warning', 'number-negative', 2, 'seeds', '-3']],
  'seeds-not-a-number': [['warning', 'number-not-understood', 2, 'seeds', 'many']],
  'seeds-without-fruit': [['warning', 'seeds-without-fruit', 3, 'seeds', '40']],
  'selfed-with-other-pollen': [['error', 'selfed-with-other-pollen', 2, 'pollen_parent', 'Selma']],
  semicolon: [],
  'sep-line': [],
  'storage-own': [['notice', 'storage-own', 3, 'storage', 'silica gel']],
  'storage-own-slip': [['warning', 'storage-slip', 3, 'storage', 'silca gel']],
  'storage-slip': [['warning', 'storage-slip', 3, 'storage', 'frozne']],
  tab: [],
  'table-sideways': [['error', 'table-sideways', 1, null, null]],
  'tag-conflict': [
    ['error', 'tag-conflict', 2, 'cross_id', 'T1'],
    ['error', 'tag-conflict', 3, 'cross_id', 'T1'],
  ],
  'tag-repeated': [['error', 'tag-repeated', 5, 'cross_id', 'T2']],
  'title-lines': [['notice', 'title-lines', 3, null, null]],
  'total-row': [['error', 'total-row', 5, 'cross_id', 'Summe']],
  'trailing-blank-rows': [],
  'two-digit-years-by-change': [
    ['notice', 'two-digit-years', 1, 'pollination_date', '14.06.25'],
    ['notice', 'date-order-decided', 1, 'pollination_date', '14.06.25'],
  ],
  'two-digit-years': [
    ['notice', 'two-digit-years', 1, 'pollination_date', '03.04.25'],
    ['notice', 'date-order-decided', 1, 'pollination_date', '25.04.25'],
  ],
  'unpollinated-with-pollen': [['warning', 'unpollinated-with-pollen', 3, 'pollen_parent', 'Nocturna']],
  utf16be: [],
  'utf16le-unmarked': [['notice', 'encoding-guessed', 1, null, null]],
  utf16le: [],
  'utf8-bom': [],
  'vial-without-register': [['warning', 'age-missing', 3, null, null]],
  'vials-clean': [],
  'vials-conflict': [
    ['error', 'vial-conflict', 2, 'vial', 'V1'],
    ['error', 'vial-conflict', 4, 'vial', 'V1'],
  ],
  'vials-date-missing': [['error', 'cell-blank', 3, 'collected', '']],
  'vials-header-only': [['warning', 'no-rows', 1, null, null]],
  'vials-repeated': [['error', 'vial-repeated', 4, 'vial', 'V1']],
  'windows-1252': [['notice', 'encoding-guessed', 1, null, 'Zoë']],
  'word-guessed': [['notice', 'word-guessed', 3, 'outcome', 'nichts']],
  'word-not-understood': [['error', 'word-not-understood', 4, 'outcome', 'fruti']],
  'year-stands-alone': [['warning', 'year-stands-alone', 4, 'pollination_date', '2052-06-02']],
  workbook: [['error', 'workbook-broken', 1, null, null]],
};

const FOLDER = new URL('./fixtures/', import.meta.url);

function fixture(name: string) {
  return { name: `${name}.csv`, bytes: readFileSync(new URL(`${name}.csv`, FOLDER)) };
}

describe('the fixtures, one fault each', () => {
  it('are all listed here', () => {
    const files = readdirSync(FOLDER).filter((file) => file.endsWith('.csv'));
    expect(files.map((file) => file.replace('.csv', '')).sort()).toEqual(Object.keys(FAULTS).sort());
  });

  it.each(Object.entries(FAULTS))('%s is found where it was planted, and nothing else', (name, faults) => {
    const [file] = readSeason([fixture(name)]).files;
    const found = file.problems.map((p) => [p.severity, p.code, p.line, p.column, p.value]);
    expect(found).toEqual(faults);
    expect(file.used + file.leftOut).toBe(file.rows);
    const errors = file.problems.filter(({ severity }) => severity === 'error').length;
    expect(file.leftOut > 0).toBe(errors > 0 && file.rows > 0);
  });

  it('give the same flowers, however the same sheet was saved', () => {
    const clean = readSeason([fixture('clean')]).crosses;
    expect(clean.map(({ crossId, ageDays }) => [crossId, ageDays])).toEqual([
      ['T1', 0],
      ['T2', 92], // 2025-03-01 to 2025-06-01: 30 days left of March, 30 of April, 31 of May, 1 of June
      ['T3', 3],
    ]);
    const forms = [
      'cr',
      'crlf',
      'mixed-line-ends',
      'semicolon',
      'tab',
      'pipe',
      'utf8-bom',
      'utf16le',
      'utf16be',
    ];
    for (const form of [...forms, 'utf16le-unmarked', 'trailing-blank-rows']) {
      const { crosses } = readSeason([fixture(form)]);
      expect(crosses.map((cross) => ({ ...cross, file: 'clean.csv' }))).toEqual(clean);
    }
  });

  it('count lines as the file does and rows as a spreadsheet does', () => {
    const [quoted] = readSeason([fixture('quoted-newline')]).files[0].problems;
    expect([quoted.line, quoted.row]).toEqual([4, 3]);
    const separated = readSeason([fixture('sep-line')]).crosses[0];
    expect([separated.line, separated.row]).toEqual([3, 2]);
    const titled = readSeason([fixture('title-lines')]).crosses[0];
    expect([titled.line, titled.row]).toEqual([4, 4]);
  });
});
