/** What the page of next season says of its mixes, of the vials and of wishes. */

import type { Mix } from '../decisions/mix.ts';
import type { Ceiling, Must } from '../decisions/plan-problem.ts';
import { pairName } from './choice-figures.ts';
import { counted, wholeNumber } from './numbers.ts';
import { crossesTried, mixGives, mixLabel, mixRisks, mixSeeds } from './plan.ts';

/** The two ends of a frontier, or one where nothing could be crossed. */
type Ends = readonly [most: Mix, least: Mix] | null;

/** Its sentences and captions. */
export const nextSeasonPage = {
  noMix: 'There is no mix to show.',
  /** What stands behind a mix's name. */
  mix: (mix: Mix): string =>
    `: ${mixGives(mix)}, ${mixSeeds(mix)}; ${mixRisks(mix)}; ${counted(crossesTried(mix), 'cross', 'crosses')} tried.`,
  crossesFold: (mix: Mix): string => `The crosses of “${mixLabel(mix.name)}”`,
  crossesCaption: (mix: Mix): string =>
    `Crosses of the mix “${mixLabel(mix.name)}”, with the chance of at least one fruit`,
  /** What the vials add to fresh pollen alone. */
  vialsAdd: (all: Ends, alone: Ends): string => {
    if (all === null) return 'There is no plan to compare with.';
    if (alone === null)
      return `Without the vials nothing could be crossed; with them the flowers could give ${mixGives(all[0])}.`;
    const [most, least] = all.map(mixGives);
    const [mostAlone, leastAlone] = alone.map(mixGives);
    return (
      `With fresh pollen alone the same flowers could give ${mostAlone}, or ${leastAlone}; with the vials ${most}, ` +
      `or ${least}.`
    );
  },
  noWish: 'No wish was given: every cross is free to be tried or not.',
  wishes: 'These wishes were given:',
  must: (wish: Must): string => `${pairName(wish)}: at least ${wholeNumber(wish.flowers)}`,
  atMost: ({ seedParent, pollenParent, flowers }: Ceiling): string =>
    `${seedParent === undefined ? `pollen of ${pollenParent}` : pairName({ seedParent, pollenParent })}: at most ${wholeNumber(flowers)}`,
};
