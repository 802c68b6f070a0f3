import { beforeAll, describe, expect, it } from 'vitest';
import { keptPieces } from '../../lib/browser/build/kept-pieces.ts';
import { ownTextOf, piecesOf } from '../../lib/browser/own-pieces.ts';
import { phrasesIn } from '../../lib/notebook/leaks.ts';
import { ownText } from '../../lib/notebook/own-text.ts';
import { siteText } from './finished-pages.ts';
import { unpackedPrograms } from './own-season-page.ts';

describe('keptPieces', () => {
  it('keeps a text of our own once, and no code or text of others', () => {
    const program = 'say(`Salt keeps`),warn(`invalid worker`),say(`salt Keeps`),say(`Salt keeps`)';
    const kept = keptPieces(program, 'All pollen: salt keeps it.');
    expect(piecesOf(program).filter((_, i) => kept[i] === '1')).toEqual(['Salt keeps', 'salt Keeps']);
  });
});

// The command's own text is the second voice: what the page excuses must be excused there too.
describe('the page’s own text', () => {
  let program = '';
  let text = '';
  let command = '';
  beforeAll(async () => {
    const [, worker = '', kept = ''] = unpackedPrograms(siteText('your-own-season.html')).programs;
    program = worker;
    text = ownTextOf({ program, kept });
    command = await ownText();
  });

  it('is text of the command’s, piece by piece', () => {
    const pieces = text.split('\n\u0001\n');
    expect(pieces.length).toBeGreaterThan(1500);
    const known = phrasesIn(command, pieces);
    expect(pieces.filter((piece) => !known.has(piece))).toEqual([]);
  });

  it('excuses no name that is a word of the program alone', () => {
    const words = new Set(program.match(/\p{L}{4,}/gu));
    const own = phrasesIn(command, words);
    const alone = [...words].filter((word) => !own.has(word));
    expect(alone).toEqual(expect.arrayContaining(['prototype', 'instanceof', 'Buffer']));
    expect(alone.length).toBeGreaterThan(1000);
    expect([...phrasesIn(text, alone)]).toEqual([]);
  });

  it('excuses what every report says', () => {
    const said = [
      'Did frozen pollen work',
      'Which pairs take',
      'could be',
      'fresh',
      'like for like',
      'Safest first',
    ];
    expect(phrasesIn(text, said)).toEqual(new Set(said));
  });
});
