import { describe, expect, it } from 'vitest';
import { auc } from '../../lib/regression/auc.ts';
import { expectReference } from './reference-cases.ts';
import { diagnosticCase, diagnosticCases, diagnosticFit, marker } from './reference-diagnostics.ts';

describe('auc', () => {
  // test/reference/i_diagnostics.json: R 4.2.2 and pROC (aSAH: Turck 2010, Robin et al. 2011).
  for (const name of ['s100b', 'ndka', 'wfns']) {
    const reference = diagnosticCase(`i-auc-asah-${name}`);
    it(`agrees with pROC on ${reference.id}`, () => {
      const area = auc(marker(name));
      expectReference(reference, 'auc', area.estimate, reference.expected.auc);
      expectReference(reference, 'se_delong', area.se, reference.expected.se_delong);
      expectReference(reference, 'ci_delong', [area.lower, area.upper], reference.expected.ci_delong);
      expect(area.estimate!.toFixed(4)).toBe((reference.expected.published_auc as number).toFixed(4));
    });
  }

  for (const reference of diagnosticCases) {
    it(`agrees with R on the fit of ${reference.id}`, () => {
      const area = auc(diagnosticFit(reference));
      expectReference(reference, 'auc', area.estimate, reference.expected.auc);
      expectReference(reference, 'auc_se_delong', area.se, reference.expected.auc_se_delong);
      expectReference(reference, 'auc_ci_delong', [area.lower, area.upper], reference.expected.auc_ci_delong);
    });
  }

  it('counts pairs of a success and a failure, ties half', () => {
    // 2 × 3 pairs, by hand: 0.5 above 0.1 and 0.3, tied with 0.5; 0.4 above 0.1 and 0.3, below 0.5.
    const area = auc({ successes: [0, 0, 0, 1, 1], scores: [0.1, 0.3, 0.5, 0.5, 0.4] });
    expect(area.estimate).toBeCloseTo(4.5 / 6, 15);
    const grouped = auc({ successes: [0, 0, 1, 1], trials: [1, 1, 2, 1], scores: [0.1, 0.3, 0.5, 0.4] });
    expect(grouped).toEqual(area);
  });

  it('is unknown with one outcome only, and has no range with a single success', () => {
    expect(auc({ successes: [1, 1], scores: [0.1, 0.2] })).toMatchObject({
      estimate: null,
      because: 'one-outcome',
    });
    expect(auc({ successes: [0, 0, 1], scores: [1, 2, 3] })).toEqual({
      estimate: 1,
      se: null,
      lower: null,
      upper: null,
    });
  });

  it('refuses scores that are no numbers', () => {
    expect(() => auc({ successes: [0, 1], scores: [0.1] })).toThrow(RangeError);
    expect(() => auc({ successes: [0, 1], scores: [0.1, Number.POSITIVE_INFINITY] })).toThrow(RangeError);
    expect(() => auc({ successes: [0, 2], scores: [0.1, 0.2] })).toThrow(RangeError);
  });
});
