/**
 * Every public function of numbers, fed what it must refuse: an error that names the function, the argument, the rule
 * and the value; or, where the data are merely extreme, a documented result without NaN or Infinity.
 */

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as door from '../lib/index.ts';

type Call = (...args: never[]) => unknown;
const exported = new Map(Object.entries(door) as [string, Call][]);
const call = (name: string, args: readonly unknown[]): unknown => exported.get(name)!(...(args as never[]));

/** What an argument is, and so which values it refuses. */
const refused = {
  trials: [0, -1, 2.5, Number.NaN, Infinity, '9'],
  successes: [-1, 2.5, Number.NaN, Infinity, 1e6],
  count: [-1, 2.5, Number.NaN, Infinity],
  inside: [0, 1, -0.1, 1.5, Number.NaN, Infinity],
  probability: [-0.1, 1.5, Number.NaN, Infinity],
  positive: [0, -1, Number.NaN, Infinity],
  // Degrees of freedom may be infinite: Student's t is then the normal distribution.
  degrees: [0, -1, Number.NaN],
  number: [Number.NaN, '1', null],
  least2: [0, 1, 2.5, Number.NaN],
} as const;
type Kind = keyof typeof refused;

/** A call that works, and what its arguments are; `level` adds the option of that name. */
interface Plain {
  readonly args: readonly number[];
  readonly kinds: readonly Kind[];
  readonly level?: boolean;
}

const oneSample: Plain = { args: [7, 20], kinds: ['successes', 'trials'], level: true };
const twoSample: Plain = {
  args: [7, 20, 3, 9],
  kinds: ['successes', 'trials', 'successes', 'trials'],
  level: true,
};
const plain = (args: readonly number[], kinds: readonly Kind[], level = false): Plain => ({
  args,
  kinds,
  level,
});

const numbersIn: ReadonlyMap<string, Plain> = new Map([
  ...['wilson', 'clopperPearson', 'agrestiCoull', 'jeffreys', 'midP'].map(
    (name) => [name, oneSample] as const,
  ),
  ...['newcombe', 'miettinenNurminen', 'oddsRatio', 'riskRatio', 'fisherExact'].map(
    (name) => [name, twoSample] as const,
  ),
  ['pearsonChiSquare', { ...twoSample, level: false }],
  ['binomialTest', plain([7, 20, 0.5], ['successes', 'trials', 'probability'])],
  ['powerOneProportion', plain([0.4, 20, 0.5], ['probability', 'trials', 'inside'], true)],
  ['powerOfWilson', plain([0.4, 20, 0.5], ['probability', 'trials', 'inside'], true)],
  ['sampleSizeOneProportion', plain([0.3, 0.5], ['inside', 'inside'], true)],
  [
    'powerTwoProportions',
    plain([0.4, 20, 0.6, 20], ['probability', 'trials', 'probability', 'trials'], true),
  ],
  ['sampleSizeTwoProportions', plain([0.4, 0.6], ['inside', 'inside'], true)],
  ['detectableProportion', plain([0.4, 20], ['inside', 'trials'], true)],
  ['normalDensity', plain([1], ['number'])],
  ['normalCdf', plain([1], ['number'])],
  ['normalLogCdf', plain([1], ['number'])],
  ['normalQuantile', plain([0.3], ['probability'])],
  ['normalRangeTail', plain([3, 4], ['number', 'least2'])],
  ['studentDensity', plain([1, 5], ['number', 'degrees'])],
  ['studentCdf', plain([1, 5], ['number', 'degrees'])],
  ['studentQuantile', plain([0.3, 5], ['probability', 'degrees'])],
  ['chiSquareDensity', plain([1, 5], ['number', 'positive'])],
  ['chiSquareCdf', plain([1, 5], ['number', 'positive'])],
  ['chiSquareQuantile', plain([0.3, 5], ['probability', 'positive'])],
  ['gammaDensity', plain([1, 5, 2], ['number', 'positive', 'positive'])],
  ['gammaCdf', plain([1, 5, 2], ['number', 'positive', 'positive'])],
  ['gammaQuantile', plain([0.3, 5, 2], ['probability', 'positive', 'positive'])],
  ['betaDensity', plain([0.3, 2, 3], ['number', 'positive', 'positive'])],
  ['betaCdf', plain([0.3, 2, 3], ['number', 'positive', 'positive'])],
  ['betaQuantile', plain([0.3, 2, 3], ['probability', 'positive', 'positive'])],
  ['binomialDensity', plain([3, 9, 0.4], ['number', 'count', 'probability'])],
  ['binomialCdf', plain([3, 9, 0.4], ['number', 'count', 'probability'])],
  ['binomialQuantile', plain([0.3, 9, 0.4], ['probability', 'count', 'probability'])],
  ['hypergeometricDensity', plain([3, 5, 9, 6], ['number', 'count', 'count', 'successes'])],
  ['hypergeometricCdf', plain([3, 5, 9, 6], ['number', 'count', 'count', 'successes'])],
  ['hypergeometricQuantile', plain([0.3, 5, 9, 6], ['probability', 'count', 'count', 'successes'])],
]);

