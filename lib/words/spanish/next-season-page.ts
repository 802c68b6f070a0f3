/** What the page of next season says of its mixes, of the vials and of wishes. */

import type { Mix } from '../../decisions/mix.ts';
import type { Ceiling, Must } from '../../decisions/plan-problem.ts';
import { pairName } from './choice-figures.ts';
import { crossesIn } from './nouns.ts';
import { wholeNumber } from './numbers.ts';
import { crossesTried, mixGives, mixLabel, mixRisks, mixSeeds } from './plan.ts';

/** The two ends of a frontier, or one where nothing could be crossed. */
type Ends = readonly [most: Mix, least: Mix] | null;

export const nextSeasonPage = {
  noMix: 'No hay ningún reparto que mostrar.',
  /** What stands behind a mix's name. */
  mix: (mix: Mix): string =>
    `: ${mixGives(mix)}, ${mixSeeds(mix)}; ${mixRisks(mix)}; se intentan ${crossesIn(crossesTried(mix))}.`,
  crossesFold: (mix: Mix): string => `Los cruces de «${mixLabel(mix.name)}»`,
  crossesCaption: (mix: Mix): string =>
    `Cruces del reparto «${mixLabel(mix.name)}», con la probabilidad de al menos un fruto`,
  /** What the vials add to fresh pollen alone. */
  vialsAdd: (all: Ends, alone: Ends): string => {
    if (all === null) return 'No hay ningún plan con el que comparar.';
    if (alone === null)
      return `Sin los viales no se podría cruzar nada; con ellos las flores podrían dar ${mixGives(all[0])}.`;
    const [most, least] = all.map(mixGives);
    const [mostAlone, leastAlone] = alone.map(mixGives);
    return (
      `Solo con polen fresco, las mismas flores podrían dar ${mostAlone}, o bien ${leastAlone}; con los viales, ${most}, ` +
      `o bien ${least}.`
    );
  },
  noWish: 'No se dio ningún deseo: cada cruce se puede intentar o no.',
  wishes: 'Se dieron estos deseos:',
  must: (wish: Must): string => `${pairName(wish)}: al menos ${wholeNumber(wish.flowers)}`,
  atMost: ({ seedParent, pollenParent, flowers }: Ceiling): string =>
    `${seedParent === undefined ? `polen de ${pollenParent}` : pairName({ seedParent, pollenParent })}: como mucho ${wholeNumber(flowers)}`,
};
