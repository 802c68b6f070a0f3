import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { writeNewFolder } from '../../lib/command/new-folder.ts';
import { disk } from '../../lib/notebook/output.ts';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'fruitodds-folder-'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const FILES = [
  { name: 'a.csv', text: 'a' },
  { name: 'b.csv', text: 'b' },
];

it('fills a folder that is not there, or is empty', () => {
  mkdirSync(join(root, 'empty'));
  for (const name of ['new', 'empty']) {
    writeNewFolder(disk, join(root, name), FILES);
    expect(readdirSync(join(root, name)).sort()).toEqual(['a.csv', 'b.csv']);
  }
  expect(readFileSync(join(root, 'new', 'b.csv'), 'utf8')).toBe('b');
  expect(readdirSync(root).sort()).toEqual(['empty', 'new']);
});

it('leaves alone what stands there: a file in the folder, a file of its name, a folder beside it', () => {
  mkdirSync(join(root, 'full'));
  writeFileSync(join(root, 'full', 'mine.csv'), 'mine');
  writeFileSync(join(root, 'file'), 'mine');
  mkdirSync(join(root, 'other.new'));
  writeFileSync(join(root, 'other.new', 'mine.csv'), 'mine');
  for (const name of ['full', 'file', 'other']) {
    expect(() => writeNewFolder(disk, join(root, name), FILES)).toThrow(
      expect.objectContaining({ code: 'ENOTEMPTY' }),
    );
  }
  expect(readdirSync(join(root, 'full'))).toEqual(['mine.csv']);
  expect(readFileSync(join(root, 'file'), 'utf8')).toBe('mine');
  expect(readdirSync(join(root, 'other.new'))).toEqual(['mine.csv']);
});

it('takes away what it began where the disk refuses', () => {
  const failing = {
    ...disk,
    write: (path: string, text: string) => {
      if (path.endsWith('b.csv')) throw new Error('full');
      disk.write(path, text);
    },
  };
  expect(() => writeNewFolder(failing, join(root, 'new'), FILES)).toThrow('full');
  expect(readdirSync(root)).toEqual([]);
});
