/** How a formula is read aloud: its signs and its parts, in English. */

/** Names of several letters in formulas that are words, not signs such as log or RR. */
export type FormulaName =
  | 'upper'
  | 'lower'
  | 'estimate'
  | 'fresh'
  | 'pairs'
  | 'vial'
  | 'day'
  | 'likelihood'
  | 'prior'
  | 'worth'
  | 'weight'
  | 'variance'
  | 'fruits'
  | 'varieties';

/** Words for what a formula is made of. */
export interface FormulaWords {
  readonly decimalMark: string;
  /** How each name is written and read. */
  readonly names: Readonly<Record<FormulaName, string>>;
  readonly over: readonly [before: string, between: string, after: string];
  readonly root: readonly [before: string, after: string];
  readonly sub: string;
  /** A power that is no square ends in words, for what follows could belong to it. */
  readonly power: readonly [before: string, after: string];
  readonly squared: string;
  readonly hat: string;
  /** Signs that are read as a word; every other one is read as it stands. */
  readonly signs: ReadonlyMap<string, string>;
}

/** Formulas read in English. */
export const FORMULA_WORDS: FormulaWords = {
  decimalMark: '.',
  names: {
    upper: 'upper',
    lower: 'lower',
    estimate: 'estimate',
    fresh: 'fresh',
    pairs: 'pairs',
    vial: 'vial',
    day: 'day',
    likelihood: 'likelihood',
    prior: 'prior',
    worth: 'worth',
    weight: 'weight',
    variance: 'variance',
    fruits: 'fruits',
    varieties: 'varieties',
  },
  over: ['the fraction', 'over', 'end of fraction'],
  root: ['the square root of', 'end of root'],
  sub: 'sub',
  power: ['to the power of', 'end of power'],
  squared: 'squared',
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
    ['/', 'divided by'],
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
