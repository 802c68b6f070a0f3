#!/usr/bin/env node
/** The command's only contact with the process, its streams and the disk. */

import { createHash, randomBytes } from 'node:crypto';
import {
  accessSync,
  constants,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import { writeNewFolder } from './command/new-folder.ts';
import type { World } from './command/world.ts';
import { runFruitodds } from './command.ts';
import { disk, refuseFixedFolder, replaceFile } from './notebook/output.ts';
import { siteObstacle, writeSite } from './notebook/site.ts';

/** The file a path leads to, through links; the path itself where nothing stands there yet. */
function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
}

/** A file is replaced whole, in a folder that is there; a device or a pipe is written to. */
function write(path: string, text: string): void {
  const real = realPath(path);
  const standing = statSync(real, { throwIfNoEntry: false });
  if (standing && !standing.isFile() && !standing.isDirectory()) writeFileSync(real, text);
  else replaceFile({ ...disk, write: writeFileSync, rename: renameSync }, real, text);
}

/** Whether a file lies in a folder, through links. */
function within(path: string, folder: string): boolean {
  const way = relative(realPath(folder), realPath(path));
  return way !== '..' && !way.startsWith(`..${sep}`) && resolve(way) !== way;
}

/** A new file needs a folder that may be written to; a folder is no file. */
function refuseUnwritable(path: string): void {
  const real = realPath(path);
  const standing = statSync(real, { throwIfNoEntry: false });
  if (standing?.isDirectory()) throw refusal('EISDIR');
  if (standing && !standing.isFile()) accessSync(real, constants.W_OK);
  else if (!statSync(dirname(real)).isDirectory()) throw refusal('ENOTDIR');
  else accessSync(dirname(real), constants.W_OK);
}

function refusal(code: string): Error {
  return Object.assign(new Error(code), { code });
}

const world: World = {
  read: (path) => readFileSync(path),
  readInput: () => readFileSync(0),
  sha256: (bytes) => createHash('sha256').update(bytes).digest('hex'),
  write,
  refuseUnwritable,
  writeNewFolder: (folder, files) => writeNewFolder(disk, resolve(folder), files),
  same: (path, other) => realPath(path) === realPath(other),
  print: (text) => void process.stdout.write(text),
  warn: (text) => void process.stderr.write(text),
  note: (text) => void (process.stderr.isTTY && process.stderr.write(text)),
  render: async (season, analysis, language) =>
    (await import('./notebook/render-report.ts')).renderReport(season, analysis, language),
  renderSheet: async (season, analysis, mix, language) =>
    (await import('./notebook/render-report.ts')).renderSheet(season, analysis, mix, language),
  renderSite: async (season, analysis, parts, language) => {
    const [{ renderSite }, { scriptedPages }] = await Promise.all([
      import('./notebook/render-site.ts'),
      import('./browser/scripted-pages.ts'),
    ]);
    const single = analysis.provenance.coded?.level === 'summary' ? null : season;
    const { pages, constant, leftOut } = await scriptedPages(single, [language]);
    const otherPages = [...pages, ...parts.otherPages];
    const site = await renderSite(season, analysis, { ...parts, otherPages }, [language]);
    return { files: site.files, constant, leftOut: [...site.leftOut, ...leftOut] };
  },
  siteObstacle: (folder) => {
    const obstacle = siteObstacle(disk, resolve(folder));
    if (obstacle === null) refuseFixedFolder(dirname(resolve(folder)));
    return obstacle;
  },
  writeSite: (folder, files) => writeSite(disk, resolve(folder), files),
  secret: () => randomBytes(32).toString('hex'),
  ownText: async (language) => (await import('./notebook/own-text.ts')).ownText(language),
  within,
};

// A reader that has seen enough, such as `head`, closes the pipe: no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await runFruitodds(process.argv.slice(2), world);
