/** Pages become a folder: all of them written beside it first, then put in its place at once. */

import type { Output } from './output.ts';

/** A file of the site; `name` is relative to its folder. */
export interface SiteFile {
  readonly name: string;
  readonly text: string;
}

/** The file by which a folder is known to be a site of ours, and so may be replaced; it lists the site's files. */
export const siteMarker = '.fruitodds-site';

const MARKER_HEAD = 'This folder is replaced as a whole each time the site is made. Its files:';

/** What file managers leave behind unasked. */
const DROPPINGS: ReadonlySet<string> = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini']);

/** Why a folder may not be replaced: the path at fault, and the file in it that no site of ours wrote. */
export interface SiteObstacle {
  readonly path: string;
  /** Null where `path` is a file, not a folder. */
  readonly foreign: string | null;
}

/**
 * What stands in the way of a site at this path: a file, or a folder with anything in it that the site made there
 * before did not write. Null where nothing does.
 */
export function siteObstacle(output: Output, folder: string): SiteObstacle | null {
  for (const path of [folder, beside(folder), before(folder)]) {
    const kind = output.kindOf(path);
    if (kind === 'file') return { path, foreign: null };
    const foreign = kind === 'nothing' ? undefined : foreignFile(output, path);
    if (foreign !== undefined) return { path, foreign };
  }
  return null;
}

/**
 * Puts a site into a folder, in place of the one that stood there.
 *
 * What fails leaves the old folder as it was. A folder that holds anything that is not of a site of ours is refused.
 *
 * @param output where to write
 * @param folder path of the site, without a slash at its end
 * @param files of the site; names with forward slashes
 * @throws RangeError for a folder that is not ours, and for two files of one name
 */
export function writeSite(output: Output, folder: string, files: readonly SiteFile[]): void {
  const names = files.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined)
    throw new RangeError(`writeSite: files must have names of their own, got ${twice} twice`);
  refuseForeign(output, folder);
  restore(output, folder);
  output.remove(beside(folder));
  try {
    output.write(`${beside(folder)}/${siteMarker}`, `${[MARKER_HEAD, ...names].join('\n')}\n`);
    for (const { name, text } of files) output.write(`${beside(folder)}/${name}`, text);
    if (output.kindOf(folder) === 'folder') output.rename(folder, before(folder));
    output.rename(beside(folder), folder);
  } catch (error) {
    restore(output, folder);
    output.remove(beside(folder));
    throw error;
  }
  output.remove(before(folder));
}

const beside = (folder: string): string => `${folder}.new`;
const before = (folder: string): string => `${folder}.old`;

/** Where a run ended between the two renames, the site that stood there before comes back. */
function restore(output: Output, folder: string): void {
  if (output.kindOf(folder) === 'nothing' && output.kindOf(before(folder)) === 'folder')
    output.rename(before(folder), folder);
}

function refuseForeign(output: Output, folder: string): void {
  const obstacle = siteObstacle(output, folder);
  if (obstacle === null) return;
  const { path, foreign } = obstacle;
  throw new RangeError(
    foreign === null
      ? `writeSite: folder must be a folder, got ${path}, which is a file`
      : `writeSite: folder must be empty or a site made before, got ${path}, which also holds ${foreign}`,
  );
}

/** The first file in a folder that no site of ours wrote there. */
function foreignFile(output: Output, folder: string): string | undefined {
  const marker = `${folder}/${siteMarker}`;
  const listed = output.kindOf(marker) === 'file' ? output.read(marker).split('\n').slice(1) : [];
  const own = new Set([siteMarker, ...listed]);
  for (const name of filesIn(output, folder, '')) {
    if (!own.has(name) && !DROPPINGS.has(name.slice(name.lastIndexOf('/') + 1))) return name;
  }
  return undefined;
}

function* filesIn(output: Output, folder: string, under: string): Generator<string> {
  for (const name of output.list(folder)) {
    const path = `${folder}/${name}`;
    if (output.kindOf(path) === 'folder') yield* filesIn(output, path, `${under}${name}/`);
    else yield under + name;
  }
}
