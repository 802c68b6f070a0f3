import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aic } from '../../lib/regression/aic.ts';
import { columnsAgain, designColumns, type TypedDesignSpec } from '../../lib/regression/design-columns.ts';
import type { DesignTerm, SimpleTerm } from '../../lib/regression/design-terms.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { standardise } from '../../lib/regression/standardise.ts';

interface Model {
  readonly id: string;
  readonly names: readonly string[];
  readonly rows: readonly (readonly number[])[];
  readonly dropped: readonly string[];
  readonly coefficients: Readonly<Record<string, number>>;
  readonly logLik: number;
  readonly aic: number;
}

// test/reference/design-columns.json: R 4.2.2, model.matrix and glm, by scripts/reference/design-columns.R.
const reference = JSON.parse(
  readFileSync(new URL('../reference/design-columns.json', import.meta.url), 'utf8'),
) as {
  tolerance: { columns: number; coefficients: number; aic: number };
  data: { storage: string[]; mother: string[]; age: number[]; weight: number[]; n: number[]; y: number[] };
  models: Model[];
};
const { storage, mother, age, weight, n, y } = reference.data;

const factor = (variable: string): SimpleTerm => ({ kind: 'factor', variable });
const numeric = (variable: string): SimpleTerm => ({ kind: 'numeric', variable });
const crossed = (...of: SimpleTerm[]): DesignTerm => ({ kind: 'interaction', of });
const logAge: SimpleTerm = { kind: 'log1p', variable: 'age' };
const curve: SimpleTerm = { kind: 'natural-spline', variable: 'weight', knots: [1, 2.5], boundary: [0, 4] };
const [s, m, w] = [factor('storage'), factor('mother'), numeric('weight')];

const season: TypedDesignSpec = {
  successes: y,
  trials: n,
  variables: { storage, mother, age, weight },
  terms: [s],
  levels: { storage: ['fresh', 'room', 'frozen'] },
};
const terms = new Map<string, readonly DesignTerm[]>([
  ['factors', [s, m]],
  ['interaction', [s, w, crossed(s, w)]],
  ['two factors', [s, m, crossed(s, m)]],
  ['three', [s, w, m, crossed(s, w), crossed(s, m), crossed(w, m), crossed(s, w, m)]],
  ['log', [s, logAge]],
  ['within', [s, { kind: 'within', factor: 'storage', term: logAge }]],
  ['spline', [s, curve]],
  ['no intercept', [s, w]],
]);
/** R names a spline's columns by its call; ours are short. */
const ours = (name: string) => name.replace(/^ns\((\w+), .*\)(\d+)$/, 'ns($1)$2');
const made = (id: string) =>
  designColumns({ ...season, terms: terms.get(id)!, intercept: id !== 'no intercept' });

