/** The page's first script, a small one: it unpacks the page's own script and the Worker's program. */

import type { OwnPieces } from './own-pieces.ts';
import { unpacked } from './unpacked.ts';

/** What parts the texts in what was packed: none holds such a sign. */
export const PROGRAMS_PARTED = '\u0000';

/** The page's own script as an element, with the Worker's program, and which pieces of that are text, as a property. */
export interface ProgramScript extends HTMLScriptElement {
  worker?: OwnPieces;
}

/**
 * Adds the page's own script, which the page's policy allows by its digest and no other.
 *
 * @param packed both programs and what is text in the second, as `packed` made them of one text
 * @param tooOld what is said where the browser cannot unpack
 */
export async function startPacked(packed: string, tooOld: string): Promise<void> {
  // The page is shown first: on a slow telephone unpacking takes longer than all of its text.
  await new Promise((resolve) => void setTimeout(resolve));
  try {
    const [page = '', program = '', kept = ''] = (await unpacked(packed)).split(PROGRAMS_PARTED);
    const script: ProgramScript = document.createElement('script');
    script.worker = { program, kept };
    script.textContent = page;
    document.body.append(script);
  } catch {
    const status = document.getElementById('own-status');
    if (status !== null) status.textContent = tooOld;
  }
}
