import { sha256 } from '../season/sha256.ts';
import { Failure } from './failure.ts';
import { orFail } from './open-season.ts';
import { readSettings, type Settings } from './settings.ts';
import type { World } from './world.ts';
import { standing } from './write-out.ts';

/**
 * Reads a file of settings.
 *
 * @throws Failure where the system refuses it or it holds no settings
 */
export function openSettings(file: string, world: World): Settings {
  const bytes = orFail('file-unreadable', file, () => world.read(file));
  return { file, sha256: sha256(bytes), values: readSettings(file, new TextDecoder().decode(bytes)) };
}

/**
 * Refuses to save settings over any file that holds none.
 *
 * @throws Failure where such a file stands there, or the system would refuse to write
 */
export function refuseOverSettings(file: string, world: World): void {
  orFail('output-not-writable', file, () => world.refuseUnwritable(file));
  const text = standing(file, world);
  if (text === null || text.trim() === '') return;
  try {
    readSettings(file, text);
  } catch {
    throw new Failure('settings-not-ours', { file });
  }
}
