/**
 * One simulated grower's files, as a grower keeps them, with the truth behind them. What makes such files treacherous is in them:
 * stored pollen goes to pairs that are hard or do not flower together, and the older lots to the harder pairs; pairs of one to five
 * flowers; flowers of one morning share its luck; tags are lost; the last flowers are pending; incompatible pairs; control
 * flowers; lots never opened, lots of a plant that was never tried, lots without a number of doses.
 */

import type { RandomStream } from '../../lib/numerics/random.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { addDays, daysBetween } from '../../lib/season/dates.ts';
import type { GrowerTruth, Lot } from './grower-truth.ts';
import { FRESH_LIKING, growerTruth, HARDEST, OLD_FOR_HARD, together } from './grower-truth.ts';
import type { DrawNature, Nature } from './nature.ts';

export interface SimulatedGrower {
  readonly files: readonly { readonly name: string; readonly text: string }[];
  readonly truth: GrowerTruth;
  /** Every lot there ever was. */
  readonly lots: readonly Lot[];
}

const FIRST_YEAR = 2025;
/** Whose files are kept together: each has every second or third plant; pollen is swapped, plants are not. */
const GROWERS = ['Ina', 'Odo', 'Pell'];
const LOST_TAGS = 0.05;
const CONTROLS = 0.03;
/** A flower that got no pollen takes now and then all the same. */
const BACKGROUND = 0.02;
const WAVES = [
  { bloom: 'early', from: '06-10' },
  { bloom: 'late', from: '07-20' },
] as const;

interface Morning {
  readonly day: string;
  readonly season: string;
  readonly bloom: 'early' | 'late';
}

/** How a grower worked. */
interface Work {
  readonly plants: readonly string[];
  readonly mornings: readonly Morning[];
  readonly lots: readonly Lot[];
  readonly flowers: number;
}

function logistic(eta: number): number {
  return 1 / (1 + Math.exp(-eta));
}

function below(n: number, { uniform }: RandomStream): number {
  return Math.floor(uniform() * n);
}

/** 60 to 300 flowers on a plant for every 25 of them and four more, one to three seasons of two waves. */
function workOf(
  nature: Nature,
  random: RandomStream,
  truthOf: (plants: readonly string[]) => GrowerTruth,
): [Work, GrowerTruth] {
  const flowers = 60 + below(241, random);
  const plants = Array.from({ length: 4 + Math.round(flowers / 25) }, (_, i) => `Plant ${i + 1}`);
  const truth = truthOf(plants);
  const seasons = nature.together ? 2 : 1 + below(flowers > 120 ? 3 : 2, random);
  const mornings = Array.from({ length: seasons }, (_, s) =>
    WAVES.flatMap(({ bloom, from }) =>
      Array.from({ length: 3 + below(3, random) }, (_, m): Morning => {
        const season = String(FIRST_YEAR + s);
        return { day: addDays(`${season}-${from}`, m + below(2, random)), season, bloom };
      }),
    ),
  ).flat();
  return [{ plants, mornings, lots: lotsOf(plants, truth, seasons, random), flowers }, truth];
}

/** A plant's pollen is put away in some of its seasons, two before the first list of crosses among them. */
function lotsOf(plants: readonly string[], truth: GrowerTruth, seasons: number, random: RandomStream): Lot[] {
  const { uniform } = random;
  const refrigerates = uniform() < 0.25;
  return plants.flatMap((pollenParent) =>
    Array.from({ length: seasons + 2 }, (_, s): Lot[] => {
      if (uniform() >= (s < 2 ? 0.5 : 0.7)) return [];
      const late = truth.bloom(pollenParent) === 'late';
      const day = `${FIRST_YEAR - 2 + s}-${WAVES[late ? 1 : 0].from}`;
      const storage = refrigerates && uniform() < 0.3 ? 'refrigerated' : 'frozen';
      const vial = `V ${pollenParent.slice(6)}-${s}`;
      return [{ vial, pollenParent, storage, collected: addDays(day, below(4, random)) }];
    }).flat(),
  );
}

interface Pollination {
  readonly morning: Morning;
  readonly seedParent: string;
  readonly pollenParent: string;
  readonly lot: Lot | null;
}

/** Who gets what: the grower knows which pairs are hard. */
function pollinations({ plants, mornings, lots, flowers }: Work, truth: GrowerTruth, random: RandomStream) {
  const leaning = new Map<string, number>();
  const made: Pollination[] = [];
  for (let tries = 0; made.length < flowers && tries < 50 * flowers; tries += 1) {
    const morning = mornings[below(mornings.length, random)]!;
    const mother = below(plants.length, random);
    // A few fathers of choice for each mother, so that pairs come back.
    const father = (mother + 1 + below(Math.min(4, plants.length - 1), random)) % plants.length;
    const [seedParent, pollenParent] = [plants[mother]!, plants[father]!];
    const flowering = (plant: string) => together(truth.bloom(plant), morning.bloom);
    if (!flowering(seedParent)) continue;
    const ease = Math.max(HARDEST, truth.pair(seedParent, pollenParent) - truth.nature.intercept);
    const key = JSON.stringify([seedParent, pollenParent]);
    const leans = leaning.get(key) ?? random.normal();
    leaning.set(key, leans);
    const fresh = flowering(pollenParent) && random.uniform() < logistic(FRESH_LIKING + ease + leans);
    const lot = fresh ? null : chosenLot(lots, pollenParent, morning.day, ease, random);
    if (fresh || lot !== null) made.push({ morning, seedParent, pollenParent, lot });
  }
  return made.sort((a, b) => (a.morning.day < b.morning.day ? -1 : a.morning.day > b.morning.day ? 1 : 0));
}

