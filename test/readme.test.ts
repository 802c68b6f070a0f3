/** What the README shows is true. */

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runInNewContext } from 'node:vm';
import { analyse, readSeason } from 'fruitodds';
import { describe, expect, it, vi } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const readme = readFileSync(`${root}README.md`, 'utf8');

describe('the README', () => {
  it('shows a library example that runs and counts the demo season as its file does', () => {
    const [, example] = /```ts\n(.*?)```/s.exec(readme)!;
    const code = example!.replace(/^import .*$/gm, '');
    const log = vi.fn();
    const read = (path: string) => readFileSync(`${root}${path}`);
    runInNewContext(code, { readFileSync: read, readSeason, analyse, console: { log } });
    // An oracle of its own: outcomes counted as text, controls apart.
    const lines = readFileSync(`${root}data-demo/crosses.csv`, 'utf8').trim().split('\n');
    const columns = lines[0]!.split(',');
    const cell = (line: string, name: string) => line.split(',')[columns.indexOf(name)];
    const crosses = lines.slice(1).filter((line) => cell(line, 'control') === '');
    const of = (...outcomes: string[]) =>
      crosses.filter((line) => outcomes.includes(cell(line, 'outcome')!)).length;
    expect(log.mock.calls).toEqual([
      [`${of('fruit', 'dropped')} of ${of('fruit', 'dropped', 'none')} flowers set fruit`],
    ]);
  });

  it('tells of the pages that need no terminal before the first command', () => {
    const before = readme.slice(0, readme.indexOf('```sh'));
    expect(before).toContain('your-own-season.html');
    expect(before).toContain('explore.html');
  });

  it('names the commands that package.json has', () => {
    const { scripts, bin } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
    for (const [, script] of readme.matchAll(/npm (?:run )?(reports|test)/g))
      expect(scripts).toHaveProperty(script!);
    expect(readme).toContain('npx fruitodds');
    expect(bin).toHaveProperty('fruitodds');
  });
});
