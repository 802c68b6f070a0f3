/** Many growers' scores become the table of targets: mean regret, divergence, area and cover, each with its standard error. */

import type { GrowerScore } from './grower-score.ts';
import type { PlanGives } from './plan-score.ts';
import { PLANS } from './plan-score.ts';
import { RULES } from './rules.ts';

/** The score of one grower of one kind; null where the model did not settle. */
export interface ScoredGrower {
  readonly world: string;
  readonly seed: number;
  readonly score: GrowerScore | null;
}

/** A mean over vials, or a ratio of two sums, growers being independent and the vials of one not (ratio estimator). */
export interface Share {
  readonly value: number;
  readonly standardError: number;
}

export interface DecisionScores {
  readonly world: string;
  readonly growers: number;
  readonly unsettled: number;
  readonly vials: number;
  readonly unanswered: number;
  readonly regret: readonly Share[];
  readonly regretRatio: Share;
  readonly regretOnDay: readonly Share[];
  readonly regretOnDayRatio: Share;
  readonly regretTrueWorth: readonly Share[];
  readonly regretTrueWorthRatio: Share;
  readonly divergence: readonly Share[];
  readonly divergenceRatio: Share;
  /** Regret of one who knows the world over that of the best rule. */
  readonly regretInformedRatio: Share;
  /** What the plan gives over what each of the others does. */
  readonly plan: readonly PlanShare[];
  readonly covered: Share;
  readonly verdicts: GrowerScore['verdicts'];
}

/** What the command's plan gives, over what another's gives. */
export interface PlanShare {
  readonly other: (typeof PLANS)[number];
  readonly area: Share;
  readonly areaTried: Share;
  readonly fruits: Share;
  readonly varieties: Share;
}

/** Sum of one over sum of the other, with its standard error. */
export function ratio(top: readonly number[], bottom: readonly number[]): Share {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const value = sum(top) / sum(bottom);
  const squares = sum(top.map((each, i) => (each - value * bottom[i]!) ** 2));
  return { value, standardError: Math.sqrt(squares) / sum(bottom) };
}

/** The model's mean over the smallest of the others'. */
function againstBest(lists: readonly (readonly number[])[]): Share {
  const totals = lists[0]!.map((_, at) => lists.reduce((sum, list) => sum + list[at]!, 0));
  const best = totals.indexOf(Math.min(...totals.slice(1)), 1);
  return ratio(
    lists.map((list) => list[0]!),
    lists.map((list) => list[best]!),
  );
}

const OURS = 'the plan';

/** Each grower's plan weighs alike, however many flowers it is for. */
function planShare(scores: readonly GrowerScore[], other: PlanShare['other']): PlanShare {
  const [own, whose] = [PLANS.indexOf(OURS), PLANS.indexOf(other)];
  const share = (pick: (gives: PlanGives) => number) =>
    ratio(
      scores.map(({ plans }) => pick(plans[own]!) / pick(plans[whose]!)),
      scores.map(() => 1),
    );
  return {
    other,
    area: share(({ area }) => area),
    areaTried: share(({ areaTried }) => areaTried),
    fruits: share(({ fruits }) => fruits),
    varieties: share(({ varieties }) => varieties),
  };
}

/** One entry a kind of growers, in the order of their first. */
export function decisionScores(scored: readonly ScoredGrower[]): DecisionScores[] {
  return [...new Set(scored.map(({ world }) => world))].map((world) => {
    const own = scored.filter((grower) => grower.world === world);
    const scores = own.flatMap(({ score }) => (score === null ? [] : [score]));
    const vials = scores.map((score) => score.vials);
    const means = (lists: readonly (readonly number[])[]) =>
      lists[0]!.map((_, at) =>
        ratio(
          lists.map((list) => list[at]!),
          vials,
        ),
      );
    const total = (count: (score: GrowerScore) => number) =>
      scores.reduce((sum, score) => sum + count(score), 0);
    const lists = {
      regret: scores.map(({ regret }) => regret),
      regretOnDay: scores.map(({ regretOnDay }) => regretOnDay),
      regretTrueWorth: scores.map(({ regretTrueWorth }) => regretTrueWorth),
      divergence: scores.map(({ divergence }) => divergence),
    };
    return {
      world,
      growers: scores.length,
      unsettled: own.length - scores.length,
      vials: total((score) => score.vials),
      unanswered: total((score) => score.unanswered),
      regret: means(lists.regret),
      regretRatio: againstBest(lists.regret),
      regretInformedRatio: againstBest(
        scores.map(({ regret, regretInformed }) => [regretInformed, ...regret.slice(1)]),
      ),
      regretOnDay: means(lists.regretOnDay),
      regretOnDayRatio: againstBest(lists.regretOnDay),
      regretTrueWorth: means(lists.regretTrueWorth),
      regretTrueWorthRatio: againstBest(lists.regretTrueWorth),
      divergence: means(lists.divergence),
      divergenceRatio: againstBest(lists.divergence),
      plan: PLANS.filter((other) => other !== OURS).map((other) => planShare(scores, other)),
      covered: ratio(
        scores.map(({ covered }) => covered),
        vials,
      ),
      verdicts: {
        keep: total(({ verdicts }) => verdicts.keep),
        'use-first': total(({ verdicts }) => verdicts['use-first']),
        'test-first': total(({ verdicts }) => verdicts['test-first']),
        discard: total(({ verdicts }) => verdicts.discard),
      },
    };
  });
}

/** The table as a Markdown one: a row a measure, a column a kind of growers. */
export function decisionTable(worlds: readonly DecisionScores[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const row = (name: string, pick: (world: DecisionScores) => Share, digits: number, unit = 1): string =>
    line([
      name,
      ...worlds.map((world) => {
        const { value, standardError } = pick(world);
        return `${(unit * value).toFixed(digits)} ± ${(unit * standardError).toFixed(digits)}`;
      }),
    ]);
  const names = ['verdicts', ...RULES];
  const rates = ['the model', 'pooled stored rate', 'the father’s own rate'];
  return [
    line(['', ...worlds.map(({ world, growers, vials }) => `${world}: ${growers}, ${vials} vials`)]),
    line(['---', ...worlds.map(() => '---:')]),
    row('regret ÷ best rule (target: at most 0.60)', (world) => world.regretRatio, 2),
    ...names.map((name, at) => row(`regret a flower: ${name}`, (world) => world.regret[at]!, 4)),
    row('regret ÷ best rule, day of use alone', (world) => world.regretOnDayRatio, 2),
    row('regret ÷ best rule, true worth', (world) => world.regretTrueWorthRatio, 2),
    row('divergence ÷ better rate (target: at most 0.70)', (world) => world.divergenceRatio, 2),
    ...rates.map((name, at) => row(`divergence: ${name}`, (world) => world.divergence[at]!, 4)),
    row('the same of one who knows the world', (world) => world.regretInformedRatio, 2),
    ...PLANS.filter((other) => other !== OURS).flatMap((other, at) => [
      row(`area of the plan, % of who ${other}`, (world) => world.plan[at]!.area, 1, 100),
      row('… among tried pairs alone', (world) => world.plan[at]!.areaTried, 1, 100),
      row('… most fruits', (world) => world.plan[at]!.fruits, 1, 100),
      row('… most varieties', (world) => world.plan[at]!.varieties, 1, 100),
    ]),
    row('95 % ranges that held the truth, % (target: 93 to 97)', (world) => world.covered, 1, 100),
    line(['growers without a model', ...worlds.map(({ unsettled }) => String(unsettled))]),
  ].join('\n');
}
