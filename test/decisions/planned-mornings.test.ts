import { describe, expect, it } from 'vitest';
import type { AllocationLine } from '../../lib/decisions/mix.ts';
import { plannedFlowers } from '../../lib/decisions/planned-mornings.ts';
import { offer } from './planned.ts';

// Fresh pollen needs a flower of its plant that morning: common practice, no source.
function line(seedParent: string, pollenParent: string, more: Partial<AllocationLine> = {}): AllocationLine {
  const fresh = { source: 'fresh' as const, vial: null, flowers: 1, from: null, to: null, noFruit: 0.5 };
  return { seedParent, pollenParent, ...fresh, ...more };
}

const stored = { source: 'vial', vial: 'F-01' } as const;
const june = { from: '2026-06-01', to: '2026-06-20' };

describe('plannedFlowers', () => {
  it('plans fresh pollen on the mornings of its plant, not between them', () => {
    // By themselves the father’s two would open on 6 and 16 June, the mother’s four on 3, 8, 13 and 18 June.
    const planned = plannedFlowers(
      [
        line('Blue Hour', 'Ash Lantern', { flowers: 4, ...june }),
        line('Ash Lantern', 'Cold Ember', { flowers: 2, ...stored, ...june }),
      ],
      [],
    );
    const days = (plant: string) =>
      planned.filter(({ line: { seedParent } }) => seedParent === plant).map(({ morning }) => morning);
    expect(planned.every(({ pollenThere }) => pollenThere)).toBe(true);
    expect(new Set(days('Blue Hour'))).toEqual(new Set(days('Ash Lantern')));
    expect(new Set(days('Ash Lantern')).size).toBe(2);
  });

  it('takes pollen of a flower that the mix leaves over', () => {
    const allocation = [line('Blue Hour', 'Ash Lantern', june)];
    const offers = [
      offer('Blue Hour', 1, '2026-06-01', '2026-06-20'),
      offer('Ash Lantern', 1, '2026-06-18', '2026-06-30'),
    ];
    const [flower, ...others] = plannedFlowers(allocation, offers);
    expect(others).toEqual([]);
    // The one by itself opens on 11 June, the other on 24 June: half way, within the days of both.
    expect(flower).toMatchObject({ morning: '2026-06-18', pollenThere: true });
  });

  it('says where a father’s one flower is needed in two months', () => {
    const planned = plannedFlowers(
      [
        line('Blue Hour', 'Ash Lantern', { from: '2026-06-01', to: '2026-06-05' }),
        line('Elder Moth', 'Ash Lantern', { from: '2026-08-01', to: '2026-08-05' }),
        line('Ash Lantern', 'Cold Ember', { ...stored, from: '2026-06-01', to: '2026-08-31' }),
      ],
      [],
    );
    expect(planned.filter(({ pollenThere }) => !pollenThere)).toHaveLength(1);
    expect(planned.map(({ morning }) => morning)).not.toContain(null);
  });

  it('counts a row of flowers once, whichever of the plant’s rows it is', () => {
    const allocation = [
      line('Blue Hour', 'Cold Ember', { flowers: 3, ...stored, ...june }),
      line('Ash Lantern', 'Blue Hour', { from: '2026-08-01', to: '2026-08-10' }),
    ];
    const first = offer('Blue Hour', 3, '2026-06-01', '2026-06-20');
    const second = offer('Blue Hour', 1, '2026-08-01', '2026-08-31');
    const there = (offers: Parameters<typeof plannedFlowers>[1]) =>
      plannedFlowers(allocation, offers).find(({ line: { seedParent } }) => seedParent === 'Ash Lantern')!
        .pollenThere;
    expect(there([first, second])).toBe(true);
    expect(there([first])).toBe(false);
  });
});
