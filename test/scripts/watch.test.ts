import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { afterChanges } from '../../scripts/watch.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A clock that stands still until it is told to ring. */
function stillClock() {
  let calls: { readonly call: () => void }[] = [];
  return {
    set: (call: () => void) => {
      calls.push({ call });
      return calls.at(-1)!;
    },
    clear: (waiting: { readonly call: () => void }) => {
      calls = calls.filter((each) => each !== waiting);
    },
    ring: () => {
      const due = calls;
      calls = [];
      for (const { call } of due) call();
    },
    get waiting() {
      return calls.length;
    },
  };
}

const soon = () => new Promise<void>((done) => setImmediate(done));

describe('building after changes', () => {
  it('waits until an editor is done, and builds once for all of its steps', async () => {
    const clock = stillClock();
    const built: (readonly string[])[] = [];
    const { changed } = afterChanges((names) => void built.push(names), clock);
    for (const name of ['a.md', 'a.md', 'b.md']) changed(name);
    expect([clock.waiting, built]).toEqual([1, []]);
    clock.ring();
    await soon();
    expect(built).toEqual([['a.md', 'b.md']]);
  });

  it('builds what is saved meanwhile afterwards, never two at a time', async () => {
    const clock = stillClock();
    const built: (readonly string[])[] = [];
    let end = () => {};
    let atOnce = 0;
    const { changed } = afterChanges(async (names) => {
      atOnce += 1;
      expect(atOnce).toBe(1);
      built.push(names);
      await new Promise<void>((done) => {
        end = done;
      });
      atOnce -= 1;
    }, clock);
    changed('a.md');
    clock.ring();
    await soon();
    for (const name of ['b.md', 'c.md']) {
      changed(name);
      clock.ring();
    }
    await soon();
    expect(built).toEqual([['a.md']]);
    end();
    await soon();
    expect(built).toEqual([['a.md'], ['b.md', 'c.md']]);
    end();
  });

  it('ends with nothing left to build', async () => {
    const clock = stillClock();
    const built: (readonly string[])[] = [];
    const { changed, idle } = afterChanges((names) => void built.push(names), clock);
    changed('a.md');
    await idle();
    expect([built, clock.waiting]).toEqual([[['a.md']], 0]);
  });
});

const header = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome\n';
const sound = `---
title: A small season
description: Two flowers.
---

Seen {{ flowers }} flowers.

\`\`\`ts
const flowers = given.season.crosses.length;
\`\`\`
`;

describe('the watch over a small project', { timeout: 240_000 }, () => {
  let place = '';
  let watch: ChildProcess;
  let said = '';
  beforeAll(() => {
    place = mkdtempSync(join(tmpdir(), 'watched project '));
    for (const name of ['dist', 'lib', 'scripts', 'package.json'])
      cpSync(join(root, name), join(place, name), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(place, 'node_modules'), 'junction');
    for (const name of ['data-demo', 'reports']) mkdirSync(join(place, name));
    put('data-demo/crosses.csv', `${header}1,2025-06-01,A,B,fresh,fruit\n2,2025-06-02,B,A,fresh,none\n`);
    put('data-demo/vials.csv', 'vial,pollen_parent,collected,storage\n');
    put('data-demo/flowers.csv', 'seed_parent,flowers\n');
    put('reports/small.md', sound);
    const script = (name: string) => JSON.stringify(pathToFileURL(join(place, 'scripts', name)).href);
    const code = `import { watchSite } from ${script('watch.mjs')};
const stop = new AbortController();
process.once('SIGINT', () => stop.abort());
await watchSite(${JSON.stringify(join(place, 'site'))}, [], stop.signal);`;
    watch = spawn(process.execPath, ['--input-type=module', '-e', code], { cwd: place });
    const hear = (text: Buffer) => {
      said += text.toString();
    };
    watch.stdout!.on('data', hear);
    watch.stderr!.on('data', hear);
  });
  afterAll(() => {
    watch.kill('SIGKILL');
    rmSync(place, { recursive: true, force: true });
  });
  const put = (name: string, text: string) => writeFileSync(join(place, name), text);
  const page = () => readFileSync(join(place, 'site', 'small.html'), 'utf8');
  /** Waits for what must come; the test's own limit is the only one. */
  const until = async (holds: () => boolean) => {
    while (!holds()) await new Promise((done) => setTimeout(done, 50));
  };

  it('makes the site, and again at each change, names what is wrong and goes on, and ends when told to', async () => {
    await until(() => said.includes('Ctrl-C ends it'));
    expect(page()).toContain('Seen 2 flowers.');
    put('reports/small.md', sound.replace('Seen', 'There were'));
    await until(() => page().includes('There were 2 flowers.'));
    put('reports/small.md', sound.replace('.length;', '.size;'));
    // Counted by hand: the cell's line is line 9, and `size` begins after `const flowers = given.season.crosses.`
    await until(() => /reports\/small\.md:9:38: Property 'size' does not exist/.test(said));
    expect(page()).toContain('There were 2 flowers.');
    put('reports/small.md', sound);
    await until(() => page().includes('Seen 2 flowers.'));
    put(
      'data-demo/crosses.csv',
      `${header}1,2025-06-01,A,B,fresh,fruit\n2,2025-06-02,B,A,fresh,none\n3,2025-06-02,A,B,fresh,none\n4,never,A,B,fresh,none\n`,
    );
    await until(() => page().includes('Seen 3 flowers.'));
    await until(() => /data-demo\/crosses\.csv:5: .*never/.test(said));
    const ended = new Promise((done) => watch.on('exit', (code) => done(code)));
    watch.kill('SIGINT');
    expect(await ended).toBe(0);
  });
});

