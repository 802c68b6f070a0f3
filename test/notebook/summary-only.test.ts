import { expect, it } from 'vitest';
import type { Analysis } from '../../lib/analyse.ts';
import { summaryOnly } from '../../lib/notebook/summary-only.ts';

it('keeps what is about all plants and drops what is about one', () => {
  const analysis = {
    raw: {
      overall: { fruits: 1 },
      byStorage: [{ storage: 'frozen', fruits: 1 }],
      byPair: [{ seedParent: 'P01' }],
    },
    compatibility: { selfIncompatibility: [{ plant: 'P01' }, { plant: null, fruits: 2 }] },
    pending: { looks: [{ date: '2080-01-01', crossIds: ['T01'] }] },
    vials: [{ vial: 'V01' }],
    rows: { byReason: ['x'] },
  } as unknown as Analysis;
  expect(summaryOnly(analysis)).toEqual({
    raw: { overall: { fruits: 1 }, byStorage: [{ storage: 'frozen', fruits: 1 }], byPair: [] },
    compatibility: { selfIncompatibility: [{ plant: null, fruits: 2 }] },
    pending: { looks: [{ date: '2080-01-01', crossIds: [] }] },
    vials: [],
    rows: { byReason: ['x'] },
  });
});
