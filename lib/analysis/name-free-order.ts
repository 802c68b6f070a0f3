/**
 * An order of plants, vials and growers that follows from their flowers and not from their names, so that the random numbers of a
 * model, and with them its digits, stay the same when everything is called something else, as in a coded copy.
 *
 * Colour refinement (Weisfeiler & Leman 1968): what looks alike has one colour; what has flowers with differently coloured
 * partners comes to look different, round by round.
 */

import { byCodePoint } from './flowers.ts';
import type { AgedFlower } from './within-between.ts';

/** Names in their order: the first has rank 0. */
export type Ranks = ReadonlyMap<string, number>;

export interface NameFreeRanks {
  /** Seed and pollen parents together: a plant may be both. */
  readonly plants: Ranks;
  readonly vials: Ranks;
  readonly growers: Ranks;
}

/** Rounds at most; demonstrably different plants differ after two or three. */
const ROUNDS = 5;

type Kind = keyof NameFreeRanks;

/** One name in one role of one flower. */
interface Part {
  readonly kind: Kind;
  readonly role: 'seed' | 'pollen' | 'vial' | 'grower';
  readonly name: string | null;
}

/** Days of the calendar alone: behind the date stands a grower's name where there are several. */
export function dayOf(morning: string): string {
  return morning.slice(0, 10);
}

/** Names that cannot be told apart by their flowers follow their code points. */
export function nameFreeRanks(flowers: readonly AgedFlower[]): NameFreeRanks {
  const looks = denseRanks(flowers.map(lookOf));
  const parts = flowers.map(partsOf);
  let colours = new Map<Part['kind'], Map<string, number>>();
  let known = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const around = denseRanks(flowers.map((_, i) => surroundings(looks[i]!, parts[i]!, colours)));
    colours = recoloured(parts, around, colours);
    const found = [...colours.values()].reduce((sum, names) => sum + new Set(names.values()).size, 0);
    if (found === known) break;
    known = found;
  }
  const ranksOf = (kind: Kind): Ranks => ranked(colours.get(kind) ?? new Map());
  return { plants: ranksOf('plants'), vials: ranksOf('vials'), growers: ranksOf('growers') };
}

/** All that a flower says without a name. */
function lookOf({ storage, ageDays, fruit, morning, season }: AgedFlower): string {
  return JSON.stringify([season, dayOf(morning), storage, ageDays, fruit]);
}

function partsOf({ seedParent, pollenParent, vial, grower }: AgedFlower): readonly Part[] {
  return [
    { kind: 'plants', role: 'seed', name: seedParent },
    { kind: 'plants', role: 'pollen', name: pollenParent },
    { kind: 'vials', role: 'vial', name: vial },
    { kind: 'growers', role: 'grower', name: grower },
  ];
}

type Colours = ReadonlyMap<Kind, ReadonlyMap<string, number>>;

/** A flower by its look and the colours of all its parts. */
function surroundings(look: number, parts: readonly Part[], colours: Colours): string {
  const seen = parts.map(({ kind, name }) => (name === null ? -1 : (colours.get(kind)?.get(name) ?? 0)));
  return JSON.stringify([look, ...seen]);
}

/** A new colour for each name: its old one and the flowers it has in each role. */
function recoloured(
  parts: readonly (readonly Part[])[],
  around: readonly number[],
  colours: Colours,
): Map<Kind, Map<string, number>> {
  const flowersOf = new Map<Kind, Map<string, string[]>>();
  parts.forEach((names, i) => {
    for (const { kind, role, name } of names) {
      if (name === null) continue;
      const ofKind = flowersOf.get(kind) ?? new Map<string, string[]>();
      flowersOf.set(kind, ofKind);
      const own = ofKind.get(name);
      if (own) own.push(`${role} ${around[i]}`);
      else ofKind.set(name, [`${role} ${around[i]}`]);
    }
  });
  return new Map(
    [...flowersOf].map(([kind, ofKind]) => {
      const names = [...ofKind.keys()];
      const ranks = denseRanks(
        names.map((name) =>
          JSON.stringify([colours.get(kind)?.get(name) ?? 0, ...ofKind.get(name)!.sort(byCodePoint)]),
        ),
      );
      return [kind, new Map(names.map((name, i) => [name, ranks[i]!]))];
    }),
  );
}

/** The rank of each text among the different ones. */
function denseRanks(texts: readonly string[]): number[] {
  const ranks = new Map([...new Set(texts)].sort(byCodePoint).map((text, rank) => [text, rank]));
  return texts.map((text) => ranks.get(text)!);
}

function ranked(colours: ReadonlyMap<string, number>): Ranks {
  const names = [...colours.keys()].sort((a, b) => colours.get(a)! - colours.get(b)! || byCodePoint(a, b));
  return new Map(names.map((name, rank) => [name, rank]));
}
