/**
 * A predictor that has read the files and knows the world they come from, but not what became of its plants: the best that can
 * be known when the season is over. See `informed-chain.ts` for what it knows.
 */

import { crossesOf } from '../../lib/analysis/flowers.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';
import { ageTerm } from '../../lib/analysis/priors.ts';
import { streamFor } from '../../lib/analysis/strangers.ts';
import { randomStream } from '../../lib/numerics/random.ts';
import { daysBetween } from '../../lib/season/dates.ts';
import type { Season } from '../../lib/season/season.ts';
import type { GrowerTruth, Lot } from './grower-truth.ts';
import { oracle, together } from './grower-truth.ts';
import type { Choice, InformedDraw, InformedProblem, Trial, TriedPair } from './informed-chain.ts';
import { coupleKinds, informedDraws } from './informed-chain.ts';

const DRAWS = 200;
const SEED = 20260102;

/** Positions handed out to names, in the order in which they are first asked for. */
class Positions {
  private readonly known = new Map<string, number>();

  of(...names: readonly string[]): number {
    const key = JSON.stringify(names);
    const at = this.known.get(key) ?? this.known.size;
    this.known.set(key, at);
    return at;
  }

  seen(...names: readonly string[]): number | undefined {
    return this.known.get(JSON.stringify(names));
  }

  get size(): number {
    return this.known.size;
  }
}

/** The problem with the names behind its numbers. */
interface Named {
  readonly problem: InformedProblem;
  readonly effects: Positions;
  readonly couples: Positions;
  readonly fathers: Positions;
}

/** The two plants of a pair in one order, and which way round the pair is. */
function coupleOf(mother: string, father: string): readonly [first: string, second: string, way: 0 | 1] {
  return mother < father ? [mother, father, 0] : [father, mother, 1];
}

function choiceOf(
  truth: GrowerTruth,
  lots: readonly Lot[],
  { day, father, vial }: { readonly day: string; readonly father: string; readonly vial: string | null },
): Choice | null {
  const own = lots.filter((lot) => lot.pollenParent === father && daysBetween(lot.collected, day) > 0);
  if (own.length === 0) return null;
  const bloom = day.slice(5, 7) === '06' ? 'early' : 'late';
  return {
    freshToHave: together(truth.bloom(father), bloom),
    lots: own.length,
    taken: vial === null ? -1 : own.findIndex((lot) => lot.vial === vial),
  };
}

function named(season: Season, truth: GrowerTruth, lots: readonly Lot[], choices: boolean): Named {
  const { nature } = truth;
  const [effects, pairCodes, couples, fathers] = [1, 2, 3, 4].map(() => new Positions()) as [
    Positions,
    Positions,
    Positions,
    Positions,
  ];
  const sds: number[] = [];
  const effect = (kind: keyof typeof nature.sds | 'leaning', ...names: readonly string[]) => {
    const at = effects.of(kind, ...names);
    sds[at] = kind === 'leaning' ? 1 : nature.sds[kind];
    return at;
  };
  const pairs: TriedPair[] = [];
  const trials = crossesOf(season).map((cross): Trial => {
    const { seedParent, pollenParent, pollinationDate: day, vial } = cross;
    const pair = pairCodes.of(seedParent, pollenParent);
    const [first, second, way] = coupleOf(seedParent, pollenParent);
    pairs[pair] ??= {
      effects: [
        effect('seedParent', seedParent),
        effect('pollenParent', pollenParent),
        effect('pair', seedParent, pollenParent),
        effect('leaning', seedParent, pollenParent),
      ],
      apart: together(truth.bloom(seedParent), truth.bloom(pollenParent)) ? 0 : nature.apart,
      couple: couples.of(first, second),
      way,
      father: fathers.of(pollenParent),
    };
    const grower = truth.grower(seedParent);
    const lot = lots.find((each) => each.vial === vial);
    return {
      outcome: cross.outcome === 'fruit' ? 1 : cross.outcome === 'none' ? 0 : null,
      pair,
      occasion: [
        effect('morning', day, grower ?? ''),
        effect('season', cross.season),
        ...(grower === null ? [] : [effect('grower', grower)]),
        ...(lot ? [effect('vial', lot.vial)] : []),
      ],
      pollen: lot ? certain(truth, lot.storage, cross.ageDays!) : 0,
      choice: choices ? choiceOf(truth, lots, { day, father: pollenParent, vial }) : null,
    };
  });
  const { intercept, incompatible, noGoodPollen } = nature;
  const sizes = { couples: couples.size, fathers: fathers.size };
  return {
    problem: { intercept, sds, trials, pairs, ...sizes, incompatible, noGoodPollen },
    effects,
    couples,
    fathers,
  };
}

