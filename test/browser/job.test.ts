import { beforeAll, describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { jobAnswerer } from '../../lib/browser/job.ts';
import type { Job, Reply } from '../../lib/browser/messages.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { renderPage } from '../../lib/notebook/page.ts';
import { type CompiledNotebook, runNotebook } from '../../lib/notebook/run.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { seasonAnswer } from '../../lib/words/review.ts';
import { STAGES } from '../../lib/words/told/stages.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const GOOD = `${HEAD}\nT1,2025-06-01,A,B,fresh,fruit\nT2,2025-06-02,A,B,frozen,none`;

function job(text: string, changes: Partial<Job> = {}): Job {
  const sources = [{ name: 'crosses.csv', bytes: new TextEncoder().encode(text) }];
  const read = { endpoint: 'initial', map: [] } as const;
  return { number: 1, sources, read, analyse: {}, wishes: {}, share: null, ...changes };
}

const kinds = (all: readonly Reply[]) =>
  all.map((reply) => (reply.kind === 'stage' ? reply.stage : reply.kind));

describe('a task', () => {
  let notebook: CompiledNotebook;
  beforeAll(async () => {
    const review = 'fruitodds/reports/season-review.js';
    notebook = ((await import(review)) as { notebook: CompiledNotebook }).notebook;
  });

  async function replies(...asked: readonly Job[]): Promise<Reply[]> {
    const all: Reply[] = [];
    const answer = jobAnswerer(notebook);
    for (const each of asked) await answer(each, (reply) => void all.push(reply));
    return all;
  }

  it('tells its stages in the order of the page’s list, what counts tell before the models', async () => {
    const told = kinds(await replies(job(GOOD)));
    const models = ['model', 'vials', 'like-for-like', 'rest'];
    expect(told).toEqual(['reading', 'read', 'counting', 'first', ...models, 'drawing', 'done']);
    const stages = told.filter((name) => STAGES.some((stage) => stage === name));
    expect(stages).toEqual([...STAGES]);
  });

  it('gives the report of the library, and its first sentence', async () => {
    const season = readSeason(job(GOOD).sources);
    const analysis = analyse(season);
    const done = (await replies(job(GOOD))).at(-1)!;
    if (done.kind !== 'done') throw new Error(`done was expected, got ${done.kind}`);
    const filled = await runNotebook(notebook, { season, analysis });
    expect(done.report.text).toBe(renderPage(filled, await openPaper()));
    expect(done.answer).toBe(seasonAnswer(analysis));
    expect(done.cleaned).toEqual({
      crosses: expect.stringContaining('T1,2025-06-01,A,B,fresh'),
      vials: null,
    });
  });

  it('only reads where nothing is to be analysed', async () => {
    expect(kinds(await replies(job(GOOD, { analyse: null })))).toEqual(['reading', 'read']);
  });

  it('tells the same of files that were read before, and reads anew where a byte or an answer differs', async () => {
    const only = { analyse: null };
    const final = { read: { endpoint: 'final', map: [] }, ...only } as const;
    const all = await replies(
      job(GOOD, only),
      job(GOOD, only),
      job(GOOD.replace('fruit', 'dropped'), only),
      job(GOOD.replace('T1', 'T3'), only),
      job(GOOD.replace('T1', 'T3'), final),
    );
    const readings = all.flatMap((reply) => (reply.kind === 'read' ? [reply.reading] : []));
    expect(readings[1]).toBe(readings[0]);
    expect(new Set(readings).size).toBe(4);
  });

  it('reads with the answers of the grower', async () => {
    const text = GOOD.replace('seed_parent', 'Zorn');
    const read = { endpoint: 'initial', map: [['Zorn', 'seed_parent']] } as const;
    expect(kinds(await replies(job(text)))).toEqual(['reading', 'read', 'refused']);
    expect(kinds(await replies(job(text, { read }))).at(-1)).toBe('done');
  });

  it('refuses wishes that cannot be carried out, in the command’s words', async () => {
    const wishes = { must: [{ names: 'A × B', flowers: 1 }] };
    expect((await replies(job(GOOD, { wishes }))).at(-1)).toEqual({
      kind: 'refused',
      message: expect.stringMatching(
        /^“Crosses that next season must try” is about the plan, and .*(?<!--must.*)$/,
      ),
    });
  });

  it('makes a coded copy with its key', async () => {
    const ownPieces = { program: '', kept: '' };
    const share = { level: 'codes', key: null, secret: 'a'.repeat(64), ownPieces } as const;
    const shared = (await replies(job(GOOD, { share }))).at(-1)!;
    if (shared.kind !== 'shared') throw new Error(`shared was expected, got ${shared.kind}`);
    expect(shared.files.map(({ name }) => name)).toEqual(['coded-season-review.html', 'coded-crosses.csv']);
    expect(shared.key.text).toContain('aaaa');
  });

  it('tells a fault of the program instead of throwing it', async () => {
    expect((await replies(job(GOOD, { analyse: { worth: 7 } }))).at(-1)).toEqual({
      kind: 'fault',
      cause: expect.stringContaining('worth must be a proportion'),
    });
  });
});
