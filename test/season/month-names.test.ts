import { describe, expect, it } from 'vitest';
import { monthNumber } from '../../lib/season/month-names.ts';

/** The months as the platform's own language data (Unicode CLDR) names them. */
function names(language: string, month: 'long' | 'short'): string[] {
  const format = new Intl.DateTimeFormat(language, { month, timeZone: 'UTC' });
  return Array.from({ length: 12 }, (_, i) => format.format(Date.UTC(2025, i, 15)).replace('.', ''));
}

describe('monthNumber', () => {
  it.each(['en', 'de', 'es', 'fr'])(
    'knows the months in full and short as Unicode names them in %s',
    (language) => {
      const numbers = Array.from({ length: 12 }, (_, i) => i + 1);
      expect(names(language, 'long').map(monthNumber)).toEqual(numbers);
      expect(names(language, 'short').map(monthNumber)).toEqual(numbers);
    },
  );

  it('ignores case and accents', () => {
    expect(['FEVRIER', 'Aout', 'marz', 'Sept', 'Jänner'].map(monthNumber)).toEqual([2, 8, 3, 9, 1]);
  });

  it('takes no name that two months share, nor one that is none', () => {
    expect(['jui', 'ma', 'maybe', 'constructor', ''].map(monthNumber)).toEqual([0, 0, 0, 0, 0]);
  });
});
