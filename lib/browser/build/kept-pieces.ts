/** Which pieces of a program are text of the project's own. */

import { phrasesIn } from '../../notebook/leaks.ts';
import { piecesOf } from '../own-pieces.ts';

const WORDS = /[\p{L}\p{N}\p{M}_]+/gu;
const plain = (text: string): string => text.normalize('NFC').toLowerCase();

/** Whether a text has words of these alone: at the first other one nothing more is looked at. */
function hasOnly(text: string, words: ReadonlySet<string>): boolean {
  for (const [word] of plain(text).matchAll(WORDS)) if (!words.has(word)) return false;
  return true;
}

/** Only words of some letters are looked for among the words of a page. */
const WORD = /\p{L}{3}/u;

/**
 * A sign for each piece of a program: 1 where it stands in the project's own text word for word, at its first place; 0
 * elsewhere. So the page excuses no name that the command would not.
 *
 * @param ownText what the command takes for the pages' own text
 */
export function keptPieces(program: string, ownText: string): string {
  const pieces = piecesOf(program);
  // Nearly all pieces are code, which some word of theirs tells: to look for each of them would take much longer.
  const known = new Set(plain(ownText).match(WORDS));
  const likely = [...new Set(pieces)].filter((piece) => WORD.test(piece) && hasOnly(piece, known));
  const own = phrasesIn(ownText, likely);
  return pieces.map((piece) => (own.delete(piece) ? '1' : '0')).join('');
}
