import { describe, expect, it } from 'vitest';
import { dayOf, nameFreeRanks } from '../../lib/analysis/name-free-order.ts';
import { flowersOf, smallSeason } from './flowers-of.ts';

const NAMES = ['Ash Lantern', 'Blue Hour', 'Cold Ember', 'Dusk Anchor'];

describe('nameFreeRanks', () => {
  const { plants, vials } = nameFreeRanks(smallSeason(NAMES));

  it('gives each name one rank from 0', () => {
    expect([...plants.values()].sort()).toEqual([0, 1, 2, 3]);
    expect([...vials.values()].sort()).toEqual([...vials.values()].map((_, i) => i));
  });

  it('gives a plant the same rank whatever it and the others are called', () => {
    for (const renamed of [
      ['Z', 'Y', 'X', 'W'],
      ['b', 'd', '__proto__', 'constructor'],
      ['2', '10', '1', '20'],
    ]) {
      const other = nameFreeRanks(smallSeason(renamed));
      expect(renamed.map((name) => other.plants.get(name))).toEqual(NAMES.map((name) => plants.get(name)));
      expect(other.vials).toEqual(vials);
    }
  });

  it('does not look at the order of the flowers', () => {
    const turned = nameFreeRanks(smallSeason(NAMES).reverse());
    expect(new Map([...turned.plants].sort())).toEqual(new Map([...plants].sort()));
  });

  it('tells plants apart by whom they were crossed with, where their own flowers look alike', () => {
    // A and B have one fresh fruit each on the same day; the father of A gave two more elsewhere. By hand: with names swapped the
    // ranks follow the plant and not the name.
    const season = (first: string, second: string) =>
      flowersOf([
        { seedParent: first, pollenParent: 'F' },
        { seedParent: second, pollenParent: 'G' },
        { seedParent: 'M', pollenParent: 'F', morning: '2025-06-22', fruit: 0 },
      ]);
    const one = nameFreeRanks(season('A', 'B')).plants;
    const other = nameFreeRanks(season('B', 'A')).plants;
    expect(other.get('B')).toBe(one.get('A'));
    expect(other.get('A')).toBe(one.get('B'));
    expect(one.get('A')).not.toBe(one.get('B'));
  });

  it('lets names decide between plants that nothing else tells apart', () => {
    const twins = flowersOf([
      { seedParent: 'B', pollenParent: 'F' },
      { seedParent: 'A', pollenParent: 'F' },
    ]);
    const ranks = nameFreeRanks(twins).plants;
    expect(ranks.get('A')! + 1).toBe(ranks.get('B')!);
  });

  it('tells growers apart by their flowers, and the same day with another grower is the same day', () => {
    const season = (a: string, b: string) =>
      flowersOf([
        { grower: a, morning: `2025-06-20 ${a}`, fruit: 1 },
        { grower: b, morning: `2025-06-20 ${b}`, fruit: 0 },
      ]);
    const one = nameFreeRanks(season('Ida', 'Orla')).growers;
    const other = nameFreeRanks(season('Orla', 'Ida')).growers;
    expect([one.get('Ida'), one.get('Orla')]).toEqual([other.get('Orla'), other.get('Ida')]);
    expect(dayOf('2025-06-20 Ida')).toBe('2025-06-20');
  });

  it('is empty for no flowers', () => {
    expect(nameFreeRanks([])).toEqual({ plants: new Map(), vials: new Map(), growers: new Map() });
  });
});
