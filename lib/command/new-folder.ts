import type { Output } from '../notebook/output.ts';
import type { SeasonText } from '../season/write-season.ts';

function refusal(code: string): Error {
  return Object.assign(new Error(code), { code });
}

function isFree(output: Output, path: string): boolean {
  const kind = output.kindOf(path);
  return kind === 'nothing' || (kind === 'folder' && output.list(path).length === 0);
}

/**
 * Writes files into a folder that is not there yet or is empty: beside it first, then renamed, so that nothing is ever
 * overwritten and no half of it stands there.
 *
 * @param folder path without a slash at its end
 * @throws Error with the code `ENOTEMPTY` where anything stands in it already, or with the system's own
 */
export function writeNewFolder(output: Output, folder: string, files: readonly SeasonText[]): void {
  const beside = `${folder}.new`;
  for (const path of [folder, beside]) if (!isFree(output, path)) throw refusal('ENOTEMPTY');
  try {
    for (const { name, text } of files) output.write(`${beside}/${name}`, text);
    output.remove(folder);
    output.rename(beside, folder);
  } catch (error) {
    output.remove(beside);
    throw error;
  }
}