/** Calls that must be refused, and what the message must hold. */
type Refusals = readonly (readonly [what: string, make: () => unknown, message: RegExp])[];

const spec = {
  successes: [1, 4, 2, 5, 3, 2],
  trials: [5, 5, 6, 6, 4, 4],
  columns: { age: [0, 1, 2, 3, 4, 5], stored: [0, 0, 0, 1, 1, 1] },
  groups: { plant: ['a', 'b', 'a', 'b', 'a', 'b'] },
};
const counts = { counts: [3, 0, 7, 2, 9, 4], columns: spec.columns };
const positive = { counts: [3, 1, 7, 2, 9, 4], columns: spec.columns };

/** What every fit of a binomial response refuses. */
const designFaults = (name: string, start: object = spec): Refusals => {
  const with_ = (change: object) => () => call(name, [{ ...start, ...change }]);
  return [
    ['no rows', with_({ successes: [] }), /successes must have at least one entry, got none/],
    ['fewer trials', with_({ trials: [5] }), /trials must have 6 entries as successes has, got 1/],
    [
      'no trials in a row',
      with_({ trials: [5, 5, 0, 6, 4, 4] }),
      /trials must be whole numbers of at least 1, got 0 in row 3/,
    ],
    ['half a trial', with_({ trials: [5.5, 5, 6, 6, 4, 4] }), /trials must be .*got 5.5 in row 1/],
    [
      'more successes than trials',
      with_({ successes: [1, 9, 2, 5, 3, 2] }),
      /successes must be .*\(5\), got 9 in row 2/,
    ],
    [
      'NaN successes',
      with_({ successes: [1, Number.NaN, 2, 5, 3, 2] }),
      /successes must hold finite numbers, got NaN in row 2/,
    ],
    [
      'an infinite value',
      with_({ columns: { age: [0, 1, 2, Infinity, 4, 5] } }),
      /column age must hold finite numbers, got Infinity in row 4/,
    ],
    [
      'a short column',
      with_({ columns: { age: [1] } }),
      /column age must have 6 entries as successes has, got 1/,
    ],
    [
      'a short group',
      with_({ groups: { plant: ['a'] } }),
      /group plant must have 6 entries as successes has, got 1/,
    ],
    [
      'a NaN offset',
      with_({ offset: [0, 0, 0, 0, 0, Number.NaN] }),
      /offset must hold finite numbers, got NaN in row 6/,
    ],
  ];
};
const rankFaults = (name: string, start: object = spec): Refusals => {
  const with_ = (change: object) => () => call(name, [{ ...start, ...change }]);
  const many = Object.fromEntries(
    Array.from({ length: 7 }, (_, k) => [`x${k}`, spec.columns.age.map((x) => x ** k)]),
  );
  return [
    [
      'no column',
      with_({ columns: {}, intercept: false }),
      /columns must hold at least one column or the intercept, got none/,
    ],
    ['more columns than rows', with_({ columns: many }), /columns must not outnumber the rows \(6\), got 8/],
    ['a singular design', with_({ columns: { ...spec.columns, again: spec.columns.age } }), /again/],
  ];
};
const countFaults = (name: string, start: object): Refusals => {
  const with_ = (change: object) => () => call(name, [{ ...start, ...change }]);
  return [
    ['no rows', with_({ counts: [] }), /counts must have at least one entry, got none/],
    [
      'half a seed',
      with_({ counts: [3.5, 1, 7, 2, 9, 4] }),
      /counts must be whole numbers .*got 3.5 in row 1/,
    ],
    ['fewer than none', with_({ counts: [-3, 1, 7, 2, 9, 4] }), /got -3 in row 1/],
    [
      'NaN',
      with_({ counts: [3, Number.NaN, 7, 2, 9, 4] }),
      /counts must hold finite numbers, got NaN in row 2/,
    ],
    ['no exposure', with_({ exposure: [0, 1, 1, 1, 1, 1] }), /exposure .*got 0 in row 1/],
    [
      'a short column',
      with_({ columns: { age: [1] } }),
      /column age must have 6 entries as counts has, got 1/,
    ],
    ['a singular design', with_({ columns: { ...spec.columns, again: spec.columns.age } }), /again/],
  ];
};
const fit = door.logistic(spec);
const asked = (name: string, wrong: readonly (readonly [string, readonly unknown[], RegExp])[]): Refusals =>
  wrong.map(([what, args, message]) => [what, () => call(name, args), message]);
