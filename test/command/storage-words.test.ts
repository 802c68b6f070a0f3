import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../lib/words/languages.ts';
import { schemaFaults } from '../schema-validator.ts';
import { crossesCsv, run } from './memory-world.ts';

// What a grower says that a word of storage means is believed, in crosses and vials alike.

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,vial,outcome';
const files = {
  'c.csv': crossesCsv(
    ['2025-06-20,A,B,Cool  Box,V1,fruit', '2025-06-21,A,B,frozn,V2,none', '2025-06-21,A,B,silica gel,,none'],
    HEADER,
  ),
  'v.csv': 'vial,pollen_parent,collected,storage\nV1,B,2025-06-01,cool-box\nV2,B,2025-06-01,frozen\n',
};
const SAID = ['--storage', 'cool box=fridge', '--storage', 'frozn=frozen'];

async function methods(...options: string[]): Promise<[string, number][]> {
  const { out } = await run(['analyse', 'c.csv', 'v.csv', '--json', ...options], { files });
  const result = JSON.parse(out);
  expect(schemaFaults('analyse', result)).toEqual([]);
  return result.raw.byStorage.map(({ storage, flowers }: { storage: string; flowers: number }) => [
    storage,
    flowers,
  ]);
}

describe('--storage', () => {
  it('reads a word as the method that it is said to be, however the word or the method is spelt', async () => {
    expect(new Map(await methods())).toEqual(
      new Map([
        ['Cool Box', 1],
        ['frozn', 1],
        ['silica gel', 1],
      ]),
    );
    expect(new Map(await methods(...SAID))).toEqual(
      new Map([
        ['refrigerated', 1],
        ['frozen', 1],
        ['silica gel', 1],
      ]),
    );
    expect(new Map(await methods('--storage', 'frozn=Silica Gel')).get('Silica Gel')).toBe(1);
  });

  it('leaves nothing to be told of these words: no notice, no slip, no quarrel with the vial', async () => {
    const before = await run(['check', 'c.csv', 'v.csv'], { files });
    expect(before.out).toContain('--storage "frozn=frozen"');
    const { status, out } = await run(['check', 'c.csv', 'v.csv', ...SAID], { files });
    expect(status).toBe(1);
    expect(out).not.toMatch(/cool box|frozn/i);
    // The third has neither vial nor date.
    expect(out.match(/Row \d/g)).toEqual(['Row 4']);
  });

  it('is kept in settings and stands in the result', async () => {
    const saved = await run(['check', 'c.csv', 'v.csv', ...SAID, '--save-settings', 's.json'], { files });
    const settings = saved.written.get('s.json')!;
    expect(schemaFaults('settings', JSON.parse(settings))).toEqual([]);
    expect(JSON.parse(settings).storage).toEqual(['cool box=fridge', 'frozn=frozen']);
    const asked = ['analyse', 'c.csv', 'v.csv', '--settings', 's.json', '--json'];
    const { out } = await run(asked, { files: { ...files, 's.json': settings } });
    expect(JSON.parse(out).provenance.options.storage).toEqual([
      { word: 'cool box', method: 'fridge' },
      { word: 'frozn', method: 'frozen' },
    ]);
  });

  it.each(LANGUAGES.map((language) => [language]))(
    'says in %s which word stands nowhere and how it is written',
    async (language) => {
      const asked = ['check', 'c.csv', 'v.csv', '--language', language];
      const missing = await run([...asked, '--storage', 'shed=room'], { files });
      expect(missing.out).toMatch(/"shed"|„shed“/);
      for (const value of ['shed', 'shed=', '=room', 'a=b=c']) {
        const { status, err } = await run([...asked, '--storage', value], { files });
        expect([status, err]).toMatchObject([
          2,
          expect.stringContaining('--storage "cool box=refrigerated"'),
        ]);
      }
    },
  );

  it('does not stand in a coded copy', async () => {
    const { out, status } = await run(['analyse', 'c.csv', 'v.csv', ...SAID, '--anonymous', '--json'], {
      files,
    });
    expect(status).toBeLessThan(2);
    expect(out).not.toMatch(/cool box|frozn/i);
    expect(JSON.parse(out).provenance.options.storage).toEqual([]);
  });
});
