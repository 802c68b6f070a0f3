import { describe, expect, it } from 'vitest';
import { COLUMNS, columnNamed, foldHeader, KINDS } from '../../lib/season/columns.ts';

describe('COLUMNS', () => {
  it('require what the file format requires', () => {
    const required = KINDS.map((kind) =>
      COLUMNS[kind].filter(({ required }) => required).map(({ name }) => name),
    );
    expect(required).toEqual([
      ['cross_id', 'pollination_date', 'seed_parent', 'pollen_parent', 'storage', 'outcome'],
      ['vial', 'pollen_parent', 'collected', 'storage'],
      ['seed_parent', 'flowers'],
    ]);
  });

  it('have no header that could mean two columns of one kind of file', () => {
    for (const kind of KINDS) {
      const headers = COLUMNS[kind].flatMap(({ name, synonyms }) => [
        ...new Set([name, ...synonyms].map(foldHeader)),
      ]);
      expect(headers.filter((header, i) => headers.indexOf(header) !== i)).toEqual([]);
    }
  });
});

describe('columnNamed', () => {
  it.each([
    ['Seed Parent', 'seed_parent'],
    ['MOTHER', 'seed_parent'],
    ['♀', 'seed_parent'],
    ['mère', 'seed_parent'],
    ['father', 'pollen_parent'],
    ['date_pollinated', 'pollination_date'],
    ['Bestäubungsdatum', 'pollination_date'],
    ['pollen date', 'pollen_collected'],
    ['date-collected', 'pollen_collected'],
    ['Fruit weight (g)', 'fruit_weight_g'],
    ['Gewicht [g]', 'fruit_weight_g'],
    ['Pollenalter (Tage)', 'pollen_age_days'],
    ['Date (d/m/y):', 'pollination_date'],
    ['Bestaeubungsdatum', 'pollination_date'],
    ['Roehrchen', 'vial'],
    ['Mom', 'seed_parent'],
    ['Fruit?', 'outcome'],
  ])('knows %s in a crosses file', (header, name) => {
    expect(columnNamed(header, 'crosses')?.name).toBe(name);
  });

  it('takes no column whose brackets name another unit', () => {
    for (const header of ['Weight (kg)', 'Gewicht (mg)', 'Pollen age (weeks)', 'Pollen age (months)'])
      expect(columnNamed(header, 'crosses')).toBeUndefined();
  });

  it('reads a header by the kind of its file', () => {
    expect(columnNamed('date collected', 'vials')?.name).toBe('collected');
    expect(columnNamed('fruit_harvested', 'crosses')).toBeUndefined();
    expect(columnNamed('constructor', 'crosses')).toBeUndefined();
    expect(columnNamed('', 'crosses')).toBeUndefined();
  });
});

describe('foldHeader', () => {
  it('compares a header of signs as it stands', () =>
    expect([foldHeader(' ★ '), foldHeader('--')]).toEqual(['★', '--']));
});