const levels = (name: string, ...before: unknown[]): Refusals =>
  asked(
    name,
    [0, 1, 2, Number.NaN].map(
      (level) => [`level ${level}`, [...before, { level }], /level must be .*got/] as const,
    ),
  );
const table = [
  [
    [3, 3],
    [0, 6],
  ],
];
const strataFaults = (name: string): Refusals =>
  asked(name, [
    ['no table', [[]], /tables must hold at least one 2 × 2 table/],
    ['a flat table', [[[1, 2, 3, 4]]], /tables\[0\] must be \[\[a, b\], \[c, d\]\]/],
    [
      'a negative count',
      [
        [
          [
            [1, 2],
            [3, -4],
          ],
        ],
      ],
      /d of tables\[0\] must be a whole number .*got -4/,
    ],
    [
      'NaN',
      [
        [
          [
            [Number.NaN, 2],
            [3, 4],
          ],
        ],
      ],
      /a of tables\[0\] must be .*got NaN/,
    ],
  ]);
const rowFaults = (name: string, key: string): Refusals =>
  asked(name, [
    ['no rows', [{ successes: [], [key]: [] }], /must have one entry a row, got 0, 0 and 0/],
    ['another length', [{ successes: [1, 0], [key]: [0.5] }], /must have|entries/],
    ['NaN', [{ successes: [1, 0], [key]: [0.5, Number.NaN] }], /must .*got NaN/],
    ['two successes of one', [{ successes: [2, 0], [key]: [0.5, 0.4] }], /successes must be .*got 2/],
  ]);
const paired = { flowersPerKind: 4, freshRate: 0.6, storedRate: 0.4, pairSd: 0.5 };
const pairedFaults = (name: string, start: object): Refusals =>
  asked(name, [
    ['half a flower', [{ ...start, flowersPerKind: 2.5 }], /flowersPerKind must be .*got 2.5/],
    ['a rate of 1', [{ ...start, freshRate: 1 }], /freshRate must be .*got 1/],
    ['NaN', [{ ...start, storedRate: Number.NaN }], /storedRate must be .*got NaN/],
    ['a negative spread', [{ ...start, pairSd: -1 }], /pairSd must be .*got -1/],
    ['a level of 1', [start, { level: 1 }], /level must be .*got 1/],
    ['no simulations', [start, { simulations: 0 }], /simulations must be .*got 0/],
  ]);

