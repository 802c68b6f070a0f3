import { describe, expect, it } from 'vitest';
import { markShown } from '../../lib/season/decimal-marks.ts';
import { readSeason } from '../../lib/season/read-season.ts';

/** What the fruit weights of a file are read as, in grams. */
function weights(...texts: readonly string[]) {
  const rows = texts.map((text, i) => `T${i};2025-06-01;A;B;fresh;fruit;${text}`);
  const text = [
    'cross_id;pollination_date;seed_parent;pollen_parent;storage;outcome;fruit_weight_g',
    ...rows,
  ];
  const { crosses, files } = readSeason([
    { name: 'x.csv', bytes: new TextEncoder().encode(text.join('\n')) },
  ]);
  return {
    grams: crosses.map(({ fruitWeightGrams }) => fruitWeightGrams),
    found: files[0].problems.map(({ code, value }) => [code, value]),
  };
}

// Decimal comma and decimal point, thousands in groups of three: SI brochure (9th edition), 5.4.4.
describe('markShown', () => {
  it.each([
    ['184,5', ','],
    ['184.25 g', '.'],
    ['0,125 kg', ','],
    ['0.125', '.'],
    ['1.234,5', ','],
    ['1,234.5', '.'],
    ['12,3456', ','],
    ['1,250', null],
    ['1.250', null],
    ['1.234.567', null],
    ['184', null],
    ['many', null],
    ['1.2.2025', null],
  ])('%s shows %s', (text, mark) => {
    expect(markShown(text)).toBe(mark);
  });
});

describe('numbers of a column', () => {
  it('are read by the mark that others of it show', () => {
    expect(weights('184,5', '1.250', '1,250')).toEqual({
      grams: [184.5, 1250, 1.25],
      found: [['number-converted', '1.250']],
    });
    expect(weights('184.5', '1.250', '1,250').grams).toEqual([184.5, 1.25, 1250]);
    expect(weights('1.234,5', '2.000').grams).toEqual([1234.5, 2000]);
  });

  it('whose marks disagree or do not tell are asked about one by one where a comma may part thousands', () => {
    expect(weights('184,5', '12.5', '1,250')).toEqual({
      grams: [184.5, 12.5, null],
      found: [['number-not-understood', '1,250']],
    });
    expect(weights('1,250', '0,125 kg')).toEqual({
      grams: [1.25, 125],
      found: [['number-converted', '0,125 kg']],
    });
  });
});
