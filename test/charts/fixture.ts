/**
 * A small season for drawing: invented plants of an invented collection, numbers chosen by hand so that every
 * chart has something awkward to show (a long name, a name that is markup, none of many, too few flowers, no
 * estimate). Ranges of counts are Wilson's, from R's `prop.test(x, n, correct = FALSE)`, to three digits.
 */
import type { Analysis } from '../../lib/analyse.ts';
import type { AgePoint } from '../../lib/analysis/age-curve.ts';
import type { FreshVersusStored } from '../../lib/analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../../lib/analysis/pairs.ts';
import type { AgeBand } from '../../lib/analysis/raw.ts';
import type { Mix, MixName } from '../../lib/decisions/mix.ts';
import type { NextSeason } from '../../lib/decisions/next-season.ts';
import type { VialAdvice } from '../../lib/decisions/vials.ts';
import type { Proportion } from '../../lib/proportions/interval.ts';

export const LONG_NAME = 'Mondscheinranke vom alten Gewächshaus hinter dem Gartenteich';
export const MARKUP_NAME = '<script>alert("Nachtfalter")</script>';

export function proportion(fruits: number, flowers: number, lower: number, upper: number): Proportion {
  return { fruits, flowers, estimate: fruits / flowers, lower, upper };
}

const fresh = proportion(44, 70, 0.511, 0.732);
const frozen = proportion(31, 86, 0.267, 0.466);
const room = proportion(0, 6, 0, 0.39);
const nothing = { estimate: null, lower: null, upper: null };

const frozenVersusFresh: FreshVersusStored = {
  storage: 'frozen',
  fresh,
  stored: frozen,
  difference: { estimate: 0.268, lower: 0.11, upper: 0.409 },
  commonOddsRatio: { estimate: 2.4, lower: 1.1, upper: 5.2 },
  conditionalOddsRatio: { estimate: 2.3, lower: 1, upper: 5.3 },
  pairsWithBoth: 9,
  informativePairs: 6,
  adjusted: { estimate: 0.17, lower: -0.03, upper: 0.35 },
  medianAgeDays: 94,
};

const roomVersusFresh: FreshVersusStored = {
  storage: 'room',
  fresh,
  stored: room,
  difference: { estimate: 0.629, lower: 0.21, upper: 0.732 },
  commonOddsRatio: { ...nothing, because: 'too-few-pairs' },
  conditionalOddsRatio: { ...nothing, because: 'too-few-pairs' },
  pairsWithBoth: 2,
  informativePairs: 1,
  adjusted: { ...nothing, because: 'too-few-pairs' },
  medianAgeDays: 4,
};

function band(storage: string, from: number, to: number | null, rate: Proportion): AgeBand {
  return { storage, from, to, ...rate };
}

const byAge: readonly AgeBand[] = [
  band('fresh', 0, 0, fresh),
  band('frozen', 8, 14, proportion(5, 9, 0.267, 0.811)),
  band('frozen', 31, 90, proportion(14, 31, 0.292, 0.622)),
  band('frozen', 91, 180, proportion(9, 28, 0.179, 0.507)),
  band('frozen', 181, 365, proportion(3, 18, 0.058, 0.392)),
  band('room', 3, 7, room),
];

/** A curve drawn by hand, falling from about 5 to about 2 in 10, its band widening. */
function curve(storage: string, ages: readonly number[], oldest: number): AgePoint[] {
  return ages.map((ageDays) => {
    const estimate = 0.52 - (0.33 * ageDays) / oldest;
    const half = 0.1 + (0.1 * ageDays) / oldest;
    const plausible = [-0.6, -0.2, 0.1, 0.5].map((share) => Math.max(0.01, estimate + share * half));
    return {
      storage,
      ageDays,
      estimate,
      lower: Math.max(0.01, estimate - half),
      upper: estimate + half,
      plausible,
    };
  });
}

const AGES = [0, 7, 14, 30, 45, 60, 90, 120, 150, 180, 210, 240];

