import { describe, expect, it } from 'vitest';
import type { OptionsUsed, Provenance } from '../../lib/analyse.ts';
import type { FreshVersusStored } from '../../lib/analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../../lib/analysis/pairs.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import * as review from '../../lib/words/review.ts';
import { season as analysis } from '../charts/fixture.ts';

const [frozen, room] = analysis.freshVersusStored as [FreshVersusStored, FreshVersusStored];

/** The options that a sentence is about; it reads no other. */
function provenanceOf(options: Partial<OptionsUsed>): Provenance {
  return { options: options as OptionsUsed } as Provenance;
}

function pair(fruits: number, flowers: number, lower: number, incompatible = 0): PooledPair {
  const rates = { estimate: lower + 0.1, lower, upper: lower + 0.2 };
  const basis = { storage: 'fresh', ageDays: 0 };
  return {
    seedParent: `M${flowers}`,
    pollenParent: `F${fruits}`,
    fruits,
    flowers,
    ...rates,
    rawRate: null,
    basis,
    incompatible,
    named: incompatible >= 0.8,
  };
}

describe('the answer to whether stored pollen worked', () => {
  it('counts both kinds, then says the like-for-like difference with its range', () => {
    expect(review.storedAnswer(frozen)).toBe(
      'Frozen pollen took 31 of 86, fresh pollen 44 of 70; like for like (the same pairs), frozen pollen gives ' +
        'about 2 fewer in every 10 (could be 4 fewer to about as many).',
    );
  });

  it('prints no adjusted number where fewer than three pairs can tell pollen from pair', () => {
    expect(review.storedAnswer(room)).toBe(
      'Pollen kept at room temperature took 0 of 6, fresh pollen 44 of 70. Only 1 pair had both kinds of pollen and ' +
        'both outcomes, so pollen and pair can’t be told apart.',
    );
  });

  it('says of all flowers what is known while like for like is being worked out', () => {
    const adjusted = { estimate: null, lower: null, upper: null, because: 'being-worked-out' };
    expect(review.storedAnswer({ ...frozen, adjusted })).toMatch(
      /^Frozen pollen took 31 of 86, fresh pollen 44 of 70: over all flowers about 3 fewer in every 10 \(.*\)\. Like for like \(the same pairs\) is still being worked out\.$/,
    );
  });

  it('explains a raw gap that like for like does not bear out, and only such a one', () => {
    expect(
      review.confoundingSaid({ ...frozen, adjusted: { estimate: 0.1, lower: 0, upper: 0.2 } }),
    ).toContain('harder pairs');
    expect(
      review.confoundingSaid({ ...frozen, adjusted: { estimate: 0.4, lower: 0, upper: 0.8 } }),
    ).toContain('easier pairs');
    expect(review.confoundingSaid({ ...frozen, adjusted: frozen.difference })).toBe('');
    expect(review.confoundingSaid(room)).toBe('');
  });
});

describe('the answer to how fast it fades', () => {
  const half = { storage: 'frozen', estimate: 200, lower: 120, upper: 300, oldestAgeDays: 240 };
  const { byAge } = analysis.raw;

  it('counts at two ages, then says the half age with its range and how far the data reach', () => {
    expect(review.halfAgeAnswer(half, byAge)).toBe(
      'Frozen pollen took 5 of 9 at 8 to 14 days and 3 of 18 at 181 to 365 days; it falls to half of its fruit set after ' +
        'about 7 months (200 days; could be 120 to 300 days); the oldest tried was about 8 months (240 days).',
    );
  });

  it('claims nothing past the oldest age tried', () => {
    expect(review.halfAgeAnswer({ ...half, estimate: null, lower: 240, upper: null }, byAge)).toContain(
      '; it had not fallen to half of its fruit set at the oldest age tried, about 8 months (240 days), and nothing is ' +
        'known past that.',
    );
  });

  it('does not say that it kept its fruit set where it may have lost half of it early', () => {
    const said = review.halfAgeAnswer({ ...half, estimate: null, lower: 12, upper: null }, byAge);
    expect(said).toContain(
      '; it takes more than 12 days to fall to half of its fruit set, how much more one can’t tell yet; the oldest tried was',
    );
    expect(said).not.toContain('had not fallen');
  });

  it('can’t tell from one age or one vial, nor without a known age', () => {
    const unknown = { ...half, estimate: null, lower: null, upper: null };
    expect(review.halfAgeAnswer({ ...unknown, storage: 'room', oldestAgeDays: 6 }, byAge)).toBe(
      'Pollen kept at room temperature took 0 of 6 at 3 to 7 days; it was tried at one age or from one vial only, so one ' +
        'can’t tell yet how fast it fades; the oldest tried was 6 days.',
    );
    expect(review.halfAgeAnswer({ ...unknown, oldestAgeDays: null }, [])).toBe(
      'Frozen pollen: no flower has a known pollen age.',
    );
  });
});