const structured: ReadonlyMap<string, Refusals> = new Map<string, Refusals>([
  ['logistic', [...designFaults('logistic'), ...rankFaults('logistic')]],
  ['mixedLogistic', [...designFaults('mixedLogistic'), ...rankFaults('mixedLogistic')]],
  ['betaBinomial', [...designFaults('betaBinomial'), ...rankFaults('betaBinomial')]],
  ['conditionalLogistic', designFaults('conditionalLogistic', { ...spec, intercept: false })],
  ['negativeBinomial', countFaults('negativeBinomial', counts)],
  [
    'zeroTruncatedPoisson',
    [
      ...countFaults('zeroTruncatedPoisson', positive),
      ...asked('zeroTruncatedPoisson', [['a zero', [counts], /at least 1, got 0 in row 2/]]),
    ],
  ],
  ['zeroTruncatedNegativeBinomial', countFaults('zeroTruncatedNegativeBinomial', positive)],
  ['mantelHaenszel', [...strataFaults('mantelHaenszel'), ...levels('mantelHaenszel', table)]],
  ['breslowDay', strataFaults('breslowDay')],
  ['waldIntervals', levels('waldIntervals', fit)],
  ['profileIntervals', levels('profileIntervals', fit)],
  [
    'predictAt',
    [
      ...levels('predictAt', fit, [{}]),
      ...asked('predictAt', [
        ['no such column', [fit, [{ cold: 1 }]], /columns of the fit .*cold/],
        ['NaN', [fit, [{ age: Number.NaN }]], /finite numbers .*NaN for age/],
      ]),
    ],
  ],
  [
    'compareAt',
    [
      ...levels('compareAt', fit, [{}, {}]),
      ...asked('compareAt', [
        ['one row', [fit, [{}]], /rows must hold at least two, got 1/],
        ['NaN', [fit, [{}, { age: Number.NaN }]], /NaN for age/],
      ]),
    ],
  ],
  [
    'likelihoodRatio',
    asked('likelihoodRatio', [
      ['nothing dropped', [fit, { drop: [] }], /drop must name columns .*got none/],
      ['no such column', [fit, { drop: ['cold'] }], /drop must name columns of the fit .*got cold/],
    ]),
  ],
  [
    'standardise',
    [
      ...levels('standardise', fit, { set: [] }).slice(0, 0),
      ...asked('standardise', [
        ['no scenario', [fit, { set: [] }], /set must hold at least one scenario, got none/],
        ['no such column', [fit, { set: [{ cold: 1 }] }], /set must name columns of the fit .*got cold/],
        ['NaN', [fit, { set: [{ age: Number.NaN }] }], /finite number.*got NaN/],
        ['short weights', [fit, { set: [{}], weights: [1] }], /weights must have 6 entries, got 1/],
        [
          'negative weights',
          [fit, { set: [{}], weights: [1, -1, 1, 1, 1, 1] }],
          /weights must be .*got -1 in row 2/,
        ],
        ['a level of 1', [fit, { set: [{}], level: 1 }], /level must be .*got 1/],
      ]),
    ],
  ],
  [
    'doseAt',
    asked('doseAt', [
      ['a probability of 1', [fit, 1, { column: 'age' }], /p must be .*got 1/],
      ['NaN', [fit, Number.NaN, { column: 'age' }], /p must be .*got NaN/],
      ['no such column', [fit, 0.5, { column: 'cold' }], /column must .*got (")?cold/],
      ['a level of 0', [fit, 0.5, { column: 'age', level: 0 }], /level must be .*got 0/],
    ]),
  ],
  ['auc', [...rowFaults('auc', 'scores'), ...levels('auc', fit)]],
  [
    'brier',
    [
      ...rowFaults('brier', 'probabilities'),
      ...asked('brier', [
        ['a chance of 2', [{ successes: [1], probabilities: [2] }], /probabilities must .*got 2/],
      ]),
    ],
  ],
  [
    'hosmerLemeshow',
    [
      ...rowFaults('hosmerLemeshow', 'probabilities'),
      ...asked('hosmerLemeshow', [
        ['one group', [fit, { groups: 1 }], /groups must be .*got 1/],
        ['NaN groups', [fit, { groups: Number.NaN }], /groups must be .*got NaN/],
      ]),
    ],
  ],
  [
    'crossValidate',
    asked('crossValidate', [
      ['short folds', [fit, { folds: [1] }], /folds must have 6 .*got 1/],
      ['one fold', [fit, { folds: [1, 1, 1, 1, 1, 1] }], /folds must have at least two labels, got one/],
    ]),
  ],
  [
    'clusterRobust',
    asked('clusterRobust', [['no such group', [fit, { cluster: 'bed' }], /cluster must .*got bed/]]),
  ],
  [
    'aic',
    asked('aic', [
      [
        'a Firth fit',
        [door.logistic(spec, { method: 'firth' })],
        /fit must be a maximum of the likelihood, got/,
      ],
    ]),
  ],
  [
    'naturalSpline',
    asked('naturalSpline', [
      ['NaN', [[1, Number.NaN], { knots: [], boundary: [0, 2] }], /value 2 must be a finite number, got NaN/],
      ['falling knots', [[0, 9], { knots: [5, 4] }], /knots of the spline must increase .*got 5, 4/],
      ['one value', [[3, 3], { knots: [] }], /boundary of the spline must be .*got 3 and 3/],
    ]),
  ],
  [
    'designColumns',
    asked('designColumns', [
      [
        'an unknown variable',
        [{ ...spec, variables: {}, terms: [{ kind: 'numeric', variable: 'age' }] }],
        /terms must name variables .*got age/,
      ],
      [
        'a missing value',
        [
          {
            ...spec,
            variables: { age: [0, 1, null, 3, 4, 5] },
            terms: [{ kind: 'numeric', variable: 'age' }],
          },
        ],
        /age must have a value in each row, got none in row 3/,
      ],
      [
        'one level',
        [
          {
            ...spec,
            variables: { storage: spec.columns.age.map(() => 'fresh') },
            terms: [{ kind: 'factor', variable: 'storage' }],
          },
        ],
        /factor storage must have rows of two levels, got fresh only/,
      ],
    ]),
  ],
  [
    'columnsAgain',
    asked('columnsAgain', [
      [
        'a new level',
        [
          door.designColumns({
            ...spec,
            variables: { storage: ['a', 'b', 'a', 'b', 'a', 'b'] },
            terms: [{ kind: 'factor', variable: 'storage' }],
          }),
          { storage: ['c'] },
        ],
        /factor storage must have one of its levels \(a, b\), got c in row 1/,
      ],
    ]),
  ],
  [
    'powerPairedDesign',
    [
      ...pairedFaults('powerPairedDesign', { ...paired, pairs: 9 }),
      ...asked('powerPairedDesign', [['no pairs', [{ ...paired, pairs: 0 }], /pairs must be .*got 0/]]),
    ],
  ],
  ['sampleSizePairedDesign', pairedFaults('sampleSizePairedDesign', paired)],
  [
    'moverProduct',
    asked('moverProduct', [
      ['nothing', [[]], /parts must hold at least one interval, got none/],
      ['NaN', [[{ estimate: Number.NaN, lower: 0, upper: 1 }]], /must hold finite .*got 0, NaN, 1/],
    ]),
  ],
  [
    'moverRatio',
    asked('moverRatio', [
      [
        'NaN',
        [
          { estimate: Number.NaN, lower: 0, upper: 1 },
          { estimate: 0.5, lower: 0.2, upper: 0.9 },
        ],
        /must hold finite .*got 0, NaN, 1/,
      ],
    ]),
  ],
]);

/** They take a finished fit and nothing else: what they answer for every kind of fit is in `answers` below. */
const ofFitsOnly = ['leaveOneOut', 'correctIntercept'];
/** Bytes and seasons: their faults are problems with a line and a column, tested in test/season and test/analysis. */
const ofFiles = ['readSeason', 'analyse', 'renderReport', 'questions', 'NAMED_INCOMPATIBLE', 'seedList'];
/** They take a plan that `analyse` has made: tested in test/decisions. */
const ofPlans = ['crossingSheetCsv', 'sheetOf', 'mixOf', 'planWithoutVials'];

/** Names whose line of the door passes on words, figures or pages. */
async function namesAbove(): Promise<ReadonlySet<string>> {
  const lines = readFileSync(new URL('../lib/index.ts', import.meta.url), 'utf8');
  const files = [...lines.matchAll(/from '(\.\/(?:words|charts|notebook|command|season)\/[^']+)'/g)];
  const modules = await Promise.all(
    files.map(([, file]) => import(new URL(`../lib/${file!}`, import.meta.url).href) as Promise<object>),
  );
  return new Set(modules.flatMap((module) => Object.keys(module)));
}

describe('the matrix', () => {
  it('has a row for every public function that takes numbers', async () => {
    const above = await namesAbove();
    const others = [...ofFiles, ...ofPlans];
    const rest = [...exported.keys()].filter((name) => !above.has(name) && !others.includes(name));
    const rows = [...numbersIn.keys(), ...structured.keys(), ...ofFitsOnly];
    expect(rest.filter((name) => !rows.includes(name))).toEqual([]);
    expect(rows.filter((name) => !exported.has(name))).toEqual([]);
  });
});

function expectRefused(name: string, what: string, make: () => unknown, message = /must|needs/): void {
  let thrown: unknown = null;
  try {
    make();
  } catch (error) {
    thrown = error;
  }
  expect(
    thrown instanceof RangeError || thrown instanceof TypeError,
    `${name}, ${what}: ${String(thrown)}`,
  ).toBe(true);
  const text = (thrown as Error).message;
  expect(text, what).toMatch(new RegExp(`^${name}: `));
  expect(text, what).toMatch(message);
  expect(text, what).not.toMatch(/undefined|\[object/);
}

describe.each([...numbersIn])('%s', (name, { args, kinds, level }) => {
  it('answers a good call, and names argument, rule and value of a bad one', () => {
    expectFinite(call(name, args), name);
    kinds.forEach((kind, k) => {
      for (const bad of refused[kind]) {
        const wrong = args.map((value, i) => (i === k ? bad : value));
        const value = typeof bad === 'string' ? `"${bad}"` : String(bad).replace('1000000', '1000000');
        expectRefused(name, `argument ${k + 1} = ${String(bad)}`, () => call(name, wrong));
        expect(() => call(name, wrong)).toThrow(`got ${value}`);
      }
    });
    for (const bad of level ? [0, 1, -1, 1.5, Number.NaN] : []) {
      expectRefused(name, `level ${bad}`, () => call(name, [...args, { level: bad }]), /level must be .*got/);
    }
  });
});

describe.each([...structured])('%s', (name, refusals) => {
  it.each(refusals)('refuses %s', (what, make, message) => {
    expectRefused(name, what, make, message);
  });
});

/** No number within may be NaN or infinite; null is how something unknown is said. */
function expectFinite(value: unknown, path: string): void {
  if (typeof value === 'number') {
    expect(Number.isFinite(value), `${path} is ${value}`).toBe(true);
  } else if (value instanceof Map) {
    for (const [key, part] of value) expectFinite(part, `${path}.${String(key)}`);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, part] of Object.entries(value)) expectFinite(part, `${path}.${key}`);
  }
}

/** Data that are extreme, but no mistake of the caller. */
const extremes: ReadonlyMap<string, typeof spec> = new Map([
  ['nothing took', { ...spec, successes: [0, 0, 0, 0, 0, 0] }],
  ['everything took', { ...spec, successes: [...spec.trials] }],
  ['one column separates', { ...spec, successes: [0, 0, 0, 6, 4, 4] }],
  ['a million flowers a row', { ...spec, trials: spec.trials.map(() => 1_000_000) }],
  ['one flower a row', { ...spec, successes: [1, 0, 1, 0, 1, 0], trials: [1, 1, 1, 1, 1, 1] }],
]);
const answers: ReadonlyMap<string, (design: typeof spec) => unknown> = new Map<
  string,
  (design: typeof spec) => unknown
>([
  ['waldIntervals', (design) => door.waldIntervals(door.logistic(design))],
  ['profileIntervals', (design) => door.profileIntervals(door.logistic(design))],
  ["Firth's profileIntervals", (design) => door.profileIntervals(door.logistic(design, { method: 'firth' }))],
  ['likelihoodRatio', (design) => door.likelihoodRatio(door.logistic(design), { drop: ['age'] })],
  ['aic', (design) => door.aic(door.logistic(design))],
  ['predictAt', (design) => door.predictAt(door.logistic(design), [{ age: 1 }])],
  ['compareAt', (design) => door.compareAt(door.logistic(design), [{}, { stored: 1 }], { adjust: 'tukey' })],
  [
    'standardise',
    (design) => door.standardise(door.logistic(design), { set: [{ stored: 0 }, { stored: 1 }] }),
  ],
  ['doseAt', (design) => door.doseAt(door.logistic(design), 0.5, { column: 'age' })],
  ['leaveOneOut', (design) => door.leaveOneOut(door.logistic(design, { method: 'firth' }))],
  [
    'correctIntercept',
    (design) => door.correctIntercept(door.logistic(design, { method: 'firth' }))?.coefficients,
  ],
  ['auc', (design) => door.auc(door.logistic(design, { method: 'firth' }))],
  ['brier', (design) => door.brier(door.logistic(design, { method: 'firth' }))],
  ['hosmerLemeshow', (design) => door.hosmerLemeshow(door.logistic(design, { method: 'firth' }))],
  ['clusterRobust', (design) => door.clusterRobust(door.logistic(design), { cluster: 'plant' })],
  [
    'crossValidate',
    (design) =>
      door.crossValidate(door.logistic(design, { method: 'firth' }), { folds: design.groups.plant }),
  ],
  ['mixedLogistic', (design) => door.waldIntervals(door.mixedLogistic(design))],
  [
    'conditionalLogistic',
    (design) => door.waldIntervals(door.conditionalLogistic({ ...design, intercept: false })),
  ],
  ['betaBinomial', (design) => door.waldIntervals(door.betaBinomial(design))],
]);

describe.each([...answers])('%s on extreme data', (name, answer) => {
  it.each([...extremes])('says something finite, or null with its reason: %s', (what, design) => {
    const result = answer(design);
    expectFinite(result, `${name}, ${what}`);
  });
});

describe('intervals and tests on extreme counts', () => {
  const corners = [
    [0, 1],
    [1, 1],
    [0, 1_000_000],
    [1_000_000, 1_000_000],
    [1, 1_000_000],
  ] as const;
  it.each([...numbersIn].filter(([, row]) => row === oneSample))(
    '%s is finite, ordered and within 0 and 1',
    (name) => {
      for (const [x, n] of corners) {
        for (const level of [0.5, 0.95, 0.999999]) {
          const { estimate, lower, upper } = call(name, [x, n, { level }]) as Record<string, number>;
          expect(
            lower! >= 0 && lower! <= estimate! && estimate! <= upper! && upper! <= 1,
            `${name} ${x} of ${n}`,
          ).toBe(true);
        }
      }
    },
  );
  it.each([...numbersIn].filter(([, row]) => row.kinds === twoSample.kinds))(
    '%s is finite or says why not',
    (name) => {
      for (const [x1, n1] of corners)
        for (const [x2, n2] of corners)
          expectFinite(call(name, [x1, n1, x2, n2]), `${name} ${x1}/${n1}, ${x2}/${n2}`);
    },
  );
  it('tables without a group, an outcome or anything say so', () => {
    for (const cells of [
      [
        [0, 0],
        [0, 0],
      ],
      [
        [3, 2],
        [0, 0],
      ],
      [
        [3, 0],
        [4, 0],
      ],
      [
        [0, 3],
        [0, 4],
      ],
      [
        [1_000_000, 0],
        [0, 1_000_000],
      ],
    ]) {
      expectFinite(door.mantelHaenszel([cells as never]), JSON.stringify(cells));
      expectFinite(door.breslowDay([cells as never]), JSON.stringify(cells));
    }
  });
  it('counts that are constant have a fit or say so', () => {
    for (const value of [0, 1, 1_000_000]) {
      const same = { counts: [value, value, value, value], columns: { age: [0, 1, 2, 3] } };
      expectFinite(door.waldIntervals(door.negativeBinomial(same)), `${value} each`);
      if (value === 0) continue;
      expectFinite(door.waldIntervals(door.zeroTruncatedPoisson(same)), `${value} each`);
      expectFinite(door.waldIntervals(door.zeroTruncatedNegativeBinomial(same)), `${value} each`);
    }
  });
});
