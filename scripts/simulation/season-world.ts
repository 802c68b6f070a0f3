/** Seasons drawn from a stated world: parameters first, then flowers, so that the truth behind them is known. */

import type { AgeScale } from '../../lib/analysis/models.ts';
import type { NormalPrior, Priors } from '../../lib/analysis/priors.ts';
import { ageTerm } from '../../lib/analysis/priors.ts';
import type { AgedFlower } from '../../lib/analysis/within-between.ts';
import { pairMeans } from '../../lib/analysis/within-between.ts';
import type { RandomStream } from '../../lib/numerics/random.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { addDays, daysBetween } from '../../lib/season/dates.ts';
import type { Vial } from '../../lib/season/season.ts';

/** How the truth of a season is drawn. */
export interface World {
  readonly priors: Priors;
  /** Scales on which age may act, each as likely as the others. */
  readonly ageScales: readonly AgeScale[];
  /** What a method's reference age costs, on the logit scale; drawn from the prior where left out. */
  readonly age?: number;
  /** Effects of parents and pairs: normal, or Student's t with 3 degrees of freedom and the same scale. */
  readonly tails?: 'normal' | 't3';
  /** Frozen pollen goes to hard pairs: the effect of a pair's share of it is drawn from the prior's half below 0. */
  readonly frozenOnHardPairs?: boolean;
  /** Where the storage effect stands: at age 0 (as left out), or at the median age of the frozen pollen. */
  readonly origin?: 'age-0' | 'median';
}

/** How many flowers, plants, mornings and seasons a grower had. */
export interface Size {
  readonly flowers: number;
  readonly plants: number;
  readonly mornings: number;
  readonly seasons: number;
}

export interface Truth {
  readonly intercept: number;
  readonly storage: number;
  readonly age: number;
  /** Whether an ordered pair never sets fruit. */
  readonly barren: (seedParent: string, pollenParent: string) => boolean;
  /** Fruit set of an ordered pair with fresh pollen, over mornings and seasons to come. */
  readonly freshRate: (seedParent: string, pollenParent: string) => number;
  /** Fruit set of a vial at an age over some seed parents, over mornings and seasons to come. */
  readonly vialRate: (
    vial: Vial,
    ageDays: number,
    over: readonly { readonly seedParent: string; readonly weight: number }[],
  ) => number;
  /** Over all crosses: fruit set fresh minus frozen at its median age, over mornings, seasons and vials to come. */
  readonly difference: number;
}

export interface SimulatedSeason {
  readonly flowers: readonly AgedFlower[];
  /** The register: those used, and one unopened lot of every second father. */
  readonly vials: readonly Vial[];
  readonly truth: Truth;
}

type Planned = Omit<AgedFlower, 'fruit'>;

interface Plan {
  readonly planned: readonly Planned[];
  readonly vials: readonly Vial[];
  readonly plants: readonly string[];
}

const FIRST_YEAR = 2025;

/** Mean of the inverse logit over a normal, by the trapezoidal rule from −8 to 8. */
export function meanRate(eta: number, sd: number): number {
  let sum = 0;
  for (let z = -8; z <= 8; z += 0.05) {
    sum += (0.05 * Math.exp(-(z * z) / 2)) / Math.sqrt(2 * Math.PI) / (1 + Math.exp(-(eta + sd * z)));
  }
  return sum;
}

/** Two or three lots of each plant's pollen, collected before the first morning; the last one may stay unopened. */
function vialsOf(plants: readonly string[], opening: string, random: RandomStream): Vial[] {
  return plants.flatMap((pollenParent, father) =>
    Array.from({ length: 2 + (father % 2) }, (_, lot) => ({
      file: 'vials.csv',
      line: 0,
      row: 0,
      vial: `${pollenParent} ${lot}`,
      pollenParent,
      collected: addDays(opening, -20 - Math.floor(random.uniform() * 480)),
      storage: 'frozen',
      dosesLeft: null,
      thaws: null,
      note: null,
    })),
  );
}

