/** Files that are chosen among the others and are no season: saved settings, and the key of coded copies. */

import { Failure } from '../command/failure.ts';
import { readCodeKey } from '../season/code-key.ts';
import { OWN_SETTINGS, OWN_SHARING, refusedOnPage } from '../words/own-settings.ts';
import type { ChosenFile } from './chosen-files.ts';
import type { Flow } from './flow.ts';
import { fillSettings, settingsIn } from './form-values.ts';
import { settingsFrom } from './saved-settings.ts';

/** Whether a file that could be read is JSON by its name. */
export function isSettingsFile({ name, bytes }: ChosenFile): boolean {
  return bytes !== null && /\.json$/i.test(name);
}

/**
 * Takes settings or a key from a file.
 *
 * @returns what is to be said of it, and whether the files are to be read anew with it
 */
export function useSettingsFile(
  { known, places }: Flow,
  { name, bytes }: ChosenFile,
): { note: string; reread: boolean } {
  const text = new TextDecoder().decode(bytes ?? new Uint8Array());
  if (readCodeKey(text) !== null) {
    known.key = { name, text };
    return { note: OWN_SHARING.keyRead(name), reread: false };
  }
  const form = places.at('own-settings');
  try {
    const settings = settingsIn(form, known.settings);
    const said = settingsFrom(name, text, { answers: known.answers, settings });
    known.answers = said.answers;
    known.settings = said.settings;
    fillSettings(form, said.settings);
    return { note: OWN_SETTINGS.fileRead(name), reread: true };
  } catch (error) {
    if (error instanceof Failure) {
      return { note: refusedOnPage(error.code, error.details), reread: false };
    }
    throw error;
  }
}
