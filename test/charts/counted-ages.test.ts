import { expect, it } from 'vitest';
import { countedAges } from '../../lib/charts/counted-ages.ts';

const band = (storage: string, from: number, to: number | null, flowers: number) => ({
  ...{ storage, from, to, flowers, fruits: 1 },
  ...(flowers === 0 ? { estimate: null, lower: null, upper: null } : { estimate: 0.5, lower: 0, upper: 1 }),
});
const point = (ageDays: number) => ({
  storage: 'frozen',
  ageDays,
  estimate: 0.5,
  lower: 0,
  upper: 1,
  plausible: [],
});
const raw = {
  byAge: [
    band('fresh', 0, 0, 4),
    band('frozen', 1, 2, 3),
    band('frozen', 3, 7, 0),
    band('frozen', 8, null, 2),
    band('frozen', 30, 90, 2),
    band('room', 1, 2, 3),
  ],
} as never;

it('places a band at its middle, an open one between its first day and the oldest tried, and none past that', () => {
  const shown = countedAges({ ageCurve: [point(0), point(20)], raw }, 'frozen');
  expect(shown?.bands.map(({ storage, middle }) => [storage, middle])).toEqual([
    ['fresh', 0],
    ['frozen', 1.5],
    ['frozen', 14],
  ]);
  expect([shown?.oldestDays, shown?.points.length]).toEqual([20, 2]);
});

it('shows nothing of a curve with fewer than two ages', () => {
  expect(countedAges({ ageCurve: [point(20)], raw }, 'frozen')).toBeNull();
  expect(countedAges({ ageCurve: [point(0), point(20)], raw }, 'room')).toBeNull();
});
