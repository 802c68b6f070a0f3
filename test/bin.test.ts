import { spawnSync } from 'node:child_process';
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
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CLEAN } from './command/memory-world.ts';
import { schemaFaults } from './schema-validator.ts';

// The compiled command, as a grower runs it: `npm ci` and `npm test` leave it in dist/.
const bin = fileURLToPath(new URL('../dist/lib/bin.js', import.meta.url));
let folder = '';

function fruitodds(words: readonly string[], { input = '', node = [] as readonly string[] } = {}) {
  return spawnSync(process.execPath, [...node, bin, ...words], { cwd: folder, input, encoding: 'utf8' });
}

beforeAll(() => {
  expect(existsSync(bin), 'dist/lib/bin.js is compiled').toBe(true);
  folder = mkdtempSync(join(tmpdir(), 'fruitodds-bin-'));
  writeFileSync(join(folder, 'crosses.csv'), CLEAN);
  writeFileSync(join(folder, 'empty.csv'), '');
  mkdirSync(join(folder, 'folder'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Our own pages take plants and vials of the demo season for their examples: those words stand there for every season. */
function isExample(name: string): boolean {
  const reports = fileURLToPath(new URL('../reports/', import.meta.url));
  const words = fileURLToPath(new URL('../lib/words/', import.meta.url));
  return [reports, words].some((place) =>
    readdirSync(place).some((file) => readFileSync(join(place, file), 'utf8').includes(name)),
  );
}

describe('the compiled command', () => {
  it('is a program of its own', () => {
    expect(readFileSync(bin, 'utf8').startsWith('#!/usr/bin/env node\n')).toBe(true);
  });

  // Linux alone has /proc, in which nobody can make a folder, though it says that one may.
  it.runIf(existsSync('/proc/self')).each(['site', 'template'])(
    '%s refuses a folder that cannot be made',
    (command) => {
      const files = command === 'site' ? ['crosses.csv'] : [];
      const { status, stderr } = fruitodds([command, ...files, '-o', '/proc/pages']);
      expect([status, stderr]).toEqual([2, expect.stringContaining('/proc/pages can’t be written')]);
    },
  );

  // The project's own target: a cold `--help` within 0.4 s of processor time; the least of three runs on a busy machine.
  it('shows its help within 0.4 s of processor time', () => {
    const tell =
      'process.on("exit",()=>{const{user,system}=process.cpuUsage();process.stderr.write(String((user+system)/1e6))})';
    const seconds = [1, 2, 3].map(() => {
      const { status, stdout, stderr } = fruitodds(['--help'], {
        node: ['--import', `data:text/javascript,${encodeURIComponent(tell)}`],
      });
      expect([status, stdout.startsWith('fruitodds: ')]).toEqual([0, true]);
      return Number(stderr);
    });
    expect(Math.min(...seconds)).toBeGreaterThan(0);
    expect(Math.min(...seconds)).toBeLessThanOrEqual(0.4);
  });

  it('checks a file, and standard input', () => {
    const { status, stdout } = fruitodds(['check', 'crosses.csv', '--json']);
    expect(status).toBe(0);
    expect(schemaFaults('check', JSON.parse(stdout))).toEqual([]);
    const piped = fruitodds(['check', '-', '--json'], { input: CLEAN });
    expect([piped.status, JSON.parse(piped.stdout).files[0].used]).toEqual([0, 3]);
  });

  it.each([
    ['option-unknown', ['check', 'crosses.csv', '--levle', '0.9']],
    ['file-unreadable', ['check', 'missing.csv']],
    ['file-unreadable', ['check', 'folder']],
    ['no-usable-row', ['analyse', 'empty.csv']],
    ['output-missing', ['report', 'crosses.csv']],
    ['output-is-input', ['report', 'crosses.csv', '-o', './crosses.csv']],
    ['output-other-kind', ['report', 'crosses.csv', '-o', 'report.pdf']],
    ['output-other-kind', ['sheet', 'crosses.csv', '-o', 'sheet.xlsx']],
    ['output-not-writable', ['report', 'crosses.csv', '-o', 'missing/out.html']],
    ['output-not-writable', ['report', 'crosses.csv', '-o', 'folder']],
  ])('exits with 2 and %s for %j, as JSON and in words, without a trace', (code, words) => {
    const { status, stdout, stderr } = fruitodds([...words, '--json']);
    expect(status).toBe(2);
    expect(schemaFaults('error', JSON.parse(stdout))).toEqual([]);
    expect(JSON.parse(stdout)).toMatchObject({ error: { code } });
    expect(stderr).toMatch(/^fruitodds: .+\n.+\n$/);
    expect(stderr).not.toMatch(/\bat \S+:\d+/);
  });

  it('leaves nothing behind where it could not write, and the files that it reads as they were', () => {
    fruitodds(['report', 'crosses.csv', '-o', 'folder']);
    expect(readdirSync(folder).sort()).toEqual(['crosses.csv', 'empty.csv', 'folder']);
    expect(readFileSync(join(folder, 'crosses.csv'), 'utf8')).toBe(CLEAN);
  });

  it('writes the report of the demo season', () => {
    const demo = (name: string) => fileURLToPath(new URL(`../data-demo/${name}`, import.meta.url));
    const out = join(folder, 'folder', 'out.html');
    const { status, stdout, stderr } = fruitodds([
      'report',
      demo('crosses.csv'),
      ...['--vials', demo('vials.csv'), '--flowers', demo('flowers.csv'), '-o', out],
    ]);
    expect([status, stderr, stdout]).toEqual([0, '', `Wrote ${out}.\n`]);
    expect(readFileSync(out, 'utf8')).toMatch(/^<!doctype html>/);
    expect(readdirSync(join(folder, 'folder'))).toEqual(['out.html']);
  });

  it('writes the site of the demo season, and replaces it, but no folder with anything else in it', () => {
    const demo = (name: string) => fileURLToPath(new URL(`../data-demo/${name}`, import.meta.url));
    const words = ['site', demo('crosses.csv'), demo('vials.csv'), '-o', 'my season/'];
    const { status, stdout, stderr } = fruitodds(words);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(
      /^Wrote \d+ files \((?:\d+ kB|\d+\.\d MB)\) to my season\/: open index\.html in it\.\n$/,
    );
    const site = readdirSync(join(folder, 'my season'));
    expect(site).toEqual(
      expect.arrayContaining([
        ...['index.html', 'season-review.html', 'results.json'],
        ...['explore.html', 'your-own-season.html', 'for-fellow-growers.html', 'methods.html'],
      ]),
    );
    const results = readFileSync(join(folder, 'my season', 'results.json'), 'utf8');
    expect(fruitodds(['analyse', demo('crosses.csv'), demo('vials.csv'), '--json']).stdout).toBe(results);
    writeFileSync(join(folder, 'my season', 'mine.csv'), CLEAN);
    const again = fruitodds([...words, '--json']);
    expect(JSON.parse(again.stdout)).toMatchObject({ error: { code: 'site-not-ours' } });
    expect(again.stderr).toContain('my season also holds mine.csv');
    const own = fruitodds(['site', 'my season/mine.csv', '-o', 'my season', '--json']);
    expect(JSON.parse(own.stdout)).toMatchObject({ error: { code: 'input-in-site' } });
    expect(readFileSync(join(folder, 'my season', 'results.json'), 'utf8')).toBe(results);
  });

  it('makes a coded copy of the demo season in which no name of it stands, and the same codes a year later', () => {
    const demo = (name: string) => fileURLToPath(new URL(`../data-demo/${name}`, import.meta.url));
    const files = [demo('crosses.csv'), demo('vials.csv'), demo('flowers.csv')];
    const { status, stderr } = fruitodds([
      'site',
      ...files,
      '-o',
      'shared',
      '--anonymous',
      '--key',
      'key.json',
    ]);
    expect([status, stderr]).toEqual([0, expect.stringContaining('The names are kept in key.json')]);
    const shared = readdirSync(join(folder, 'shared')).map((name) =>
      readFileSync(join(folder, 'shared', name), 'utf8'),
    );
    // The second, plainer search: every name of the demo files, wherever it stands.
    const cells = files
      .flatMap((file) => readFileSync(file, 'utf8').trim().split('\n').slice(1))
      .map((row) => row.split(','));
    const names = new Set(
      cells.flat().filter((cell) => /^[A-Z][a-z]+ [A-Z0-9]|^F-\d|^2\d-\d{3}$|^20\d\d-/.test(cell)),
    );
    expect(names.size).toBeGreaterThan(300);
    const found = [...names].filter((name) => shared.some((text) => text.includes(name)));
    expect(found.filter((name) => !isExample(name))).toEqual([]);
    const key = readFileSync(join(folder, 'key.json'), 'utf8');
    expect(existsSync(join(folder, 'shared', 'key.json'))).toBe(false);
    const again = fruitodds([
      'report',
      'shared/coded-crosses.csv',
      'shared/coded-vials.csv',
      '-o',
      'again.html',
    ]);
    expect(again.status).toBe(0);
    expect(
      fruitodds(['analyse', ...files, '--anonymous=summary', '--key', 'key.json', '--json']).status,
    ).toBe(0);
    expect(readFileSync(join(folder, 'key.json'), 'utf8')).toBe(key);
  });
});
