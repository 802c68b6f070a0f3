import type { SeasonText } from '../season/write-season.ts';
import { Failure } from './failure.ts';
import { orFail } from './open-season.ts';
import type { World } from './world.ts';

/** What stands at the path already, null where nothing does. */
export function standing(path: string, world: World): string | null {
  try {
    return new TextDecoder().decode(world.read(path));
  } catch {
    return null;
  }
}

function isFull(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOTEMPTY';
}

/**
 * Writes files into a new or empty folder.
 *
 * @throws Failure where something stands there already or the system refuses
 */
export function writeFolder(folder: string, files: readonly SeasonText[], world: World): void {
  orFail('output-not-writable', folder, () => {
    try {
      world.writeNewFolder(folder, files);
    } catch (error) {
      if (isFull(error)) throw new Failure('folder-not-empty', { folder });
      throw error;
    }
  });
}
