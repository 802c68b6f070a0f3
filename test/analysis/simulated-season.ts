/** Seasons drawn from the priors themselves: parameters first, then flowers, so that the truth is known. */

import type { Priors } from '../../lib/analysis/priors.ts';
import type { AgedFlower } from '../../lib/analysis/within-between.ts';
import type { RandomStream } from '../../lib/numerics/random.ts';
import { randomStream } from '../../lib/numerics/random.ts';

const PLANTS = ['Ash Lantern', 'Blue Hour', 'Cold Ember', 'Dusk Anchor', 'Elder Moth', 'Far Beacon'];
const FLOWERS = 80;
const FRESH_SHARE = 0.45;
/** The oldest pollen, in days, and the reference age that the age prior is stated at. */
const OLDEST = 500;
const REFERENCE = 365;

export interface Truth {
  readonly intercept: number;
  readonly storage: number;
  readonly age: number;
  readonly seedParentSd: number;
  /** Fruit set of each seen pair with fresh pollen, over mornings and seasons to come; by pair code. */
  readonly freshRate: ReadonlyMap<number, number>;
  /** Over all crosses: fruit set fresh minus frozen at its median age, over mornings, seasons and vials to come. */
  readonly difference: number;
}

export interface SimulatedSeason {
  readonly flowers: readonly AgedFlower[];
  readonly truth: Truth;
}

type Planned = Omit<AgedFlower, 'fruit'>;

/** Which flowers there are: chosen without regard to what would come of them. */
function plan(random: RandomStream): Planned[] {
  const below = (n: number) => Math.floor(random.uniform() * n);
  const codes = new Map<string, number>();
  const vialAges = PLANTS.map(() => [0, 0].map(() => 20 + below(OLDEST - 20)));
  return Array.from({ length: FLOWERS }, (_, i) => {
    const mother = below(PLANTS.length);
    const father = (mother + 1 + below(3)) % PLANTS.length;
    const fresh = random.uniform() < FRESH_SHARE;
    const lot = below(2);
    const pair = `${mother} ${father}`;
    if (!codes.has(pair)) codes.set(pair, codes.size);
    return {
      crossId: String(i),
      seedParent: PLANTS[mother]!,
      pollenParent: PLANTS[father]!,
      storage: fresh ? 'fresh' : 'frozen',
      ageDays: fresh ? 0 : vialAges[father]![lot]!,
      pair: codes.get(pair)!,
      vial: fresh ? null : `${PLANTS[father]} ${lot}`,
      morning: `2025-06-${10 + below(8)}`,
      season: '2025',
      grower: null,
    };
  });
}

function medianAge(planned: readonly Planned[]): number {
  const ages = planned.flatMap(({ storage, ageDays }) => (storage === 'frozen' ? [ageDays] : []));
  ages.sort((a, b) => a - b);
  const half = ages.length / 2;
  return (ages[Math.ceil(half) - 1]! + ages[Math.floor(half)]!) / 2;
}

function logit(p: number): number {
  return Math.log(p / (1 - p));
}

/** Mean of the inverse logit over a normal, by the trapezoidal rule from −8 to 8. */
export function meanRate(eta: number, sd: number): number {
  let sum = 0;
  for (let z = -8; z <= 8; z += 0.05) {
    sum += (0.05 * Math.exp(-(z * z) / 2)) / Math.sqrt(2 * Math.PI) / (1 + Math.exp(-(eta + sd * z)));
  }
  return sum;
}

/**
 * A season of 80 flowers whose every parameter is one draw of its prior.
 *
 * @param origin where the storage effect stands: at age 0, or at the median age of the frozen pollen
 */
export function simulatedSeason(
  priors: Priors,
  seed: number,
  origin: 'age-0' | 'median' = 'age-0',
): SimulatedSeason {
  const random = randomStream(seed);
  const planned = plan(random);
  const { normal } = random;
  const centred = (of: (flower: Planned) => number) => {
    const mean = planned.reduce((sum, flower) => sum + of(flower), 0) / planned.length;
    return (flower: Planned) => of(flower) - mean;
  };
  const isFrozen = ({ storage }: Planned) => (storage === 'frozen' ? 1 : 0);
  const term = (ageDays: number) => Math.log(1 + ageDays) / Math.log(1 + REFERENCE);
  const originTerm = origin === 'median' ? term(medianAge(planned)) : 0;
  const ageTerm = (flower: Planned) => isFrozen(flower) * (term(flower.ageDays) - originTerm);
  const overPair = (of: (flower: Planned) => number) => (flower: Planned) => {
    const own = planned.filter(({ pair }) => pair === flower.pair);
    return own.reduce((sum, each) => sum + of(each), 0) / own.length;
  };
  const share = centred(overPair(isFrozen));
  const meanAge = centred(overPair(ageTerm));
  const draw = ({ mean, sd }: { mean: number; sd: number }) => mean + sd * normal();
  const [intercept, storage] = [draw(priors.intercept), draw(priors.storage)];
  const { below = Infinity } = priors.age;
  let age = draw(priors.age);
  while (age >= below) age = draw(priors.age);
  const [onShare, onMeanAge] = [draw(priors.share), draw(priors.meanAge)];
  const { sds } = priors;
  const level = (scale: number) => {
    const sd = Math.abs(scale * normal());
    const effects = new Map<string, number>();
    const of = (name: string) => {
      if (!effects.has(name)) effects.set(name, sd * normal());
      return effects.get(name)!;
    };
    return { sd, of };
  };
  const [mothers, fathers, pairs] = [level(sds.seedParent), level(sds.pollenParent), level(sds.pair)];
  const [vials, mornings, seasons] = [level(sds.vial), level(sds.morning), level(sds.season)];
  const barrenShare = 1 / (1 + Math.exp(-draw(priors.incompatible)));
  const barren = new Map(planned.map(({ pair }) => [pair, false]));
  for (const pair of barren.keys()) barren.set(pair, random.uniform() < barrenShare);
  const freshEta = (flower: Planned) =>
    intercept +
    mothers.of(flower.seedParent) +
    fathers.of(flower.pollenParent) +
    pairs.of(String(flower.pair)) +
    onShare * share(flower) +
    onMeanAge * meanAge(flower);
  const occasion = Math.hypot(mornings.sd, seasons.sd);
  const flowers = planned.map((flower): AgedFlower => {
    const eta =
      freshEta(flower) +
      isFrozen(flower) * storage +
      age * ageTerm(flower) +
      (flower.vial === null ? 0 : vials.of(flower.vial)) +
      mornings.of(flower.morning) +
      seasons.of(flower.season);
    const takes = logit(random.uniform()) < eta && !barren.get(flower.pair);
    return { ...flower, fruit: takes ? 1 : 0 };
  });
  const rate = (flower: Planned, added: number, sd: number) =>
    barren.get(flower.pair) ? 0 : meanRate(freshEta(flower) + added, sd);
  const freshRate = new Map(planned.map((flower) => [flower.pair, rate(flower, 0, occasion)]));
  const frozen = storage + age * (term(medianAge(planned)) - originTerm);
  const frozenRate = new Map(
    planned.map((flower) => [flower.pair, rate(flower, frozen, Math.hypot(occasion, vials.sd))]),
  );
  const difference =
    planned.reduce((sum, { pair }) => sum + freshRate.get(pair)! - frozenRate.get(pair)!, 0) / planned.length;
  return { flowers, truth: { intercept, storage, age, seedParentSd: mothers.sd, freshRate, difference } };
}
