/** What test notebooks are given: nothing is computed in it, so that no other floor has to work. */

import type { Given } from '../../lib/notebook/run.ts';

const options = {
  level: 0.95,
  endpoint: 'initial',
  asOf: null,
  useOn: null,
  ageScale: null,
  worth: null,
} as const;

export const smallSeason: Given = {
  season: { crosses: [], vials: [], flowers: [], files: [], asOf: null, endpoint: 'initial' },
  analysis: {
    provenance: { version: '0.0.0', options, files: [] },
    rows: { read: 0, used: 0, leftOut: 0, byOutcome: [], byReason: [] },
  } as unknown as Given['analysis'],
};
