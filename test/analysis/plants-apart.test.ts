import { describe, expect, it } from 'vitest';
import { plantsApart } from '../../lib/analysis/plants-apart.ts';
import type { Cross, Vial } from '../../lib/season/season.ts';
import { seasonOf } from '../season-of.ts';

const ina: Partial<Cross> = { grower: 'Ina', seedParent: 'Salt Moon', pollenParent: 'Blue Hour' };
const bo: Partial<Cross> = { grower: 'Bo', seedParent: 'Salt Moon', pollenParent: 'Cold Ember' };

function vial(name: string, pollenParent: string): Vial {
  const place = { file: 'vials.csv', line: 2, row: 2 };
  const lot = { vial: name, pollenParent, collected: '2025-06-01', storage: 'frozen' };
  return { ...place, ...lot, dosesLeft: 3, thaws: null, note: null };
}

const plants = (crosses: readonly Partial<Cross>[], options = {}) =>
  plantsApart(seasonOf(crosses), options).season.crosses.map(({ seedParent, pollenParent }) => [
    seedParent,
    pollenParent,
  ]);

// The rule is the trade's, common practice, no source: the same name with two growers is two plants unless it is said.
describe('plants of several growers', () => {
  it('are told apart where they share a name, and keep their names where they do not', () => {
    expect(plants([ina, bo])).toEqual([
      ['Salt Moon (Ina)', 'Blue Hour'],
      ['Salt Moon (Bo)', 'Cold Ember'],
    ]);
  });

  it('are told apart also where one grower has a name as mother and another as father', () => {
    expect(plants([ina, { ...bo, seedParent: 'Blue Hour' }])).toEqual([
      ['Salt Moon', 'Blue Hour (Ina)'],
      ['Blue Hour (Bo)', 'Cold Ember'],
    ]);
  });

  it('are one plant where the grower says so', () => {
    expect(plants([ina, bo], { samePlants: true }).map(([seedParent]) => seedParent)).toEqual([
      'Salt Moon',
      'Salt Moon',
    ]);
  });

  it('are one plant where one grower left some rows without a name', () => {
    expect(plants([ina, { ...ina, grower: null }]).map(([seedParent]) => seedParent)).toEqual([
      'Salt Moon',
      'Salt Moon',
    ]);
  });

  it('never get the name of a plant that is called so already', () => {
    const taken = { ...ina, seedParent: 'Salt Moon (Ina)' };
    expect(plants([ina, bo, taken]).map(([seedParent]) => seedParent)).toEqual([
      'Salt Moon (Ina)′',
      'Salt Moon (Bo)',
      'Salt Moon (Ina)',
    ]);
  });

  it('may be called __proto__', () => {
    const odd = [ina, bo].map((cross) => ({ ...cross, seedParent: '__proto__' }));
    expect(plants(odd).map(([seedParent]) => seedParent)).toEqual(['__proto__ (Ina)', '__proto__ (Bo)']);
  });

  it('are on record with the names they are shown by', () => {
    const { growers } = plantsApart(seasonOf([ina, bo]));
    expect(growers).toEqual({
      names: ['Bo', 'Ina'],
      samePlants: false,
      toldApart: [
        { name: 'Salt Moon', grower: 'Bo', shownAs: 'Salt Moon (Bo)' },
        { name: 'Salt Moon', grower: 'Ina', shownAs: 'Salt Moon (Ina)' },
      ],
      unplaced: [],
    });
  });
});

describe('vials and expected flowers of several growers', () => {
  const crosses: Partial<Cross>[] = [
    { ...ina, storage: 'frozen', vial: 'F-1', pollenParent: 'Salt Moon', seedParent: 'Blue Hour' },
    bo,
  ];
  const flowers = (seedParent: string) => [
    { file: 'f.csv', line: 2, row: 2, seedParent, flowers: 5, opensFrom: null, opensTo: null },
  ];

  it('belong to the grower who used the vial', () => {
    const { season } = plantsApart(seasonOf(crosses, { vials: [vial('F-1', 'Salt Moon')] }));
    expect(season.vials[0]!.pollenParent).toBe('Salt Moon (Ina)');
  });

  it('stay unplaced, once, where nobody used the vial, and are then a plant never seen', () => {
    const { season, growers } = plantsApart(
      seasonOf(crosses, { vials: [vial('F-8', 'Salt Moon'), vial('F-9', 'Salt Moon')] }),
    );
    expect(season.vials.map(({ pollenParent }) => pollenParent)).toEqual(['Salt Moon', 'Salt Moon']);
    expect(growers.unplaced).toEqual([{ name: 'Salt Moon', kind: 'vials' }]);
  });

  it('are two vials where two growers name the same and no vials file has it', () => {
    const frozen = [ina, bo].map((cross) => ({ ...cross, storage: 'frozen', vial: 'F-1' }));
    const named = (vials: Vial[]) =>
      plantsApart(seasonOf(frozen, { vials })).season.crosses.map((cross) => cross.vial);
    expect(named([])).toEqual(['F-1 (Ina)', 'F-1 (Bo)']);
    expect(named([vial('F-1', 'Blue Hour')])).toEqual(['F-1', 'F-1']);
  });

  it('are placed in the flowers file by the name with its grower', () => {
    const unplaced = (seedParent: string) =>
      plantsApart(seasonOf(crosses, { flowers: flowers(seedParent) })).growers.unplaced;
    expect(unplaced('Salt Moon')).toEqual([{ name: 'Salt Moon', kind: 'flowers' }]);
    expect(unplaced('Salt Moon (Bo)')).toEqual([]);
    expect(unplaced('Cold Ember')).toEqual([]);
  });
});
