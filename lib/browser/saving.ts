/** What the page hands to the browser to save: the report, the settings, the files as they were understood. */

import { OWN_SEASON } from '../words/own-season.ts';
import { cleanedName, FILE_NAMES } from '../words/told/file-names.ts';
import type { Flow } from './flow.ts';

/** What the page's buttons that save call. */
export interface Saving {
  readonly saveReport: () => void;
  readonly saveSettings: () => void;
  readonly saveFlowers: () => void;
  readonly saveCleaned: (kind: 'crosses' | 'vials') => void;
}

const CSV = 'text/csv;charset=utf-8';

/** The part of the flow that saves what was made. */
export function saving({ desk, known, places }: Flow): Saving {
  const save = (name: string, text: string | null | undefined, type: string): void => {
    if (text === null || text === undefined) return;
    desk.save(name, text, type);
    places.say('own-status', OWN_SEASON.saved(name));
  };
  return {
    saveReport: () => {
      save(FILE_NAMES.report, known.report?.text, 'text/html;charset=utf-8');
      known.saved = true;
    },
    saveSettings: () => save(FILE_NAMES.settings, known.report?.settings, 'application/json'),
    saveCleaned: (kind) => {
      save(cleanedName(kind), known.report?.cleaned[kind], CSV);
    },
    saveFlowers: () => save(FILE_NAMES.flowers, known.report?.flowers, CSV),
  };
}
