import { describe, expect, it } from 'vitest';
import { mixTeller } from '../../lib/decisions/mix.ts';
import { problemOf } from '../../lib/decisions/plan-problem.ts';
import type { PlanQuestion } from '../../lib/decisions/plan-sources.ts';
import { plannedSources, storedPollens } from '../../lib/decisions/plan-sources.ts';
import type { FakeRates } from '../analysis/fake-predictor.ts';
import { offer, questionOf, vialOf } from './planned.ts';

/** A mix of one cross alone. */
function told(flowers: number, question: PlanQuestion) {
  const offers = [offer('Ash Lantern', flowers)];
  const { pollens } = storedPollens([vialOf('V1', 'Blue Hour', { dosesLeft: flowers })], question);
  const sources = plannedSources(offers, pollens, () => false);
  const { problem } = problemOf(offers, pollens, sources, question, {});
  const tell = mixTeller(sources, problem, question, null);
  return tell({ counts: Int32Array.of(flowers), fruits: 0, varieties: 0, within: 0 });
}

const many = (rates: FakeRates) => questionOf({ draws: 2000, ...rates });

describe('mixTeller', () => {
  it('gives the range of fruits of a binomial where nothing else varies', () => {
    // R 4.2: qbinom(c(0.1, 0.9), 20, 0.35) is 4 and 10.
    expect(told(20, many({ pair: () => 0.35 })).fruits).toEqual({ percentile10: 4, percentile90: 10 });
  });

  it('widens it by what is not known of the pair', () => {
    // Half 0.1, half 0.9 of 20: the 10th percentile lies in the lower half, at qbinom(0.2, 20, 0.1) = 1; the 90th at 19.
    const mixed = Array.from({ length: 2000 }, (_, k) => (Math.floor(k / 4) % 2 === 0 ? 0.1 : 0.9));
    expect(told(20, questionOf({ draws: 2000, pair: () => mixed })).fruits).toEqual({
      percentile10: 1,
      percentile90: 19,
    });
  });

  it('widens it by what a whole season shares', () => {
    const alone = told(100, many({ pair: () => 0.5, occasion: 1 })).fruits;
    const shared = told(100, many({ pair: () => 0.5, occasion: 1, season: 1 })).fruits;
    // Binomial: 44 to 56 (R 4.2, qbinom(c(0.1, 0.9), 100, 0.5)). Shared: 100 × plogis(±1.2816) is 22 to 78, and luck.
    expect(alone.percentile90 - alone.percentile10).toBeLessThan(16);
    expect(shared.percentile10).toBeGreaterThan(16);
    expect(shared.percentile10).toBeLessThan(28);
    expect(shared.percentile90).toBeGreaterThan(72);
    expect(shared.percentile90).toBeLessThan(84);
  });

  it('says the same of the same mix again', () => {
    const question = many({ pair: () => 0.4, occasion: 1, season: 0.5 });
    expect(told(30, question)).toEqual(told(30, question));
  });
});
