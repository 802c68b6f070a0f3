import { describe, expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';
import { limitsOf, wishOf } from '../../lib/command/wishes.ts';
import { offer } from '../decisions/planned.ts';
import { seasonOf } from '../season-of.ts';

const season = seasonOf(
  [
    { seedParent: 'Salt Moon', pollenParent: 'Copper Tide' },
    { seedParent: 'Blue x Hour', pollenParent: '__proto__' },
  ],
  { flowers: [offer('Salt Moon', 3)] },
);

function failureOf(act: () => unknown): { code: string; details: Failure['details'] } {
  try {
    act();
  } catch (error) {
    if (error instanceof Failure) return { code: error.code, details: error.details };
    throw error;
  }
  throw new Error('expected a failure');
}

describe('wishOf', () => {
  it('reads names and a number of flowers; a must without one is one flower', () => {
    expect(wishOf('--must', 'A x B=2')).toEqual({ names: 'A x B', flowers: 2 });
    expect(wishOf('--must', ' A × B ')).toEqual({ names: 'A × B', flowers: 1 });
    expect(wishOf('--at-most', 'A = 0')).toEqual({ names: 'A', flowers: 0 });
    expect(wishOf('--at-most', 'A=b = 5')).toEqual({ names: 'A=b', flowers: 5 });
  });

  it.each(['', '=2', 'A=', ' = '])('refuses a wish without a name or a number: "%s"', (text) => {
    expect(failureOf(() => wishOf('--must', text))).toMatchObject({ code: 'option-value' });
  });

  it('refuses a ceiling without a number', () => {
    expect(failureOf(() => wishOf('--at-most', 'A'))).toEqual({
      code: 'option-value',
      details: { option: '--at-most', value: 'A', rule: 'at-most', allowed: null },
    });
  });
});

describe('limitsOf', () => {
  it('is empty where nothing is wished', () => {
    expect(limitsOf({}, season)).toEqual({});
  });

  it('tells plants from crosses, whatever the plants are called', () => {
    const must = [
      { names: 'Salt Moon x Copper Tide', flowers: 2 },
      { names: 'Blue x Hour × __proto__', flowers: 1 },
    ];
    const atMost = [
      { names: 'Blue x Hour', flowers: 5 },
      { names: 'Salt Moon X Blue x Hour', flowers: 0 },
    ];
    expect(limitsOf({ must, atMost }, season)).toEqual({
      must: [
        { seedParent: 'Salt Moon', pollenParent: 'Copper Tide', flowers: 2 },
        { seedParent: 'Blue x Hour', pollenParent: '__proto__', flowers: 1 },
      ],
      atMost: [
        { pollenParent: 'Blue x Hour', flowers: 5 },
        { seedParent: 'Salt Moon', pollenParent: 'Blue x Hour', flowers: 0 },
      ],
    });
  });

  it('names the nearest plant for one that is in none of the files', () => {
    const must = [{ names: 'salt mon x Copper Tide', flowers: 1 }];
    expect(failureOf(() => limitsOf({ must }, season))).toEqual({
      code: 'plant-unknown',
      details: { option: '--must', plant: 'salt mon', nearest: 'Salt Moon' },
    });
    const atMost = [{ names: 'Quite Another', flowers: 1 }];
    expect(failureOf(() => limitsOf({ atMost }, season)).details).toMatchObject({ nearest: null });
  });

  it('refuses a must that is no cross, a cross that is two, and wishes without a flowers file', () => {
    expect(failureOf(() => limitsOf({ must: [{ names: 'Salt Moon', flowers: 1 }] }, season)).code).toBe(
      'option-value',
    );
    const twice = seasonOf(
      [
        { seedParent: 'A', pollenParent: 'B x C' },
        { seedParent: 'A x B', pollenParent: 'C' },
      ],
      { flowers: [offer('A', 1)] },
    );
    const must = [{ names: 'A x B x C', flowers: 1 }];
    expect(failureOf(() => limitsOf({ must }, twice)).code).toBe('wish-unclear');
    expect(failureOf(() => limitsOf({ must }, { ...season, flowers: [] }))).toEqual({
      code: 'wish-without-flowers',
      details: { option: '--must' },
    });
  });

  it('wants the name by which a plant of two growers is told apart', () => {
    const two = seasonOf(
      [
        { seedParent: 'Salt Moon', pollenParent: 'Copper Tide', grower: 'Ina' },
        { seedParent: 'Salt Moon', pollenParent: 'Blue Hour', grower: 'Bo' },
      ],
      { flowers: [offer('Salt Moon (Ina)', 1)] },
    );
    const must = (names: string) => limitsOf({ must: [{ names, flowers: 1 }] }, two).must;
    expect(must('Salt Moon (Ina) x Blue Hour')).toEqual([
      { seedParent: 'Salt Moon (Ina)', pollenParent: 'Blue Hour', flowers: 1 },
    ]);
    expect(failureOf(() => must('Salt Moon x Blue Hour'))).toMatchObject({ code: 'plant-unknown' });
    expect(
      limitsOf({ samePlants: true, must: [{ names: 'Salt Moon x Blue Hour', flowers: 1 }] }, two).must,
    ).toHaveLength(1);
  });
});
