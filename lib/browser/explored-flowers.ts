/** The flowers of the page to explore, as they lie in it: names once, a short row of numbers a flower. */

import type { Flower } from '../analysis/flowers.ts';
import { usedFlowers } from '../analysis/flowers.ts';
import type { Season } from '../season/season.ts';

/** What of a flower can be chosen, and whether it took. */
export type ExploredFlower = Pick<
  Flower,
  'storage' | 'ageDays' | 'season' | 'seedParent' | 'pollenParent' | 'fruit'
>;

const NAMED = ['storage', 'season', 'seedParent', 'pollenParent'] as const;

/** Names of each kind, and a row a flower: where its four names stand, its pollen's age in days, 1 for a fruit. */
interface Packed {
  readonly names: readonly (readonly string[])[];
  readonly rows: readonly (readonly (number | null)[])[];
}

/** The used flowers of a season as the text that `unpackFlowers` reads; controls, lost tags and young fruits are left out. */
export function packFlowers(season: Season): string {
  const places = NAMED.map(() => new Map<string, number>());
  const place = (kind: number, name: string): number => {
    const known = places[kind]!;
    if (!known.has(name)) known.set(name, known.size);
    return known.get(name)!;
  };
  const rows = usedFlowers(season).map((flower) => [
    ...NAMED.map((key, kind) => place(kind, flower[key])),
    flower.ageDays,
    flower.fruit,
  ]);
  const packed: Packed = { names: places.map((known) => [...known.keys()]), rows };
  return JSON.stringify(packed);
}

/** The flowers that `packFlowers` wrote, in their order. */
export function unpackFlowers(text: string): ExploredFlower[] {
  const { names, rows } = JSON.parse(text) as Packed;
  return rows.map((row) => {
    const [storage, season, seedParent, pollenParent] = names.map((list, kind) => list[row[kind]!]!);
    return {
      storage: storage!,
      season: season!,
      seedParent: seedParent!,
      pollenParent: pollenParent!,
      ageDays: row[4]!,
      fruit: row[5] === 1 ? 1 : 0,
    };
  });
}
