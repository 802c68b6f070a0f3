/** How French says a number: counts first, whole numbers, natural frequencies, a range with every rate. */
import type { Proportion } from '../../proportions/interval.ts';
import { numbersIn } from '../told/number-grammar.ts';

/** What is said where the numbers do not say anything yet. */
export const CANNOT_TELL = 'on ne peut pas encore le dire';

const french = numbersIn({
  decimalMark: ',',
  counts: (fruits, flowers) => `${fruits} sur ${flowers}`,
  percent: (count) => `${count}\u202F%`,
  inBase: (count, base) => `${count} pour ${base}`,
  under: (count) => `moins de ${count}`,
  over: (count) => `plus de ${count}`,
  about: (count) => `environ ${count}`,
  span: (lower, upper) => `${lower} à ${upper}`,
  semicolon: '\u00A0; ',
  couldBe: (range) => `peut-être ${range}`,
  asHighAs: (end) => `cela peut encore aller jusqu’à ${end}`,
  asLowAs: (end) => `cela peut encore descendre jusqu’à ${end}`,
  noFlowers: 'aucune fleur',
  cannotTell: CANNOT_TELL,
  aboutTheSame: 'à peu près autant',
  noDifferent: 'autant',
  aboutAsMany: 'autant ou presque',
  change: (amount, way) => `${amount} de ${way === 'fewer' ? 'moins' : 'plus'}`,
  inEvery: (change, base) => `${change} pour ${base} fleurs`,
  likelihood: ['très peu probable', 'peu probable', 'ni probable ni improbable', 'probable', 'très probable'],
});

/** What every language says from a number alone. */
export const {
  wholeNumber,
  decimal,
  counts,
  percent,
  inTen,
  rate,
  limit,
  difference,
  likelihoodWord,
  likely,
  likelyBeside,
  rateInText,
} = french;

/** "1 fleur", "5 fleurs"; below two French counts in the singular. */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
  return `${wholeNumber(count)} ${Math.abs(count) < 2 ? noun : plural}`;
}

/** "a", "a et b", "a, b et c". */
export function joined(parts: readonly string[], word = 'et'): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} ${word} ${parts[parts.length - 1]}`;
}

/** The same text with a capital first letter, for the start of a sentence. */
export function capitalised(text: string): string {
  const [first = '', ...rest] = Array.from(text);
  return first.toUpperCase() + rest.join('');
}

/** Counts, rate and range of a raw proportion. */
export function rateWithRange(proportion: Proportion): string {
  return french.rateWithRange(proportion);
}

/** "congelé : 7 sur 20", the space unbroken. */
export function headed(head: string, text: string): string {
  return `${head} : ${text}`;
}

/** "4 couples sur 30": the noun stands with what is counted of all. */
export function countedOf(part: number, all: number, noun: string, plural = `${noun}s`): string {
  return `${counted(part, noun, plural)} sur ${wholeNumber(all)}`;
}

/** "d’environ 8", "de moins de 1", "qu’environ 3 mois": a word before what may begin with a vowel. */
export function elided(word: 'de' | 'que', said: string): string {
  return /^[aeiou]/.test(said) ? `${word.slice(0, -1)}’${said}` : `${word} ${said}`;
}

/** "une chance d’environ 8 pour 10". */
export function chanceOf(probability: number): string {
  return `une chance ${elided('de', inTen(probability))}`;
}
