/** Mornings on which two plants flower together: fresh pollen is there only where a flower of its plant opens too. */

/** One flower that is expected to open. */
export interface OpeningFlower {
  readonly plant: string;
  /** The plant whose fresh pollen it is to get; null where it needs none that morning. */
  readonly pollenOf: string | null;
  /** First and last day on which it may open, as numbers of days; infinite where open. */
  readonly from: number;
  readonly to: number;
  /** The day on which it would open by itself; null where nothing is known of when. */
  readonly day: number | null;
}

/** A flower's day, and whether a flower of its pollen's plant opens on it. */
export interface MeetingDay {
  readonly day: number | null;
  readonly meets: boolean;
}

/** Flowers that open on the same morning. */
interface Morning {
  readonly flowers: ReadonlySet<number>;
  readonly from: number;
  readonly to: number;
  readonly day: number | null;
}

/** A morning that two could become, and how far that is from what was expected. */
interface Joined {
  readonly morning: Morning;
  readonly cost: number;
}

/** A flower that would still lack its pollen weighs as much as so many days: chains of plants would make few, crowded mornings. */
const LACKING = 3;

/**
 * Days for flowers, each within its own, so that flowers which are to get fresh pollen open with one of its plant.
 *
 * Answers: on which mornings can these crosses be made? Starts from the day on which each flower would open by itself and
 * joins mornings, the nearest that have what is lacking first: no join takes from a flower what it had. Not a proof: where it
 * says that a flower does not meet its pollen, another order might have found a morning for it at another's cost.
 *
 * @param flowers every flower that is expected, of fathers as well; of a plant with none it is not known when it flowers, so it
 *   counts as there
 * @returns one entry a flower, in their order
 */
export function meetingDays(flowers: readonly OpeningFlower[]): MeetingDay[] {
  const byPlant = placesByPlant(flowers);
  const mornings: Morning[] = flowers.map(({ from, to, day }, at) => ({
    flowers: new Set([at]),
    from,
    to,
    day,
  }));
  const needs = ({ pollenOf, day }: OpeningFlower) =>
    pollenOf !== null && day !== null && byPlant.has(pollenOf);
  const lacks = (at: number, { flowers: there }: Pick<Morning, 'flowers'>): boolean =>
    needs(flowers[at]!) && ![...there].some((other) => flowers[other]!.plant === flowers[at]!.pollenOf);
  const lackingIn = (morning: Morning) => [...morning.flowers].filter((at) => lacks(at, morning)).length;
  const put = (morning: Morning) => {
    for (const at of morning.flowers) mornings[at] = morning;
  };
  for (const at of bySlack(flowers)) {
    if (!lacks(at, mornings[at]!)) continue;
    const partners = byPlant.get(flowers[at]!.pollenOf!)!;
    const joins = partners.flatMap((other) => joined(mornings[at]!, mornings[other]!, lackingIn) ?? []);
    const [first, ...others] = joins;
    if (first === undefined) continue;
    put(others.reduce((best, next) => (next.cost < best.cost ? next : best), first).morning);
  }
  return flowers.map((_, at) => ({ day: mornings[at]!.day, meets: !lacks(at, mornings[at]!) }));
}

function placesByPlant(flowers: readonly OpeningFlower[]): ReadonlyMap<string, readonly number[]> {
  const byPlant = new Map<string, number[]>();
  for (const [at, { plant }] of flowers.entries()) {
    const places = byPlant.get(plant);
    if (places === undefined) byPlant.set(plant, [at]);
    else places.push(at);
  }
  return byPlant;
}

/** Flowers with the least choice of days first. */
function bySlack(flowers: readonly OpeningFlower[]): number[] {
  const slack = ({ from, to }: OpeningFlower) => Math.min(to - from, Number.MAX_VALUE);
  return [...flowers.keys()].sort((a, b) => {
    const [one, two] = [flowers[a]!, flowers[b]!];
    return slack(one) - slack(two) || (one.day ?? 0) - (two.day ?? 0) || a - b;
  });
}

/** Two mornings as one; null where no day suits all their flowers. */
function joined(a: Morning, b: Morning, lackingIn: (morning: Morning) => number): Joined | null {
  const from = Math.max(a.from, b.from);
  const to = Math.min(a.to, b.to);
  if (from > to) return null;
  const dated = [a, b].filter((one): one is Morning & { day: number } => one.day !== null);
  const size = dated.reduce((sum, one) => sum + one.flowers.size, 0);
  const wanted = dated.reduce((sum, one) => sum + one.flowers.size * one.day, 0) / size;
  const day = Math.min(Math.max(Math.round(wanted), from), to);
  const morning = { flowers: new Set([...a.flowers, ...b.flowers]), from, to, day };
  const moved = dated.reduce((sum, one) => sum + one.flowers.size * Math.abs(day - one.day), 0);
  return { morning, cost: moved + LACKING * lackingIn(morning) + morning.flowers.size };
}
