import { describe, expect, it } from 'vitest';
import {
  CONTROLS,
  foldWord,
  isBlank,
  likelySlip,
  OUTCOMES,
  OWN_METHODS,
  STORAGES,
  YES_NO,
} from '../../lib/season/values.ts';

describe('word lists', () => {
  it('hold the words of the file format as they stand', () => {
    for (const word of ['fruit', 'dropped', 'none', 'unknown', 'pending'])
      expect(OUTCOMES.get(word)).toBe(word);
    for (const word of ['fresh', 'room', 'refrigerated', 'frozen']) expect(STORAGES.get(word)).toBe(word);
    for (const word of ['unpollinated', 'selfed']) expect(CONTROLS.get(word)).toBe(word);
  });

  it('hold what growers write instead', () => {
    expect(OUTCOMES.get('failed')).toBe('none');
    expect(OUTCOMES.get('?')).toBe('unknown');
    expect([STORAGES.get('fridge'), STORAGES.get('freezer')]).toEqual(['refrigerated', 'frozen']);
    expect([YES_NO.get('yes'), YES_NO.get('0')]).toEqual([true, false]);
    expect(CONTROLS.get('no')).toBe(false);
    expect([STORAGES.get(foldWord('Kühlschrank')), STORAGES.get(foldWord('congelado'))]).toEqual([
      'refrigerated',
      'frozen',
    ]);
    expect([OUTCOMES.get('oui'), OUTCOMES.get('nein')]).toEqual(['fruit', 'none']);
  });
});

describe('word lists in four languages', () => {
  it.each([
    [OUTCOMES, 'fruit', ['set', 'angesetzt', 'cuajó', 'nouée']],
    [OUTCOMES, 'dropped', ['aborted', 'dropped off', 'abgeworfen', 'abortado', 'avorté']],
    [OUTCOMES, 'none', ['nothing', 'failed to set', 'nichts', 'nada', 'rien']],
    [OUTCOMES, 'unknown', ['tag lost', 'Etikett verloren', 'perdida', 'étiquette perdue']],
    [OUTCOMES, 'pending', ['not yet', 'noch offen', 'pendiente', 'trop tôt']],
    [STORAGES, 'frozen', ['deep freeze', 'tiefgekühlt', 'congelada', 'congélateur', 'CONGELE']],
    [STORAGES, 'refrigerated', ['Kuehlschrank', 'nevera', 'frigo']],
    [CONTROLS, 'selfed', ['selfing', 'geselbstet', 'autopolinizada', 'autofécondée']],
    [YES_NO, true, ['Yes', 'ja', 'SÍ', 'oui', 'wahr', 'verdadero', 'vrai', 'true']],
    [YES_NO, false, ['No', 'nein', 'non', 'falsch', 'falso', 'faux', 'false']],
  ] as const)('%# hold each word', (list: ReadonlyMap<string, unknown>, meant, words) => {
    expect(words.map((word) => list.get(foldWord(word)))).toEqual(words.map(() => meant));
  });
});

describe('foldWord', () => {
  it('ignores case, dashes and underscores', () =>
    expect(foldWord(' Room_Temperature ')).toBe('room temperature'));
});

describe('isBlank', () => {
  it('takes a question mark and a dash for nothing, but not zero', () => {
    expect(['', '?', '-', 'N/A', '0', 'none'].map(isBlank)).toEqual([true, true, true, true, false, false]);
  });
});

describe('likelySlip', () => {
  it('finds a word with one letter wrong, missing, added or two exchanged', () => {
    expect(['frozem', 'frzen', 'frozenn', 'frozne'].map((text) => likelySlip(text, STORAGES))).toEqual(
      Array(4).fill('frozen'),
    );
  });

  it('finds two slips in a long word, and none in a word of the list', () => {
    expect(['refridgerator', 'Tiefkülschranck', 'freser'].map((text) => likelySlip(text, STORAGES))).toEqual([
      'refrigerated',
      'frozen',
      null,
    ]);
    expect(likelySlip('fresco', STORAGES)).toBeNull();
    expect(likelySlip('silica jel', OWN_METHODS)).toBe('silica gel');
    expect(likelySlip('x'.repeat(200_000), STORAGES)).toBeNull();
  });

  it('leaves other words alone', () => {
    expect(['silica', 'dry ice', 'frost', 'nitrogen'].map((text) => likelySlip(text, STORAGES))).toEqual(
      Array(4).fill(null),
    );
  });
});
