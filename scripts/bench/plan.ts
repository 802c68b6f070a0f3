/** A large season to plan: 40 seed parents in two waves, 200 vials, after 600 flowers of 40 plants. */

import { growerModel } from '../../lib/analysis/grower-model.ts';
import { predictor } from '../../lib/analysis/predictor.ts';
import { plan } from '../../lib/decisions/plan.ts';
import { addDays } from '../../lib/season/dates.ts';
import type { ExpectedFlowers, Vial } from '../../lib/season/season.ts';
import { simulatedSeason } from '../simulation/season-world.ts';
import { WORLDS } from '../simulation/worlds.ts';

const PLANTS = 40;
const VIALS = 200;

function offersOf(plants: readonly string[]): ExpectedFlowers[] {
  return plants.map((seedParent, at) => {
    const opensFrom = addDays(at % 3 === 0 ? '2027-07-20' : '2027-06-10', at % 7);
    const place = { file: 'flowers.csv', line: at + 2, row: at + 2 };
    return { ...place, seedParent, flowers: 3 + (at % 9), opensFrom, opensTo: addDays(opensFrom, 20) };
  });
}

function vialsOf(plants: readonly string[]): Vial[] {
  return Array.from({ length: VIALS }, (_, at) => ({
    ...{ file: 'vials.csv', line: at + 2, row: at + 2, thaws: null, note: null },
    vial: `F-${at}`,
    pollenParent: plants[at % PLANTS]!,
    collected: addDays('2025-06-01', at),
    storage: 'frozen',
    dosesLeft: at % 5 === 0 ? null : at % 5,
  }));
}

/** Plans the season anew at each call, predictor included; the model is fitted once. Returns the fruits of the first mix. */
export function largePlan(): () => number {
  const size = { flowers: 600, plants: PLANTS, mornings: 20, seasons: 2 };
  const { flowers } = simulatedSeason(WORLDS.get('matching')!, size, 0);
  const plants = [...new Set(flowers.flatMap(({ seedParent, pollenParent }) => [seedParent, pollenParent]))];
  const fitted = growerModel(flowers, { ageScale: null, methods: ['frozen'] });
  if (!('draws' in fitted)) throw new Error('largePlan: the model of the simulated season did not settle');
  const [offers, vials] = [offersOf(plants.slice(0, PLANTS)), vialsOf(plants)];
  return () => {
    const question = { predict: predictor(fitted.draws), useOn: '2027-07-01', incompatible: () => false };
    return plan(offers, vials, question).frontier[0]!.expectedFruits;
  };
}
