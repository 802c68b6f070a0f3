/** Words of figures that no drawing of the fixture shows; the rest is tested with the figures themselves. */
import { describe, expect, it } from 'vitest';
import { ageBandLabel, seasonWords, storageWords } from '../../lib/words/rate-figures.ts';

const rate = (fruits: number, flowers: number, lower: number, upper: number) => ({
  storage: 'frozen',
  fruits,
  flowers,
  estimate: fruits / flowers,
  lower,
  upper,
});

describe('age bands', () => {
  it('are said from day to day, the last one open', () => {
    const band = rate(1, 2, 0.1, 0.9);
    expect(ageBandLabel({ ...band, from: 0, to: 0 })).toBe('0 days');
    expect(ageBandLabel({ ...band, from: 1, to: 2 })).toBe('1 to 2 days');
    expect(ageBandLabel({ ...band, from: 366, to: null })).toBe('366 days or more');
  });
});

describe('labels of rates', () => {
  it('say how low all of them could still be (R: prop.test(5, 5, correct = FALSE), lower end 0.566)', () => {
    expect(storageWords.extremeLabel(rate(5, 5, 0.566, 1))).toBe('frozen: 6 in 10 or more');
    expect(storageWords.extremeLabel(rate(0, 5, 0, 0.4345))).toBe('frozen: up to 4 in 10');
  });

  it('say can’t tell yet without an estimate', () => {
    expect(storageWords.rateLabel({ ...rate(0, 1, 0, 1), estimate: null })).toBe('frozen: can’t tell yet');
  });
});

describe('a mark', () => {
  it('says what it stands for', () => {
    expect(seasonWords.perMark(1)).toBe('One mark is one flower');
    expect(storageWords.marks(10)).toBe('One mark is 10 flowers; small, no fruit.');
  });
});
