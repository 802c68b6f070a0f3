/** One simulated grower's files read and analysed as `analyse` does it, and what the verdicts, estimates and plans were worth. */

import { usedFlowers } from '../../lib/analysis/flowers.ts';
import { growerModel } from '../../lib/analysis/grower-model.ts';
import { pairCounts, pooledPairs } from '../../lib/analysis/pairs.ts';
import type { Predictor } from '../../lib/analysis/predictor.ts';
import { predictor } from '../../lib/analysis/predictor.ts';
import type { WeightedParent } from '../../lib/analysis/seed-parents.ts';
import { incompatiblePairs, seedParents, seedParentsFor } from '../../lib/analysis/seed-parents.ts';
import { worthOf } from '../../lib/analysis/worth.ts';
import type { VialAdvice, VialRates, VialVerdict } from '../../lib/decisions/vials.ts';
import { verdictOf, vialAdvice, vialRates } from '../../lib/decisions/vials.ts';
import { addYear, daysBetween, latestDate } from '../../lib/season/dates.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Season, Vial } from '../../lib/season/season.ts';
import type { SimulatedGrower } from './grower-season.ts';
import { oracle } from './grower-truth.ts';
import { informed } from './informed.ts';
import type { PlanGives } from './plan-score.ts';
import { planScore } from './plan-score.ts';
import type { Regret, TrueRates } from './regret.ts';
import { divergence, regretOfUse, regretOfVerdict, TESTS } from './regret.ts';
import { rulesOfThumb, smoothed, storedRates } from './rules.ts';

const LEVEL = 0.95;

/** Sums over one grower's vials, and its two frontiers. */
export interface GrowerScore {
  /** Vials with an answer, and those without. */
  readonly vials: number;
  readonly unanswered: number;
  /** Regret of the verdicts, then of each rule of thumb, against the worth that is printed. */
  readonly regret: readonly number[];
  /** The same on the day of use alone. */
  readonly regretOnDay: readonly number[];
  /** The same over both days against the true worth. */
  readonly regretTrueWorth: readonly number[];
  /** Divergence of the model's, the pooled stored and the father's own rate. */
  readonly divergence: readonly number[];
  readonly covered: number;
  readonly verdicts: Readonly<Record<VialVerdict, number>>;
  /** Regret of the verdicts of one who knows the world, over both days, against the worth that is printed. */
  readonly regretInformed: number;
  /** What the plans give, in the order of `PLANS`. */
  readonly plans: readonly PlanGives[];
}

/** What the command would say. */
export interface Advised {
  readonly season: Season;
  readonly flowers: ReturnType<typeof usedFlowers>;
  readonly predict: Predictor;
  readonly parents: readonly WeightedParent[];
  readonly incompatible: (seedParent: string, pollenParent: string) => boolean;
  readonly worth: number;
  readonly useOn: string;
  readonly putAway: string;
  readonly advice: readonly VialAdvice[];
}

/** Reads a grower's files and advises; null where the model did not settle. */
export function advised({ files }: Pick<SimulatedGrower, 'files'>): Advised | null {
  const encoder = new TextEncoder();
  const season = readSeason(files.map(({ name, text }) => ({ name, bytes: encoder.encode(text) })));
  const flowers = usedFlowers(season);
  const fitted = growerModel(flowers, {
    ageScale: null,
    methods: season.vials.map(({ storage }) => storage),
  });
  if (!('draws' in fitted)) return null;
  const predict = predictor(fitted.draws, season.vials);
  const because = '';
  const fresh = { storage: 'fresh', ageDays: 0 };
  const pairs = pooledPairs(pairCounts(flowers), predict, fresh, { level: LEVEL, because });
  const parents = seedParents(flowers, season.flowers);
  const incompatible = incompatiblePairs(pairs);
  const worth = worthOf(undefined, flowers, predict, parents, incompatible).value;
  if (worth === null) return null;
  const putAway = latestDate(season.crosses.map(({ pollinationDate }) => pollinationDate))!;
  const useOn = addYear(putAway);
  const advice = vialAdvice(season.vials, predict, {
    useOn,
    worth,
    level: LEVEL,
    because,
    over: (father) => seedParentsFor(father, parents, incompatible),
    record: () => ({ fruits: 0, flowers: 0 }),
  });
  return { season, flowers, predict, parents, incompatible, worth, useOn, putAway, advice };
}

/** The verdict after so many fruits of the test flowers: the draws weigh as much as they make that likely. */
function verdictAfter({ then, yearLater }: VialRates, worth: number): (fruits: number) => VialVerdict {
  return (fruits) => {
    let [all, now, later] = [0, 0, 0];
    then.forEach((rate, k) => {
      const weight = rate ** fruits * (1 - rate) ** (TESTS - fruits);
      all += weight;
      if (rate >= worth) now += weight;
      if (yearLater[k]! >= worth) later += weight;
    });
    return all === 0 ? 'test-first' : verdictOf(now / all, later / all);
  };
}

