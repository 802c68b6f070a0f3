import { describe, expect, it } from 'vitest';
import { ownTextOf, piecesOf } from '../../lib/browser/own-pieces.ts';

const PROGRAM = "var a=`<h2>The pollen of ${b}</h2>`+'It\\'s old\\nFresh '";

describe('piecesOf', () => {
  it('cuts a program where a text may begin or end', () =>
    expect(piecesOf(PROGRAM).filter((piece) => /[a-z]{2}/i.test(piece))).toEqual([
      'var a=',
      'The pollen of ',
      'It',
      's old',
      'Fresh ',
    ]));
});

describe('ownTextOf', () => {
  it('holds the kept pieces, and nothing that reaches from one into the next', () => {
    const kept = piecesOf(PROGRAM)
      .map((piece) => (/^(?:The|It|s old)/.test(piece) ? '1' : '0'))
      .join('');
    const text = ownTextOf({ program: PROGRAM, kept });
    expect(text).toBe('The pollen of \n\u0001\nIt\n\u0001\ns old');
  });
});
