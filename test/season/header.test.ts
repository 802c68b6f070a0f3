import { describe, expect, it } from 'vitest';
import { headersRecognised, understandHeader } from '../../lib/season/header.ts';

const NO_MAP = new Map<string, string>();
const places = (header: ReturnType<typeof understandHeader>) =>
  [...header.columns].map(([name, { index }]) => [name, index]);

describe('understandHeader', () => {
  it('finds columns in any order, and says which it guessed and which it does not know', () => {
    const header = understandHeader(['flowers', 'Mother', 'colour'], NO_MAP);
    expect(header.kind).toBe('flowers');
    expect(places(header)).toEqual([
      ['seed_parent', 1],
      ['flowers', 0],
    ]);
    expect(header.guessed).toEqual([{ header: 'Mother', column: 'seed_parent' }]);
    expect(header.unknown).toEqual(['colour']);
  });

  it('prefers our own name to a synonym, and the grower’s word to both', () => {
    const headers = ['flowers', 'seed_parent', 'mother', 'plant in bloom'];
    expect(places(understandHeader(headers, NO_MAP))).toContainEqual(['seed_parent', 1]);
    const said = understandHeader(headers, new Map([['plantinbloom', 'seed_parent']]));
    expect(places(said)).toContainEqual(['seed_parent', 3]);
    expect(said.unknown).toEqual(['seed_parent', 'mother']);
  });

  it('leaves two equal claims to the grower', () => {
    const header = understandHeader(['flowers', 'mother', 'female'], NO_MAP);
    expect(header.unclear).toEqual([{ column: 'seed_parent', headers: ['mother', 'female'] }]);
    expect(header.missing).toEqual([]);
  });

  it('tells the kind of a file that lacks a required column', () => {
    expect(understandHeader(['vial', 'pollen_parent', 'collected'], NO_MAP)).toMatchObject({
      kind: 'vials',
      missing: ['storage'],
    });
    expect(understandHeader(['cross_id', 'seed_parent', 'pollen_parent', 'storage'], NO_MAP)).toMatchObject({
      kind: 'crosses',
      missing: ['pollination_date', 'outcome'],
    });
    expect(understandHeader(['name', 'colour'], NO_MAP).kind).toBe('unknown');
  });

  it('believes what a file is said to be', () => {
    expect(understandHeader(['vial'], NO_MAP, 'vials').missing).toEqual([
      'pollen_parent',
      'collected',
      'storage',
    ]);
  });

  it('tells where the columns are those of another kind than is said', () => {
    const crosses = [
      ...[
        'cross_id',
        'pollination_date',
        'seed_parent',
        'pollen_parent',
        'storage',
        'outcome',
        'vial',
        'pollen_collected',
      ],
    ];
    // A crosses file with dates of collection has all that a vials file needs: still it is the likelier.
    expect(understandHeader(crosses, NO_MAP, 'vials')).toMatchObject({ missing: [], otherKind: 'crosses' });
    expect(understandHeader(crosses, NO_MAP, 'flowers').otherKind).toBe('crosses');
    expect(understandHeader(crosses, NO_MAP).otherKind).toBeNull();
    const flowers = ['seed_parent', 'flowers', 'pollen_parent', 'storage'];
    expect(understandHeader(flowers, NO_MAP, 'flowers').otherKind).toBeNull();
  });
});

describe('headersRecognised', () => {
  it('counts different columns of one kind of file', () => {
    expect(headersRecognised(['mother', 'father', 'madre', 'moon'], NO_MAP)).toBe(2);
    expect(headersRecognised([], NO_MAP)).toBe(0);
  });
});
