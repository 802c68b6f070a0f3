import { describe, expect, it } from 'vitest';
import { unknown } from '../../lib/proportions/interval.ts';
import { wilson } from '../../lib/proportions/one-sample.ts';
import {
  choiceLabel,
  choiceSaid,
  chosenSaid,
  countCells,
  rateCell,
  rowCounts,
} from '../../lib/words/explore.ts';

const took = (fruits: number, flowers: number) => ({ fruits, flowers, ...wilson(fruits, flowers) });
const nothing = { fruits: 0, flowers: 0, ...unknown('no-flowers') };

// Wilson's range of 7 of 20 is 0.181 to 0.567, of 0 of 5 it ends at 0.434, of 5 of 5 it begins at 0.566 (Newcombe 1998, method 3).
describe('the words of the page to explore', () => {
  it('say counts before a rate and its range', () => {
    expect(chosenSaid(took(7, 20))).toBe('7 of 20 flowers took (about 4 in 10; could be 2 to 6 in 10).');
    expect(countCells('frozen', took(7, 20))).toEqual([
      'frozen',
      '7',
      '20',
      'about 4 in 10; could be 2 to 6 in 10',
    ]);
    expect(rowCounts(took(7, 20))).toBe('7 of 20');
  });

  it('say no rate of none and of all', () => {
    expect(rateCell(took(0, 5))).toBe('could still be as high as 4 in 10');
    expect(chosenSaid(took(5, 5))).toBe('5 of 5 flowers took (could still be as low as 6 in 10).');
    expect(chosenSaid(took(0, 1))).toContain('0 of 1 flower took');
  });

  it('say where there is nothing to count', () => {
    expect(chosenSaid(nothing)).toBe('No flower fits this choice.');
    expect(rowCounts(nothing)).toBe('no flowers');
    expect(rateCell(nothing)).toBe('no flowers');
  });

  it('name what was chosen', () => {
    expect(choiceSaid([])).toBe('All flowers whose outcome is known.');
    expect(
      choiceSaid([
        { dimension: 'storage', labels: ['frozen', 'fresh'] },
        { dimension: 'season', labels: [] },
      ]),
    ).toBe('Storage: frozen and fresh. Season: none.');
    expect(choiceLabel('storage', 'room')).toBe('room temperature');
    expect(choiceLabel('age', '3', { from: 3, to: 7 })).toBe('3 to 7 days');
    expect(choiceLabel('age', 'unknown')).toBe('age not known');
  });
});
