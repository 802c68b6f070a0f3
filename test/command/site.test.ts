import { describe, expect, it } from 'vitest';
import type { SiteParts } from '../../lib/notebook/site-pages.ts';
import { schemaFaults } from '../schema-validator.ts';
import { CLEAN, type MemoryFiles, run } from './memory-world.ts';

const PAGE = '<!doctype html><title>Season</title>';
const made = (options: readonly string[], more: Omit<MemoryFiles, 'files'> = {}) =>
  run(['site', 'crosses.csv', ...options], {
    files: { 'crosses.csv': CLEAN },
    renderSite: async () => ({ files: [{ name: 'index.html', text: PAGE }], constant: [], leftOut: [] }),
    ...more,
  });

describe('site', () => {
  it('writes its files to the folder and says where to begin', async () => {
    const { status, out, err, written } = await made(['-o', 'my-season']);
    expect([status, err]).toEqual([0, '']);
    expect(out).toBe('Wrote 1 file (1 kB) to my-season: open index.html in it.\n');
    expect([...written]).toEqual([['my-season/index.html', PAGE]]);
  });

  it('tells meanwhile that it works', async () => {
    expect((await made(['-o', 'my-season'])).noted).toEqual(['Working…\n']);
  });

  it('renders the season that it read, with the results to download', async () => {
    const seen: Omit<SiteParts, 'notebooks'>[] = [];
    await made(['-o', 'my-season', '--level', '0.8'], {
      renderSite: async (season, analysis, parts) => {
        seen.push(parts);
        const text = `${season.crosses.length} at ${analysis.provenance.options.level}`;
        return { files: [{ name: 'index.html', text }], constant: [], leftOut: [] };
      },
    }).then(({ written }) => expect(written.get('my-season/index.html')).toBe('3 at 0.8'));
    expect(seen[0]).toMatchObject({
      invented: false,
      downloads: [
        ...[{ name: 'results.json' }, { name: 'crosses.csv' }, { name: 'datapackage.json' }],
        ...[{ name: 'rates.vl.json' }, { name: 'pairs.vl.json' }],
      ],
    });
  });

  // SHA-256 of the page by sha256sum of GNU coreutils 9.1.
  it('names its files with their digests as JSON', async () => {
    const { out } = await made(['-o', 'my-season', '--json']);
    expect(schemaFaults('site', JSON.parse(out))).toEqual([]);
    expect(JSON.parse(out)).toMatchObject({
      folder: 'my-season',
      written: [
        {
          file: 'index.html',
          bytes: 36,
          sha256: '45229ac5d41d937345f3d7ad1e1b03d3ffcf8c109e7fbb3ea969ce9f91d402d9',
        },
      ],
    });
  });

  it('says which pages an optional package would add', async () => {
    const leftOut = [{ name: 'fresh-against-frozen', package: 'vega' }];
    const { status, err } = await made(['-o', 'x'], {
      renderSite: async () => ({ files: [{ name: 'index.html', text: PAGE }], constant: [], leftOut }),
    });
    expect(status).toBe(0);
    expect(err).toBe(
      'fruitodds: the page fresh-against-frozen was left out, since the package vega is not installed.\n',
    );
  });

  it('does not replace a folder that holds a file it did not write, and names the file', async () => {
    const { status, out, err, written } = await made(['-o', 'photos', '--json'], {
      siteObstacle: (path) => ({ path, foreign: 'flower.jpg' }),
    });
    expect([status, written.size]).toEqual([2, 0]);
    expect(JSON.parse(out)).toMatchObject({ error: { code: 'site-not-ours' } });
    expect(err).toContain('photos also holds flower.jpg');
  });

  it('does not replace a folder in which a file stands that it reads', async () => {
    const { status, err, written } = await run(['site', 'here/crosses.csv', '-o', 'here'], {
      files: { 'here/crosses.csv': CLEAN },
    });
    expect([status, written.size]).toEqual([2, 0]);
    expect(err).toContain('here/crosses.csv is to be read and stands in here');
  });

  it.each(['EACCES', 'ENOSPC'])('exits with 2 where the system refuses with %s', async (refuses) => {
    const { status, err } = await made(['-o', 'x'], { refuses });
    expect(status).toBe(2);
    expect(err).toContain('x can’t be written');
  });

  it('writes nothing where nothing can be counted', async () => {
    const { status, written } = await run(['site', 'crosses.csv', '-o', 'x'], {
      files: { 'crosses.csv': '' },
    });
    expect([status, written.size]).toEqual([2, 0]);
  });
});
