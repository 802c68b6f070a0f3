import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';

const source = (name: string, ...lines: string[]) => ({
  name,
  bytes: new TextEncoder().encode(lines.join('\n')),
});

describe('reportNames', () => {
  it('compares plants over all files, and storage methods and growers among themselves', () => {
    const { files } = readSeason([
      source(
        'c.csv',
        'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,outcome,grower',
        'T1,2025-06-01,Night Queen,Ivo,silica gel,2025-05-01,fruit,Ann',
        'T2,2025-06-01,Night Queen,Ivo,Silica-Gel,2025-05-01,fruit,ann',
        'T3,2025-06-01,Night Queen,Ivo,silica gel,2025-05-01,fruit,Ann',
      ),
      source('v.csv', 'vial,pollen_parent,collected,storage', 'V1,IVO,2025-05-01,silica gel'),
      source('f.csv', 'seed_parent,flowers', 'night-queen,3'),
    ]);
    const found = files.map(({ problems }) =>
      problems.map(({ code, details }) => [code, details.spelling, details.usual]),
    );
    expect(found).toEqual([
      [
        ['storage-own', undefined, undefined],
        ['name-spellings', 'Silica-Gel', 'silica gel'],
        ['name-spellings', 'ann', 'Ann'],
      ],
      [
        ['storage-own', undefined, undefined],
        ['name-spellings', 'IVO', 'Ivo'],
      ],
      [['name-spellings', 'night-queen', 'Night Queen']],
    ]);
  });

  it('suggests slips of growers and of methods of storage too, and a slip of a known word once', () => {
    const row = (i: number, storage: string, grower: string) =>
      `T${i},2025-06-01,A,B,${storage},2025-05-01,fruit,${grower}`;
    const usual = Array.from({ length: 8 }, (_, i) => row(i, i < 4 ? 'walnut tin' : 'frozen', 'Marianne'));
    const { files } = readSeason([
      source(
        'c.csv',
        'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,outcome,grower',
        ...[...usual, row(8, 'wallnut tin', 'Marianne'), row(9, 'frozne', 'Mariane')],
      ),
    ]);
    expect(files[0].problems.map(({ code, value, details }) => [code, value, details.usual])).toEqual([
      ['storage-own', 'walnut tin', undefined],
      ['storage-own', 'wallnut tin', undefined],
      ['name-slip', 'wallnut tin', 'walnut tin'],
      ['storage-slip', 'frozne', undefined],
      ['name-slip', 'Mariane', 'Marianne'],
    ]);
  });
});
