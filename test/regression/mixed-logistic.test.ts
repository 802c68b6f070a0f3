import { describe, expect, it } from 'vitest';
import type { DesignSpec } from '../../lib/regression/design.ts';
import { type MixedFit, mixedLogistic } from '../../lib/regression/mixed-logistic.ts';
import {
  byTerm,
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
  }

  // test/reference/k_seasons.json: the same two fits on whole seasons.
  for (const reference of readCases('k_seasons.json').filter(({ id }) => id.includes('-glmm'))) {
    it(`agrees with two Laplace fits in R on ${reference.id}`, () => {
      expectFit(reference, mixedLogistic(seasonDesign(reference)));
    });
  }
});
