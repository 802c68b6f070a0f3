/** Pages become a folder: all of them written beside it first, then put in its place at once. */

import type { Output } from './output.ts';

/** A file of the site; `name` is relative to its folder. */
export interface SiteFile {
  readonly name: string;
  readonly text: string;
}

/** The file by which a folder is known to be a site of ours, and so may be replaced. */
export const siteMarker = '.fruitodds-site';

/**
 * Puts a site into a folder, in place of the one that stood there.
 *
 * What fails leaves the old folder as it was. A folder that holds anything and is not a site of ours is refused.
 *
 * @param output where to write
 * @param folder path of the site, without a slash at its end
 * @param files of the site; names in lower case, no folder among them
 * @throws RangeError for a folder that is not ours, and for two files of one name
 */
export function writeSite(output: Output, folder: string, files: readonly SiteFile[]): void {
  const names = files.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined)
    throw new RangeError(`writeSite: files must have names of their own, got ${twice} twice`);
  const beside = `${folder}.new`;
  const before = `${folder}.old`;
  refuseForeign(output, beside);
  refuseForeign(output, before);
  restore(output, folder, before);
  refuseForeign(output, folder);
  output.remove(beside);
  try {
    output.write(
      `${beside}/${siteMarker}`,
      'This folder is replaced as a whole each time the site is made.\n',
    );
    for (const { name, text } of files) output.write(`${beside}/${name}`, text);
    if (output.kindOf(folder) === 'folder') output.rename(folder, before);
    output.rename(beside, folder);
  } catch (error) {
    restore(output, folder, before);
    output.remove(beside);
    throw error;
  }
  output.remove(before);
}

/** Where a run ended between the two renames, the site that stood there before comes back. */
function restore(output: Output, folder: string, before: string): void {
  if (output.kindOf(folder) === 'nothing' && output.kindOf(before) === 'folder')
    output.rename(before, folder);
}

function refuseForeign(output: Output, path: string): void {
  const kind = output.kindOf(path);
  if (kind === 'nothing') return;
  const names = kind === 'folder' ? output.list(path) : [path];
  if (names.length > 0 && !names.includes(siteMarker)) {
    throw new RangeError(
      `writeSite: folder must be empty or a site made before, got ${path}, which is neither`,
    );
  }
}
