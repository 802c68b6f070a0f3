/** Which pieces of a program are text of the project's own. */

import { phrasesIn } from '../../notebook/leaks.ts';
import { piecesOf } from '../own-pieces.ts';

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
  const own = phrasesIn(ownText, new Set(pieces.filter((piece) => WORD.test(piece))));
  return pieces.map((piece) => (own.delete(piece) ? '1' : '0')).join('');
}
