import { describe, expect, it } from 'vitest';
import { dotPlaces, dotRowsHeight, flowersPerMark, marksFor, PITCH } from '../../lib/charts/marks.ts';
import { INNER_WIDTH } from '../../lib/charts/sheet.ts';

describe('marks that stand for flowers', () => {
  it('stand for one flower up to 300, then for ten, then for a hundred', () => {
    expect([1, 300, 301, 3000, 3001].map(flowersPerMark)).toEqual([1, 1, 10, 10, 100]);
  });

  it('are never none where there was a flower', () => {
    expect(marksFor(3, 10)).toBe(1);
    expect(marksFor(0, 10)).toBe(0);
    expect(marksFor(26, 10)).toBe(3);
  });
});

describe('places of dots', () => {
  it('fill rows from the left, as many columns as fit', () => {
    const columns = Math.floor(INNER_WIDTH / PITCH);
    const places = dotPlaces(columns + 1, { top: 0 });
    expect(places[0]).toEqual({ x: 5 / INNER_WIDTH, y: 5 });
    expect(places[columns - 1]!.y).toBe(5);
    expect(places[columns]).toEqual({ x: 5 / INNER_WIDTH, y: 15 });
  });

  it('go on where the ones before ended', () => {
    const whole = dotPlaces(40, { top: 7 });
    expect([...dotPlaces(25, { top: 7 }), ...dotPlaces(15, { top: 7, first: 25 })]).toEqual(whole);
  });

  it('need whole rows', () => {
    expect([0, 1, 29, 30].map((count) => dotRowsHeight(count))).toEqual([0, 10, 10, 20]);
  });
});
