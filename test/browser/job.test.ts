import { describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { answerJob } from '../../lib/browser/job.ts';
import type { Job, Reply } from '../../lib/browser/messages.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { STAGES } from '../../lib/words/own-season.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const GOOD = `${HEAD}\nT1,2025-06-01,A,B,fresh,fruit\nT2,2025-06-02,A,B,frozen,none`;

function job(text: string, changes: Partial<Job> = {}): Job {
  const sources = [{ name: 'crosses.csv', bytes: new TextEncoder().encode(text) }];
  return { number: 1, sources, read: { endpoint: 'initial', map: [] }, analyse: {}, ...changes };
}

function replies(asked: Job): Reply[] {
  const all: Reply[] = [];
  answerJob(asked, (reply) => void all.push(reply));
  return all;
}

const kinds = (all: readonly Reply[]) =>
  all.map((reply) => (reply.kind === 'stage' ? reply.stage : reply.kind));

describe('answerJob', () => {
  it('tells its stages in the order of the page’s list, the counts before the models', () => {
    const told = kinds(replies(job(GOOD)));
    expect(told).toEqual([
      'reading',
      'read',
      'counting',
      'counts',
      'model',
      'vials',
      'like-for-like',
      'rest',
      'done',
    ]);
    const stages = told.filter((name) => STAGES.some(([stage]) => stage === name));
    expect([...stages, 'drawing']).toEqual(STAGES.map(([stage]) => stage));
  });

  it('gives the library’s own result', () => {
    const done = replies(job(GOOD)).at(-1);
    expect(done).toEqual({
      kind: 'done',
      season: expect.anything(),
      analysis: analyse(readSeason(job(GOOD).sources)),
      cleaned: { crosses: expect.stringContaining('T1,2025-06-01,A,B,fresh'), vials: null },
    });
  });

  it('only reads where nothing is to be analysed', () => {
    expect(kinds(replies(job(GOOD, { analyse: null })))).toEqual(['reading', 'read']);
  });

  it('reads with the answers of the grower', () => {
    const text = GOOD.replace('seed_parent', 'Zorn');
    const read = { endpoint: 'initial', map: [['Zorn', 'seed_parent']] } as const;
    expect(kinds(replies(job(text)))).toEqual(['reading', 'read', 'refused']);
    expect(kinds(replies(job(text, { read }))).at(-1)).toBe('done');
  });

  it('tells a fault of the program instead of throwing it', () => {
    expect(replies(job(GOOD, { analyse: { worth: 7 } })).at(-1)).toEqual({
      kind: 'fault',
      cause: expect.stringContaining('worth must be a proportion'),
    });
  });
});
