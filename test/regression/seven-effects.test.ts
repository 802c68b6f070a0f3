/** Crossed random effects in any combination: seed parent, pollen parent, pair, vial, morning, season, grower. */

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type MixedFit, mixedLogistic } from '../../lib/regression/mixed-logistic.ts';
import { fullMatrixLaplace } from './full-matrix-laplace.ts';
import { numbers, readTable, texts } from './reference-cases.ts';

interface Case {
  readonly groups: readonly string[];
  readonly estimate: readonly number[];
  readonly se: readonly number[];
  readonly sd: Readonly<Record<string, number>>;
  readonly logLik: number;
  /** Conditional modes of the first group. */
  readonly levels: readonly string[];
  readonly modes: readonly number[];
  readonly modeErrors: readonly number[];
}

const { cases, tolerance, source } = JSON.parse(
  readFileSync(new URL('../reference/seven-effects.json', import.meta.url), 'utf8'),
) as { cases: readonly Case[]; tolerance: Record<string, number>; source: string };

const GROUPS = ['seedParent', 'pollenParent', 'pair', 'vial', 'morning', 'season', 'grower'] as const;
const table = readTable('seven-effects.csv');

const stored = numbers(table, 'stored');
const fruit = numbers(table, 'fruit');

function fitOf(groups: readonly string[]): MixedFit {
  return mixedLogistic({
    successes: fruit,
    trials: fruit.map(() => 1),
    columns: { stored },
    groups: Object.fromEntries(groups.map((group) => [group, texts(table, group)])),
  });
}

/** Rows of a few plants that were crossed often, each as six flowers with one to six fruits: no spread runs away. */
function groupedFit(groups: readonly string[]): MixedFit {
  const often = texts(table, 'pair').flatMap((pair, i) => (/^M[1-3] x F[1-2]$/.test(pair) ? [i] : []));
  return mixedLogistic({
    successes: often.map((i) => 1 + 3 * fruit[i]! + ((7 * i) % 3)),
    trials: often.map(() => 6),
    columns: { stored: often.map((i) => stored[i]!) },
    groups: Object.fromEntries(
      groups.map((group) => [group, often.map((i) => texts(table, group)[i]!)] as const),
    ),
  });
}

function expectNear(actual: readonly number[], wanted: readonly number[], within: number, what: string) {
  expect(actual.length, what).toBe(wanted.length);
  actual.forEach((value, i) => {
    expect(Math.abs(value - wanted[i]!), `${what} ${i}: ${value}, ${source}: ${wanted[i]}`).toBeLessThan(
      within,
    );
  });
}

describe('crossed effects', () => {
  it.each(cases.map((each) => [each.groups.join(', '), each] as const))(
    'agree with lme4 at a tight tolerance: %s',
    (_, { groups, levels, modes, modeErrors, ...wanted }) => {
      const fit = fitOf(groups);
      expect(fit.convergence.settled).toBe(true);
      expect(Math.abs(fit.logLik - wanted.logLik)).toBeLessThan(tolerance.logLik!);
      expectNear([...fit.coefficients], wanted.estimate, tolerance.estimate!, 'coefficient');
      expectNear(
        fit.terms.map(({ se }) => se),
        wanted.se,
        tolerance.se!,
        'se',
      );
      expectNear(
        fit.variances.map(({ sd }) => sd),
        groups.map((group) => wanted.sd[group]!),
        tolerance.sd!,
        'sd',
      );
      // Pairs do not vary beyond their parents in the first of these fits: said, not hidden.
      expect(fit.singular).toEqual(groups.filter((group) => wanted.sd[group] === 0));
      const first = new Map(fit.effects.filter(({ group }) => group === groups[0]).map((e) => [e.level, e]));
      const inOrder = levels.map((level) => first.get(level)!);
      expectNear(
        inOrder.map(({ estimate }) => estimate),
        modes,
        tolerance.modes!,
        'mode',
      );
      expectNear(
        inOrder.map(({ se }) => se),
        modeErrors,
        tolerance.modes!,
        'error of a mode',
      );
    },
  );

  it('are fitted in each of the 127 combinations, with the likelihood of full matrices', () => {
    for (let mask = 1; mask < 2 ** GROUPS.length; mask += 1) {
      const groups = GROUPS.filter((_, g) => (mask >> g) % 2 === 1);
      const fit = groupedFit(groups);
      expect(fit.convergence.settled, groups.join()).toBe(true);
      // A variance of 0 is no effect.
      const used = fit.variances.filter(({ sd }) => sd > 0);
      const factors = used.map(({ group }) => {
        const { codes, levels } = fit.design.groups.find(({ name }) => name === group)!;
        return { name: group, codes, size: levels.length };
      });
      const { successes, trials, columns, offset } = fit.design;
      const model = { successes, trials, columns, offset, factors };
      const slow = fullMatrixLaplace(
        model,
        [...fit.coefficients],
        used.map(({ sd }) => sd),
      );
      // The slow writing leaves out the binomial coefficients.
      const ways = successes.reduce((sum, y) => sum + Math.log([1, 6, 15, 20, 15, 6, 1][y]!), 0);
      expect(Math.abs(fit.logLik - slow - ways), groups.join()).toBeLessThan(1e-6);
    }
  });
});
