import { describe, expect, it } from 'vitest';
import { aic } from '../../lib/regression/aic.ts';
import type { DesignSpec } from '../../lib/regression/design.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { type MixedFit, mixedLogistic } from '../../lib/regression/mixed-logistic.ts';
import { waldIntervals } from '../../lib/regression/terms.ts';
import { climb } from './full-matrix-laplace.ts';
import {
  byTerm,
  expectCovariance,
  expectReference,
  formulaDesign,
  type Levels,
  numbers,
  type ReferenceCase,
  readCases,
  readTable,
  type Table,
  texts,
} from './reference-cases.ts';

function groupsOf(table: Table, names: readonly string[]): ReadonlyMap<string, readonly string[]> {
  return new Map(names.map((name) => [name, texts(table, name)]));
}

/** `y ~ a + b + (1 | g)` without its random part. */
function mixedDesign({ input }: ReferenceCase): DesignSpec {
  const table = readTable(input.data as string);
  const fixed = (input.formula as string).replace(/\s*\+\s*\(1 \| \w+\)/g, '');
  const { levels } = input.design as { levels: Levels };
  return {
    ...formulaDesign(table, fixed, levels),
    groups: groupsOf(table, input.random_intercepts as string[]),
  };
}

const day = (date: string): number => Date.parse(`${date}T00:00:00Z`) / 86_400_000;

/** fruit ~ storage + log1p(age_days) on the flowers with an outcome and an age, as the notes of the cases say. */
function seasonDesign({ input }: ReferenceCase): DesignSpec {
  const whole = readTable(input.data as string);
  const used = texts(whole, 'outcome')
    .map((outcome, i) => ({ i, known: outcome === 'fruit' || outcome === 'failed' }))
    .filter(({ i, known }) => known && texts(whole, 'pollen_collected')[i] !== '')
    .map(({ i }) => i);
  const column = (name: string) => used.map((i) => texts(whole, name)[i]!);
  const storage = column('storage');
  const collected = column('pollen_collected');
  const mother = column('mother');
  const father = column('father');
  const labels = new Map([
    ['mother', mother],
    ['father', father],
    ['pair', mother.map((name, i) => `${name} x ${father[i]!}`)],
  ]);
  return {
    successes: column('outcome').map((outcome) => (outcome === 'fruit' ? 1 : 0)),
    columns: {
      storagefridge: storage.map((method) => (method === 'fridge' ? 1 : 0)),
      storagefreezer: storage.map((method) => (method === 'freezer' ? 1 : 0)),
      log1p_age: column('date_pollinated').map((date, i) => Math.log1p(day(date) - day(collected[i]!))),
    },
    groups: new Map((input.random_intercepts as string[]).map((name) => [name, labels.get(name)!])),
  };
}

type Conditional = { readonly [group: string]: { level: string[]; mode: number[]; sd: number[] } };

/** Expected conditional modes: in the case itself, or in the table it names. */
function expectedModes({ expected }: ReferenceCase): Conditional {
  const file = expected.conditional_csv as string | undefined;
  if (file === undefined) return expected.conditional as Conditional;
  const table = readTable(file);
  const of = (name: string) => texts(table, name);
  const [mode, sd] = [...table.keys()].slice(2);
  const modes: Record<string, { level: string[]; mode: number[]; sd: number[] }> = {};
  of('factor').forEach((group, i) => {
    modes[group] ??= { level: [], mode: [], sd: [] };
    modes[group].level.push(of('level')[i]!);
    modes[group].mode.push(numbers(table, mode!)[i]!);
    modes[group].sd.push(numbers(table, sd!)[i]!);
  });
  return modes;
}

function expectFit(reference: ReferenceCase, fit: MixedFit): void {
  const { expected } = reference;
  const check = (key: string, actual: unknown) => expectReference(reference, key, actual, expected[key]);
  expect(fit.convergence.settled).toBe(true);
  check('loglik_laplace', fit.logLik);
  if ('aic' in expected) check('aic', aic(fit).estimate);
  check(
    'fixef',
    byTerm(fit.terms, (t) => t.estimate),
  );
  check(
    'se',
    byTerm(fit.terms, (t) => t.se),
  );
  check(
    'se_given_variances',
    byTerm(fit.terms, (t) => t.seGivenVariances),
  );
  check('random_sd', new Map(fit.variances.map(({ group, sd }) => [group, sd])));
  expect(fit.singular).toEqual(expected.singular_factors);
  for (const [group, { level, mode, sd }] of Object.entries(expectedModes(reference))) {
    const effects = new Map(
      fit.effects.filter((effect) => effect.group === group).map((effect) => [effect.level, effect]),
    );
    expect(effects.size).toBe(level.length);
    const inOrder = level.map((name) => effects.get(name)!);
    expectReference(
      reference,
      'conditional',
      inOrder.map((effect) => effect.estimate),
      mode,
    );
    expectReference(
      reference,
      'conditional',
      inOrder.map((effect) => effect.se),
      sd,
    );
  }
}

