import { describe, expect, it } from 'vitest';
import { problemOf } from '../../lib/decisions/plan-problem.ts';
import { freshPollens, plannedSources, storedPollens } from '../../lib/decisions/plan-sources.ts';
import { offer, questionOf, vialOf } from './planned.ts';

const question = questionOf({ pair: () => 0.25, draws: 4 });
const offers = [offer('Ash Lantern', 2), offer('Blue Hour', 1), offer('Ash Lantern', 3)];
const { pollens: stored } = storedPollens([vialOf('V1', 'Blue Hour')], question);
const pollens = [...freshPollens(offers), ...stored];
const sources = plannedSources(offers, pollens, () => false);

describe('problemOf', () => {
  it('takes rows of one seed parent and all pollens of one plant for one pair', () => {
    const { problem, pairs } = problemOf(offers, pollens, sources, question, {});
    const pair = pairs('Ash Lantern', 'Blue Hour');
    expect(problem.sources.map((source) => source.pair === pair)).toEqual([true, true, false, true, true]);
    expect(problem.sources.map(({ offer: row }) => row)).toEqual([0, 0, 1, 2, 2]);
    expect(problem.doses).toEqual([Infinity, Infinity, 3]);
    expect(problem.flowers).toEqual([2, 1, 3]);
    expect([...problem.sources[0]!.miss]).toEqual(
      [0.75, 0.75, 0.75, 0.75].map((miss) => expect.closeTo(miss, 12)),
    );
    // Rows of one seed parent share their chances.
    expect(problem.sources[0]!.miss).toBe(problem.sources[3]!.miss);
  });

  it('keeps limits of its own plants only', () => {
    const { problem, pairs } = problemOf(offers, pollens, sources, question, {
      must: [
        { seedParent: 'Ash Lantern', pollenParent: 'Blue Hour', flowers: 2 },
        { seedParent: 'Nobody', pollenParent: 'Blue Hour', flowers: 9 },
      ],
      ceilings: [
        { pollenParent: 'Blue Hour', flowers: 4 },
        { pollenParent: 'Nobody', flowers: 0 },
        { seedParent: 'Blue Hour', pollenParent: 'Ash Lantern', flowers: 1 },
      ],
    });
    expect(problem.pairFewest.reduce((sum, fewest) => sum + fewest, 0)).toBe(2);
    expect(problem.pairFewest[pairs('Ash Lantern', 'Blue Hour')]).toBe(2);
    expect(problem.pairMost[pairs('Blue Hour', 'Ash Lantern')]).toBe(1);
    expect(problem.fatherMost.filter((most) => most < Infinity)).toEqual([4]);
  });

  it('takes no flower for certain', () => {
    const sure = questionOf({ pair: () => 1 - 1e-17, draws: 1 });
    const { problem } = problemOf(offers, pollens, sources, sure, {});
    expect(problem.sources[0]!.miss[0]).toBe(1e-12);
  });
});