/** What a method at an age adds for certain. */
function certain({ nature }: GrowerTruth, storage: Lot['storage'], ageDays: number): number {
  return nature.storage[storage] + nature.fading[storage] * ageTerm(ageDays, storage, nature.ageScale);
}

/** An effect draw by draw: of a level of the files, or a new one of its kind. */
function effectOf(
  { effects }: Named,
  draws: readonly InformedDraw[],
  kind: string,
  names: readonly string[],
  sd: number,
) {
  const at = effects.seen(kind, ...names);
  const stream = streamFor(`informed ${kind}`, names);
  return Float64Array.from(draws, (draw) => (at === undefined ? sd * stream.normal() : draw.effects[at]!));
}

/** Whether a pair never sets fruit, draw by draw. */
function barrenOf(
  { couples, fathers, problem }: Named,
  draws: readonly InformedDraw[],
  mother: string,
  father: string,
): boolean[] {
  const [first, second, way] = coupleOf(mother, father);
  const [couple, own] = [couples.seen(first, second), fathers.seen(father)];
  const kinds = coupleKinds(problem.incompatible);
  // The same for both directions of a couple, and for all pairs of a father.
  const [luck, plantLuck] = [
    streamFor('informed couple', [first, second]),
    streamFor('informed father', [father]),
  ];
  return draws.map((draw) => {
    let left = luck.uniform();
    const fresh = kinds.findIndex((prior) => {
      left -= prior;
      return left < 0;
    });
    const kind = couple === undefined ? Math.max(0, fresh) : draw.couples[couple]!;
    const unseenBad = plantLuck.uniform() < problem.noGoodPollen;
    const bad = own === undefined ? unseenBad : draw.badFathers[own] === 1;
    return bad || ((kind >> way) & 1) === 1;
  });
}

/**
 * Draws of what the files and the world tell together.
 *
 * @param choices whether it also knows how growers choose: what pollen a pair was given tells how hard the grower found it
 */
export function informed(
  season: Season,
  truth: GrowerTruth,
  lots: readonly Lot[],
  { choices = true }: { readonly choices?: boolean } = {},
): Predictor {
  const { nature } = truth;
  const known = named(season, truth, lots, choices);
  const draws = informedDraws(known.problem, DRAWS, randomStream(SEED));
  const kept = new Map<string, Float64Array>();
  const pair = (mother: string, father: string): Float64Array => {
    const key = JSON.stringify([mother, father]);
    const found = kept.get(key);
    if (found) return found;
    const parts = [
      effectOf(known, draws, 'seedParent', [mother], nature.sds.seedParent),
      effectOf(known, draws, 'pollenParent', [father], nature.sds.pollenParent),
      effectOf(known, draws, 'pair', [mother, father], nature.sds.pair),
    ];
    const grower = truth.grower(mother);
    if (grower !== null) parts.push(effectOf(known, draws, 'grower', [grower], nature.sds.grower));
    const apart = together(truth.bloom(mother), truth.bloom(father)) ? 0 : nature.apart;
    const never = barrenOf(known, draws, mother, father);
    const eta = Float64Array.from(draws, (_, k) =>
      never[k]
        ? Number.NEGATIVE_INFINITY
        : parts.reduce((sum, part) => sum + part[k]!, nature.intercept - apart),
    );
    kept.set(key, eta);
    return eta;
  };
  const same = (value: number) => new Float64Array(draws.length).fill(value);
  const spreads = oracle(truth, lots);
  return {
    size: draws.length,
    pair,
    against: (mother, father) => pair(mother, father).map((eta) => Math.exp(-eta)),
    storage: (storage, ageDays) => same(certain(truth, storage as Lot['storage'], ageDays)),
    vial: (vial) => effectOf(known, draws, 'vial', [vial], nature.sds.vial),
    occasion: same(spreads.occasion[0]!),
    occasionAndVial: same(spreads.occasionAndVial[0]!),
    morning: same(spreads.morning[0]!),
    seasonSd: same(nature.sds.season),
  };
}
