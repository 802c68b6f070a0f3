import { describe, expect, it } from 'vitest';
import { growerNamer, namedGrowers } from '../../lib/analysis/growers.ts';

const rows = (...growers: (string | null)[]) => growers.map((grower) => ({ grower }));

describe('the growers of a season', () => {
  it('are those whom the files name, each once', () => {
    expect(namedGrowers(rows(null, 'Ina', 'Bo', 'Ina'))).toEqual(['Ina', 'Bo']);
  });

  it('own a blank row where there is only one of them, for a column half filled is no second grower', () => {
    const of = growerNamer(rows('Ina', null));
    expect([of({ grower: null }), of({ grower: 'Ina' })]).toEqual(['Ina', 'Ina']);
  });

  it('leave a blank row to nobody where there are several', () => {
    const of = growerNamer(rows('Ina', null, 'Bo'));
    expect([of({ grower: null }), of({ grower: 'Bo' })]).toEqual([null, 'Bo']);
  });

  it('are nobody where the files name none', () => {
    expect(growerNamer(rows(null))({ grower: null })).toBeNull();
  });
});
