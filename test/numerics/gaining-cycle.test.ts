import { describe, expect, it } from 'vitest';
import { bestGains, gainingCycle } from '../../lib/numerics/gaining-cycle.ts';
import { randomStream } from '../../lib/numerics/random.ts';

const NONE = Number.NEGATIVE_INFINITY;
const LEAST = 1e-12;

function gainOf(gains: Float64Array, n: number, cycle: readonly number[]): number {
  return cycle.reduce((sum, node, at) => sum + gains[node * n + cycle[(at + 1) % cycle.length]!]!, 0);
}

/** The best gain of all simple cycles, by following every way. */
function bestCycle(gains: Float64Array, n: number): number {
  let best = NONE;
  const follow = (start: number, node: number, seen: ReadonlySet<number>, gain: number): void => {
    best = Math.max(best, gain + gains[node * n + start]!);
    for (let next = start + 1; next < n; next += 1) {
      if (seen.has(next) || gains[node * n + next]! === NONE) continue;
      follow(start, next, new Set([...seen, next]), gain + gains[node * n + next]!);
    }
  };
  for (let start = 0; start < n; start += 1) follow(start, start, new Set([start]), 0);
  return best;
}

function randomGraph(seed: number): { gains: Float64Array; n: number } {
  const random = randomStream(seed);
  const n = 2 + Math.floor(random.uniform() * 4);
  const shift = random.uniform() - 0.8;
  const gains = Float64Array.from({ length: n * n }, () =>
    random.uniform() < 0.5 ? NONE : random.uniform() - 0.5 + shift,
  );
  return { gains, n };
}

describe('gainingCycle', () => {
  it('finds a cycle that gains exactly where one of all cycles does', () => {
    let found = 0;
    for (let seed = 1; seed <= 300; seed += 1) {
      const { gains, n } = randomGraph(seed);
      const cycle = gainingCycle(gains, n, LEAST);
      expect(cycle !== null).toBe(bestCycle(gains, n) > n * LEAST);
      if (cycle === null) continue;
      found += 1;
      expect(new Set(cycle).size).toBe(cycle.length);
      expect(gainOf(gains, n, cycle)).toBeGreaterThan(0);
    }
    // Both kinds of graph are among them.
    expect(found).toBeGreaterThan(50);
    expect(found).toBeLessThan(250);
  });

  it('takes a step from a node to itself for a cycle', () => {
    expect(gainingCycle(Float64Array.of(0.5, NONE, NONE, NONE), 2, LEAST)).toEqual([0]);
  });

  it('finds none where gains and losses cancel', () => {
    expect(gainingCycle(Float64Array.of(NONE, 2, -2, NONE), 2, LEAST)).toBeNull();
  });
});

describe('bestGains', () => {
  it('gives the best way to each node, and none where none leads', () => {
    // 0 → 1 gains 1, 1 → 2 loses 3, 0 → 2 loses 5; nothing leads to 3. Exact arithmetic.
    const gains = new Float64Array(16).fill(NONE);
    gains[1] = 1;
    gains[6] = -3;
    gains[2] = -5;
    expect([...bestGains(gains, 4, 0, LEAST)]).toEqual([0, 1, -2, NONE]);
  });
});