interface VialScore {
  readonly regret: readonly Regret[];
  readonly trueWorth: readonly Regret[];
  readonly divergence: readonly number[];
  readonly covered: boolean;
}

function vialScore(
  vial: Vial,
  told: VialAdvice,
  given: Advised,
  truth: TrueRates,
  trueWorth: number,
): VialScore {
  const { predict, useOn, putAway, worth } = given;
  const after = verdictAfter(vialRates(vial, predict, told.over, useOn)!, worth);
  const raw = storedRates(given.flowers);
  const uses = rulesOfThumb(vial, raw, { putAway, useOn, worth });
  const against = (line: number) => [
    regretOfVerdict(told.verdict, after, truth, line),
    ...uses.map((use) => regretOfUse(use, truth, line)),
  ];
  const estimates = [told.estimate!, smoothed(raw.pooled), smoothed(raw.father(vial.pollenParent))];
  return {
    regret: against(worth),
    trueWorth: against(trueWorth),
    divergence: estimates.map((estimate) => divergence(truth.onDay, estimate)),
    covered: told.lower! <= truth.onDay && truth.onDay <= told.upper!,
  };
}

/** A vial's true fruit set over the seed parents that its estimate is over. */
function trueRates({ truth, lots }: SimulatedGrower, told: VialAdvice, useOn: string): TrueRates {
  const lot = lots.find(({ vial }) => vial === told.vial)!;
  const at = (ageDays: number) =>
    told.over.reduce(
      (sum, { seedParent, weight }) =>
        sum + weight * truth.rate(seedParent, told.pollenParent, { lot, ageDays }),
      0,
    );
  return { onDay: at(told.ageDays), yearLater: at(daysBetween(lot.collected, addYear(useOn))) };
}

function added(lists: readonly (readonly number[])[]): number[] {
  return (lists[0] ?? []).map((_, at) => lists.reduce((sum, list) => sum + list[at]!, 0));
}

/** Regret of the verdicts that another predictor would give on the same vials. */
function regretWith(
  predict: Predictor,
  grower: SimulatedGrower,
  { season, advice, useOn, worth }: Advised,
): number {
  const over = (father: string) => advice.find(({ pollenParent }) => pollenParent === father)!.over;
  const record = () => ({ fruits: 0, flowers: 0 });
  const told = vialAdvice(season.vials, predict, { useOn, worth, level: LEVEL, because: '', over, record });
  return told.reduce((sum, each, i) => {
    if (each.estimate === null) return sum;
    const after = verdictAfter(vialRates(season.vials[i]!, predict, each.over, useOn)!, worth);
    return sum + regretOfVerdict(each.verdict, after, trueRates(grower, each, useOn), worth).both;
  }, 0);
}

/** Analyses a grower and looks at the truth; null where the model did not settle. */
export function growerScore(grower: SimulatedGrower): GrowerScore | null {
  const given = advised(grower);
  if (given === null) return null;
  const { season, flowers, parents, advice } = given;
  const { truth, lots } = grower;
  const never = (mother: string, father: string) => truth.pair(mother, father) === Number.NEGATIVE_INFINITY;
  const trueWorth = worthOf(undefined, flowers, oracle(truth, lots), parents, never).value!;
  const scores = advice.flatMap((told, i) =>
    told.estimate === null
      ? []
      : [vialScore(season.vials[i]!, told, given, trueRates(grower, told, given.useOn), trueWorth)],
  );
  const bestKnown = informed(season, truth, lots);
  const count = (verdict: VialVerdict) => advice.filter((told) => told.verdict === verdict).length;
  return {
    vials: scores.length,
    unanswered: advice.length - scores.length,
    regret: added(scores.map(({ regret }) => regret.map(({ both }) => both))),
    regretOnDay: added(scores.map(({ regret }) => regret.map(({ onDay }) => onDay))),
    regretTrueWorth: added(scores.map((score) => score.trueWorth.map(({ both }) => both))),
    regretInformed: regretWith(bestKnown, grower, given),
    divergence: added(scores.map((score) => score.divergence)),
    covered: scores.filter(({ covered }) => covered).length,
    verdicts: {
      keep: count('keep'),
      'use-first': count('use-first'),
      'test-first': count('test-first'),
      discard: count('discard'),
    },
    plans: planScore(grower, given, {
      bestKnown,
      truePriors: informed(season, truth, lots, { choices: false }),
    }),
  };
}
