import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

// A project of its own with one notebook: the library as compiled by `npm test`, a demo season of two flowers.
const crosses = `cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome
1,2025-06-01,Candle Weir,Copper Tide,fresh,fruit
2,2025-06-02,"</script><img src=x onerror=alert(1)>",Copper Tide,fresh,none
`;
const sound = `---
title: A small season
description: Two flowers.
---

{{ flowers }} flowers, the last on {{ mother }}.

\`\`\`ts
const flowers = given.season.crosses.length;
const mother = given.season.crosses[1]?.seedParent ?? 'none';
\`\`\`
`;

let place = '';
beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), 'small project '));
  for (const name of ['dist', 'lib', 'scripts', 'package.json'])
    cpSync(join(root, name), join(place, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(place, 'node_modules'), 'junction');
  mkdirSync(join(place, 'data-demo'));
  writeFileSync(join(place, 'data-demo', 'crosses.csv'), crosses);
  writeFileSync(join(place, 'data-demo', 'vials.csv'), 'vial,pollen_parent,collected,storage\n');
  writeFileSync(join(place, 'data-demo', 'flowers.csv'), 'seed_parent,flowers\n');
});
afterAll(() => rmSync(place, { recursive: true, force: true }));
beforeEach(() => {
  for (const name of ['reports', 'site']) rmSync(join(place, name), { recursive: true, force: true });
  mkdirSync(join(place, 'reports'));
});

/** What `npm run reports` does once the library is compiled: compiles these notebooks and renders them. */
function rendered(notebook: string): { status: number | null; stderr: string } {
  writeFileSync(join(place, 'reports', 'small.md'), notebook);
  const script = (name: string): string => JSON.stringify(pathToFileURL(join(place, 'scripts', name)).href);
  const code = `import { compileNotebooks } from ${script('prepare.mjs')};
import { renderSite } from ${script('render.mjs')};
try {
  await compileNotebooks();
  process.exitCode = await renderSite();
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}`;
  const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', code], {
    cwd: place,
    encoding: 'utf8',
  });
  return { status, stderr };
}

const page = (): string => readFileSync(join(place, 'site', 'small.html'), 'utf8');

describe('rendering the site', { timeout: 120_000 }, () => {
  it('makes a page of each notebook, with hostile names as text', () => {
    expect(rendered(sound)).toEqual({ status: 0, stderr: '' });
    expect(page()).toContain(
      '<p>2 flowers, the last on &lt;/script&gt;&lt;img src=x onerror=alert(1)&gt;.</p>',
    );
  });

  it('names file, line and column of a cell that fails, ends with status 1 and leaves the old site', () => {
    rendered(sound);
    const before = page();
    const { status, stderr } = rendered(
      sound.replace("?? 'none'", "?? 'none';\nconst late: string = flowers.toFixed(200)"),
    );
    expect(status).toBe(1);
    // Counted by hand: the new line is line 11, and `toFixed` begins after `const late: string = flowers.`
    expect(stderr).toBe(
      'reports/small.md:11:30: RangeError: toFixed() digits argument must be between 0 and 100\nNothing was written: the site is as it was.\n',
    );
    expect(page()).toBe(before);
    expect(readdirSync(place).filter((name) => name.startsWith('site'))).toEqual(['site']);
  });

  it('names file, line and column of a type that is wrong, ends with status 1 and leaves the old site', () => {
    rendered(sound);
    const before = page();
    const { status, stderr } = rendered(sound.replace('.length;', '.size;'));
    expect(status).toBe(1);
    expect(stderr).toMatch(/^reports\/small\.md:9:38: Property 'size' does not exist on type/);
    expect(page()).toBe(before);
  });

  it('refuses to replace a folder that it did not make', () => {
    mkdirSync(join(place, 'site'));
    writeFileSync(join(place, 'site', 'photo.txt'), 'mine');
    const { status, stderr } = rendered(sound);
    expect(status).toBe(1);
    expect(stderr).toContain('folder must be empty or a site made before');
    expect(readdirSync(join(place, 'site'))).toEqual(['photo.txt']);
  });
});