/** One of the lots there are, the older the likelier the harder the pair; the newest may stay unopened. */
function chosenLot(
  lots: readonly Lot[],
  pollenParent: string,
  day: string,
  ease: number,
  random: RandomStream,
): Lot | null {
  const own = lots.filter((lot) => lot.pollenParent === pollenParent && daysBetween(lot.collected, day) > 0);
  if (own.length === 0) return null;
  const weights = own.map((_, rank) => Math.exp(OLD_FOR_HARD * ease * rank));
  let at = random.uniform() * weights.reduce((sum, weight) => sum + weight, 0);
  const index = weights.findIndex((weight) => {
    at -= weight;
    return at < 0;
  });
  return own[index < 0 ? own.length - 1 : index]!;
}

function crossesFile(work: Work, truth: GrowerTruth, random: RandomStream): string {
  const { uniform } = random;
  const made = pollinations(work, truth, random);
  const last = made.at(-1)!.morning.day;
  const rows = made.map(({ morning, seedParent, pollenParent, lot }, i) => {
    const pollen = lot && { lot, ageDays: daysBetween(lot.collected, morning.day) };
    const kind = uniform();
    const grower = truth.grower(seedParent);
    const start = `${i + 1},${morning.day},${seedParent}`;
    const end = grower === null ? '' : `,${grower}`;
    if (kind < CONTROLS / 2)
      return `${start},,,,${uniform() < BACKGROUND ? 'fruit' : 'none'},unpollinated${end}`;
    if (kind < CONTROLS) return `${start},${seedParent},fresh,,none,selfed${end}`;
    const eta =
      truth.pair(seedParent, pollenParent) +
      truth.pollen(pollen) +
      truth.hands(seedParent) +
      truth.occasion(grower === null ? morning.day : `${morning.day} ${grower}`, morning.season);
    const took = uniform() < logistic(eta);
    const lost = uniform() < LOST_TAGS;
    const early = morning.day === last && uniform() < 0.3;
    const outcome = lost ? 'unknown' : early ? 'pending' : took ? 'fruit' : 'none';
    return `${start},${pollenParent},${lot?.storage ?? 'fresh'},${lot?.vial ?? ''},${outcome},${end}`;
  });
  const several = truth.nature.together ? ',grower' : '';
  return [
    `cross_id,pollination_date,seed_parent,pollen_parent,storage,vial,outcome,control${several}`,
    ...rows,
    '',
  ].join('\n');
}

function vialsFile(lots: readonly Lot[], random: RandomStream): string {
  const rows = lots.map(({ vial, pollenParent, collected, storage }) => {
    const doses = random.uniform() < 0.15 ? '' : 2 + below(7, random);
    return `${vial},${pollenParent},${collected},${storage},${doses}`;
  });
  return ['vial,pollen_parent,collected,storage,doses_left', ...rows, ''].join('\n');
}

/** Next season is expected to offer about as many flowers as a season did, on four plants in five. */
function flowersFile({ plants, mornings, flowers }: Work, truth: GrowerTruth, random: RandomStream): string {
  const seasons = new Set(mornings.map(({ season }) => season)).size;
  const each = flowers / seasons / (0.8 * plants.length);
  const year = Number(mornings.at(-1)!.season) + 1;
  const rows = plants.flatMap((plant, i) => {
    if (i > 1 && random.uniform() < 0.2) return [];
    const bloom = truth.bloom(plant);
    const opens = {
      early: `${year}-06-08,${year}-06-18`,
      late: `${year}-07-18,${year}-07-28`,
      both: ',',
    }[bloom];
    return [`${plant},${Math.max(1, Math.round(each * (0.5 + random.uniform())))},${opens}`];
  });
  return ['seed_parent,flowers,opens_from,opens_to', ...rows, ''].join('\n');
}

/**
 * A grower of a kind.
 *
 * @param seed a whole number: the same gives the same grower everywhere
 */
export function simulatedGrower(drawNature: DrawNature, seed: number): SimulatedGrower {
  const random = randomStream(seed);
  const nature = drawNature(random);
  // One grower in three keeps a lot of a plant that stands in no list of crosses.
  const stranger = random.uniform() < 1 / 3 ? ['Plant 99'] : [];
  const growers = nature.together ? GROWERS.slice(0, 2 + below(2, random)) : [];
  const [work, truth] = workOf(nature, random, (plants) =>
    growerTruth(nature, [...plants, ...stranger], growers, random),
  );
  const more = lotsOf(stranger, truth, 1, random);
  const lots = [...work.lots, ...more];
  return {
    files: [
      { name: 'crosses.csv', text: crossesFile(work, truth, random) },
      { name: 'vials.csv', text: vialsFile(lots, random) },
      { name: 'flowers.csv', text: flowersFile(work, truth, random) },
    ],
    truth,
    lots,
  };
}
