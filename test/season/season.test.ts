import { describe, expect, it } from 'vitest';
import { fruitAt, type Outcome, recordsHarvests } from '../../lib/season/season.ts';
import { seasonOf } from '../season-of.ts';

const cross = (outcome: Outcome, harvestedOn: string | null = null) =>
  seasonOf([{ outcome, harvestedOn }]).crosses[0];

describe('fruitAt', () => {
  // Definitions: fruits at the check ÷ flowers pollinated; fruits harvested ÷ flowers pollinated.
  it.each([
    ['fruit', 1, 1],
    ['dropped', 1, 0],
    ['none', 0, 0],
    ['unknown', null, null],
    ['pending', null, null],
  ] as const)('counts %s as %s at first and %s in the end', (outcome, initial, final) => {
    expect(fruitAt(cross(outcome), 'initial', false)).toBe(initial);
    expect(fruitAt(cross(outcome), 'final', false)).toBe(final);
  });

  it('waits for the harvest of a fruit where harvests are recorded', () => {
    expect(fruitAt(cross('fruit'), 'final', true)).toBeNull();
    expect(fruitAt(cross('fruit', '2025-08-20'), 'final', true)).toBe(1);
    expect(fruitAt(cross('dropped'), 'final', true)).toBe(0);
    expect(fruitAt(cross('fruit'), 'initial', true)).toBe(1);
  });
});

describe('recordsHarvests', () => {
  it('is so once any flower has a harvest date', () => {
    expect(recordsHarvests([cross('fruit'), cross('none')])).toBe(false);
    expect(recordsHarvests([cross('none'), cross('fruit', '2025-08-20')])).toBe(true);
  });
});