describe('designColumns', () => {
  it.each(reference.models.map((model) => [model.id, model] as const))(
    "has the columns, fit and AIC of R's model.matrix and glm: %s",
    (id, model) => {
      const { design, collinear } = made(id);
      const columns = design.columns as ReadonlyMap<string, Float64Array>;
      const names = model.names.map(ours);
      const dropped = model.dropped.map(ours);
      expect(collinear.map(({ column }) => column)).toEqual(dropped);
      expect([...columns.keys()]).toEqual(
        names.filter((name) => name !== '(Intercept)' && !dropped.includes(name)),
      );
      model.rows.forEach((row, k) => {
        const i = [0, 1, 2, 29, 59][k]!;
        names.forEach((name, j) => {
          const value = columns.get(name)?.[i];
          if (value !== undefined)
            expect(Math.abs(value - row[j]!), `${name} ${i}`).toBeLessThanOrEqual(1e-12);
        });
      });
      const fit = logistic(design);
      for (const { term, estimate } of fit.terms) {
        const wanted = Object.entries(model.coefficients).find(([name]) => ours(name) === term)![1];
        expect(Math.abs(estimate - wanted), term).toBeLessThanOrEqual(1e-8 * Math.max(1, Math.abs(wanted)));
      }
      expect(Math.abs(fit.logLik - model.logLik)).toBeLessThanOrEqual(1e-9 * Math.abs(model.logLik));
      expect(Math.abs(aic(fit).estimate! - model.aic)).toBeLessThanOrEqual(1e-9 * model.aic);
    },
  );

  it('names the columns that a collinear one depends on', () => {
    // Fresh pollen has age 0, so its slope is a column of zeros; a copy depends on what it copies.
    expect(made('within').collinear).toEqual([{ column: 'storagefresh:log1p(age)', on: [] }]);
    const again = designColumns({
      ...season,
      variables: { storage, weight, grams: weight.map((value) => 1000 * value + 5) },
      terms: [s, w, numeric('grams')],
    });
    expect(again.collinear).toEqual([{ column: 'grams', on: ['(Intercept)', 'weight'] }]);
    expect(logistic(again.design).convergence.settled).toBe(true);
  });

  it('leaves out stated levels without a row and names them; the next is then the reference', () => {
    const { design, emptyLevels, levels } = designColumns({
      successes: [1, 0, 1],
      variables: { storage: ['room', 'frozen', 'frozen'] },
      terms: [s],
      levels: { storage: ['fresh', 'room', 'refrigerated', 'frozen'] },
    });
    expect(emptyLevels).toEqual([
      { variable: 'storage', level: 'fresh' },
      { variable: 'storage', level: 'refrigerated' },
    ]);
    expect(levels).toEqual(new Map([['storage', ['room', 'frozen']]]));
    expect(design.columns).toEqual(new Map([['storagefrozen', Float64Array.of(0, 1, 1)]]));
  });

  it('lists rows that miss something where they are to be left out, and refuses them otherwise', () => {
    const holed: TypedDesignSpec = {
      successes: [1, 0, 1, 1],
      trials: [1, 2, 3, 4],
      offset: [0, 1, 2, 3],
      groups: { pair: ['a', 'a', null, 'b'] },
      variables: new Map<string, readonly (number | string | null)[]>([
        ['__proto__', [3, null, 5, 6]],
        ['unused', [null, null, null, null]],
      ]),
      terms: [numeric('__proto__')],
    };
    expect(designColumns(holed, { missing: 'leave-out' })).toMatchObject({
      leftOut: [
        { row: 2, variable: '__proto__' },
        { row: 3, variable: 'pair' },
      ],
      design: {
        successes: [1, 1],
        trials: [1, 4],
        offset: [0, 3],
        groups: new Map([['pair', ['a', 'b']]]),
        columns: new Map([['__proto__', Float64Array.of(3, 6)]]),
      },
    });
    expect(() => designColumns(holed)).toThrow(
      'designColumns: __proto__ must have a value in each row, got none in row 2',
    );
    expect(() =>
      designColumns(
        { successes: [1], variables: { age: [null] }, terms: [numeric('age')] },
        { missing: 'leave-out' },
      ),
    ).toThrow('designColumns: a row must have all variables, got none that has');
  });

  it('does not change with the order of rows, but for the rows', () => {
    const rows = fc.shuffledSubarray([...y.keys()], { minLength: y.length });
    fc.assert(
      fc.property(rows, (order) => {
        const pick = <T>(values: readonly T[]) => order.map((i) => values[i]!);
        const shuffled = designColumns({
          successes: pick(y),
          trials: pick(n),
          variables: { storage: pick(storage), mother: pick(mother), weight: pick(weight) },
          terms: [m, s, curve],
        });
        const straight = designColumns({ ...season, terms: [m, s, curve], levels: {} });
        for (const [name, column] of straight.design.columns as ReadonlyMap<string, Float64Array>) {
          expect((shuffled.design.columns as ReadonlyMap<string, Float64Array>).get(name)).toEqual(
            Float64Array.from(pick([...column])),
          );
        }
      }),
      { numRuns: 20 },
    );
  });

  it('says what is wrong: which argument, which rule, which value', () => {
    const refuses = (change: Partial<TypedDesignSpec>, message: string) =>
      expect(() => designColumns({ ...season, ...change })).toThrow(`designColumns: ${message}`);
    refuses({ successes: [] }, 'successes must have at least one entry, got none');
    refuses({ trials: [1] }, 'trials must have 60 entries as successes has, got 1');
    refuses({ terms: [w, w] }, 'terms must differ, got weight twice');
    refuses({ terms: [crossed(s)] }, 'an interaction must be of two terms or more, got 1');
    refuses(
      { terms: [s, crossed(s, w)] },
      'terms must hold weight where they hold the interaction storage:weight, got storage, storage:weight',
    );
    refuses(
      { terms: [numeric('wight')] },
      'terms must name variables (storage, mother, age, weight), got wight',
    );
    refuses(
      { terms: [numeric('storage')] },
      'variable storage must hold finite numbers, got "fresh" in row 1',
    );
    refuses(
      { variables: { age: age.with(4, Number.NaN) }, terms: [logAge] },
      'variable age must hold finite numbers, got NaN in row 5',
    );
    refuses(
      { variables: { age: age.with(2, -1) }, terms: [logAge] },
      'variable age must be above -1 for its logarithm, got -1 in row 3',
    );
    refuses({ variables: { age: [1, 2] }, terms: [logAge] }, 'variable age must have 60 entries, got 2');
    refuses(
      { levels: { storage: ['fresh', 'frozen'] } },
      'factor storage must have one of its levels (fresh, frozen), got room in row 3',
    );
    refuses(
      { levels: { storage: ['fresh', 'fresh', 'room', 'frozen'] } },
      'levels of storage must differ, got fresh, fresh, room, frozen',
    );
    refuses(
      { variables: { storage: storage.map(() => 'fresh') } },
      'factor storage must have rows of two levels, got fresh only',
    );
    refuses(
      { variables: { a: storage, aroom: weight }, terms: [factor('a'), numeric('aroom')] },
      'columns must have names of their own, got aroom twice',
    );
    refuses(
      { terms: [{ kind: 'natural-spline', variable: 'weight', knots: [9] }] },
      'knots of variable weight must increase strictly between 0 and 4, got 9',
    );
    expect(() => designColumns(season, { missing: 'drop' as 'refuse' })).toThrow(
      'designColumns: missing must be one of refuse, leave-out, got "drop"',
    );
  });
});

