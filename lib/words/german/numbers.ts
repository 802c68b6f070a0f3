/** Zahlen auf Deutsch: Anzahlen als „7 von 20“, Raten als „etwa 4 von je 10“, damit beide nie zu verwechseln sind. */

import { numbersIn } from '../told/number-grammar.ts';

export const CANNOT_TELL = 'noch nicht zu sagen';

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
  counts: (fruits, flowers) => `${fruits} von ${flowers}`,
  percent: (count) => `${count}\u202F%`,
  inBase: (count, base) => `${count} von je ${base}`,
  under: (count) => `unter ${count}`,
  over: (count) => `über ${count}`,
  about: (count) => `etwa ${count}`,
  span: (lower, upper) => `${lower} bis ${upper}`,
  semicolon: '; ',
  couldBe: (range) => `möglich: ${range}`,
  asHighAs: (end) => `möglich noch bis zu ${end}`,
  asLowAs: (end) => `möglich auch nur ${end}`,
  noFlowers: 'keine Blüten',
  cannotTell: CANNOT_TELL,
  aboutTheSame: 'etwa gleich viele',
  noDifferent: 'kein Unterschied',
  aboutAsMany: 'etwa gleich viele',
  change: (amount, way) => `${amount} ${way === 'fewer' ? 'weniger' : 'mehr'}`,
  inEvery: (change, base) => `${change} von je ${base}`,
  likelihood: [
    'sehr unwahrscheinlich',
    'unwahrscheinlich',
    'etwa so wahrscheinlich wie nicht',
    'wahrscheinlich',
    'sehr wahrscheinlich',
  ],
});

/** „1 Blüte“, „5 Blüten“. */
export function counted(count: number, one: string, many: string): string {
  return `${wholeNumber(count)} ${count === 1 ? one : many}`;
}

/** „a“, „a und b“, „a, b und c“. */
export function joined(parts: readonly string[], word = 'und'): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} ${word} ${parts[parts.length - 1]}`;
}

/** Derselbe Text mit großem Anfangsbuchstaben. */
export function capitalised(text: string): string {
  const [first = '', ...rest] = Array.from(text);
  return first.toUpperCase() + rest.join('');
}

/** „gefroren: 7 von 20“. */
export function headed(head: string, text: string): string {
  return `${head}: ${text}`;
}
