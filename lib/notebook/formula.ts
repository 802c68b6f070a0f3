/** A formula as MathML, which browsers draw and screen readers read, with the same said in words. */

import type { FormulaName, FormulaWords } from '../words/formula-words.ts';
import { FORMULA_WORDS } from '../words/formula-words.ts';
import type { Html, HtmlValue } from './html.ts';
import { html } from './html.ts';

/** A part of a formula that is more than a line of signs. */
export interface FormulaTree {
  readonly part: 'fraction' | 'root';
  readonly inside: readonly FormulaPart[];
}

/**
 * Signs as they are read, left to right: `p̂ ± z`, `n_1 x_{ij}^2`. Letters that stand together are one name; `_` and `^`
 * put the next sign, or what braces hold, below or above the sign before.
 */
export type FormulaPart = string | FormulaTree | readonly FormulaPart[];

/** A sign with what stands below and above it. */
const SIGN = /(\p{L}\u0302|\p{L}+|\d+(?:\.\d+)?|\S)(?:_(\{[^{}]*\}|\S))?(?:\^(\{[^{}]*\}|\S))?/gu;
const HAT = '\u0302';

/**
 * A fraction in a formula.
 *
 * @example
 * fraction('x', 'n').part // 'fraction'
 */
export function fraction(top: FormulaPart, bottom: FormulaPart): FormulaTree {
  return { part: 'fraction', inside: [top, bottom] };
}

/**
 * A square root in a formula.
 *
 * @example
 * squareRoot('2').part // 'root'
 */
export function squareRoot(of: FormulaPart): FormulaTree {
  return { part: 'root', inside: [of] };
}

/**
 * A formula on a line of its own, as presentation MathML, named by how it is read aloud.
 *
 * Answers: how does a formula get into a page that may load nothing, so that it can be read, searched, copied and heard?
 *
 * @param parts what stands in it, left to right: signs, `fraction`, `squareRoot`, lists of these
 * @example
 * formula('p̂ =', fraction('x', 'n')).markup.includes('aria-label="p hat equals the fraction x over n end of fraction"') // true
 */
export function formula(...parts: readonly FormulaPart[]): Html {
  return formulaIn(FORMULA_WORDS)(...parts);
}

/** The same, read aloud in the words of a language. */
export function formulaIn(words: FormulaWords): (...parts: readonly FormulaPart[]) => Html {
  return (
    ...parts
  ) => html`<math display="block" aria-label="${spoken(parts, words)}">${markupOf(parts, words)}</math>
`;
}

function isList(part: FormulaPart): part is readonly FormulaPart[] {
  return Array.isArray(part);
}

/** The element of a part; several stand in a row. */
function markupOf(part: FormulaPart, words: FormulaWords): Html {
  if (typeof part === 'string') {
    const signs = signsOf(part);
    return html`<mrow>${signs.map((sign, at) => [signMarkup(sign, words), spaceAfter(sign, signs[at + 1])])}</mrow>`;
  }
  if (isList(part)) return html`<mrow>${part.map((each) => markupOf(each, words))}</mrow>`;
  const inside = part.inside.map((each) => markupOf(each, words));
  return part.part === 'root' ? html`<msqrt>${inside}</msqrt>` : html`<mfrac>${inside}</mfrac>`;
}

interface Sign {
  readonly text: string;
  readonly below: string | null;
  readonly above: string | null;
}

function signsOf(text: string): Sign[] {
  const inner = (script: string | undefined) => script?.replace(/^\{(.*)\}$/, '$1') ?? null;
  return [...text.normalize('NFD').matchAll(SIGN)].map(([, sign, below, above]) => ({
    text: sign!,
    below: inner(below),
    above: inner(above),
  }));
}

function signMarkup({ text, below, above }: Sign, words: FormulaWords): Html {
  const base = baseMarkup(written(text, words));
  const script = (text: string | null) => (text === null ? null : markupOf(text, words));
  const [low, high] = [script(below), script(above)];
  if (low !== null && high !== null) return html`<msubsup>${base}${low}${high}</msubsup>`;
  if (low !== null) return html`<msub>${base}${low}</msub>`;
  return high === null ? base : html`<msup>${base}${high}</msup>`;
}

/** A name or a number as the language writes it; signs are the same everywhere. */
function written(text: string, { names, decimalMark }: FormulaWords): string {
  if (Object.hasOwn(names, text)) return names[text as FormulaName];
  return /^\d/.test(text) ? text.replace('.', decimalMark) : text;
}

/** Browsers set `log m` as `logm`: a name of several letters needs room, unless a sign with room of its own follows. */
function spaceAfter({ text }: Sign, next: Sign | undefined): HtmlValue {
  const isName = /^\p{L}{2,}$/u.test(text) && !text.endsWith(HAT);
  return isName && (next === undefined || /^[\p{L}\d∑∏|]/u.test(next.text))
    ? html`<mspace width="0.17em"></mspace>`
    : '';
}

function baseMarkup(text: string): Html {
  if (text.endsWith(HAT))
    return html`<mover accent="true"><mi>${text.slice(0, -1)}</mi><mo stretchy="false">^</mo></mover>`;
  if (/^\d/.test(text)) return html`<mn>${text}</mn>`;
  if (/^\p{L}/u.test(text)) return html`<mi>${text}</mi>`;
  return html`<mo>${text}</mo>`;
}

/** The formula as a person would read it aloud. */
function spoken(part: FormulaPart, words: FormulaWords): string {
  if (typeof part === 'string')
    return signsOf(part)
      .map((sign) => spokenSign(sign, words))
      .join(' ');
  if (isList(part)) return part.map((each) => spoken(each, words)).join(' ');
  const [first, second] = part.inside.map((each) => spoken(each, words));
  if (part.part === 'root') return `${words.root[0]} ${first} ${words.root[1]}`;
  return `${words.over[0]} ${first} ${words.over[1]} ${second} ${words.over[2]}`;
}

function raised(above: string, words: FormulaWords): readonly string[] {
  return above === '2' ? [words.squared] : [words.power[0], spoken(above, words), words.power[1]];
}

function spokenSign({ text, below, above }: Sign, words: FormulaWords): string {
  const hat = text.endsWith(HAT);
  const plain = hat ? text.slice(0, -1) : text;
  return [
    words.signs.get(plain) ?? written(plain, words),
    ...(hat ? [words.hat] : []),
    ...(below === null ? [] : [words.sub, spoken(below, words)]),
    ...(above === null ? [] : raised(above, words)),
  ].join(' ');
}
