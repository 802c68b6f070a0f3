import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Output } from '../../lib/notebook/output.ts';
import { disk } from '../../lib/notebook/output.ts';
import { siteMarker, siteObstacle, writeSite } from '../../lib/notebook/site.ts';

let place = '';
beforeEach(() => {
  place = mkdtempSync(join(tmpdir(), 'site-'));
});
afterEach(() => rmSync(place, { recursive: true }));

const page = (text: string) => [{ name: 'index.html', text }];

/** The disk, but the n-th writing or renaming fails, as a full or pulled-out disk does. */
function failingAt(failure: number): Output {
  let steps = 0;
  const step =
    <T extends readonly string[]>(act: (...paths: T) => void) =>
    (...paths: T): void => {
      steps += 1;
      if (steps === failure) throw new Error('no space left');
      act(...paths);
    };
  return { ...disk, write: step(disk.write), rename: step(disk.rename) };
}

describe('writeSite', () => {
  it('writes every file and its marker, and leaves nothing beside', () => {
    const folder = join(place, 'site');
    writeSite(disk, folder, [...page('one'), { name: 'chart.vl.json', text: '{}' }]);
    expect(readdirSync(folder).sort()).toEqual([siteMarker, 'chart.vl.json', 'index.html']);
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('one');
    expect(readdirSync(place)).toEqual(['site']);
  });

  it('replaces a site as a whole: pages of before are gone', () => {
    const folder = join(place, 'site');
    writeSite(disk, folder, [...page('one'), { name: 'gone.html', text: '' }]);
    writeSite(disk, folder, page('two'));
    expect(readdirSync(folder).sort()).toEqual([siteMarker, 'index.html']);
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('two');
    expect(readdirSync(place)).toEqual(['site']);
  });

  it('refuses a folder that is not its own, and a file, and leaves them alone', () => {
    mkdirSync(join(place, 'photos'));
    writeFileSync(join(place, 'photos', 'flower.txt'), 'mine');
    writeFileSync(join(place, 'file'), 'mine');
    expect(() => writeSite(disk, join(place, 'photos'), page('x'))).toThrow(
      /must be empty or a site made before, got .*photos, which also holds flower\.txt/,
    );
    expect(() => writeSite(disk, join(place, 'file'), page('x'))).toThrow('file, which is a file');
    expect(readFileSync(join(place, 'photos', 'flower.txt'), 'utf8')).toBe('mine');
    expect(readFileSync(join(place, 'file'), 'utf8')).toBe('mine');
  });

  it('refuses a site of its own in which something else was put, in a folder of it too, and names it', () => {
    const folder = join(place, 'site');
    writeSite(disk, folder, [...page('one'), { name: 'api/index.html', text: '' }]);
    expect(siteObstacle(disk, folder)).toBeNull();
    writeFileSync(join(folder, 'api', 'crosses.csv'), 'mine');
    expect(siteObstacle(disk, folder)).toEqual({ path: folder, foreign: 'api/crosses.csv' });
    expect(() => writeSite(disk, folder, page('two'))).toThrow('which also holds api/crosses.csv');
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('one');
  });

  it('minds nothing that a file manager leaves behind', () => {
    const folder = join(place, 'site');
    writeSite(disk, folder, page('one'));
    writeFileSync(join(folder, '.DS_Store'), '');
    writeSite(disk, folder, page('two'));
    expect(readdirSync(folder).sort()).toEqual([siteMarker, 'index.html']);
  });

  it('refuses to clear a neighbour of a name it would use itself', () => {
    mkdirSync(join(place, 'site.old'));
    writeFileSync(join(place, 'site.old', 'mine.txt'), 'mine');
    expect(() => writeSite(disk, join(place, 'site'), page('x'))).toThrow(
      'site.old, which also holds mine.txt',
    );
    expect(existsSync(join(place, 'site.old', 'mine.txt'))).toBe(true);
  });

  it('takes an empty folder', () => {
    mkdirSync(join(place, 'site'));
    writeSite(disk, join(place, 'site'), page('one'));
    expect(readFileSync(join(place, 'site', 'index.html'), 'utf8')).toBe('one');
  });

  // Marker, page, site → site.old, site.new → site: four steps that can fail.
  it.each([1, 2, 3, 4])('leaves the old site in place when step %i fails', (failure) => {
    const folder = join(place, 'site');
    writeSite(disk, folder, page('old'));
    expect(() => writeSite(failingAt(failure), folder, page('new'))).toThrow('no space left');
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('old');
    expect(readdirSync(place)).toEqual(['site']);
  });

  it('brings back the site that stood there where a run ended between the two renames', () => {
    const folder = join(place, 'site');
    writeSite(disk, folder, page('old'));
    disk.rename(folder, `${folder}.old`);
    expect(() => writeSite(failingAt(2), folder, page('new'))).toThrow('no space left');
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('old');
  });

  it('refuses two files of one name', () => {
    expect(() => writeSite(disk, join(place, 'site'), [...page('a'), ...page('b')])).toThrow(
      'index.html twice',
    );
  });
});
