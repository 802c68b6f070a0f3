import { describe, expect, it } from 'vitest';
import { isNameSlip } from '../../lib/season/name-slips.ts';
import { readSeason } from '../../lib/season/read-season.ts';

describe('isNameSlip', () => {
  it.each([
    ['Nocturna', 'Noctruna'],
    ['Nocturna', 'Nocturnaa'],
    ['Queen of Märchen', 'Queen of Marchen'],
    ['Nocturna-Alba', 'Nokturna Alba'],
  ])('takes %s and %s for a slip', (one, other) => {
    expect(isNameSlip(one, other)).toBe(true);
  });

  // Common practice, no source: plants of one seedling batch are told apart by a number or a letter.
  it.each([
    ['Nocturna 12', 'Nocturna 13'],
    ['Nocturna A', 'Nocturna B'],
    ['Nocturna', 'Nocturna'],
    ['Selma', 'Velma'],
    ['Winter', 'Linter'],
    ['Nocturna', 'Nacturmo'],
    ['SC2001', 'SC2011'],
  ])('takes %s and %s for none', (one, other) => {
    expect(isNameSlip(one, other)).toBe(false);
  });
});

function codesOf(mothers: readonly string[]) {
  const rows = mothers.map((mother, i) => `T${i},2025-06-01,${mother},Ivo,fresh,none`);
  const text = ['cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome', ...rows].join('\n');
  const [{ problems }] = readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]).files;
  return problems.map(({ code, severity, row, details }) => [code, severity, row, details.usual]);
}

describe('reportNameSlips', () => {
  it('suggests the frequent name that a seldom one is a slip of', () => {
    expect(codesOf(['Nocturna', 'Nocturna', 'Noctruna', 'Nocturna', 'Nocturna'])).toEqual([
      ['name-slip', 'notice', 4, 'Nocturna'],
    ]);
  });

  it('says nothing where both are seldom, both frequent, or two could be meant', () => {
    expect(codesOf(['Nocturna', 'Noctruna', 'Nocturna'])).toEqual([]);
    expect(codesOf([...Array(8).fill('Nocturna'), ...Array(8).fill('Noctruna')])).toEqual([]);
    expect(codesOf([...Array(4).fill('Juliana'), ...Array(4).fill('Julianb'), 'Julian'])).toEqual([]);
  });
});
