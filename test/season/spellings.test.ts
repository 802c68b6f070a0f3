import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { foldName, nameKeys } from '../../lib/season/spellings.ts';

describe('foldName', () => {
  it.each([
    ['Night Queen', 'night queen'],
    ['Night Queen', 'Night-Queen'],
    ['Night Queen', 'NightQueen'],
    ['M 1', 'm1'],
    ['A × B', 'A x B'],
    ['Zoë', 'Zoe\u0308'],
    ['Night\u200b', 'Night'],
    ['ﬁ', 'fi'],
  ])('takes %s and %s for spellings of one name', (one, other) => {
    expect(foldName(one)).toBe(foldName(other));
  });

  it.each([
    ['P1-1', 'P11'],
    ['P 1 1', 'P11'],
    ['Zoe', 'Zoë'],
    ['M1', 'M2'],
  ])('takes %s and %s for two names', (one, other) => {
    expect(foldName(one)).not.toBe(foldName(other));
  });
});

describe('nameKeys', () => {
  it.each([
    ['Königin', 'konigin'],
    ['Königin', 'Koenigin'],
    ['Straße 4', 'Strasse 4'],
    ['Señora', 'senora'],
    ['Zoë', 'Zoe'],
  ])('let %s meet %s', (one, other) => {
    const keys = nameKeys(other);
    expect(nameKeys(one).some((key) => keys.includes(key))).toBe(true);
  });

  it.each([
    ['Blue', 'Blu'],
    ['Noel', 'Nol'],
    ['konigin', 'koenigin'],
  ])('keep %s and %s apart', (one, other) => {
    const keys = nameKeys(other);
    expect(nameKeys(one).some((key) => keys.includes(key))).toBe(false);
  });
});

describe('reportSpellings', () => {
  it('tells of spellings that meet through a third', () => {
    const mothers = ['konigin', 'Koenigin', 'Königin', 'Königin', 'Selma'];
    const rows = mothers.map((mother, i) => `T${i},${mother},2025-06-01,C,fresh,none`);
    const text = ['cross_id,seed_parent,pollination_date,pollen_parent,storage,outcome', ...rows].join('\n');
    const [{ problems }] = readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]).files;
    expect(problems.map(({ code, details }) => [code, details.spelling, details.usual])).toEqual([
      ['name-spellings', 'konigin', 'Königin'],
      ['name-spellings', 'Koenigin', 'Königin'],
    ]);
  });

  it('names the rarer spelling and the usual one, and joins nothing', () => {
    const rows = ['T1,A', 'T2,A', 'T3,a', 'T4,a'].map(
      (start, i) => `${start},2025-06-0${i + 1},${i < 3 ? 'C' : 'A'},fresh,none`,
    );
    const text = ['cross_id,seed_parent,pollination_date,pollen_parent,storage,outcome', ...rows].join('\n');
    const { crosses, files } = readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]);
    expect(crosses.map(({ seedParent }) => seedParent)).toEqual(['A', 'A', 'a', 'a']);
    expect(files[0].problems.map(({ code, line, details }) => [code, line, details])).toEqual([
      ['name-spellings', 4, { name: 'seed_parent', spelling: 'a', uses: 2, usual: 'A', usualUses: 3 }],
    ]);
  });
});