/** Which flowers there are: chosen without regard to what would come of them. */
function planOf({ flowers, plants: count, mornings, seasons }: Size, random: RandomStream): Plan {
  const below = (n: number) => Math.floor(random.uniform() * n);
  const plants = Array.from({ length: count }, (_, i) => `Plant ${i + 1}`);
  const vials = vialsOf(plants, `${FIRST_YEAR}-06-10`, random);
  const codes = new Map<number, number>();
  // Each pair has its own chance of frozen pollen: from hardly any to hardly anything else.
  const frozenShare = Array.from({ length: count * count }, () => random.uniform());
  const planned = Array.from({ length: flowers }, (_, i): Planned => {
    const mother = below(count);
    const father = (mother + 1 + below(Math.min(4, count - 1))) % count;
    const pair = mother * count + father;
    if (!codes.has(pair)) codes.set(pair, codes.size);
    const fresh = random.uniform() >= frozenShare[pair]!;
    const season = String(FIRST_YEAR + below(seasons));
    const morning = addDays(`${season}-06-10`, below(mornings));
    const vial = vials.filter(({ pollenParent }) => pollenParent === plants[father])[below(2)]!;
    return {
      crossId: String(i),
      seedParent: plants[mother]!,
      pollenParent: plants[father]!,
      storage: fresh ? 'fresh' : 'frozen',
      ageDays: fresh ? 0 : daysBetween(vial.collected, morning),
      pair: codes.get(pair)!,
      vial: fresh ? null : vial.vial,
      morning,
      season,
      grower: null,
    };
  });
  return { planned, vials, plants };
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length === 0 ? 0 : (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
}

/** A standard normal divided by the root of a mean square of three more. */
function student3({ normal }: RandomStream): number {
  const top = normal();
  return top / Math.sqrt((normal() ** 2 + normal() ** 2 + normal() ** 2) / 3);
}

/** Effects of named levels with one standard deviation, which is half-normal. */
function effectsOf(
  scale: number,
  names: Iterable<string>,
  random: RandomStream,
  effect: (random: RandomStream) => number = ({ normal }) => normal(),
): { readonly sd: number; readonly of: (name: string) => number } {
  const sd = Math.abs(scale * random.normal());
  const effects = new Map<string, number>();
  for (const name of names) if (!effects.has(name)) effects.set(name, sd * effect(random));
  return { sd, of: (name) => effects.get(name)! };
}

function centred(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

/** Everything on the logit scale that a season's truth is made of. */
function drawEffects(world: World, { planned, vials, plants }: Plan, random: RandomStream) {
  const { priors, tails = 'normal', frozenOnHardPairs = false } = world;
  const draw = ({ mean, sd, below = Number.POSITIVE_INFINITY }: NormalPrior): number => {
    for (;;) {
      const value = mean + sd * random.normal();
      if (value < below) return value;
    }
  };
  const heavy = tails === 't3' ? student3 : undefined;
  const pairNames = plants.flatMap((mother) => plants.map((father) => JSON.stringify([mother, father])));
  const { sds } = priors;
  const effects = {
    intercept: draw(priors.intercept),
    storage: draw(priors.storage),
    age: world.age ?? draw(priors.age),
    onShare: draw(frozenOnHardPairs ? { ...priors.share, below: 0 } : priors.share),
    onMeanAge: draw(priors.meanAge),
    mothers: effectsOf(sds.seedParent, plants, random, heavy),
    fathers: effectsOf(sds.pollenParent, plants, random, heavy),
    pairs: effectsOf(sds.pair, pairNames, random, heavy),
    vials: effectsOf(
      sds.vial,
      vials.map(({ vial }) => vial),
      random,
    ),
    mornings: effectsOf(
      sds.morning,
      planned.map(({ morning }) => morning),
      random,
    ),
    seasons: effectsOf(
      sds.season,
      planned.map(({ season }) => season),
      random,
    ),
  };
  const barrenShare = 1 / (1 + Math.exp(-draw(priors.incompatible)));
  const barren = new Set(pairNames.filter(() => random.uniform() < barrenShare));
  return { ...effects, barren };
}

/**
 * A season of a world.
 *
 * @param size how many flowers, plants (3 or more), mornings and seasons
 * @param seed a whole number: the same gives the same season everywhere
 */
export function simulatedSeason(world: World, size: Size, seed: number): SimulatedSeason {
  const random = randomStream(seed);
  const plan = planOf(size, random);
  const { planned, vials } = plan;
  const scale = world.ageScales[Math.floor(random.uniform() * world.ageScales.length)]!;
  const effects = drawEffects(world, plan, random);
  const median = medianOf(planned.flatMap(({ storage, ageDays }) => (storage === 'frozen' ? [ageDays] : [])));
  const origin = world.origin === 'median' ? median : 0;
  const term = (ageDays: number) => ageTerm(ageDays, 'frozen', scale) - ageTerm(origin, 'frozen', scale);
  const frozen = Float64Array.from(planned, ({ storage }) => (storage === 'frozen' ? 1 : 0));
  const age = Float64Array.from(planned, ({ ageDays }, i) => frozen[i]! * term(ageDays));
  const rows = planned.map((flower): AgedFlower => ({ ...flower, fruit: 0 }));
  const share = centred(pairMeans(rows, frozen));
  const meanAge = centred(pairMeans(rows, age));
  // What the season's plan says of a pair; a pair it does not have is as the average one.
  const between = new Map(
    planned.map((flower, i) => [
      JSON.stringify([flower.seedParent, flower.pollenParent]),
      effects.onShare * share[i]! + effects.onMeanAge * meanAge[i]!,
    ]),
  );
  const pairEta = (mother: string, father: string): number => {
    const name = JSON.stringify([mother, father]);
    if (effects.barren.has(name)) return Number.NEGATIVE_INFINITY;
    return (
      effects.intercept +
      effects.mothers.of(mother) +
      effects.fathers.of(father) +
      effects.pairs.of(name) +
      (between.get(name) ?? 0)
    );
  };
  const flowers = planned.map((flower, i): AgedFlower => {
    const eta =
      pairEta(flower.seedParent, flower.pollenParent) +
      frozen[i]! * effects.storage +
      effects.age * age[i]! +
      (flower.vial === null ? 0 : effects.vials.of(flower.vial)) +
      effects.mornings.of(flower.morning) +
      effects.seasons.of(flower.season);
    const uniform = random.uniform();
    return { ...flower, fruit: Math.log(uniform / (1 - uniform)) < eta ? 1 : 0 };
  });
  const occasion = Math.hypot(effects.mornings.sd, effects.seasons.sd);
  const occasionAndVial = Math.hypot(occasion, effects.vials.sd);
  const rate = (eta: number, sd: number) => (eta === Number.NEGATIVE_INFINITY ? 0 : meanRate(eta, sd));
  const atMedian = effects.storage + effects.age * term(median);
  const freshRate = (mother: string, father: string) => rate(pairEta(mother, father), occasion);
  const differences = flowers.map(
    ({ seedParent, pollenParent }) =>
      freshRate(seedParent, pollenParent) -
      rate(pairEta(seedParent, pollenParent) + atMedian, occasionAndVial),
  );
  return {
    flowers,
    vials,
    truth: {
      intercept: effects.intercept,
      storage: effects.storage,
      age: effects.age,
      barren: (mother, father) => pairEta(mother, father) === Number.NEGATIVE_INFINITY,
      freshRate,
      vialRate: ({ vial, pollenParent }, ageDays, over) => {
        const added = effects.storage + effects.age * term(ageDays) + effects.vials.of(vial);
        return over.reduce(
          (sum, { seedParent, weight }) =>
            sum + weight * rate(pairEta(seedParent, pollenParent) + added, occasion),
          0,
        );
      },
      difference: differences.reduce((a, b) => a + b, 0) / differences.length,
    },
  };
}
