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
        ['name-spellings', 'Silica-Gel', 'silica gel'],
        ['name-spellings', 'ann', 'Ann'],
      ],
      [['name-spellings', 'IVO', 'Ivo']],
      [['name-spellings', 'night-queen', 'Night Queen']],
    ]);
  });
});
