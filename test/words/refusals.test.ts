import { expect, it } from 'vitest';
import { uncountable } from '../../lib/analysis/refusal.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { failureWords } from '../../lib/words/english-failures.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import { refusalDetails } from '../../lib/words/refusals.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const VIALS = 'vial,pollen_parent,collected,storage\nF-01,Salt Moon,2024-07-17,frozen';

function said(...texts: readonly string[]): string {
  const season = readSeason(
    texts.map((text, i) => ({ name: `${i + 1}.csv`, bytes: new TextEncoder().encode(text) })),
  );
  const refusal = uncountable(season)!;
  return failureWords(refusal.code, refusalDetails(refusal, season)).message;
}

it('names every file where none gives a row', () => {
  expect(said('', ' ')).toBe('No row of 1.csv and 2.csv can be used. 1.csv: The file is empty.');
});

it('names the crosses files alone where others could be read', () => {
  expect(said(VIALS, `${HEAD}\nT1,,A,B,fresh,fruit`)).toMatch(/^No row of 2\.csv can be used\. Row 2: /);
});

it('counts the rows whose outcome is open', () => {
  expect(said(`${HEAD}\nT1,2025-06-01,A,B,fresh,unknown\nT2,2025-06-01,A,B,fresh,pending`)).toMatch(
    /^None of the 2 rows has an outcome yet/,
  );
});

it('puts the open question into the sentence', () => {
  const asked = `${HEAD}\nT1,03/04/2025,A,B,fresh,fruit`;
  expect(said(asked)).toContain('"03/04/2025" in row 2');
  expect(said(asked)).not.toContain('1.csv');
  // Of several files it says which.
  expect(said(VIALS, asked)).toContain('2.csv: The column "pollination_date"');
});

it.each(LANGUAGES)('says in %s too which of several files a question is about', async (language) => {
  const words = await wordsIn(language);
  const bytes = (text: string) => new TextEncoder().encode(text);
  const season = readSeason([
    { name: 'vials.csv', bytes: bytes(VIALS) },
    { name: 'crosses.csv', bytes: bytes(`${HEAD}\nT1,03/04/2025,A,B,fresh,fruit`) },
  ]);
  expect(words.refusalDetails(uncountable(season)!, season).cause).toMatch(/^crosses\.csv\u00A0?: /);
});