describe('mixedLogistic', () => {
  // test/reference/e_glmm.json: TMB's exact gradients polished by Newton, and R's own Laplace, agreeing to 4e-12.
  for (const reference of readCases('e_glmm.json')) {
    if (reference.expected.loglik_laplace === undefined) continue;
    it(`agrees with two Laplace fits in R on ${reference.id}`, () => {
      const fit = mixedLogistic(mixedDesign(reference));
      expectFit(reference, fit);
      const sdSe = new Map(fit.variances.map((variance) => [variance.group, variance.sdSe]));
      expectReference(reference, 'random_sd_se_delta', sdSe, reference.expected.random_sd_se_delta);
    });

    it(`agrees with R on tests, covariance and shares of variance of ${reference.id}`, () => {
      const { expected } = reference;
      const design = mixedDesign(reference);
      const fit = mixedLogistic(design);
      const check = (key: string, actual: unknown) => expectReference(reference, key, actual, expected[key]);
      const wald = waldIntervals(fit);
      check(
        'z',
        byTerm(wald, (t) => t.estimate! / t.se!),
      );
      check(
        'p_wald',
        byTerm(wald, (t) => t.p),
      );
      expectCovariance(fit.covariance, expected.vcov_fixef);
      check('random_variance', new Map(fit.variances.map(({ group, variance }) => [group, variance])));
      check('n_random', new Map(fit.variances.map(({ group, levels }) => [group, levels])));
      check('deviance_minus2ll', -2 * fit.logLik);
      check('singular', fit.singular.length > 0);
      // Share of each group in the variance of the latent response, whose logistic error has variance π² / 3.
      const whole = fit.variances.reduce((sum, { variance }) => sum + variance, Math.PI ** 2 / 3);
      check('icc_latent', new Map(fit.variances.map(({ group, variance }) => [group, variance / whole])));
      const names = fit.variances.map(({ group }) => group);
      const without = (dropped: string) => {
        const groups = names.filter((name) => name !== dropped);
        return groups.length === 0 ? logistic(design).logLik : mixedLogistic(design, { groups }).logLik;
      };
      for (const [group, { loglik_without, lr }] of Object.entries(
        expected.drop_random as Record<string, { loglik_without: number; lr: number }>,
      )) {
        expectReference(reference, 'drop_random', without(group), loglik_without);
        expect(Math.abs(2 * (fit.logLik - without(group)) - lr)).toBeLessThan(1e-5 + 1e-3 * lr);
      }
    });
  }

  // test/reference/k_seasons.json: the same two fits on whole seasons.
  for (const reference of readCases('k_seasons.json').filter(({ id }) => id.includes('-glmm'))) {
    it(`agrees with two Laplace fits in R on ${reference.id}`, () => {
      expectFit(reference, mixedLogistic(seasonDesign(reference)));
    });
  }
});

