import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { SamePlants } from '../../lib/season/same-plants.ts';

describe('SamePlants', () => {
  it('keeps the first name of each list, through lists that share a name, in any order', () => {
    for (const lists of [
      [
        ['A', 'B'],
        ['B', 'C'],
      ],
      [
        ['B', 'C'],
        ['A', 'B'],
      ],
    ]) {
      const same = new SamePlants(lists);
      expect(['A', 'B', 'C', 'D', '__proto__'].map((name) => same.keptFor(name))).toEqual([
        'A',
        'A',
        'A',
        'D',
        '__proto__',
      ]);
    }
  });

  it('goes round no circle', () => {
    const same = new SamePlants([
      ['A', 'B'],
      ['B', 'A'],
    ]);
    expect([same.keptFor('A'), same.keptFor('B')]).toEqual(['A', 'A']);
  });

  it('remembers what it has not met', () => {
    const same = new SamePlants([['A', 'B', 'C']]);
    same.keptFor('B');
    expect(same.neverMet()).toEqual(['C']);
  });
});

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,vial,outcome';
const source = (name: string, ...lines: string[]) => ({
  name,
  bytes: new TextEncoder().encode(lines.join('\n')),
});

describe('readSeason with names of one plant', () => {
  it('joins them in crosses, vials and flowers, and says nothing more about them', () => {
    const season = readSeason(
      [
        source(
          'c.csv',
          HEADER,
          'T1,2025-06-01,Nocturna,nocturna,frozen,V1,fruit',
          'T2,2025-06-01,Selma,Nocturna,fresh,,none',
        ),
        source('v.csv', 'vial,pollen_parent,collected,storage', 'V1,nocturna,2025-05-01,frozen'),
        source('f.csv', 'seed_parent,flowers', 'nocturna,3'),
      ],
      { same: [['Nocturna', 'nocturna']] },
    );
    expect(season.crosses.map(({ seedParent, pollenParent }) => [seedParent, pollenParent])).toEqual([
      ['Nocturna', 'Nocturna'],
      ['Selma', 'Nocturna'],
    ]);
    expect([season.vials[0].pollenParent, season.flowers[0].seedParent]).toEqual(['Nocturna', 'Nocturna']);
    expect(season.files.flatMap(({ problems }) => problems.map(({ code }) => code))).toEqual(['own-pollen']);
  });

  it('says where no file has a name', () => {
    const file = source('c.csv', HEADER, 'T1,2025-06-01,Nocturna,Selma,fresh,,fruit');
    const { files } = readSeason([file], { same: [['Nocturna', 'Nokturna']] });
    expect(files[0].problems.map(({ code, value }) => [code, value])).toEqual([
      ['same-name-missing', 'Nokturna'],
    ]);
  });

  it('refuses a list of one name and a blank one', () => {
    expect(() => readSeason([], { same: [['A']] })).toThrow(
      'readSeason: same must hold lists of two names or more',
    );
    expect(() => readSeason([], { same: [['A', ' ']] })).toThrow('none of them blank');
  });
});
