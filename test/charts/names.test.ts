/** Fitting names. Widths in em of DejaVu Sans, as a browser's canvas measures them (measureText at 100 px). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitted, fittedPair, textWidth } from '../../lib/charts/names.ts';

describe('textWidth', () => {
  it.each([
    ['m', 0.97],
    ['W', 0.99],
    ['0', 0.64],
    ['i', 0.28],
    [' ', 0.32],
    ['×', 0.84],
    ['e', 0.62],
    ['N', 0.75],
    ['r', 0.41],
  ])('is not less than the width of %j in a wide face, and at most 0.15 em more', (character, em) => {
    expect(textWidth(character, 100)).toBeGreaterThanOrEqual(em * 100);
    expect(textWidth(character, 100)).toBeLessThanOrEqual((em + 0.15) * 100);
  });

  it('gives an ideograph more than its square', () => {
    expect(textWidth('夜', 10)).toBeGreaterThan(10);
  });
});

describe('fitted', () => {
  it('leaves what fits', () => {
    expect(fitted('Abendstern', 200, 13.5)).toBe('Abendstern');
  });

  it('keeps both ends of what does not fit, since names often differ in their last word or number', () => {
    expect(fitted('Nachtkletterer Nummer 07', 120, 13.5)).toMatch(/^Nachtk\p{L}*….*07$/u);
    expect(fitted('Nachtkletterer Nummer 07', 120, 13.5)).not.toBe(
      fitted('Nachtkletterer Nummer 08', 120, 13.5),
    );
  });

  it('leaves no space beside the ellipsis', () => {
    for (let room = 20; room < 200; room++) {
      expect(fitted('Nacht und Tag und Nacht und Tag', room, 13.5)).not.toMatch(/\s…|…\s/);
    }
  });

  it('leaves an ellipsis where there is no room at all', () => {
    expect(fitted('Abendstern', 3, 13.5)).toBe('…');
  });

  it('always fits, and cuts whole characters', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 20, max: 300 }), (text, room) => {
        const short = fitted(text, room, 13.5);
        expect(textWidth(short, 13.5)).toBeLessThanOrEqual(room);
        expect(/\p{Cs}/u.test(short)).toBe(false);
      }),
    );
  });
});

describe('fittedPair', () => {
  it('gives a long name the room a short one leaves', () => {
    const pair = fittedPair('Ast', 'Mondscheinranke vom alten Gewächshaus', 240, 13.5);
    expect(pair).toMatch(/^Ast × Mondscheinran.*haus$/u);
    expect(textWidth(pair, 13.5)).toBeLessThanOrEqual(240);
  });

  it('shortens both where both are long', () => {
    const pair = fittedPair('Mondscheinranke vom Gewächshaus', 'Silberfaden aus dem Gartenteich', 200, 13.5);
    expect(pair).toMatch(/^Mon\p{L}*…\p{L}+ × Sil\p{L}*…\p{L}+$/u);
    expect(textWidth(pair, 13.5)).toBeLessThanOrEqual(200);
  });
});