describe('mixedLogistic against quadrature', () => {
  /** Log-likelihood with one factor by the trapezoid rule on a fine grid, its constants included. */
  function quadrature(
    design: DesignSpec,
    labels: readonly string[],
    fixed: readonly number[],
    sd: number,
  ): number {
    const points = Array.from({ length: 801 }, (_, k) => -8 + k / 50);
    const trials = Array.from(design.trials ?? labels.map(() => 1));
    let total = 0;
    for (const level of new Set(labels)) {
      const rows = [...labels.keys()].filter((i) => labels[i] === level);
      const integral = points.reduce((sum, z) => {
        const logLik = rows.reduce((part, i) => {
          const eta = fixed[i]! + sd * z;
          const m = trials[i]!;
          return (
            part +
            design.successes[i]! * eta -
            m * Math.log1p(Math.exp(eta)) +
            logChoose(m, design.successes[i]!)
          );
        }, 0);
        return sum + Math.exp(logLik - (z * z) / 2) / Math.sqrt(2 * Math.PI) / 50;
      }, 0);
      total += Math.log(integral);
    }
    return total;
  }

  function logChoose(n: number, k: number): number {
    let sum = 0;
    for (let j = 1; j <= k; j += 1) sum += Math.log((n - k + j) / j);
    return sum;
  }

  interface Quadrature {
    readonly nAGQ25: {
      readonly fixef: Readonly<Record<string, number>>;
      readonly random_sd: number;
      readonly loglik: number;
    };
  }

  function linear({ design }: MixedFit, coefficients: readonly number[]): number[] {
    return Array.from({ length: design.n }, (_, i) =>
      coefficients.reduce((sum, beta, j) => sum + beta * design.columns[j]![i]!, 0),
    );
  }

  // test/reference/e_glmm.json, `agq`: adaptive Gauss–Hermite quadrature with 25 points in R.
  it('comes near the maximum likelihood fit of the Orobanche plates: −.548, .097, 1.337, −.810, sd .236', () => {
    // Crowder (1978) Applied Statistics 27, 34–37, Table 3; with a plate effect as in Breslow & Clayton (1993), by
    // quadrature. Laplace's sd is a little smaller.
    const successes = [10, 23, 23, 26, 17, 5, 53, 55, 32, 46, 10, 8, 10, 8, 23, 0, 3, 22, 15, 32, 3];
    const trials = [39, 62, 81, 51, 39, 6, 74, 72, 51, 79, 13, 16, 30, 28, 45, 4, 12, 41, 30, 51, 7];
    const plates = successes.map((_, i) => i);
    const younger = plates.map((i) => (i >= 11 ? 1 : 0));
    const cucumber = plates.map((i) => ((i >= 5 && i < 11) || i >= 16 ? 1 : 0));
    const both = plates.map((i) => younger[i]! * cucumber[i]!);
    const design = {
      successes,
      trials,
      columns: { younger, cucumber, both },
      groups: { plate: plates.map(String) },
    };
    const { terms, variances } = mixedLogistic(design);
    const published = [-0.548, 0.097, 1.337, -0.81];
    terms.forEach(({ estimate }, j) => {
      expect(Math.abs(estimate - published[j]!)).toBeLessThan(0.001);
    });
    const { sd } = variances[0]!;
    expect(sd).toBeLessThan(0.236);
    expect(sd).toBeGreaterThan(0.99 * 0.236);
  });

  it("comes near the exact fit where herds have many animals: quadrature's sd is a little larger", () => {
    const reference = readCases('e_glmm.json').find(({ id }) => id === 'e-cbpp')!;
    const design = mixedDesign(reference);
    const fit = mixedLogistic(design);
    const { sd } = fit.variances[0]!;
    const { nAGQ25: exact } = reference.expected.agq as unknown as Quadrature;
    expect(sd).toBeLessThan(exact.random_sd);
    expect(sd / exact.random_sd).toBeGreaterThan(0.98);
    const herds = texts(readTable('e_cbpp.csv'), 'herd');
    const best = quadrature(design, herds, linear(fit, Object.values(exact.fixef)), exact.random_sd);
    expect(best).toBeCloseTo(exact.loglik, 5);
    // Laplace's value at its own estimates, against the integral there.
    expect(
      Math.abs(quadrature(design, herds, linear(fit, [...fit.coefficients]), sd) - fit.logLik),
    ).toBeLessThan(0.05);
  });

  // Forty plants of two flowers: 12 with none, 13 with one, 15 with two fruits; the exact fit is by quadrature here.
  it('makes a standard deviation too small where plants have two flowers each, as its documentation says', () => {
    const fruits = [
      ...new Array<number>(12).fill(0),
      ...new Array<number>(13).fill(1),
      ...new Array<number>(15).fill(2),
    ];
    const labels = fruits.map((_, a) => `plant ${a}`);
    const design = { successes: fruits, trials: fruits.map(() => 2), columns: {}, groups: { plant: labels } };
    const { variances } = mixedLogistic(design);
    const [, exact] = climb(
      ([intercept, sd]) =>
        quadrature(
          design,
          labels,
          labels.map(() => intercept!),
          sd!,
        ),
      [0, 1],
    );
    expect(variances[0]!.sd).toBeGreaterThan(0.5 * Math.abs(exact!));
    expect(variances[0]!.sd).toBeLessThan(0.95 * Math.abs(exact!));
  });
});