function pair(
  names: readonly [string, string],
  [fruits, flowers]: readonly [number, number],
  [estimate, lower, upper]: readonly [number, number, number],
  incompatible: number,
): PooledPair {
  const [seedParent, pollenParent] = names;
  const basis = { storage: 'fresh', ageDays: 0 };
  return {
    seedParent,
    pollenParent,
    fruits,
    flowers,
    rawRate: fruits / flowers,
    estimate,
    lower,
    upper,
    basis,
    incompatible,
    named: incompatible >= 0.8,
  };
}

const pairs: readonly PooledPair[] = [
  pair(['Nachtlaterne', 'Silberfaden'], [11, 14], [0.72, 0.53, 0.88], 0.001),
  pair(['Silberfaden', 'Nachtlaterne'], [8, 13], [0.6, 0.4, 0.79], 0.004),
  pair([LONG_NAME, 'Silberfaden'], [9, 12], [0.66, 0.45, 0.83], 0.002),
  pair([MARKUP_NAME, 'Nachtlaterne'], [4, 10], [0.47, 0.25, 0.7], 0.02),
  pair(['Abendglocke', 'Abendstern'], [0, 11], [0.06, 0.001, 0.31], 0.83),
  pair(['Abendstern', 'Nachtlaterne'], [3, 7], [0.49, 0.26, 0.73], 0.03),
  pair(['Nachtlaterne', LONG_NAME], [5, 5], [0.68, 0.41, 0.9], 0.003),
  pair(['Abendstern', 'Silberfaden'], [2, 3], [0.56, 0.3, 0.82], 0.04),
  pair(['Abendglocke', 'Silberfaden'], [0, 2], [0.38, 0.12, 0.67], 0.14),
  pair(['Silberfaden', MARKUP_NAME], [1, 1], [0.55, 0.26, 0.84], 0.05),
];

function vial(
  [name, pollenParent]: readonly [string, string],
  verdict: VialAdvice['verdict'],
  [estimate, lower, upper]: readonly [number, number, number],
  probabilityWorth: number,
  [fruits, flowers]: readonly [number, number],
): VialAdvice {
  return {
    vial: name,
    pollenParent,
    storage: 'frozen',
    ageDays: 420,
    oldestTriedDays: 600,
    fruits,
    flowers,
    dosesLeft: 6,
    over: [{ seedParent: 'Nachtlaterne', weight: 1 }],
    estimate,
    lower,
    upper,
    probabilityWorth,
    probabilityWorthYearLater: probabilityWorth / 2,
    flowersFor90: Math.ceil(Math.log(0.1) / Math.log(1 - estimate)),
    verdict,
    reasonCode: verdict,
    lastOfParent: false,
    warnings: [],
  };
}

const vials: readonly VialAdvice[] = [
  vial(['V-01', 'Silberfaden'], 'keep', [0.46, 0.28, 0.65], 0.93, [9, 17]),
  vial(['V-02', 'Nachtlaterne'], 'keep', [0.41, 0.22, 0.62], 0.85, [7, 15]),
  vial(['V-03', LONG_NAME], 'use-first', [0.33, 0.14, 0.55], 0.58, [6, 14]),
  vial(['V-04', MARKUP_NAME], 'test-first', [0.27, 0.08, 0.53], 0.38, [2, 6]),
  vial(['V-05', 'Abendglocke'], 'discard', [0.11, 0.03, 0.24], 0.04, [1, 19]),
  {
    ...vial(['V-06', 'Abendstern'], 'test-first', [0.3, 0.1, 0.5], 0.5, [0, 0]),
    ...nothing,
    because: 'no-age',
    probabilityWorth: null,
    probabilityWorthYearLater: null,
    flowersFor90: null,
  },
];

