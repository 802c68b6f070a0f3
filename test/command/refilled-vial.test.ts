import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../lib/words/languages.ts';
import { crossesCsv, run } from './memory-world.ts';

// One warning a vial, however many flowers it served; a vial's date, father and storage are the grower's own words.
const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,vial,outcome';
const flowers = Array.from(
  { length: 12 },
  (_, i) => `2025-05-${10 + i},A,B,frozen,V1,${i % 2 ? 'fruit' : 'none'}`,
);
const files = {
  'c.csv': crossesCsv(flowers, HEADER),
  'v.csv': 'vial,pollen_parent,collected,storage\nV1,B,2025-07-01,frozen\n',
};

describe('a vial that was filled again', () => {
  it.each(LANGUAGES.map((language) => [language]))(
    'is warned of once in %s, with all its flowers',
    async (language) => {
      const line = ['check', 'c.csv', 'v.csv', '--language', language];
      const { status, out } = await run(line, { files });
      expect(status).toBe(1);
      const [said, ...more] = out.split('\n').filter((one) => one.includes('"V1"') || one.includes('V1'));
      expect(more).toEqual([]);
      expect(said).toMatch(/\b11\b.*\(.*3, 4, 5, 6, 7, 8, 9, 10, …\)/);
      const csv = await run([...line, '--csv'], { files });
      expect(csv.out.match(/vial-before-collected/g)).toHaveLength(1);
    },
  );

  it('counts as one warning beside an analysis', async () => {
    const { err } = await run(['analyse', 'c.csv', 'v.csv'], { files });
    expect(err).toContain('1 warning in the files');
  });
});