describe('columnsAgain', () => {
  it('makes the same columns of the same values, and of others what standardise can set', () => {
    const typed = made('spline');
    expect(columnsAgain(typed, season.variables)).toEqual(typed.design.columns);
    const fit = logistic(typed.design);
    const setting = (method: string) => columnsAgain(typed, { storage: storage.map(() => method), weight });
    const { probabilities } = standardise(fit, { set: ['fresh', 'frozen'].map(setting) });
    // The slow way: a mean of the inverse logit over the rows, weighted by trials.
    const slow = (method: string) => {
      const columns = [...setting(method).values()];
      const terms = columns.map((column, j) => [column, fit.coefficients[j + 1]!] as const);
      const chance = (i: number) =>
        1 / (1 + Math.exp(-terms.reduce((eta, [column, b]) => eta + b * column[i]!, fit.coefficients[0]!)));
      const total = n.reduce((sum, each) => sum + each, 0);
      return n.reduce((sum, each, i) => sum + each * chance(i), 0) / total;
    };
    expect(probabilities[0]!.estimate).toBeCloseTo(slow('fresh'), 12);
    expect(probabilities[1]!.estimate).toBeCloseTo(slow('frozen'), 12);
  });

  it('keeps the boundary of the data, and leaves out what was collinear', () => {
    const open = designColumns({
      ...season,
      terms: [{ kind: 'natural-spline', variable: 'weight', knots: [2] }],
    });
    expect(open.terms).toMatchObject([{ boundary: [0, 4] }]);
    expect(columnsAgain(open, { weight: weight.slice(0, 3) })).toEqual(
      new Map(
        [...(open.design.columns as ReadonlyMap<string, Float64Array>)].map(([name, column]) => [
          name,
          column.slice(0, 3),
        ]),
      ),
    );
    expect([...columnsAgain(made('within'), { storage: ['room'], age: [3] }).keys()]).not.toContain(
      'storagefresh:log1p(age)',
    );
  });

  it('refuses levels and variables that the design does not know', () => {
    const typed = made('factors');
    expect(() => columnsAgain(typed, { storage: ['cellar'], mother: ['M1'] })).toThrow(
      'columnsAgain: factor storage must have one of its levels (fresh, room, frozen), got cellar in row 1',
    );
    expect(() => columnsAgain(typed, { storage: ['room'] })).toThrow(
      'columnsAgain: terms must name variables (storage), got mother',
    );
  });
});

describe('a design of factors with many levels', () => {
  // The oracle is the same fit of the columns written out.
  it('is fitted by its codes as by its columns, also after these were looked at or changed', () => {
    const rows = 400;
    const label = (name: string, k: number) =>
      Array.from({ length: rows }, (_, i) => `${name}${(i * k) % 17}`);
    const spec: TypedDesignSpec = {
      successes: Array.from({ length: rows }, (_, i) => ((i * i) % 7 < 3 ? 1 : 0)),
      variables: { plant: label('P', 5), donor: label('D', 3).map((d, i) => (i % 3 ? d : 'D0')) },
      terms: [factor('plant'), factor('donor')],
    };
    const { design, collinear } = designColumns(spec);
    expect(collinear).toEqual([]);
    const byCodes = logistic(design);
    const written = new Map([...(design.columns as ReadonlyMap<string, Float64Array>)]);
    expect(written.size).toBe(32);
    const byColumns = logistic({ successes: spec.successes, columns: written });
    expect(byCodes.terms.map(({ term }) => term)).toEqual(byColumns.terms.map(({ term }) => term));
    byCodes.terms.forEach(({ estimate, se }, j) => {
      expect(estimate).toBeCloseTo(byColumns.terms[j]!.estimate, 9);
      expect(se).toBeCloseTo(byColumns.terms[j]!.se, 9);
    });
    expect(logistic(design).logLik).toBeCloseTo(byCodes.logLik, 10);
    written.get('plantP3')!.fill(0);
    expect(() => logistic(design)).toThrow('plantP3');
  });

  it('loses the columns that follow from others, whose sources are codes', () => {
    const plant = Array.from({ length: 120 }, (_, i) => `P${i % 12}`);
    const half = plant.map((name) => (Number(name.slice(1)) < 6 ? 'low' : 'high'));
    const successes = plant.map((_, i) => ((i * i) % 5 < 2 ? 1 : 0));
    const { design, collinear } = designColumns({
      successes,
      variables: { plant, half },
      terms: [factor('plant'), factor('half')],
    });
    expect(collinear.map(({ column }) => column)).toEqual(['halflow']);
    expect((design.columns as ReadonlyMap<string, Float64Array>).has('halflow')).toBe(false);
    expect(logistic(design).terms).toHaveLength(12);
  });
});