function mix(
  name: MixName | null,
  expectedFruits: number,
  expectedVarieties: number,
  [percentile10, percentile90]: readonly [number, number],
): Mix {
  const line = { source: 'fresh' as const, vial: null, flowers: 3, from: null, to: null, noFruit: 0.2 };
  return {
    name,
    expectedFruits,
    expectedVarieties,
    expectedSeeds: null,
    fruits: { percentile10, percentile90 },
    allocation: [
      { ...line, seedParent: 'Nachtlaterne', pollenParent: 'Silberfaden' },
      {
        ...line,
        seedParent: 'Nachtlaterne',
        pollenParent: 'Silberfaden',
        source: 'vial',
        vial: 'V-01',
        flowers: 1,
      },
      { ...line, seedParent: LONG_NAME, pollenParent: MARKUP_NAME },
    ],
    within: 0,
  };
}

export const plan: NextSeason = {
  frontier: [
    mix('most-fruit', 31.2, 8.4, [25, 38]),
    mix(null, 29.9, 13.1, [23, 36]),
    mix('balanced', 27.6, 17.2, [21, 35]),
    mix('most-varieties', 21.8, 20.7, [14, 29]),
  ],
  flowers: 52,
  blankDoses: ['V-02'],
  leftOutVials: [{ vial: 'V-05', because: 'no-doses-left' }],
  unmet: [
    {
      seedParent: 'Abendstern',
      pollenParent: MARKUP_NAME,
      flowers: 2,
      planned: 1,
      expected: 9,
      possible: 0,
      because: 'no-common-morning',
    },
  ],
  newSeedParents: [LONG_NAME],
  newPollenParents: ['Abendglocke', 'Abendstern'],
  usedInPast: true,
};

/** What the charts read of an analysis. */
export type Drawn = Pick<
  Analysis,
  'rows' | 'raw' | 'freshVersusStored' | 'ageCurve' | 'halfAge' | 'pairs' | 'worth' | 'vials' | 'plan'
>;

export const season: Drawn = {
  rows: {
    read: 176,
    used: 162,
    leftOut: 14,
    byOutcome: [
      { outcome: 'fruit', rows: 66 },
      { outcome: 'dropped', rows: 9 },
      { outcome: 'none', rows: 87 },
      { outcome: 'unknown', rows: 9 },
      { outcome: 'pending', rows: 4 },
    ],
    byReason: [{ reason: 'outcome-unknown', rows: 9 }],
  },
  raw: {
    overall: proportion(75, 162, 0.388, 0.54),
    lostTags: {
      overall: {
        lost: 9,
        lowest: proportion(75, 171, 0.366, 0.514),
        highest: proportion(84, 171, 0.417, 0.566),
      },
      byStorage: [],
      difference: [],
    },
    byStorage: [
      { storage: 'fresh', ...fresh },
      { storage: 'frozen', ...frozen },
      { storage: 'room', ...room },
    ],
    bySeedParent: [],
    byPollenParent: [],
    byPair: [],
    byAge,
    controls: [],
  },
  freshVersusStored: [frozenVersusFresh, roomVersusFresh],
  ageCurve: curve('frozen', AGES, 240),
  halfAge: [
    { storage: 'frozen', estimate: 190, lower: 121, upper: null, oldestAgeDays: 240 },
    { storage: 'room', ...nothing, because: 'one-vial', oldestAgeDays: 6 },
  ],
  pairs,
  worth: { value: 0.3, source: 'half-of-fresh', freshRate: 0.6 },
  vials,
  plan,
};

/** The same with nothing but two fresh flowers: what every chart must survive. */
export const nearlyEmpty: Drawn = {
  ...season,
  rows: {
    read: 2,
    used: 2,
    leftOut: 0,
    byOutcome: [
      { outcome: 'fruit', rows: 1 },
      { outcome: 'none', rows: 1 },
    ],
    byReason: [],
  },
  raw: {
    ...season.raw,
    byStorage: [{ storage: 'fresh', ...proportion(1, 2, 0.095, 0.905) }],
    byAge: [band('fresh', 0, 0, proportion(1, 2, 0.095, 0.905))],
  },
  freshVersusStored: [],
  ageCurve: [],
  halfAge: [],
  pairs: [],
  vials: [],
  plan: null,
  worth: { value: null, source: null, freshRate: null, because: 'no-fresh' },
};
