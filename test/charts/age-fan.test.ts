import { beforeAll, describe, expect, it } from 'vitest';
import { ageFigure } from '../../lib/charts/age.ts';
import { fanPoints } from '../../lib/charts/age-fan.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { parsed } from './drawn.ts';
import { season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

const point = (ageDays: number, ...plausible: number[]) => ({
  storage: 'frozen',
  ageDays,
  estimate: 0.5,
  lower: 0.3,
  upper: 0.7,
  plausible,
});

describe('the fan of curves', () => {
  it('has each curve at each age, in the order of the ages', () => {
    expect(fanPoints([point(0, 0.6, 0.5), point(90, 0.4, 0.1)])).toEqual([
      { curve: 0, ageDays: 0, rate: 0.6 },
      { curve: 1, ageDays: 0, rate: 0.5 },
      { curve: 0, ageDays: 90, rate: 0.4 },
      { curve: 1, ageDays: 90, rate: 0.1 },
    ]);
  });

  it('keeps both ends of a long curve, and each age once', () => {
    const ages = fanPoints(Array.from({ length: 40 }, (_, age) => point(age, 0.5))).map(
      ({ ageDays }) => ageDays,
    );
    expect([ages[0], ages.at(-1), ages.length]).toEqual([0, 39, 14]);
    expect(new Set(ages).size).toBe(ages.length);
  });

  it('is drawn as one thin line a curve, behind the estimate', () => {
    const lines = [...parsed(ageFigure(season, 'frozen')!.draw(paper, 'a')).querySelectorAll('path')];
    const widths = lines.map((line) => line.closest('[stroke-width]')?.getAttribute('stroke-width'));
    expect(widths.filter((width) => width === '0.8')).toHaveLength(season.ageCurve[0]!.plausible.length);
    expect(widths.lastIndexOf('0.8')).toBeLessThan(widths.indexOf('2.2'));
  });
});
