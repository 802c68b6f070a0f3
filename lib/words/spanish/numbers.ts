/** Numbers in Spanish: counts as "7 de 20", rates as "unas 4 de cada 10", so that the two never look alike. */

import { numbersIn } from '../told/number-grammar.ts';

export const CANNOT_TELL = 'aún no se sabe';

export const {
  wholeNumber,
  decimal,
  counts,
  percent,
  inTen,
  rate,
  rateWithRange,
  rateInText,
  limit,
  difference,
  likelihoodWord,
  likely,
  likelyBeside,
} = numbersIn({
  decimalMark: ',',
  counts: (fruits, flowers) => `${fruits} de ${flowers}`,
  percent: (count) => `${count.replace(' de ', ' del ')}\u202F%`,
  inBase: (count, base) => `${count} de cada ${base}`,
  under: (count) => `menos de ${count}`,
  over: (count) => `más de ${count}`,
  about: (count) => (count === '1' ? 'cerca de 1' : `unas ${count}`),
  span: (lower, upper) => `de ${lower} a ${upper}`,
  semicolon: '; ',
  couldBe: (range) => `quizá ${range}`,
  asHighAs: (end) => `quizá hasta ${end}`,
  asLowAs: (end) => `quizá solo ${end}`,
  noFlowers: 'ninguna flor',
  cannotTell: CANNOT_TELL,
  aboutTheSame: 'más o menos las mismas',
  noDifferent: 'ninguna',
  aboutAsMany: 'más o menos las mismas',
  change: (amount, way) =>
    way === 'more' ? `${amount} más` : `${amount} ${amount.startsWith('menos') ? 'de menos' : 'menos'}`,
  inEvery: (change, base) => `${change} de cada ${base}`,
  likelihood: ['muy improbable', 'improbable', 'incierto', 'probable', 'muy probable'],
});

/** "1 flor", "5 flores". */
export function counted(count: number, one: string, many: string): string {
  return `${wholeNumber(count)} ${count === 1 ? one : many}`;
}

/** "unas 5 flores", "cerca de 1 flor"; `some` is "unos" or "unas". */
export function about(some: 'unos' | 'unas', count: number, one: string, many: string): string {
  return `${count === 1 ? 'cerca de' : some} ${counted(count, one, many)}`;
}

/** "y" becomes "e", and "o" becomes "u", before a word that begins with the same sound. */
function conjunction(word: string, next: string): string {
  if (word === 'y') return /^h?i(?![aeo])/i.test(next) ? 'e' : 'y';
  if (word === 'o') return /^(?:h?o|8|11\b)/i.test(next) ? 'u' : 'o';
  return word;
}

/** "a", "a y b", "a, b y c". */
export function joined(parts: readonly string[], word = 'y'): string {
  const last = parts.at(-1) ?? '';
  if (parts.length < 2) return last;
  return `${parts.slice(0, -1).join(', ')} ${conjunction(word, last)} ${last}`;
}

/** The same text with a capital first letter. */
export function capitalised(text: string): string {
  const [first = '', ...rest] = Array.from(text);
  return first.toUpperCase() + rest.join('');
}

/** "congelado: 7 de 20". */
export function headed(head: string, text: string): string {
  return `${head}: ${text}`;
}
