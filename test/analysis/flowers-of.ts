/** Flowers a test writes down: what it does not say is filled in. */

import { pairCoder } from '../../lib/analysis/flowers.ts';
import type { AgedFlower } from '../../lib/analysis/within-between.ts';

/** Flowers with known ages, pair codes handed out in their order. */
export function flowersOf(flowers: readonly Partial<AgedFlower>[]): AgedFlower[] {
  const pairOf = pairCoder();
  return flowers.map((flower, i) => {
    const seedParent = flower.seedParent ?? 'Lantern Creek';
    const pollenParent = flower.pollenParent ?? 'Salt Moon';
    return {
      crossId: String(i + 1),
      storage: 'fresh',
      ageDays: 0,
      fruit: 1,
      vial: null,
      morning: '2025-06-20',
      season: '2025',
      grower: null,
      ...flower,
      seedParent,
      pollenParent,
      pair: pairOf(seedParent, pollenParent),
    };
  });
}

const PLANTS = ['Ash Lantern', 'Blue Hour', 'Cold Ember', 'Dusk Anchor'];

/** A made-up small season: 40 flowers of 12 pairs, half of them with frozen pollen of two vials a father. */
export function smallSeason(names: readonly string[] = PLANTS): AgedFlower[] {
  const rows = Array.from({ length: 40 }, (_, i): Partial<AgedFlower> => {
    const mother = i % 4;
    const father = (mother + 1 + (Math.floor(i / 4) % 3)) % 4;
    const frozen = i % 5 > 2 || i % 7 === 0;
    const lot = Math.floor(i / 20);
    return {
      seedParent: names[mother]!,
      pollenParent: names[father]!,
      ...(frozen
        ? { storage: 'frozen', vial: `${father} ${lot}`, ageDays: 60 + 150 * lot + 40 * father }
        : {}),
      morning: `2025-06-${10 + Math.floor(i / 8)}`,
      // Plant 3 never takes plant 0's pollen; otherwise two of three flowers take.
      fruit: (mother === 3 && father === 0) || i % 3 === 0 ? 0 : 1,
    };
  });
  return flowersOf(rows);
}
