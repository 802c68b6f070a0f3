/** How a formula is read aloud: its signs and its parts, in English. */

/** Words for what a formula is made of. */
export interface FormulaWords {
  readonly over: readonly [before: string, between: string, after: string];
  readonly root: readonly [before: string, after: string];
  readonly sub: string;
  readonly power: string;
  readonly hat: string;
  /** Signs that are read as a word; every other one is read as it stands. */
  readonly signs: ReadonlyMap<string, string>;
}

/** Formulas read in English. */
export const FORMULA_WORDS: FormulaWords = {
  over: ['the fraction', 'over', 'end of fraction'],
  root: ['the square root of', 'end of root'],
  sub: 'sub',
  power: 'to the power of',
  hat: 'hat',
  signs: new Map([
    ['=', 'equals'],
    ['≈', 'is about'],
    ['≤', 'is at most'],
    ['≥', 'is at least'],
    ['<', 'is less than'],
    ['>', 'is more than'],
    ['∝', 'is proportional to'],
    ['+', 'plus'],
    ['−', 'minus'],
    ['±', 'plus or minus'],
    ['·', 'times'],
    ['×', 'times'],
    ['÷', 'divided by'],
    ['(', 'open bracket'],
    [')', 'close bracket'],
    ['[', 'open square bracket'],
    [']', 'close square bracket'],
    ['|', 'given'],
    ['∑', 'the sum'],
    ['∏', 'the product'],
    ['∈', 'in'],
    ['√', 'root'],
    ['′', 'prime'],
    ['…', 'and so on'],
    ['∞', 'infinity'],
    ['α', 'alpha'],
    ['κ', 'kappa'],
    ['λ', 'lambda'],
    ['η', 'eta'],
    ['θ', 'theta'],
    ['σ', 'sigma'],
    ['π', 'pi'],
    ['ρ', 'rho'],
    ['μ', 'mu'],
    ['β', 'beta'],
    ['γ', 'gamma'],
    ['δ', 'delta'],
    ['τ', 'tau'],
    ['φ', 'phi'],
    ['Φ', 'capital phi'],
  ]),
};