describe('mixedLogistic on data that cannot tell', () => {
  const plants = ['a', 'a', 'b', 'b', 'c', 'c'];
  const successes = [5, 4, 1, 2, 3, 6];
  const trials = [8, 8, 8, 8, 8, 8];
  const columns = { stored: [0, 1, 0, 1, 0, 1] };

  it('holds a group at 0 that has one level, one trial a level, or the levels of another', () => {
    const design = {
      successes: [1, 0, 1, 1, 0, 0, 1, 0],
      columns: {},
      groups: {
        grower: new Array<string>(8).fill('one'),
        tag: [1, 2, 3, 4, 5, 6, 7, 8],
        plant: ['a', 'a', 'b', 'b', 'c', 'c', 'd', 'd'],
        again: [9, 9, 8, 8, 7, 7, 6, 6],
      },
    };
    const fit = mixedLogistic(design);
    expect(fit.unidentified).toEqual(['grower', 'tag', 'again']);
    expect(
      fit.variances.map(({ variance }) => variance).filter((variance) => variance > 0).length,
    ).toBeLessThan(2);
    expect(fit.effects.find(({ group }) => group === 'tag')).toEqual({
      group: 'tag',
      level: '1',
      estimate: 0,
      se: 0,
    });
    expect(fit.logLik).toBeCloseTo(mixedLogistic(design, { groups: ['plant'] }).logLik, 10);
  });

  it('is the fit without random effects where all groups are held at 0', () => {
    const grower = plants.map(() => 'one');
    const fit = mixedLogistic({ successes, trials, columns, groups: { grower } });
    const fixed = logistic({ successes, trials, columns });
    expect(fit.logLik).toBeCloseTo(fixed.logLik, 9);
    fit.terms.forEach(({ estimate, se, seGivenVariances }, j) => {
      expect(estimate).toBeCloseTo(fixed.terms[j]!.estimate, 7);
      expect(se).toBeCloseTo(fixed.terms[j]!.se, 5);
      expect(seGivenVariances).toBeCloseTo(fixed.terms[j]!.se, 7);
    });
  });

  it('does not settle where every flower took, none did, or a column separates them', () => {
    const groups = { plant: plants };
    for (const outcome of [trials, trials.map(() => 0)]) {
      const fit = mixedLogistic({ successes: outcome, trials, columns: {}, groups });
      expect(fit.convergence).toMatchObject({ settled: false, reason: 'separated' });
      expect(fit.variances).toEqual([]);
    }
    const fit = mixedLogistic({ successes: [8, 0, 8, 0, 8, 0], trials, columns, groups });
    expect(fit.convergence.settled).toBe(false);
    expect(fit.separatedBy).toEqual(['stored']);
  });

  it('gives a row labelled null no effect', () => {
    const design = { successes, trials, columns, groups: { plant: ['a', 'a', 'b', 'b', null, null] } };
    const fit = mixedLogistic(design);
    expect(fit.effects.map(({ level }) => level)).toEqual(['a', 'b']);
    const [intercept, stored] = fit.coefficients;
    expect(fit.fitted[4]).toBeCloseTo(1 / (1 + Math.exp(-intercept!)), 12);
    expect(fit.fitted[5]).toBeCloseTo(1 / (1 + Math.exp(-intercept! - stored!)), 12);
  });

  it('does not depend on the order of rows, nor on joining flowers into rows', () => {
    const groups = { plant: plants };
    const fit = mixedLogistic({ successes, trials, columns, groups });
    const flowers = plants.flatMap((plant, i) =>
      Array.from({ length: 8 }, (_, k) => ({
        plant,
        stored: columns.stored[i]!,
        fruit: k < successes[i]! ? 1 : 0,
      })),
    );
    flowers.reverse();
    const single = mixedLogistic({
      successes: flowers.map(({ fruit }) => fruit),
      columns: { stored: flowers.map(({ stored }) => stored) },
      groups: { plant: flowers.map(({ plant }) => plant) },
    });
    expect(single.variances[0]!.sd).toBeCloseTo(fit.variances[0]!.sd, 6);
    expect(single.coefficients[1]).toBeCloseTo(fit.coefficients[1]!, 6);
    expect(single.fitted[0]).toBeCloseTo(fit.fitted[5]!, 7);
  });

  it('keeps estimates when a column is given in other units', () => {
    const groups = { plant: plants };
    const days = columns.stored.map((stored, i) => stored * (i + 1));
    const fit = mixedLogistic({ successes, trials, columns: { days }, groups });
    const scaled = mixedLogistic({ successes, trials, columns: { days: days.map((d) => d * 1e5) }, groups });
    expect(scaled.coefficients[1]! * 1e5).toBeCloseTo(fit.coefficients[1]!, 6);
    expect(scaled.variances[0]!.sd).toBeCloseTo(fit.variances[0]!.sd, 6);
  });

  it('names what is wrong with its arguments', () => {
    const design = { successes, trials, columns, groups: { plant: plants } };
    expect(() => mixedLogistic({ ...design, groups: {} })).toThrow(
      'mixedLogistic: groups must hold at least one group, got none',
    );
    expect(() => mixedLogistic(design, { groups: ['pair'] })).toThrow(
      'mixedLogistic: groups must be names of groups of the design, got pair',
    );
    expect(() => mixedLogistic({ ...design, columns: {}, intercept: false })).toThrow(
      'mixedLogistic: columns must hold at least one column or the intercept, got none',
    );
    expect(() => logistic({ ...design, groups: { plant: [null, 'a', 'a', 'b', 'b', 'b'] } })).toThrow(
      'logistic: group plant must have a label in each row, got null in row 1',
    );
  });
});
