import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { root } from './finished-pages.ts';

/** Every file in a folder, by name; the library's own pages in a folder below are the tool's that makes them. */
function contents(folder: string): Map<string, string> {
  return new Map(
    readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ name }) => name)
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );
}

it('makes the same bytes in another folder, time zone and language', { timeout: 300_000 }, () => {
  const elsewhere = mkdtempSync(join(tmpdir(), 'another folder '));
  try {
    for (const name of ['dist', 'data-demo', 'scripts', 'package.json']) {
      cpSync(join(root, name), join(elsewhere, name), { recursive: true });
    }
    symlinkSync(join(root, 'node_modules'), join(elsewhere, 'node_modules'), 'junction');
    const far = { TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' };
    expect(rendered(elsewhere, 'far', far)).toEqual(
      rendered(root, join(elsewhere, 'near'), { TZ: 'Etc/UTC', LANG: 'C', LC_ALL: 'C' }),
    );
  } finally {
    rmSync(elsewhere, { recursive: true, force: true });
  }
});

/** The site as the scripts in a project's folder render it, in the time zone and the language given. */
function rendered(project: string, out: string, place: Record<string, string>): Map<string, string> {
  const { status, stderr } = spawnSync(process.execPath, [join(project, 'scripts', 'render.mjs'), out], {
    cwd: project,
    encoding: 'utf8',
    env: { ...process.env, ...place },
  });
  expect([status, stderr]).toEqual([0, '']);
  return contents(resolve(project, out));
}
