import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FINDINGS_COLUMNS } from '../../lib/season/own-files.ts';
import { MOST_BYTES } from '../../lib/season/read.ts';
import { type ReadOptions, readSeason } from '../../lib/season/read-season.ts';
import type { SeasonSource } from '../../lib/season/sheet.ts';
import { problemCatalogue } from '../../lib/words/problem-catalogue.ts';
import { inlineRow, madeWorkbook } from './workbook-files.ts';

const CROSSES = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const FROZEN = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,vial,outcome';
const VIALS = 'vial,pollen_parent,collected,storage';
const SOUND = 'T1,2025-06-01,A,B,fresh,fruit';

const csv = (name: string, ...lines: readonly string[]): SeasonSource => ({
  name,
  bytes: new TextEncoder().encode(lines.join('\n')),
});
const sound = csv('c.csv', CROSSES, SOUND);
const frozen = (...rows: readonly string[]) => csv('c.csv', FROZEN, ...rows);
const vials = (...rows: readonly string[]) => csv('v.csv', VIALS, ...rows);
const sheet = (name: string, hidden = '') => ({
  name,
  rows:
    inlineRow(1, ...CROSSES.split(',')) +
    inlineRow(2, ...SOUND.split(',')).replace('<row ', `<row ${hidden}`),
});
const book = (...sheets: Parameters<typeof madeWorkbook>[0]['sheets']): SeasonSource => ({
  name: 'b.xlsx',
  bytes: madeWorkbook({ sheets }),
});
const joined = inlineRow(3, 'T2', '2025-06-01', '', 'B', 'fresh', 'none');

type Fault = readonly [sources: readonly SeasonSource[], options?: ReadOptions];

/** What one text alone cannot show: several files, what the grower said, workbooks, files past every bound. One fault each. */
const FAULTS: Readonly<Record<string, Fault>> = {
  'file-too-large': [[{ name: 'c.csv', bytes: new Uint8Array(MOST_BYTES + 1).fill(32), sha256: '0' }]],
  'file-repeated': [[sound, { ...sound, name: 'copy.csv' }]],
  'own-file': [[csv('problems.csv', FINDINGS_COLUMNS.join(','), 'c.csv,error,2')]],
  'nothing-entered': [[csv('c.csv', CROSSES, 'T1,,A,B,fresh,', 'T2,,B,A,fresh,')]],
  'workbook-locked': [
    [
      {
        name: 'b.xlsx',
        bytes: Uint8Array.from([
          ...[0xd0, 0xcf, 0x11, 0xe0],
          ...[...'EncryptedPackage'].flatMap((letter) => [letter.charCodeAt(0), 0]),
        ]),
      },
    ],
  ],
  'workbook-too-large': [
    [
      book({
        name: 'A',
        rows: Array.from({ length: 2000 }, (_, i) => `<row r="${i + 1}"><c r="XFD1"><v>1</v></c></row>`).join(
          '',
        ),
      }),
    ],
  ],
  'rows-hidden': [[book(sheet('A', 'hidden="1" '))]],
  'cells-merged': [
    [
      book({
        name: 'A',
        rows: sheet('A').rows + joined,
        after: '<mergeCells><mergeCell ref="C2:C3"/></mergeCells>',
      }),
    ],
  ],
  'sheet-read': [[book({ name: 'Notes', rows: inlineRow(1, 'hello') }, sheet('A'))]],
  'kind-differs': [[{ ...csv('v.csv', VIALS, 'V1,B,2025-01-01,frozen'), kind: 'crosses' }]],
  'columns-unknown': [
    [
      csv(
        'c.csv',
        `${CROSSES},${Array.from({ length: 60 }, (_, i) => `c${i}`).join(',')}`,
        SOUND + ','.repeat(60),
      ),
    ],
  ],
  'map-header-missing': [[sound], { map: new Map([['Mutter', 'seed_parent']]) }],
  'same-name-missing': [[sound], { same: [['A', 'Anton']] }],
  'storage-word-missing': [[sound], { storage: new Map([['shed', 'room']]) }],
  'future-date': [[sound], { asOf: '2025-05-01' }],
  'outcome-after-as-of': [
    [csv('c.csv', `${CROSSES},checked_on`, `${SOUND},2025-06-15`)],
    { asOf: '2025-06-10' },
  ],
  'vial-unknown': [[frozen('T1,2025-06-01,A,B,frozen,V9,none'), vials('V1,B,2025-01-01,frozen')]],
  'vial-before-collected': [[frozen('T1,2025-06-01,A,B,frozen,V1,none'), vials('V1,B,2025-07-01,frozen')]],
  'vial-beyond-doses': [
    [
      frozen('T1,2025-06-01,A,B,frozen,V1,none', 'T2,2025-06-01,A,B,frozen,V1,none'),
      csv('v.csv', `${VIALS},doses_filled`, 'V1,B,2025-01-01,frozen,1'),
    ],
  ],
  'vial-father-differs': [[frozen('T1,2025-06-01,A,B,frozen,V1,none'), vials('V1,C,2025-01-01,frozen')]],
  'vial-storage-differs': [[frozen('T1,2025-06-01,A,B,frozen,V1,none'), vials('V1,B,2025-01-01,room')]],
};

function codesOf([sources, options = {}]: Fault): string[] {
  return readSeason(sources, options).files.flatMap((file) => {
    expect(file.used + file.leftOut).toBe(file.rows);
    return file.problems.map(({ code }) => code);
  });
}

describe('faults that one text alone cannot show', () => {
  it.each(Object.entries(FAULTS))('%s is found, and nothing else', (code, fault) => {
    const codes = codesOf(fault);
    // Sixty unknown columns are told one by one up to fifty.
    expect(code === 'columns-unknown' ? codes.slice(50) : codes).toEqual([code]);
  });
});

describe('the faults of the catalogue', () => {
  it('are each shown by a fixture or by one of these', () => {
    const folder = new URL('./fixtures/', import.meta.url);
    const found = new Set(Object.keys(FAULTS));
    for (const name of readdirSync(folder).filter((each) => each.endsWith('.csv')))
      for (const code of codesOf([[{ name, bytes: readFileSync(new URL(name, folder)) }]])) found.add(code);
    const missing = problemCatalogue().filter(({ code }) => !found.has(code));
    expect(missing.map(({ code }) => code)).toEqual([]);
  });
});
