/**
 * Wording. Expected sentences come from the report's rules ("7 of 20 (about 4 in 10; could be 2 to 6 in 10)")
 * and from rounding by hand; Wilson intervals quoted are Brown, Cai & DasGupta 2001's formula, checked with
 * R's `prop.test(7, 20, correct = FALSE)` (0.1812, 0.5671) and `prop.test(0, 5, correct = FALSE)` (0, 0.4345).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  capitalised,
  counted,
  counts,
  decimal,
  difference,
  inTen,
  joined,
  likelihoodWord,
  likely,
  likelyBeside,
  percent,
  rate,
  rateInText,
  rateWithRange,
  wholeNumber,
} from '../../lib/words/numbers.ts';

const unit = () => fc.double({ min: 0, max: 1, noNaN: true });

describe('whole numbers and counts', () => {
  it('groups from five digits on, with a narrow space that is no decimal sign', () => {
    expect(wholeNumber(5000)).toBe('5000');
    expect(wholeNumber(12345)).toBe('12\u202F345');
    expect(wholeNumber(1234567)).toBe('1\u202F234\u202F567');
    expect(wholeNumber(-12)).toBe('−12');
  });

  it('puts fruits before flowers', () => {
    expect(counts(7, 20)).toBe('7 of 20');
  });

  it('chooses the singular for one only', () => {
    expect([0, 1, 2].map((n) => counted(n, 'flower'))).toEqual(['0 flowers', '1 flower', '2 flowers']);
    expect(counted(2, 'fruit', 'fruit')).toBe('2 fruit');
  });

  it('prints decimals with a true minus and never a negative nothing', () => {
    expect(decimal(-0.5, 2)).toBe('−0.50');
    expect(decimal(-0.001, 2)).toBe('0.00');
    expect(decimal(1.005, 1)).toBe('1.0');
  });

  it('joins lists as English does', () => {
    expect(joined([])).toBe('');
    expect(joined(['a'])).toBe('a');
    expect(joined(['a', 'b'])).toBe('a and b');
    expect(joined(['a', 'b', 'c'], 'or')).toBe('a, b or c');
  });

  it('capitalises the first letter only, whole characters at a time', () => {
    expect(capitalised('frozen pollen')).toBe('Frozen pollen');
    expect(capitalised('ährig')).toBe('Ährig');
    expect(capitalised('')).toBe('');
  });
});

describe('rates', () => {
  it('says a rate in ten, and in a hundred below 1 in 20 and from 19 in 20', () => {
    expect(inTen(0.35)).toBe('about 4 in 10');
    expect(inTen(0.05)).toBe('about 1 in 10');
    expect(inTen(0.03)).toBe('about 3 in 100');
    expect(inTen(0.949)).toBe('about 9 in 10');
    expect(inTen(0.97)).toBe('about 97 in 100');
  });

  it('never says none or all of them', () => {
    expect(inTen(0)).toBe('under 1 in 100');
    expect(inTen(0.004)).toBe('under 1 in 100');
    expect(inTen(1)).toBe('over 99 in 100');
    expect([percent(0), percent(0.35), percent(1)]).toEqual(['under 1%', '35%', 'over 99%']);
    fc.assert(
      fc.property(unit(), (p) => {
        expect(inTen(p)).not.toMatch(/\b0 in|\b10 in 10\b|100 in 100/);
        expect(percent(p)).not.toMatch(/^(0|100)%$/);
      }),
    );
  });

  it('rounds a half upwards whichever way the last digit of the half came out', () => {
    expect(inTen(0.35 - 1e-16)).toBe('about 4 in 10');
    expect(inTen(0.35 + 1e-16)).toBe('about 4 in 10');
  });

  it('throws for what is no proportion', () => {
    expect(() => inTen(1.2)).toThrow('inTen: estimate must be a proportion from 0 to 1, got 1.2');
    expect(() => percent(Number.NaN)).toThrow(RangeError);
    expect(() => likely(-0.1)).toThrow(RangeError);
  });

  it('puts counts before the rate and a range after it', () => {
    const seven = { fruits: 7, flowers: 20, estimate: 0.35, lower: 0.1812, upper: 0.5671 };
    expect(rateWithRange(seven)).toBe('7 of 20 (about 4 in 10; could be 2 to 6 in 10)');
  });

  it('says how high none of 5, and how low 5 of 5, could still be', () => {
    const none = { fruits: 0, flowers: 5, estimate: 0, lower: 0, upper: 0.4345 };
    const all = { fruits: 5, flowers: 5, estimate: 1, lower: 0.5655, upper: 1 };
    expect(rateWithRange(none)).toBe('0 of 5; could still be as high as 4 in 10');
    expect(rateWithRange(all)).toBe('5 of 5; could still be as low as 6 in 10');
  });

  it('uses hundreds for the far end of none in many', () => {
    // R: prop.test(0, 200, correct = FALSE) gives an upper end of 0.0188.
    const none = { fruits: 0, flowers: 200, estimate: 0, lower: 0, upper: 0.0188 };
    expect(rateWithRange(none)).toBe('0 of 200; could still be as high as 2 in 100');
  });

  it('says so when there were no flowers or no range', () => {
    expect(rateWithRange({ fruits: 0, flowers: 0, estimate: null, lower: null, upper: null })).toBe(
      'no flowers',
    );
    expect(rateWithRange({ fruits: 2, flowers: 4, estimate: null, lower: null, upper: null })).toBe('2 of 4');
    expect(rate({ estimate: null, lower: null, upper: null })).toBe('can’t tell yet');
    expect(rate({ estimate: 0.4, lower: null, upper: null })).toBe('about 4 in 10');
  });

  // report-guide: below 1 in 20 speak of "in 100".
  it('counts both ends in a hundred where one is near none or all', () => {
    expect(rate({ estimate: 0.2, lower: 0.036, upper: 0.624 })).toBe(
      'about 2 in 10; could be 4 to 62 in 100',
    );
    expect(rate({ estimate: 0.8, lower: 0.4, upper: 0.97 })).toBe('about 8 in 10; could be 40 to 97 in 100');
    expect(rate({ estimate: 0.5, lower: 0.02, upper: 0.98 })).toBe('about 5 in 10; could be 2 to 98 in 100');
    expect(rate({ estimate: 0.2, lower: 0.001, upper: 0.6 })).toBe(
      'about 2 in 10; could be under 1 to 60 in 100',
    );
  });

  it('counts estimate and both ends in one base, and goes to hundreds where ten would hide the range', () => {
    expect(rate({ estimate: 0.04, lower: 0.012, upper: 0.1 })).toBe(
      'about 4 in 100; could be 1 to 10 in 100',
    );
    expect(rate({ estimate: 0.3, lower: 0.27, upper: 0.33 })).toBe(
      'about 30 in 100; could be 27 to 33 in 100',
    );
    expect(rate({ estimate: 0.3, lower: 0.299, upper: 0.301 })).toBe('about 30 in 100; could be 30 in 100');
  });
});

describe('differences', () => {
  it('is said of the stored, in every ten', () => {
    expect(difference({ estimate: 0.3, lower: 0.1, upper: 0.5 })).toBe(
      'about 3 fewer in every 10 (could be 1 to 5)',
    );
    expect(difference({ estimate: -0.2, lower: -0.4, upper: -0.1 })).toBe(
      'about 2 more in every 10 (could be 1 to 4)',
    );
  });

  it('says both directions of a range across zero, however near to it', () => {
    expect(difference({ estimate: 0.2, lower: -0.1, upper: 0.4 })).toBe(
      'about 2 fewer in every 10 (could be 4 fewer to 1 more)',
    );
    expect(difference({ estimate: 0.2, lower: -0.01, upper: 0.4 })).toContain(
      'could be 4 fewer to about as many)',
    );
    expect(difference({ estimate: 0.2, lower: 0.01, upper: 0.4 })).toContain('could be under 1 to 4)');
    expect(difference({ estimate: 0.2, lower: 0, upper: 0.4 })).toContain('no different to 4 fewer');
  });

  it('counts a small one in a hundred, and calls one of nothing about the same', () => {
    expect(difference({ estimate: 0.03, lower: -0.12, upper: 0.18 })).toBe(
      'about 3 fewer in every 100 (could be 18 fewer to 12 more)',
    );
    expect(difference({ estimate: 0.001, lower: -0.12, upper: 0.13 })).toBe(
      'about the same (could be 13 fewer to 12 more in every 100)',
    );
  });

  it('goes to hundreds where ten would give both ends the same number', () => {
    expect(difference({ estimate: 0.13, lower: 0.11, upper: 0.14 })).toBe(
      'about 13 fewer in every 100 (could be 11 to 14)',
    );
  });

  it('says what it can without a range or an estimate', () => {
    expect(difference({ estimate: 0.3, lower: null, upper: null })).toBe('about 3 fewer in every 10');
    expect(difference({ estimate: null, lower: null, upper: null })).toBe('can’t tell yet');
  });
});

describe('likelihood words', () => {
  it('always carry their number', () => {
    expect(likely(0.8)).toBe('likely (about 8 in 10)');
    expect(likely(0.5)).toBe('about as likely as not (about 5 in 10)');
    expect(likely(0.2)).toBe('unlikely (about 2 in 10)');
    expect(likely(0.03)).toBe('very unlikely (about 3 in 100)');
    expect(likely(0.999)).toBe('very likely (over 99 in 100)');
  });

  it('give one number in ten one word only', () => {
    const words = new Map<string, string>();
    for (let step = 0; step <= 10_000; step++) {
      const p = step / 10_000;
      const tenths = Math.floor(p * 10 + 0.5 + 1e-9);
      const said = tenths >= 1 && tenths <= 9 ? inTen(p) : String(tenths);
      expect(words.get(said) ?? likelihoodWord(p)).toBe(likelihoodWord(p));
      words.set(said, likelihoodWord(p));
    }
    expect(words.size).toBe(11);
  });

  it('never fall as the probability rises', () => {
    const order = ['very unlikely', 'unlikely', 'about as likely as not', 'likely', 'very likely'];
    fc.assert(
      fc.property(unit(), unit(), (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(order.indexOf(likelihoodWord(high))).toBeGreaterThanOrEqual(
          order.indexOf(likelihoodWord(low)),
        );
        expect(order).toContain(likelihoodWord(low));
      }),
    );
  });
});

describe('numbers inside a sentence', () => {
  it('put the end of none and of all in brackets, so that the sentence may go on', () => {
    expect(rateInText({ fruits: 0, flowers: 5, estimate: 0, lower: 0, upper: 0.4345 })).toBe(
      '0 of 5 (could still be as high as 4 in 10)',
    );
    expect(rateInText({ fruits: 5, flowers: 5, estimate: 1, lower: 0.5655, upper: 1 })).toBe(
      '5 of 5 (could still be as low as 6 in 10)',
    );
    expect(rateInText({ fruits: 7, flowers: 20, estimate: 0.35, lower: 0.1812, upper: 0.5671 })).toBe(
      '7 of 20 (about 4 in 10; could be 2 to 6 in 10)',
    );
  });

  it('never say a probability below a line as if it had reached it', () => {
    fc.assert(
      fc.property(unit(), (probability) => {
        const said = likelyBeside(probability, 0.8);
        const [, number, base] = said.match(/(\d+) in (100?)\)$/)!;
        const below = said.includes('under') || Number(number) / Number(base) < 0.8;
        expect(below).toBe(probability < 0.8);
      }),
      { examples: [[0.7999999], [0.8], [0.795], [0.783], [0.749999]] },
    );
    expect(() => likelyBeside(1.2, 0.8)).toThrow(RangeError);
  });
});