describe('the answer to which pairs take', () => {
  it('names the safest bet by its cautious end, not by its raw rate, and counts the pairs too few to rank', () => {
    const said = review.pairsAnswer([pair(5, 5, 0.4), pair(9, 12, 0.6), pair(2, 2, 0.7)]);
    expect(said).toBe(
      'The safest bet is M12 × F9: 9 of 12 took (with fresh pollen about 7 in 10; could be 6 to 8 in 10). 1 of 3 pairs has ' +
        'fewer than 5 flowers: too few to rank.',
    );
  });

  it('ranks nothing where every pair has too few flowers', () => {
    expect(review.pairsAnswer([pair(1, 1, 0.5)])).toMatch(
      /^The flowers can’t tell yet which pair is the safest bet\./,
    );
  });
});

describe('the answers on rows, tags and vials', () => {
  it('adds up: used, left out, reasons', () => {
    const rows = {
      read: 20,
      used: 17,
      leftOut: 3,
      byOutcome: [],
      byReason: [{ reason: 'outcome-unknown', rows: 3 }],
    };
    expect(review.rowsAnswer({ rows })).toBe('We used 17 of 20 rows; 3 left out for 1 reason.');
    expect(review.rowsAnswer({ rows: { ...rows, used: 20, leftOut: 0, byReason: [] } })).toBe(
      'We used 20 of 20 rows: none is left out.',
    );
  });

  it('gives every verdict that a vial has its count', () => {
    const tally = review.verdictCounts(analysis.vials);
    const total = [...tally.matchAll(/\d+/g)].reduce((sum, [count]) => sum + Number(count), 0);
    expect(total).toBe(analysis.vials.length);
    expect(tally).not.toMatch(/\b0\b/);
    const kept = analysis.vials.filter(({ verdict }) => verdict === 'keep' || verdict === 'test-first');
    expect(review.verdictCounts(kept)).toBe('Keep 2, test 2.');
    expect(review.verdictCounts([])).toBe('');
  });

  it('says in one breath for which day the vials are judged and what is worth a flower', () => {
    const { vials } = analysis;
    const said = (worth: typeof analysis.worth) =>
      review
        .vialsAnswer({ vials, worth, provenance: provenanceOf({ useOn: '2026-09-14' }) })
        .slice(review.verdictCounts(vials).length);
    const start = ' Judged for use on 2026-09-14: ';
    expect(said({ value: 0.3, source: 'half-of-fresh', freshRate: 0.6 })).toBe(
      `${start}a vial is worth a flower if about 3 in 10 (0.300) or more would take, half of what fresh pollen gives on these plants.`,
    );
    expect(said({ value: 0.2, source: 'option', freshRate: null })).toBe(
      `${start}a vial is worth a flower if about 2 in 10 (0.200) or more would take, as you set it.`,
    );
    expect(said({ value: null, source: null, freshRate: null, because: 'no-fresh-flower' })).toBe(
      `${start}without fresh flowers to compare with, only you can say what fruit set is worth a flower.`,
    );
  });

  it('says what “took” means at the endpoint asked for', () => {
    const means = (endpoint: 'initial' | 'final') =>
      review.tookMeans({ provenance: provenanceOf({ endpoint }) });
    expect(means('initial')).toBe(
      '“Took” means that a fruit had set at the first check; control flowers are counted apart.',
    );
    expect(means('final')).toContain('a fruit came to harvest');
  });

  it('puts the season on one page: flowers, pairs, vials, counts by pollen, verdicts', () => {
    const said = review.seasonAnswer(analysis);
    // The fixture read 176 rows, of which one could not be read as a flower.
    expect(said).toMatch(/^175 flowers, /);
    expect(said).toContain(`${analysis.vials.length} vials.`);
    expect(said).toContain('Frozen pollen 31 of 86, fresh 44 of 70, room temperature 0 of 6. Keep');
    expect(said).toContain(review.verdictCounts(analysis.vials));
  });

  it.each(LANGUAGES)('counts what was observed without the lost tags too, in %s', async (language) => {
    const said = (await wordsIn(language)).lostTagsSaid(analysis);
    const { fruits, flowers } = analysis.raw.overall;
    expect(said).toMatch(new RegExp(`\\b${fruits} \\p{L}+ ${flowers}\\b`, 'u'));
  });

  it('says what the lost tags could hide', () => {
    expect(review.lostTagsSaid(analysis)).toMatch(
      /^\d+ tags were lost\. As observed, without them, \d+ of \d+ took\. If those \d+ flowers had failed, \d+ of \d+/,
    );
  });
});
