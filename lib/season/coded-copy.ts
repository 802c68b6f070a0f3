/** A season under codes instead of names, with fictitious dates: what a grower can share. */

import { type CodedKind, type CodeKey, withCodes } from './code-key.ts';
import { dateShift, isFitShift } from './date-shift.ts';
import { addDays, latestDate } from './dates.ts';
import type { Cross, ExpectedFlowers, Season, Vial } from './season.ts';
import { STORAGES } from './values.ts';

/** How much a coded copy shows: codes for names, or nothing about single plants either. */
export type CodedLevel = 'codes' | 'summary';

/** What a result of a coded copy says of itself: how much it shows, and how many rows a fault kept out of it. */
export interface CodedRecord {
  readonly level: CodedLevel;
  readonly rowsLeftOut: number;
}

/** What a coded copy holds; its records are as the files will be read. */
export interface CodedCopy {
  readonly season: Pick<Season, 'crosses' | 'vials' | 'flowers' | 'asOf'>;
  /** The key with the codes of every name of this season. */
  readonly key: CodeKey;
}

const present = <T>(values: Iterable<T | null>): T[] => [...values].filter((value) => value !== null);

/** Every date of the records. */
export function datesOf({ crosses, vials, flowers, asOf }: Season): string[] {
  return present([
    asOf,
    ...crosses.flatMap((cross) => [
      cross.pollinationDate,
      cross.pollenCollected,
      cross.checkedOn,
      cross.harvestedOn,
    ]),
    ...vials.map(({ collected }) => collected),
    ...flowers.flatMap(({ opensFrom, opensTo }) => [opensFrom, opensTo]),
  ]);
}

/** Storage methods by the grower's own words; the known four are nobody's secret. */
function ownMethod(storage: string | null): string | null {
  return storage === null || [...STORAGES.values()].some((known) => known === storage) ? null : storage;
}

/** A number of one or two digits tells nothing of anybody. */
function ownWave(wave: string | null): string | null {
  return wave === null || /^\d{1,2}$/.test(wave) ? null : wave;
}

/** A vials or flowers file may name a plant as "Name (Grower)" where two growers have plants of that name. */
function splitName(
  name: string,
  plants: ReadonlySet<string>,
  growers: ReadonlySet<string>,
): readonly [string, string] | null {
  if (plants.has(name)) return null;
  for (let at = name.lastIndexOf(' ('); at > 0; at = name.lastIndexOf(' (', at - 1)) {
    const [plant, grower] = [name.slice(0, at), name.slice(at + 2, -1)];
    if (name.endsWith(')') && plants.has(plant) && growers.has(grower)) return [plant, grower];
  }
  return null;
}

/** The names of one season by kind, those whose codes follow their dates in the order of these. */
export function namesOf({ crosses, vials, flowers }: Season): Readonly<Record<CodedKind, readonly string[]>> {
  const dated = [...crosses].sort((a, b) =>
    a.pollinationDate < b.pollinationDate ? -1 : a.pollinationDate > b.pollinationDate ? 1 : 0,
  );
  const growers = present(crosses.map(({ grower }) => grower));
  const crossed = present(crosses.flatMap(({ seedParent, pollenParent }) => [seedParent, pollenParent]));
  const known = [new Set(crossed), new Set(growers)] as const;
  const others = [
    ...vials.map(({ pollenParent }) => pollenParent),
    ...flowers.map(({ seedParent }) => seedParent),
  ];
  return {
    plants: [...crossed, ...others.filter((name) => splitName(name, ...known) === null)],
    vials: present([...vials.map(({ vial }) => vial), ...crosses.map(({ vial }) => vial)]),
    tags: crosses.map(({ crossId }) => crossId),
    growers,
    seasons: dated.map(({ season }) => season),
    waves: present(dated.map(({ wave }) => ownWave(wave))),
    methods: present([...dated, ...vials].map(({ storage }) => ownMethod(storage))),
  };
}

/** The key with a code for each name of the season and a shift for its dates. */
function extended(given: CodeKey, season: Season): CodeKey {
  const names = namesOf(season);
  const avoid = new Set(
    Object.values(names)
      .flat()
      .map((name) => name.toLowerCase()),
  );
  let key = given;
  for (const kind of Object.keys(names) as CodedKind[]) {
    const inOrder = kind === 'seasons' || kind === 'waves' || kind === 'methods';
    key = withCodes(key, kind, names[kind], { avoid, inOrder });
  }
  const dates = datesOf(season);
  const last = latestDate(season.crosses.map(({ pollinationDate }) => pollinationDate));
  const shiftDays = key.shiftDays ?? dateShift(key, dates, last);
  if (shiftDays === null || !isFitShift(dates, shiftDays)) {
    throw new RangeError('codedCopy: the dates of season must lie close enough together to be moved');
  }
  return { ...key, shiftDays };
}

