import type { Cross, ExpectedFlowers, Season, Vial } from '../season/season.ts';
import { byCodePoint } from './flowers.ts';
import { namedGrowers } from './growers.ts';

/** A plant whose name stands in the rows of several growers, with the name by which it is told apart. */
export interface ToldApart {
  readonly name: string;
  /** Null for rows that name no grower. */
  readonly grower: string | null;
  readonly shownAs: string;
}

/** A plant's name in a vials or flowers file that could be of several growers: it is taken for a plant never seen. */
export interface UnplacedPlant {
  readonly name: string;
  readonly kind: 'vials' | 'flowers';
}

/** The growers of a season, and how their plants were told apart. */
export interface GrowersRecord {
  readonly names: readonly string[];
  readonly samePlants: boolean;
  readonly toldApart: readonly ToldApart[];
  readonly unplaced: readonly UnplacedPlant[];
}

/** Options of `plantsApart`: with `samePlants` a name means one plant, whoever grows it. */
export interface PlantsApartOptions {
  readonly samePlants?: boolean;
}

/** Whose a name is: the names by which each grower's plant (or vial) is shown, by grower. */
type Shown = ReadonlyMap<string, ReadonlyMap<string | null, string>>;

/** The growers in whose rows each name stands. */
function growersByName(crosses: readonly Cross[], namesOf: (cross: Cross) => readonly (string | null)[]) {
  const growers = new Map<string, Set<string | null>>();
  for (const cross of crosses) {
    for (const name of namesOf(cross)) {
      if (name !== null) growers.set(name, (growers.get(name) ?? new Set()).add(cross.grower));
    }
  }
  return growers;
}

/** Plant names that stand in the rows of several growers, in code-point order; none where fewer than two are named. */
export function sharedNames(crosses: readonly Cross[]): string[] {
  if (namedGrowers(crosses).length < 2) return [];
  const growers = growersByName(crosses, ({ seedParent, pollenParent }) => [seedParent, pollenParent]);
  const shared = [...growers].filter(([, owners]) => owners.size > 1);
  return shared.map(([name]) => name).sort(byCodePoint);
}

/** A name that no other has: further strokes are added until it is. */
function unlike(taken: ReadonlySet<string>, wanted: string): string {
  return taken.has(wanted) ? unlike(taken, `${wanted}′`) : wanted;
}

function shownNames(growers: ReadonlyMap<string, ReadonlySet<string | null>>): Shown {
  const taken = new Set(growers.keys());
  const shown = new Map<string, ReadonlyMap<string | null, string>>();
  for (const [name, owners] of growers) {
    if (owners.size < 2) continue;
    const label = (grower: string | null) => (grower === null ? name : unlike(taken, `${name} (${grower})`));
    shown.set(name, new Map([...owners].map((grower) => [grower, label(grower)])));
  }
  return shown;
}

function shownAs(shown: Shown, name: string | null, grower: string | null): string | null {
  return name === null ? null : (shown.get(name)?.get(grower) ?? name);
}

function toldCrosses(crosses: readonly Cross[], plants: Shown, vials: Shown): Cross[] {
  return crosses.map((cross) => ({
    ...cross,
    seedParent: shownAs(plants, cross.seedParent, cross.grower)!,
    pollenParent: shownAs(plants, cross.pollenParent, cross.grower),
    vial: shownAs(vials, cross.vial, cross.grower),
  }));
}

/** A registered vial is of the one grower who used it; of none where nobody or several did. */
function toldVial(vial: Vial, crosses: readonly Cross[], plants: Shown): Vial | null {
  if (!plants.has(vial.pollenParent)) return vial;
  const users = new Set(crosses.filter((cross) => cross.vial === vial.vial).map(({ grower }) => grower));
  const [user] = users;
  if (user === undefined || users.size > 1) return null;
  return { ...vial, pollenParent: shownAs(plants, vial.pollenParent, user)! };
}

/** What vials and expected flowers name, as far as it can be placed. */
function toldFiles({ vials, flowers, crosses }: Season, plants: Shown) {
  const placed = vials.map((vial) => toldVial(vial, crosses, plants));
  const unplaced: UnplacedPlant[] = [
    ...vials
      .filter((_, i) => placed[i] === null)
      .map(({ pollenParent }): UnplacedPlant => ({ name: pollenParent, kind: 'vials' })),
    ...flowers
      .filter(({ seedParent }: ExpectedFlowers) => plants.has(seedParent))
      .map(({ seedParent }): UnplacedPlant => ({ name: seedParent, kind: 'flowers' })),
  ];
  const once = unplaced.filter(
    ({ name, kind }, i) => unplaced.findIndex((other) => other.name === name && other.kind === kind) === i,
  );
  return { vials: vials.map((vial, i) => placed[i] ?? vial), unplaced: once };
}

function toldApart(plants: Shown): ToldApart[] {
  return [...plants]
    .flatMap(([name, byGrower]) => [...byGrower].map(([grower, shown]) => ({ name, grower, shownAs: shown })))
    .sort((a, b) => byCodePoint(a.shownAs, b.shownAs));
}

/**
 * Plants told apart by their growers.
 *
 * Answers: which plants are there, where several growers' rows stand in one analysis? Plants of different growers that
 * have the same name are different plants unless it is said, so a name that stands in the rows of two growers or more
 * becomes "Name (Grower)" everywhere; a name that only one grower has stays as it is. A vial that two growers name and
 * no vials file holds is two vials. A vials file's plant is of the grower who used the vial; a flowers file may write
 * "Name (Grower)" itself. What cannot be placed keeps its name, counts as a plant never seen, and is in `unplaced`.
 *
 * @param season the season as read
 * @param options `samePlants`, false by default: a name is one plant, whoever grows it
 * @returns the season with names told apart, and the record of it
 * @example
 * plantsApart(season).growers.toldApart; // [{ name: 'Salt Moon', grower: 'Ina', shownAs: 'Salt Moon (Ina)' }, …]
 */
export function plantsApart(
  season: Season,
  { samePlants = false }: PlantsApartOptions = {},
): { readonly season: Season; readonly growers: GrowersRecord } {
  const names = namedGrowers(season.crosses).sort(byCodePoint);
  if (names.length < 2 || samePlants) {
    return { season, growers: { names, samePlants, toldApart: [], unplaced: [] } };
  }
  const { crosses } = season;
  const plants = shownNames(
    growersByName(crosses, ({ seedParent, pollenParent }) => [seedParent, pollenParent]),
  );
  const registered = new Set(season.vials.map(({ vial }) => vial));
  const vials = shownNames(
    growersByName(crosses, ({ vial }) => (vial !== null && registered.has(vial) ? [] : [vial])),
  );
  const { vials: placedVials, unplaced } = toldFiles(season, plants);
  return {
    season: { ...season, crosses: toldCrosses(crosses, plants, vials), vials: placedVials },
    growers: { names, samePlants, toldApart: toldApart(plants), unplaced },
  };
}
