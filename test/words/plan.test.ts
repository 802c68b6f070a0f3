import { describe, expect, it } from 'vitest';
import {
  crossesTried,
  crossRows,
  mixGives,
  mixLabel,
  mixRisks,
  mixSeeds,
  PLAN_CAUTION,
  planAnswer,
  planNotes,
  planShort,
} from '../../lib/words/plan.ts';
import { LONG_NAME, MARKUP_NAME, plan } from '../charts/fixture.ts';

const [mix] = plan.frontier;

describe('the words of the plan', () => {
  it('say how to get one, where there is no flowers file', () => {
    // It stands in reports saved from the page too, where nobody has a terminal.
    expect(planAnswer({ plan: null })).toMatch(/and add it to your files\.$/);
    expect(`${planAnswer({ plan: null })} ${PLAN_CAUTION}`).not.toMatch(/--|fruitodds/);
    expect(planShort({ plan: null })).toBe('');
  });

  it('say why there is none, where no mix could be made', () => {
    const none = { ...plan, frontier: [], because: 'no-expected-flowers' };
    expect(planAnswer({ plan: none })).toBe(
      'No flower is expected next season: every row of the flowers file says 0.',
    );
    expect(planShort({ plan: none })).toBe('');
  });

  it('say what the named mixes give, with counts', () => {
    expect(planAnswer({ plan })).toBe(
      'Next season’s 52 flowers could give about 31 fruits of 8 crosses, 28 of 17 or 22 of 21: more crosses, fewer fruits.',
    );
    expect(planShort({ plan })).toBe(
      'Next season’s 52 flowers could give about 31 fruits of 8 crosses or about 22 fruits of 21 crosses.',
    );
  });

  it('say it of one mix without a choice, and of one fruit', () => {
    const one = { ...plan, frontier: plan.frontier.slice(0, 1) };
    expect(planAnswer({ plan: one })).toBe(
      'Next season’s 52 flowers could give about 31 fruits of 8 crosses: 25 to 38 fruits in 8 of 10 seasons.',
    );
    expect(planShort({ plan: one })).toBe(
      'Next season’s 52 flowers could give about 31 fruits of 8 crosses.',
    );
    const fruits = { percentile10: 1, percentile90: 1 };
    const small = { ...mix!, expectedFruits: 0.8, expectedVarieties: 0.8, fruits };
    expect(`${mixGives(small)}; ${mixRisks(small)}`).toBe(
      'about 1 fruit of 1 cross; 1 fruit in 8 of 10 seasons',
    );
  });

  it('say seeds to two digits, and that they were not counted', () => {
    expect(mixSeeds(mix!)).toBe('no seed counts');
    expect(mixSeeds({ ...mix!, expectedSeeds: 12_799 })).toBe('about 13\u202F000 seeds');
    expect(mixSeeds({ ...mix!, expectedSeeds: 0.4 })).toBe('about 0 seeds');
  });

  it('name all that one must know beside the mixes', () => {
    expect(planNotes(plan)).toEqual([
      `Abendstern × ${MARKUP_NAME} gets 1 of 2 wished flowers. The two plants never flower on the same morning, and no vial holds this pollen.`,
      'For 45 of 52 flowers there is no pollen left to give.',
      'Without a number of doses, so planned with one: V-02.',
      'Not planned with: V-05. No dose is left in it.',
      `Never tried as seed parent, so judged as any unknown plant: ${LONG_NAME}.`,
      'Never tried as pollen parent, so judged as any unknown plant: Abendglocke and Abendstern.',
      'The day of use lies before the last day of your files.',
    ]);
    const nothing = { blankDoses: [], leftOutVials: [], unmet: [], newSeedParents: [], newPollenParents: [] };
    expect(planNotes({ ...plan, ...nothing, flowers: 7, usedInPast: false })).toEqual([]);
  });

  it('put the pollens of a cross together, with the chance of at least one fruit', () => {
    expect(crossesTried(mix!)).toBe(2);
    expect(crossRows(mix!)).toEqual([
      ['Nachtlaterne × Silberfaden', '3 fresh and 1 from V-01', 'likely (about 8 in 10)'],
      [`${LONG_NAME} × ${MARKUP_NAME}`, '3 fresh', 'likely (about 8 in 10)'],
    ]);
  });

  it('number a mix without a name', () => {
    expect([mixLabel('balanced'), mixLabel(null, '4'), mixLabel(null)]).toEqual([
      'in between',
      'mix 4',
      'mix',
    ]);
  });
});
