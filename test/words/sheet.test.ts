import { describe, expect, it } from 'vitest';
import type { SheetFlower } from '../../lib/decisions/crossing-sheet.ts';
import {
  byMorning,
  morningSaid,
  pollenToTake,
  sheetAnswer,
  sheetNote,
  tagText,
  unmetSaid,
  vialsToTake,
} from '../../lib/words/sheet.ts';
import { plan } from '../charts/fixture.ts';

const FRESH: SheetFlower = {
  crossId: '2026-001',
  morning: '2026-06-10',
  seedParent: 'Salt Moon',
  pollenParent: '__proto__',
  storage: 'fresh',
  vial: null,
  pollenCollected: null,
  pollenThere: true,
};
const STORED: SheetFlower = { ...FRESH, morning: null, storage: 'frozen', vial: 'F-04' };

describe('the words of the sheet', () => {
  it('name mornings and pollens', () => {
    expect([morningSaid('2026-06-10'), morningSaid('2026-12-01'), morningSaid(null)]).toEqual([
      '10 June 2026',
      '1 December 2026',
      'Any morning',
    ]);
    expect(pollenToTake(FRESH)).toBe('fresh');
    expect(pollenToTake(STORED)).toBe('thaw F-04');
    expect(pollenToTake({ storage: 'refrigerated', vial: 'R-02', pollenThere: true })).toBe(
      'R-02, refrigerated',
    );
  });

  it('say how many flowers on how many mornings, and which vials', () => {
    expect(sheetAnswer([FRESH, FRESH, STORED], plan.frontier[2]!)).toBe(
      '3 flowers on 1 morning, by the mix “in between”: about 28 fruits of 17 crosses expected.',
    );
    expect(sheetAnswer([STORED], plan.frontier[0]!)).toMatch(/^1 flower, by/);
    expect(vialsToTake([FRESH, STORED, STORED])).toBe(
      'Vials that are needed: F-04 (__proto__) for 2 flowers.',
    );
    expect(vialsToTake([FRESH])).toContain('no vial');
  });

  it('group flowers by morning, and lose none', () => {
    expect(
      byMorning([FRESH, FRESH, STORED]).map(({ morning, flowers }) => [morning, flowers.length]),
    ).toEqual([
      ['10 June 2026', 2],
      ['Any morning', 1],
    ]);
  });

  it('name each cross that has no morning of both plants, with its flowers', () => {
    const unmet = { ...FRESH, pollenThere: false };
    expect(unmetSaid([FRESH, STORED])).toBe('');
    expect(unmetSaid([unmet, FRESH, unmet, { ...unmet, seedParent: 'Old Ferry' }])).toBe(
      'For 3 flowers no morning was found on which their father is expected to flower too: Salt Moon × __proto__ (2 flowers) ' +
        'and Old Ferry × __proto__ (1 flower). Use pollen of the father that was kept, or other pollen.',
    );
    expect(pollenToTake(unmet)).toBe('fresh, though none is expected then');
    expect(sheetNote(unmet)).toBe('planned for 2026-06-10; no flower of __proto__ is expected then');
  });

  it('write tags and notes', () => {
    expect([tagText(FRESH), tagText(STORED)]).toEqual([
      'Salt Moon × __proto__, fresh',
      'Salt Moon × __proto__, F-04',
    ]);
    expect([sheetNote(FRESH), sheetNote(STORED)]).toEqual(['planned for 2026-06-10', '']);
  });
});
