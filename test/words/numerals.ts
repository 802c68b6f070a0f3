/** The numbers of a text, whatever language writes them. */

import type { Language } from '../../lib/words/language.ts';

/** Months as a calendar names them, from January on. */
const MONTHS: Readonly<Record<Language, string>> = {
  en: 'January February March April May June July August September October November December',
  de: 'Januar Februar März April Mai Juni Juli August September Oktober November Dezember',
  es: 'enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre',
  fr: 'janvier février mars avril mai juin juillet août septembre octobre novembre décembre',
};

/** Days in words as YYYY-MM-DD. */
function withPlainDays(text: string, language: Language): string {
  const months = MONTHS[language].split(' ');
  const day = new RegExp(`(\\d{1,2})(?:\\.|er)? (?:de )?(${months.join('|')}) (?:de )?(\\d{4})`, 'g');
  return text.replace(day, (_, date: string, month: string, year: string) =>
    [year, String(1 + months.indexOf(month)).padStart(2, '0'), date.padStart(2, '0')].join('-'),
  );
}

/**
 * Every number of a text in order, with a decimal point and no spaces: "1 234,5" in German is "1234.5". Left out is what
 * others say without a numeral: "(1 fois)" is "once".
 */
export function numeralsIn(text: string, language: Language): string[] {
  const counted = language === 'fr' ? text.replaceAll('(1 fois)', '') : text;
  const joined = withPlainDays(counted, language).replaceAll(/(?<=\d)[\u202F\u2009](?=\d)/g, '');
  // English groups with a comma in its own prose; the others write decimals with it.
  const pointed =
    language === 'en'
      ? joined.replaceAll(/(?<=\b\d{1,3}),(?=\d{3}\b)/g, '')
      : joined.replaceAll(/(?<=\d),(?=\d)/g, '.');
  return pointed.match(/\d+(?:\.\d+)?/g) ?? [];
}
