import { describe, expect, it } from 'vitest';
import { plan } from '../../lib/decisions/plan.ts';
import { offer, questionOf, vialOf } from './planned.ts';

// What a wish can have is counted by hand; no outside source.
const offers = [
  offer('Ash Lantern', 4, '2026-06-01', '2026-06-30'),
  offer('Ash Lantern', 3, '2026-08-01', '2026-08-20'),
  offer('Cold Ember', 2, '2026-06-10', '2026-06-20'),
  offer('Blue Hour', 5, '2026-09-01', '2026-09-10'),
];
const vials = [
  vialOf('V1', 'Cold Ember', { dosesLeft: 2 }),
  vialOf('V2', 'Dusk Anchor', { dosesLeft: 1 }),
  vialOf('V3', 'Dusk Anchor', { dosesLeft: 1 }),
];
const unmet = (
  pollenParent: string,
  flowers: number,
  more: Parameters<typeof plan>[3] = {},
  seedParent = 'Ash Lantern',
) =>
  plan(offers, vials, questionOf({}), {
    ...more,
    must: [{ seedParent, pollenParent, flowers }, ...(more.must ?? [])],
  }).unmet;

describe('unmetWishes', () => {
  it('says how many flowers are expected where more were wished', () => {
    expect(unmet('Cold Ember', 50)).toMatchObject([
      // Four in June get fresh pollen, two of the three in August a dose.
      { flowers: 50, planned: 6, expected: 7, possible: 6, because: 'fewer-flowers-expected' },
    ]);
  });

  it('says for how many there is pollen where doses are few or few flowers open together', () => {
    expect(unmet('Dusk Anchor', 3)).toMatchObject([
      { planned: 2, expected: 7, possible: 2, because: 'too-little-pollen' },
    ]);
    expect(unmet('Cold Ember', 7)).toMatchObject([{ planned: 6, possible: 6, because: 'too-little-pollen' }]);
  });

  it('says that another wish or a ceiling stands in the way where it could have all by itself', () => {
    const ceilings = [{ pollenParent: 'Cold Ember', flowers: 1 }];
    expect(unmet('Cold Ember', 4, { ceilings })).toMatchObject([
      { planned: 1, possible: 6, because: 'other-wish-in-the-way' },
    ]);
  });

  it('says the plainest cause where there can be none at all', () => {
    expect(unmet('Ash Lantern', 9, {}, 'Never Seen')[0]).toMatchObject({
      expected: 0,
      because: 'mother-not-in-flower',
    });
    expect(unmet('Blue Hour', 50)[0]).toMatchObject({
      expected: 7,
      possible: 0,
      because: 'no-common-morning',
    });
    expect(unmet('Elder Moth', 50)[0]).toMatchObject({ possible: 0, because: 'no-pollen-of-father' });
    expect(unmet('Ash Lantern', 50)[0]).toMatchObject({ because: 'own-pollen' });
  });

  it('is empty where every wish is met', () => {
    expect(unmet('Cold Ember', 6)).toEqual([]);
  });
});