/** Puts codes and moved dates into records. */
class Coder {
  readonly #key: CodeKey;
  readonly #plants: ReadonlySet<string>;
  readonly #growers: ReadonlySet<string>;

  constructor(key: CodeKey, season: Season) {
    this.#key = key;
    this.#plants = new Set(
      present(season.crosses.flatMap(({ seedParent, pollenParent }) => [seedParent, pollenParent])),
    );
    this.#growers = new Set(present(season.crosses.map(({ grower }) => grower)));
  }

  of<T extends string | null>(kind: CodedKind, name: T): T {
    return (name === null ? null : (this.#key.codes[kind].get(name) ?? name)) as T;
  }

  plant<T extends string | null>(name: T): T {
    const parts = name === null ? null : splitName(name, this.#plants, this.#growers);
    if (parts === null) return this.of('plants', name);
    return `${this.of('plants', parts[0])} (${this.of('growers', parts[1])})` as T;
  }

  date<T extends string | null>(date: T): T {
    return (date === null ? null : addDays(date, this.#key.shiftDays!)) as T;
  }

  cross(cross: Cross): Cross {
    return {
      ...cross,
      crossId: this.of('tags', cross.crossId),
      pollinationDate: this.date(cross.pollinationDate),
      season: this.of('seasons', cross.season),
      seedParent: this.plant(cross.seedParent),
      pollenParent: this.plant(cross.pollenParent),
      storage: this.of('methods', cross.storage),
      pollenCollected: this.date(cross.pollenCollected),
      vial: this.of('vials', cross.vial),
      grower: this.of('growers', cross.grower),
      wave: this.of('waves', cross.wave),
      checkedOn: this.date(cross.checkedOn),
      harvestedOn: this.date(cross.harvestedOn),
      identifiedBy: null,
      note: null,
    };
  }

  vial(vial: Vial): Vial {
    return {
      ...vial,
      vial: this.of('vials', vial.vial),
      pollenParent: this.plant(vial.pollenParent),
      collected: this.date(vial.collected),
      storage: this.of('methods', vial.storage),
      note: null,
    };
  }

  flowers(flowers: ExpectedFlowers): ExpectedFlowers {
    return {
      ...flowers,
      seedParent: this.plant(flowers.seedParent),
      opensFrom: this.date(flowers.opensFrom),
      opensTo: this.date(flowers.opensTo),
    };
  }
}

/** Records in the order of a date, then of a code: the order of the grower's file tells nothing any more. */
function sorted<T>(records: readonly T[], orderOf: (record: T) => string): T[] {
  return [...records].sort((a, b) => (orderOf(a) < orderOf(b) ? -1 : orderOf(a) > orderOf(b) ? 1 : 0));
}

/** The code of a plant, one told apart as "Name (Grower)" among them; a name that the key does not know stays. */
export function codedPlant(name: string, { codes }: CodeKey): string {
  const parts = splitName(name, new Set(codes.plants.keys()), new Set(codes.growers.keys()));
  if (parts === null) return codes.plants.get(name) ?? name;
  return `${codes.plants.get(parts[0])} (${codes.growers.get(parts[1])})`;
}

/**
 * A season under codes, fit for sharing.
 *
 * Answers: what can a fellow grower be given who shall learn from the counts but not from whom, where and when they are?
 * Plants, vials, tags, growers, seasons, waves and the grower's own words for storage become codes; every date is moved
 * by the same secret number of days, which keeps mornings, ages and the order of seasons; notes, `identified_by` and
 * columns that are not ours go. Counts, weights, outcomes and the four known storage words stay. Not safe from somebody
 * who holds the original file, or knows exactly what was pollinated on which days: patterns stay as they were.
 *
 * @param season as `readSeason` gives it; rows left out for a fault are not in it
 * @param key of this grower's copies; `newCodeKey` makes the first
 * @returns records under codes and the key to keep apart from them
 * @throws RangeError where the dates lie too far apart to be moved, or too far from those that the key was made for
 * @example
 * codedCopy(season, newCodeKey(secret)).season.crosses[0].seedParent; // 'P07'
 */
export function codedCopy(season: Season, key: CodeKey): CodedCopy {
  const full = extended(key, season);
  const coder = new Coder(full, season);
  return {
    key: full,
    season: {
      crosses: sorted(
        season.crosses.map((cross) => coder.cross(cross)),
        ({ pollinationDate, crossId }) => `${pollinationDate} ${crossId}`,
      ),
      vials: sorted(
        season.vials.map((vial) => coder.vial(vial)),
        ({ vial }) => vial,
      ),
      flowers: sorted(
        season.flowers.map((each) => coder.flowers(each)),
        ({ seedParent, opensFrom }) => `${seedParent} ${opensFrom}`,
      ),
      asOf: coder.date(season.asOf),
    },
  };
}
