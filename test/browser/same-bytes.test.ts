import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { root, sitePath } from './finished-pages.ts';

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
  const site = contents(join(sitePath('index.html'), '..'));
  const elsewhere = mkdtempSync(join(tmpdir(), 'another folder '));
  try {
    for (const name of ['dist', 'data-demo', 'scripts', 'package.json']) {
      cpSync(join(root, name), join(elsewhere, name), { recursive: true });
    }
    symlinkSync(join(root, 'node_modules'), join(elsewhere, 'node_modules'), 'junction');
    const { status, stderr } = spawnSync(
      process.execPath,
      [join(elsewhere, 'scripts', 'render.mjs'), 'out'],
      {
        cwd: elsewhere,
        encoding: 'utf8',
        env: { ...process.env, TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
      },
    );
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(contents(join(elsewhere, 'out'))).toEqual(site);
  } finally {
    rmSync(elsewhere, { recursive: true, force: true });
  }
});