describe('the site made again after a data file was saved', { timeout: 240_000 }, () => {
  const place = mkdtempSync(join(tmpdir(), 'saved project '));
  beforeAll(() => {
    for (const name of ['dist', 'scripts', 'package.json', 'data-demo'])
      cpSync(join(root, name), join(place, name), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(place, 'node_modules'), 'junction');
  });
  afterAll(() => rmSync(place, { recursive: true, force: true }));
  /** What stands in every file of the site, made in a process of its own; after the change too where one is given. */
  const made = (change: string | null): { readonly before: string[]; readonly after: string[] } => {
    const code = `import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { siteMaker } from ${JSON.stringify(pathToFileURL(join(place, 'scripts', 'render.mjs')).href)};
const make = await siteMaker();
const digests = async () => (await make()).files.map(
  ({ name, text }) => name + ' ' + createHash('sha256').update(text).digest('hex'),
);
const before = await digests();
const changed = ${JSON.stringify(change)};
if (changed !== null) writeFileSync(${JSON.stringify(join(place, 'data-demo', 'crosses.csv'))}, changed);
console.log(JSON.stringify({ before, after: changed === null ? [] : await digests() }));`;
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', code], {
      cwd: place,
      encoding: 'utf8',
    });
    expect(run.stderr).toBe('');
    return JSON.parse(run.stdout);
  };

  it('has the bytes that a site made from nothing has', () => {
    const crosses = readFileSync(join(place, 'data-demo', 'crosses.csv'), 'utf8');
    const { before, after } = made(`${crosses.trimEnd().split('\n').slice(0, -40).join('\n')}\n`);
    expect(after).toEqual(made(null).before);
    // Each page about the season tells of forty crosses fewer now.
    const pages = ['season-review', 'fresh-against-frozen', 'old-vials', 'next-season', 'your-own-season'];
    const differing = pages.filter((page) => {
      const own = (files: readonly string[]) => files.find((file) => file.startsWith(`${page}.html `));
      return own(before) !== own(after);
    });
    expect(differing).toEqual(pages.slice(0, 4));
  });
});

describe('the words of the script', () => {
  it.each([
    ['an option that is not there', ['--wach']],
    ['two folders', ['one', 'two']],
  ])('refuse %s before anything is done', (_, words) => {
    const { status, stderr } = spawnSync(process.execPath, [join(root, 'scripts', 'reports.mjs'), ...words], {
      encoding: 'utf8',
    });
    expect(status).toBe(2);
    expect(stderr).toContain(words.at(-1));
    expect(stderr).toContain('npm run watch');
  });
});
