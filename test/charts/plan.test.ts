import { beforeAll, describe, expect, it } from 'vitest';
import { openPaper } from '../../lib/charts/paper.ts';
import { planFigure } from '../../lib/charts/plan.ts';
import { texts } from './drawn.ts';
import { nearlyEmpty, plan, season } from './fixture.ts';

let paper: Document;
beforeAll(async () => {
  paper = await openPaper();
});

describe('planFigure', () => {
  it('says what is given up and gained from end to end', () => {
    // 31.2 − 21.8 = 9.4 fruits, 20.7 − 8.4 = 12.3 crosses.
    expect(planFigure(season)!.finding).toBe(
      'From most fruit to most varieties you give up 9 fruits and gain 12 crosses.',
    );
  });

  it('names three mixes in the drawing, and all in the table', () => {
    const shown = texts(planFigure(season)!.draw(paper, 'p'));
    for (const name of ['most fruit', 'in between', 'most varieties']) expect(shown).toContain(name);
    expect(planFigure(season)!.table.rows).toEqual([
      ['most fruit', '31 (25 to 38)', '8 of 2'],
      ['mix 2', '30 (23 to 36)', '13 of 2'],
      ['in between', '28 (21 to 35)', '17 of 2'],
      ['most varieties', '22 (14 to 29)', '21 of 2'],
    ]);
  });

  it('places a dot by its fruits and crosses', () => {
    // Ticks across are 5 to 25 by 5: 8.4 is at 38 + (3.4 ÷ 20) × 270 = 83.9. Up they are 10 to 40 by 10: 31.2 is at
    // 176 − (21.2 ÷ 30) × 150 = 70.
    const drawn = planFigure(season)!.draw(paper, 'p');
    expect(texts(drawn)).toEqual(expect.arrayContaining(['5', '25', '10', '40']));
    expect(drawn).toMatch(/83\.9,70/);
  });

  it('says that one split is best where there is one mix', () => {
    const one = planFigure({ plan: { ...plan, frontier: plan.frontier.slice(0, 1) } })!;
    expect(one.finding).toBe('One split is best in both: about 31 fruits of 8 crosses.');
    expect(texts(one.draw(paper, 'p'))).toContain('most fruit');
  });

  it('survives mixes without a fruit', () => {
    const none = { ...plan.frontier[0]!, expectedFruits: 0, expectedVarieties: 0 };
    const barren = { ...none, fruits: { percentile10: 0, percentile90: 0 } };
    expect(planFigure({ plan: { ...plan, frontier: [barren] } })!.draw(paper, 'p')).not.toMatch(
      /NaN|Infinity/,
    );
  });

  it('is null without a plan or a mix', () => {
    expect(planFigure(nearlyEmpty)).toBeNull();
    expect(planFigure({ plan: { ...plan, frontier: [] } })).toBeNull();
  });
});
