import { beforeAll, describe, expect, it } from 'vitest';
import { sharedCopy } from '../../lib/browser/shared-copy.ts';
import { Failure } from '../../lib/command/failure.ts';
import type { CompiledNotebook } from '../../lib/notebook/run.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const TEXT = [
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,note',
  'Q-T1,2025-06-01,Lantern Creek,Salt Moon,fresh,fruit,by the gate',
  'Q-T2,2025-06-02,Salt Moon,Lantern Creek,fresh,none,',
].join('\n');
const own = readSeason([{ name: 'crosses.csv', bytes: new TextEncoder().encode(TEXT) }]);
const read = { endpoint: 'initial', map: [] } as const;
const ownPieces = { program: '', kept: '' };
const sharing = { level: 'codes', key: null, secret: 'b'.repeat(64), ownPieces } as const;

describe('sharedCopy', () => {
  let notebook: CompiledNotebook;
  beforeAll(async () => {
    const review = 'fruitodds/reports/season-review.js';
    notebook = ((await import(review)) as { notebook: CompiledNotebook }).notebook;
  });

  it('holds codes in place of names, and the key has both', async () => {
    const { files, key } = await sharedCopy(own, {}, sharing, read, notebook);
    expect(files.map(({ name }) => name)).toEqual(['coded-season-review.html', 'coded-crosses.csv']);
    for (const { text } of files) expect(text).not.toMatch(/Lantern|Salt Moon|Q-T|by the gate/);
    expect(key.text).toContain('"name": "Lantern Creek"');
  });

  it('gives the same plants the same codes with the key of before', async () => {
    const first = await sharedCopy(own, {}, sharing, read, notebook);
    const again = { ...sharing, key: first.key, secret: 'c'.repeat(64) };
    expect(await sharedCopy(own, {}, again, read, notebook)).toEqual(first);
  });

  it('is the report alone, without any code, at the level of a summary', async () => {
    const { files } = await sharedCopy(own, {}, { ...sharing, level: 'summary' }, read, notebook);
    expect(files).toHaveLength(1);
    expect(files[0]!.text).not.toMatch(/\bP0?[12]\b/);
  });

  it('refuses a key that is none, and a copy in which something of the grower’s own was found', async () => {
    const key = { name: 'k.json', text: '{}' };
    await expect(sharedCopy(own, {}, { ...sharing, key }, read, notebook)).rejects.toThrow(Failure);
    // A header that is a word of the page, and is not known as one, must be found.
    const map = [['Did frozen pollen work', 'note']] as const;
    const leak = sharedCopy(own, {}, sharing, { ...read, map }, notebook);
    await expect(leak).rejects.toMatchObject({ code: 'leak-found' });
    const known = { program: 'say(`Did frozen pollen work?`)', kept: '010' };
    expect(
      (await sharedCopy(own, {}, { ...sharing, ownPieces: known }, { ...read, map }, notebook)).files,
    ).toHaveLength(2);
  });
});
