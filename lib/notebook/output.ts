/** Where pages are written: the few things the site asks of a disk, so that tests can pass another. */

import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

/** Paths are as the caller gives them; every method throws where the system refuses. */
export interface Output {
  /** What stands at a path. */
  readonly kindOf: (path: string) => 'file' | 'folder' | 'nothing';
  /** Names in a folder. */
  readonly list: (folder: string) => readonly string[];
  /** The text of a file. */
  readonly read: (path: string) => string;
  /** Writes a file, with the folders it needs. */
  readonly write: (path: string, text: string) => void;
  /** Moves a file or folder; a file that stands at `to` is replaced. */
  readonly rename: (from: string, to: string) => void;
  /** Removes a file, or a folder and all in it; nothing there is fine. */
  readonly remove: (path: string) => void;
}

/**
 * Makes a folder with those it stands in. Node's own way of making several at once never ends where the system says that a
 * folder which exists does not, as /proc does.
 */
function makeFolder(path: string): void {
  if (existsSync(path)) return;
  const parent = dirname(path);
  if (parent !== path) makeFolder(parent);
  mkdirSync(path);
}

/** The disk of this computer. */
export const disk: Output = {
  kindOf: (path) => {
    if (!existsSync(path)) return 'nothing';
    return lstatSync(path).isDirectory() ? 'folder' : 'file';
  },
  list: (folder) => readdirSync(folder),
  read: (path) => readFileSync(path, 'utf8'),
  write: (path, text) => {
    makeFolder(dirname(path));
    writeFileSync(path, text);
  },
  rename: renameSync,
  remove: (path) => rmSync(path, { recursive: true, force: true }),
};

/**
 * Throws as the system does where a folder can't be made or written to: tried by making one there and taking it away.
 *
 * @param folder path of a folder that may be there or not
 */
export function refuseFixedFolder(folder: string): void {
  const parent = dirname(folder);
  if (!existsSync(folder) && parent !== folder) refuseFixedFolder(parent);
  else rmdirSync(mkdtempSync(join(folder, '.fruitodds-')));
}

/**
 * Writes a file so that at no moment half a file stands at its path: beside it first, then renamed.
 *
 * @param output where to write
 * @param path of the file
 * @param text its whole content
 */
export function replaceFile(output: Output, path: string, text: string): void {
  const beside = `${path}.new`;
  try {
    output.write(beside, text);
    output.rename(beside, path);
  } catch (error) {
    output.remove(beside);
    throw error;
  }
}
