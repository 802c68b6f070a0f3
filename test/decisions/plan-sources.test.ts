import { describe, expect, it } from 'vitest';
import { averagedRate, spreadOf } from '../../lib/analysis/fruit-rate.ts';
import {
  chancesAt,
  evenDraws,
  freshPollens,
  plannedSources,
  storedPollens,
} from '../../lib/decisions/plan-sources.ts';
import { offer, questionOf, vialOf } from './planned.ts';

const question = questionOf({});

function namesOf(sources: ReturnType<typeof plannedSources>): string[] {
  return sources.map(({ offer: { seedParent }, pollen }) => `${seedParent} × ${pollen.pollenParent}`);
}

describe('storedPollens', () => {
  it('plans a vial with its doses, and one without a number of doses with one', () => {
    const vials = [vialOf('V1', 'Ash Lantern'), vialOf('V2', 'Ash Lantern', { dosesLeft: null })];
    const { pollens, leftOut } = storedPollens(vials, question);
    expect(pollens.map(({ doses }) => doses)).toEqual([3, 1]);
    expect(leftOut).toEqual([]);
  });

  it('leaves out what is empty, not yet collected or kept in a way without a model, and says why', () => {
    const vials = [
      vialOf('V1', 'Ash Lantern', { dosesLeft: 0 }),
      vialOf('V2', 'Ash Lantern', { collected: '2026-07-02' }),
      vialOf('V3', 'Ash Lantern', { storage: 'silica' }),
    ];
    const asked = questionOf({ storage: (storage) => (storage === 'silica' ? null : 0) });
    expect(storedPollens(vials, asked)).toEqual({
      pollens: [],
      leftOut: [
        { vial: 'V1', because: 'no-doses-left' },
        { vial: 'V2', because: 'used-before-collected' },
        { vial: 'V3', because: 'method-never-tried' },
      ],
    });
  });
});

describe('freshPollens', () => {
  it('has each plant of the flowers file once, without a limit', () => {
    const pollens = freshPollens([offer('Ash Lantern', 2), offer('Blue Hour', 1), offer('Ash Lantern', 3)]);
    expect(pollens.map(({ pollenParent, doses }) => [pollenParent, doses])).toEqual([
      ['Ash Lantern', Infinity],
      ['Blue Hour', Infinity],
    ]);
  });
});

describe('plannedSources', () => {
  const june = offer('Ash Lantern', 2, '2026-06-01', '2026-06-20');
  const late = offer('Blue Hour', 2, '2026-06-20', '2026-07-05');
  const july = offer('Cold Ember', 2, '2026-07-01', null);
  const any = offer('<script>', 2);

  it('crosses fresh only on mornings that both plants share, the last one included', () => {
    const offers = [june, late, july];
    const sources = plannedSources(offers, freshPollens(offers), () => false);
    expect(namesOf(sources)).toEqual([
      'Ash Lantern × Blue Hour',
      'Blue Hour × Ash Lantern',
      'Blue Hour × Cold Ember',
      'Cold Ember × Blue Hour',
    ]);
    expect(sources[0]!.when).toEqual({ from: '2026-06-20', to: '2026-06-20' });
    expect(sources[2]!.when).toEqual({ from: '2026-07-01', to: '2026-07-05' });
  });

  it('takes a plant without dates for one that can flower on any morning', () => {
    const offers = [june, any];
    const sources = plannedSources(offers, freshPollens(offers), () => false);
    expect(namesOf(sources)).toEqual(['Ash Lantern × <script>', '<script> × Ash Lantern']);
    expect(sources[1]!.when).toEqual({ from: '2026-06-01', to: '2026-06-20' });
  });

  it('uses a vial on every morning of the seed parent', () => {
    const { pollens } = storedPollens([vialOf('V1', 'Cold Ember')], question);
    const [source] = plannedSources([june], pollens, () => false);
    expect(source!.when).toEqual({ from: '2026-06-01', to: '2026-06-20' });
  });

  it('leaves out the own plant and pairs named incompatible, one direction only', () => {
    const offers = [june, late];
    const { pollens } = storedPollens([vialOf('V1', 'Ash Lantern')], question);
    const sources = plannedSources(
      offers,
      [...freshPollens(offers), ...pollens],
      (seedParent, pollenParent) => seedParent === 'Blue Hour' && pollenParent === 'Ash Lantern',
    );
    expect(namesOf(sources)).toEqual(['Ash Lantern × Blue Hour']);
  });
});

describe('chancesAt', () => {
  it('adds storage, age and the vial’s own effect to the pair’s chance, averaged over mornings', () => {
    // Logit of 0.8 is log 4; with −1 for storage and 0.5 for the vial, averaged over a deviation of 0.7.
    const asked = questionOf({
      pair: () => 0.8,
      storage: (_, ageDays) => (ageDays === 365 ? -1 : 0),
      vial: () => 0.5,
      occasion: 0.7,
      draws: 4,
    });
    const offers = [offer('Ash Lantern', 2)];
    const { pollens } = storedPollens([vialOf('V1', 'Blue Hour')], asked);
    const [source] = plannedSources(offers, pollens, () => false);
    const { rates, ratesIn } = chancesAt(evenDraws(4, 2), asked);
    expect([...rates(source!)]).toHaveLength(2);
    expect(rates(source!)[0]).toBeCloseTo(averagedRate(Math.log(4) - 0.5, spreadOf(0.7)), 12);
    // In a season of twice the odds against a fruit.
    const shifted = averagedRate(Math.log(4) - 0.5 - Math.log(2), spreadOf(0.7));
    expect(ratesIn(source!, Float64Array.of(2, 2))[1]).toBeCloseTo(shifted, 12);
  });
});

describe('evenDraws', () => {
  it('spreads its positions evenly, and takes all where more are wanted', () => {
    expect([...evenDraws(10, 5)]).toEqual([1, 3, 5, 7, 9]);
    expect([...evenDraws(3, 5)]).toEqual([0, 1, 2]);
  });
});
