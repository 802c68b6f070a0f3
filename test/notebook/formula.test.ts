import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { libraryIn } from '../../lib/in-language.ts';
import { formula, fraction, squareRoot } from '../../lib/notebook/formula.ts';
import { wordsIn } from '../../lib/words/languages.ts';

/* Elements and what they hold: MathML Core (W3C), sections 3.2 and 3.3. */

function mathOf(markup: string) {
  const { document } = parseHTML(`<!doctype html><html><body>${markup}</body></html>`);
  return document.querySelector('math')!;
}

/** Elements as nested lists of names and texts, rows with a single child told by the child. */
function shape(element: Element): string {
  const own = [...element.children].map(shape);
  const name = element.localName;
  if (own.length === 0) return `${name}:${element.textContent}`;
  return name === 'mrow' && own.length === 1 ? own[0]! : `${name}(${own.join(' ')})`;
}

const shapeOf = (markup: string) => [...mathOf(markup).children].map((child) => shape(child)).join(' ');

describe('formula', () => {
  it('tells names, numbers and signs apart', () => {
    expect(shapeOf(formula('x + 3 = n').markup)).toBe('mrow(mi:x mo:+ mn:3 mo:= mi:n)');
    expect(shapeOf(formula('0.05 η').markup)).toBe('mrow(mn:0.05 mi:η)');
  });

  it('puts scripts below and above their sign', () => {
    expect(shapeOf(formula('x_i').markup)).toBe('msub(mi:x mi:i)');
    expect(shapeOf(formula('z^2').markup)).toBe('msup(mi:z mn:2)');
    expect(shapeOf(formula('w_k^2').markup)).toBe('msubsup(mi:w mi:k mn:2)');
    expect(shapeOf(formula('u_{i ∈ T}').markup)).toBe('msub(mi:u mrow(mi:i mo:∈ mi:T))');
  });

  it('knows fractions, roots and estimates', () => {
    const wilson = formula('p̂ ±', fraction('x', squareRoot(['n +', '1'])));
    expect(shapeOf(wilson.markup)).toBe(
      'mrow(mrow(mover(mi:p mo:^) mo:±) mfrac(mi:x msqrt(mrow(mrow(mi:n mo:+) mn:1))))',
    );
  });

  it('leaves room behind a name of several letters, where no sign gives it', () => {
    expect(shapeOf(formula('log m').markup)).toBe('mrow(mi:log mspace: mi:m)');
    expect(shapeOf(formula('exp ( m )').markup)).toBe('mrow(mi:exp mo:( mi:m mo:))');
  });

  it('is named by how it is read aloud', () => {
    const label = (markup: string) => mathOf(markup).getAttribute('aria-label');
    expect(label(formula('p̂ =', fraction('x', 'n')).markup)).toBe(
      'p hat equals the fraction x over n end of fraction',
    );
    expect(label(formula('σ', squareRoot('3'), '≤ z_1^2').markup)).toBe(
      'sigma the square root of 3 end of root is at most z sub 1 squared',
    );
    // Found by a listener: "z to the power of 2 / 2" can be heard in two ways.
    expect(label(formula('z^2 / 2').markup)).toBe('z squared divided by 2');
    expect(label(formula('0.05^{1/n} − 1').markup)).toBe(
      '0.05 to the power of 1 divided by n end of power minus 1',
    );
  });

  it('is a display of its own and escapes what it holds', () => {
    const { markup } = formula('a < b & "c"');
    expect(mathOf(markup).getAttribute('display')).toBe('block');
    expect(markup).toContain('<mo>&lt;</mo>');
    expect(markup).not.toMatch(/<mo><<|"c"/);
  });
});

describe('a formula in a notebook of another language', () => {
  /* Words of school books; no source. */
  it.each([
    ['de', 'p Dach gleich der Bruch x durch n Ende des Bruchs', 'durch'],
    ['es', 'p estimada es igual a la fracción x entre n fin de la fracción', 'entre'],
    ['fr', 'p chapeau égale la fraction x sur n fin de fraction', 'sur'],
  ] as const)('is read aloud in %s', async (language, start, between) => {
    const said = libraryIn(await wordsIn(language)).formula('p̂ =', fraction('x', 'n'));
    const label = mathOf(said.markup).getAttribute('aria-label') ?? '';
    expect(label.slice(0, start.length)).toBe(start);
    expect(label).toContain(` x ${between} n `);
    expect(shapeOf(said.markup)).toBe(shapeOf(formula('p̂ =', fraction('x', 'n')).markup));
  });

  it('has its names and its decimal mark, seen and heard', async () => {
    const said = libraryIn(await wordsIn('de')).formula('upper ≤ 0.05');
    expect(shapeOf(said.markup)).toBe('mrow(mi:Obergrenze mo:≤ mn:0,05)');
    expect(mathOf(said.markup).getAttribute('aria-label')).toBe('Obergrenze höchstens 0,05');
  });
});
