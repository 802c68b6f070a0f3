import { describe, expect, it } from 'vitest';
import type { VialAdvice } from '../../lib/decisions/vials.ts';
import * as said from '../../lib/words/old-vials.ts';

function vial(name: string, more: Partial<VialAdvice> = {}): VialAdvice {
  const record = {
    vial: name,
    pollenParent: 'Salt Moon',
    storage: 'frozen',
    ageDays: 400,
    oldestTriedDays: 600,
    fruits: 2,
    flowers: 9,
  };
  const judged = { probabilityWorth: 0.8, probabilityWorthYearLater: 0.3, flowersFor90: 6 };
  const verdict = { verdict: 'use-first', reasonCode: 'worth-now-only', warnings: [] } as const;
  const rates = { estimate: 0.4, lower: 0.2, upper: 0.6, over: [], dosesLeft: 3, lastOfParent: false };
  return { ...record, ...judged, ...verdict, ...rates, ...more };
}

const young = vial('F-02', { ageDays: 100, flowers: 0, fruits: 0, verdict: 'keep', lastOfParent: true });

describe('the page of old vials', () => {
  it('counts vials older than a year, names the oldest, and says how many have a record', () => {
    expect(said.oldVialsAnswer([young, vial('F-01')], '2026-09-14')).toBe(
      '1 of 2 vials will be older than a year on 2026-09-14; the oldest is F-01 (Salt Moon), about 1 year (400 days). 1 of 2 ' +
        'have flowers of their own to go by; the others are judged by their father, their age and how they were kept.',
    );
  });

  it('tells no age where no vial could be judged', () => {
    const none = 'No vial could be judged, so there is no age to tell.';
    expect(said.oldVialsAnswer([], '2026-09-14')).toBe(none);
    expect(said.oldVialsAnswer([young], null)).toBe(none);
    expect(said.oldVialsAnswer([vial('F-03', { ageDays: -5 })], '2020-01-01')).toBe(none);
  });

  it('tells each vial’s story, the oldest first, a cell a column', () => {
    const rows = said.storyRows([young, vial('F-01'), vial('F-03', { ageDays: -5, probabilityWorth: null })]);
    expect(rows.map(([name]) => name)).toEqual(['F-01', 'F-02', 'F-03']);
    for (const row of rows) expect(row).toHaveLength(said.STORY_COLUMNS.length);
    expect(rows[0]).toEqual([
      'F-01',
      'Salt Moon, frozen, about 1 year (400 days)',
      '2 of its 9 flowers took',
      'about 4 in 10; could be 2 to 6 in 10',
      'likely (about 8 in 10)',
      'unlikely (about 3 in 10)',
      'use first',
    ]);
    expect([rows[2]![1], rows[2]![4]]).toEqual(['Salt Moon, frozen, not yet collected', 'can’t tell yet']);
  });

  it('counts empty vials apart: neither old nor to be used', () => {
    const empty = vial('F-00', { ageDays: 2000, dosesLeft: 0 });
    expect(said.oldVialsAnswer([young, vial('F-01'), empty], '2026-09-14')).toMatch(
      /^1 of 2 vials will be older .* the oldest is F-01 .* 1 of 2 have flowers .* were kept\. 1 vial is empty\.$/,
    );
    expect(said.oldVialsAnswer([empty, empty], '2026-09-14')).toBe(
      'No vial could be judged, so there is no age to tell. 2 vials are empty.',
    );
    expect(said.storyRows([empty])[0]!.at(-1)).toBe('empty');
    expect(said.verdictsByRecord([empty, young])).toEqual([
      ['with flowers of their own', '0', '0', '0', '0', '1'],
      ['without', '1', '0', '0', '0', '0'],
    ]);
  });

  it('names the last vials of their fathers that still hold pollen', () => {
    expect(said.lastVialsSaid([young, vial('F-01'), { ...young, vial: 'F-09', dosesLeft: 0 }])).toBe(
      '1 vial is the last of its father: F-02 (Salt Moon, keep). Collect new pollen of a father before its last vial goes.',
    );
    expect(said.lastVialsSaid([vial('F-01')])).toBe('Every father has another vial besides.');
  });

  it('has no other vial where there is none at all, or none with pollen', () => {
    const none = 'There is no vial with pollen in it.';
    expect(said.lastVialsSaid([])).toBe(none);
    expect(said.lastVialsSaid([vial('F-01', { dosesLeft: 0, lastOfParent: true })])).toBe(none);
  });

  it('counts verdicts apart for vials with a record and without', () => {
    expect(said.verdictsByRecord([young, vial('F-01')])).toEqual([
      ['with flowers of their own', '0', '1', '0', '0'],
      ['without', '1', '0', '0', '0'],
    ]);
  });
});
