import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { disk, refuseFixedFolder, replaceFile } from '../../lib/notebook/output.ts';

let place = '';
beforeEach(() => {
  place = mkdtempSync(join(tmpdir(), 'output-'));
});
afterEach(() => rmSync(place, { recursive: true }));

describe('disk', () => {
  it('tells file, folder and nothing apart', () => {
    disk.write(join(place, 'a', 'b.txt'), 'x');
    expect(disk.kindOf(join(place, 'a', 'b.txt'))).toBe('file');
    expect(disk.kindOf(join(place, 'a'))).toBe('folder');
    expect(disk.kindOf(join(place, 'c'))).toBe('nothing');
    expect(disk.list(join(place, 'a'))).toEqual(['b.txt']);
    expect(disk.read(join(place, 'a', 'b.txt'))).toBe('x');
  });

  it('removes a folder with all in it, and minds nothing where nothing stands', () => {
    disk.write(join(place, 'a', 'b.txt'), 'x');
    disk.remove(join(place, 'a'));
    disk.remove(join(place, 'a'));
    expect(readdirSync(place)).toEqual([]);
  });
});

// Linux alone has /proc, in which nobody can make a folder and which says that it is not there: ENOENT, proc(5).
describe.runIf(existsSync('/proc/self'))('a folder that cannot be made', () => {
  it('is refused, also below one that is missing', () => {
    expect(() => disk.write('/proc/pages/a.html', 'x')).toThrow('ENOENT');
    expect(() => disk.write('/proc/pages/more/a.html', 'x')).toThrow('ENOENT');
    expect(() => refuseFixedFolder('/proc/pages')).toThrow('ENOENT');
    expect(() => refuseFixedFolder('/dev/null/pages')).toThrow('ENOTDIR');
  });
});

describe('refuseFixedFolder', () => {
  it('leaves nothing where a folder can be made', () => {
    refuseFixedFolder(join(place, 'a', 'b'));
    expect(readdirSync(place)).toEqual([]);
  });
});

describe('replaceFile', () => {
  it('puts the new text in place of the old and leaves nothing beside', () => {
    const path = join(place, 'report.html');
    replaceFile(disk, path, 'one');
    replaceFile(disk, path, 'two');
    expect(readFileSync(path, 'utf8')).toBe('two');
    expect(readdirSync(place)).toEqual(['report.html']);
  });

  it('leaves the old file where the writing or the renaming fails', () => {
    const path = join(place, 'report.html');
    replaceFile(disk, path, 'old');
    const failure = (): void => {
      throw new Error('no space left');
    };
    expect(() => replaceFile({ ...disk, write: failure }, path, 'new')).toThrow('no space left');
    expect(() => replaceFile({ ...disk, rename: failure }, path, 'new')).toThrow('no space left');
    expect(readFileSync(path, 'utf8')).toBe('old');
    expect(readdirSync(place)).toEqual(['report.html']);
  });

  it('refuses to take the place of a folder', () => {
    mkdirSync(join(place, 'folder', 'inside'), { recursive: true });
    expect(() => replaceFile(disk, join(place, 'folder'), 'x')).toThrow();
    expect(readdirSync(place)).toEqual(['folder']);
  });
});
