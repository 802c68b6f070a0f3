/** The text that the Worker's program brings along itself, told apart from its code without a parser. */

/** What stands around texts in a program: marks of strings, slots and tags; escapes too. */
const AROUND = /\\.|\$?\{|["'`<>}]/;
/** A sign that no name holds, so that no phrase is found across two pieces. */
const PARTED = '\n\u0001\n';

/** A program, and which of its pieces are text of the project's own. */
export interface OwnPieces {
  readonly program: string;
  /** A sign for each piece: 1 for text of our own, 0 for code and for what libraries say. */
  readonly kept: string;
}

/** A program cut where a text may begin or end. */
export function piecesOf(program: string): string[] {
  return program.split(AROUND);
}

/** All text that a program brings along itself. */
export function ownTextOf({ program, kept }: OwnPieces): string {
  return piecesOf(program)
    .filter((_, i) => kept[i] === '1')
    .join(PARTED);
}
